"""Lines in space: those behind a face are left out, those before it are not."""

import re
from math import dist, isfinite

import pytest

from pedalwright.assess import assess
from pedalwright.core.points import Point
from pedalwright.documents.pictures.board import Board
from pedalwright.documents.pictures.hidden import Edge, Solid, seen_of
from pedalwright.documents.pictures.space import (
    TIPS,
    TURNS,
    USUAL_TIP,
    USUAL_TURN,
    from_there,
    space,
)
from pedalwright.documents.pictures.stroke import Look, looked_at
from pedalwright.documents.pictures.views import FROM_ABOVE, FROM_THE_SEAT
from pedalwright.drawing import Polyline, svg
from pedalwright.project import car_text, read

#: A square of 100 mm at x = 0 that faces the seat.
SQUARE = tuple(Point(0.0, y, z) for y, z in ((0, 0), (100, 0), (100, 100), (0, 100)))


def length(lines: list[Polyline]) -> float:
    return sum(dist(*line.points) for line in lines)


def seen(edge: tuple[Point, Point], *faces: tuple[Point, ...]) -> float:
    solids = [Solid(faces, ()), Solid((), (Edge(points=edge),))]
    return length(list(seen_of(solids, FROM_THE_SEAT)))


def across(x: float, start: float = -50.0, end: float = 150.0) -> tuple[Point, Point]:
    return Point(x, start, 50.0), Point(x, end, 50.0)


def test_a_line_before_a_face_is_seen_whole_and_one_behind_it_beside_it_only() -> None:
    assert seen(across(20.0), SQUARE) == pytest.approx(200.0, abs=1.5)
    assert seen(across(-20.0), SQUARE) == pytest.approx(100.0, abs=1.5)
    assert seen(across(-20.0)) == pytest.approx(200.0, abs=1.5)


def test_a_line_through_a_face_is_seen_up_to_where_it_goes_in() -> None:
    inside = (Point(60.0, 20.0, 50.0), Point(-60.0, 80.0, 50.0))
    # The face is as good as its own edges: some millimetres behind it count as on it.
    assert seen(inside, SQUARE) == pytest.approx(30.0, abs=4.0)


def test_a_line_shows_through_an_opening() -> None:
    opening = tuple(Point(0.0, y, z) for y, z in ((30, 30), (70, 30), (70, 70), (30, 70)))
    with_opening = (*SQUARE, SQUARE[0], *opening, opening[0])
    assert seen(across(-20.0, 0.0, 100.0), with_opening) == pytest.approx(40.0, abs=2.0)


def test_seen_from_behind_it_is_the_front_view_and_from_high_above_nearly_the_plan() -> None:
    behind = from_there(0, 0)
    for way, other in ((behind.right, FROM_THE_SEAT.right), (behind.up, FROM_THE_SEAT.up)):
        assert float((way - other).dot(way - other)) == pytest.approx(0.0, abs=1e-12)
    assert float(from_there(0, TIPS).towards.dot(FROM_ABOVE.towards)) > 0.95


def there(car: str) -> Board:
    design = read(car_text(car)).design
    found = assess(design)
    look = Look(pedal="brake", down=40, drivers=(design.drivers[0].name,))
    return Board(design=design, assessment=found, now=looked_at(design, found, look), look=look)


@pytest.mark.parametrize("car", ["larkfield-improved", "brackwater-fix2", "saltmarsh-improved"])
def test_every_car_is_drawn_from_everywhere(car: str) -> None:
    board = there(car)
    for turn in range(0, TURNS, 5):
        drawn = svg(space(board, turn, 2), physical=False).decode()
        numbers = re.findall(r'points="([^"]*)"', drawn)
        assert len(numbers) > 40
        assert all(isfinite(float(n)) for n in " ".join(numbers).replace(",", " ").split())


def test_from_over_the_shoulder_all_three_arms_are_seen_and_from_ahead_the_wall() -> None:
    board = there("larkfield-improved")
    behind, ahead = (
        svg(space(board, turn, USUAL_TIP), physical=False).decode()
        for turn in (USUAL_TURN, TURNS // 2)
    )
    for name in ("clutch", "brake", "accelerator"):
        assert f"<title>{name} arm</title>" in behind
        assert f"<title>{name} pad</title>" not in ahead
