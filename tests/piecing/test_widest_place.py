"""The widest place without stitching, against hand computations and a fine grid of places."""

from math import hypot
from unittest.mock import Mock

import pytest

from stitchflip.piecing import coverage
from stitchflip.piecing.coverage import widest_anywhere

RUNNER = ((-60.0, -6.0), (60.0, -6.0), (60.0, 6.0), (-60.0, 6.0))


def test_a_bare_runner_is_open_as_wide_as_it_is() -> None:
    """A circle in a rectangle is as wide as its short side, 12 in, wherever along the 120 in it lies."""
    assert 12.0 == pytest.approx(widest_anywhere(RUNNER, []).diameter, abs=1e-9)


def test_a_long_even_stretch_is_not_searched_inch_by_inch(monkeypatch: pytest.MonkeyPatch) -> None:
    """A runner ten times as long, and seamed at its middle only, takes about as many looks as a short one."""
    looks = Mock(wraps=coverage.clearance)
    monkeypatch.setattr(coverage, "clearance", looks)
    trim = ((-600.0, -6.0), (600.0, -6.0), (600.0, 6.0), (-600.0, 6.0))
    assert 12.0 == pytest.approx(widest_anywhere(trim, [((0.7, -6.0), (0.7, 6.0))]).diameter, abs=1e-9)
    assert looks.call_count < 3000


def test_the_widest_place_between_long_parallel_seams_is_their_distance() -> None:
    """Seams along a runner at -3.3, -1.1, 4.2 and 5 leave 5.3 in between the second and third."""
    seams = [((-60.0, y), (60.0, y)) for y in (-3.3, -1.1, 4.2, 5.0)]
    assert 5.3 == pytest.approx(widest_anywhere(RUNNER, seams).diameter, abs=1e-9)


def test_a_short_seam_does_not_bound_a_place_beside_its_end() -> None:
    """A seam of 20 in at the left end holds nothing at the right end: 12 in stay open there."""
    assert 12.0 == pytest.approx(widest_anywhere(RUNNER, [((-60.0, 0.0), (-40.0, 0.0))]).diameter, abs=1e-6)


def test_leaning_seams_agree_with_a_grid_of_places() -> None:
    """No place of a grid is farther from everything than what was found, and one comes as near as the grid is fine."""
    trim = ((-7.0, -9.0), (7.0, -9.0), (7.0, 9.0), (-7.0, 9.0))
    seams = [
        ((-7.0, -2.0), (7.0, -4.5)),
        ((-3.0, -9.0), (-1.0, 9.0)),
        ((-1.0, 5.0), (7.0, 4.0)),
        ((3.0, 4.5), (5.0, 9.0)),
    ]

    def open_to(x: float, y: float) -> float:
        away = [7 - abs(x), 9 - abs(y)]
        for (ax, ay), (bx, by) in seams:
            dx, dy = bx - ax, by - ay
            t = min(1.0, max(0.0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)))
            away.append(hypot(x - ax - t * dx, y - ay - t * dy))
        return min(away)

    best = max(open_to(-7 + i / 10, -9 + j / 10) for i in range(141) for j in range(181))
    found = widest_anywhere(trim, seams)
    assert best == pytest.approx(found.diameter / 2, abs=0.08)
    assert found.diameter / 2 >= best - 0.01
    assert found.diameter / 2 == pytest.approx(open_to(*found.center), abs=1e-9)
