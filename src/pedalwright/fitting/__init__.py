"""Fitting: cut, drill, rescue and adjust a pedal; each answer is a design, assessed."""

from pedalwright.fitting.cuts import CutPlan, Donor, PadJoint, Section, cut_plan
from pedalwright.fitting.outcomes import Outcome, outcome
from pedalwright.fitting.pedals import PedalName, fitted
from pedalwright.fitting.pushes import Expected, Explained, PushTestResult, push_test
from pedalwright.fitting.ratios import RatioSweep, pin_radius_for, ratio_sweep
from pedalwright.fitting.rescue import Hole, Rescue, RescuePlan, hole_rescue
from pedalwright.fitting.rods import ROD_ANGLE_WISHED, RodFit, SocketMove, fit_rod, level_rod
from pedalwright.fitting.travel import Saving, TravelAnswer, travel_answer

__all__ = [
    "ROD_ANGLE_WISHED",
    "CutPlan",
    "Donor",
    "Expected",
    "Explained",
    "Hole",
    "Outcome",
    "PadJoint",
    "PedalName",
    "PushTestResult",
    "RatioSweep",
    "Rescue",
    "RescuePlan",
    "RodFit",
    "Saving",
    "Section",
    "SocketMove",
    "TravelAnswer",
    "cut_plan",
    "fit_rod",
    "fitted",
    "hole_rescue",
    "level_rod",
    "outcome",
    "pin_radius_for",
    "push_test",
    "ratio_sweep",
    "travel_answer",
]
