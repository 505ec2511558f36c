"""Pictures of fussy cutting: everything to scale, windows numbered, places told in words."""

from __future__ import annotations

from math import dist

import pytest

from stitchflip.cutting.motifs import Counting, MotifPlan, Repeat, Start, Window, plan_motifs
from stitchflip.lengths import Unit
from stitchflip.pictures import motif_plan, to_svg
from stitchflip.pictures.model import Area, Badge, Dimension, Figure, Label, Line

POINTED = Window(8.25, 8.25, on_point=True)


def area_of(polygon: tuple[tuple[float, float], ...]) -> float:
    """Shoelace area; above zero when counter-clockwise."""
    return sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in zip(polygon, polygon[1:] + polygon[:1], strict=True)) / 2


def areas(figure: Figure, what: str) -> list[float]:
    """Areas of what is drawn as that."""
    return [area_of(item.points) for item in figure.items if isinstance(item, Area) and item.what == what]


def upright() -> MotifPlan:
    """Nine by nine in, windows 4 1/2, 27 by 18 in of fabric that begins with a repeat."""
    return plan_motifs(Counting(Repeat(9, 9), Window(4.5, 4.5), 27, Start(0.0, 0.0)), 18)


def plain(text: str) -> str:
    """With ordinary spaces."""
    return text.replace("\u202f", " ").replace("\u2009", " ")


def test_windows_are_drawn_to_scale_and_numbered() -> None:
    """Six windows of 4 1/2 square, their seams 4 in inside, numbers 1 to 6 in their middles."""
    figure = motif_plan(upright(), Unit.INCH)
    assert [4.5**2] * 6 == areas(figure, "window")
    badges = [(item.text, item.at) for item in figure.items if isinstance(item, Badge)]
    expected = [("1", (4.5, 4.5)), ("2", (13.5, 4.5)), ("3", (22.5, 4.5)), ("4", (4.5, 13.5))]
    assert expected == badges[:4]
    seams = [item.points for item in figure.items if isinstance(item, Line) and item.what == "seam"]
    assert [4.0] * 6 == [dist(points[0], points[1]) for points in seams]


def test_a_window_on_point_stands_on_its_corner() -> None:
    """8 1/4 on point: a corner right below and right above the motif, 8.25 / root 2 away."""
    plan = plan_motifs(Counting(Repeat(12), POINTED, 40), 24)
    figure = motif_plan(plan, Unit.INCH)
    (window,) = [item.points for item in figure.items if isinstance(item, Area) and item.what == "window"]
    (one,) = plan.windows
    assert pytest.approx(8.25**2) == area_of(window)
    below = min(window, key=lambda point: point[1])
    assert pytest.approx((one.x, one.y - 8.25 / 2**0.5)) == below


def test_leftovers_windows_and_fabric_add_up() -> None:
    """What is hatched and what is cut is all of 27 by 18 in, as no leftover here is too narrow to keep."""
    figure = motif_plan(upright(), Unit.INCH)
    assert [27 * 18] == areas(figure, "fabric")
    assert pytest.approx(27 * 18) == sum(areas(figure, "leftover")) + sum(areas(figure, "window"))


def test_every_motif_is_marked_whether_a_window_fits_or_not() -> None:
    """Centers 9 apart in 27 by 18: six crosses of two lines; begun 3 in later a column at 25 1/2 holds no window."""
    figure = motif_plan(upright(), Unit.INCH)
    assert 12 == sum(1 for item in figure.items if isinstance(item, Line) and item.what == "motif")
    shifted = plan_motifs(Counting(Repeat(9, 9), Window(4.5, 4.5), 27, Start(3.0, 0.0)), 18)
    marks = [item for item in motif_plan(shifted, Unit.INCH).items if isinstance(item, Line) and item.what == "motif"]
    assert 12 == len(marks)
    assert 4 == len(shifted.windows)


def test_one_repeat_each_way_is_measured() -> None:
    """From the first window to the one over it and the one beside it: 9 in."""
    figure = motif_plan(upright(), Unit.INCH)
    said = [plain(item.texts[0]) for item in figure.items if isinstance(item, Dimension)]
    assert ["27 in usable", "18 in of length", "repeat 9 in", "9 in across"] == said
    assert {"cut 4½ × 4½ in"} == {plain(i.text) for i in figure.items if isinstance(i, Label) and i.what == "window"}


def test_the_words_tell_places_from_the_first_window() -> None:
    """Who cannot see it reads how many, how large, and where, from window 1."""
    alt = plain(motif_plan(upright(), Unit.INCH, "Paper Lantern").alt)
    assert alt.startswith("Paper Lantern: 6 windows cut 4½ × 4½ in, each with a motif in its middle")
    assert "Window 2: 9 in to the right from window 1." in alt
    assert "Window 4: 9 in on from window 1." in alt
    assert "Window 5: 9 in to the right and 9 in on from window 1." in alt
    assert "one place is drawn" not in alt
    unknown = plan_motifs(Counting(Repeat(9, 9), Window(4.5, 4.5), 27), 18)
    assert "find the first motif, then count on" in motif_plan(unknown, Unit.INCH).alt


@pytest.mark.parametrize("unit", list(Unit))
@pytest.mark.parametrize("long", [4.0, 24.0, 90.0])
def test_it_can_be_printed_in_both_units_and_with_nothing_to_cut(unit: Unit, long: float) -> None:
    """4 in hold no window of 11.7 at all: the fabric is drawn all the same."""
    figure = motif_plan(plan_motifs(Counting(Repeat(12, 12, half_drop=True), POINTED, 40), long), unit, "Lantern")
    assert to_svg(figure).startswith("<")
    assert (long < 12) == (not areas(figure, "window"))
