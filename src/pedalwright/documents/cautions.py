"""The cautions every sheet carries."""

FIRST_CAUTION = (
    "Brakes, clutch and throttle are safety-critical. These results depend on the measured "
    "numbers and the assumptions listed; they need sign-off by a competent person before use. "
    "Local rules differ: ask before cutting."
)

CAUTIONS = (
    FIRST_CAUTION,
    (
        "Never weld cast or alloy pedals, cylinders, hardened pins or plated parts. Ask whether your "
        "scheme forbids welded push rods. Structural welds are for a qualified welder. Never weld "
        "where chlorinated cleaner was used; extract the fumes."
    ),
    (
        "Brake fluid: do not mix types. It strips paint, takes up water and burns on a hot exhaust. "
        "Old linings may be asbestos. Wear eye protection and gloves for rivets, drills and edges. "
        "Alloy dust burns when steel sparks reach it."
    ),
    "Do not notch a chassis member without a replacement load path.",
    (
        "Lock every nut, clip every pin, lock-nut every adjuster; no balance bar that fingers can "
        "turn; no hose that rubs through full travel and full lock; seal the openings."
    ),
    (
        "The piston must return fully, so that its port is open. The throttle needs two sources of "
        "energy to close it, a stop at the pedal, no dead point, and a mat that cannot hold it."
    ),
    (
        "Before driving: static push to 500 N, leak-hold for 60 s, wheels-free check, then walking "
        "pace on private flat ground, with the parking brake proven first."
    ),
    "Never lie under a car held by a jack.",
)

DEFER = (
    "pedalwright defers to the national individual-approval or engineer's certificate scheme, to "
    "the part makers' data, to a chartered or licensed engineer and to a qualified welder."
)
