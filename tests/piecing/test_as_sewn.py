"""What was measured and what was cut too short: the plan follows what really happened."""

from math import hypot, inf

import pytest

from stitchflip.lengths import Unit
from stitchflip.piecing import build_project
from stitchflip.piecing.as_sewn import _line_through
from stitchflip.piecing.geometry import area
from stitchflip.piecing.model import Build, EndClass
from stitchflip.project.model import Project
from stitchflip.project.numbers import effective

LOG_CABIN = {
    "name": "Practice mat",
    "squared_up": {"wide": "9", "long": "9"},
    "center": {"cut": "4", "fabric": "Plain"},
    "rounds": [{"cut": "2", "fabric": "Stripe"}, {"cut": "2 1/2", "fabric": "Dot"}],
    "fabrics": [{"name": "Plain"}, {"name": "Stripe"}, {"name": "Dot"}],
    "binding": {"fabric": "Dot"},
    "my_numbers": {"draw_up": 0.0, "fold_loss": "0"},
}


def built(**changes: object) -> Build:
    """The practice mat with changes, as a build."""
    project = Project.model_validate({**LOG_CABIN, **changes}, context={"unit": Unit.INCH})
    return build_project(project, effective(project), (inf, inf))


def test_one_reading_moves_the_side_and_what_follows() -> None:
    """The first top strip should end 3 1/2 from the mark; taped at 3 3/8, the next seam there lies at 3 1/8."""
    plan = built()
    measured = built(readings=[{"after": 1, "side": "top", "edge": "3 3/8"}])

    assert pytest.approx(3.25) == plan.pieces[5].seam_at
    assert pytest.approx(3.125) == measured.pieces[5].seam_at
    assert pytest.approx(plan.pieces[6].seam_at) == measured.pieces[6].seam_at


def test_a_reading_shortens_the_neighbor_sewn_next() -> None:
    """The strip on the right ends level with the measured top edge: 1/8 shorter than planned (5 1/2)."""
    measured = built(readings=[{"after": 1, "side": "top", "edge": "3 3/8"}])

    assert pytest.approx(5.375) == measured.pieces[2].full_length


def test_a_taped_reading_is_carried_to_the_base() -> None:
    """With 4 % draw-up a tape reading of 3.36 is 3.5 on the base; a reading off the marks stays as it is."""
    numbers = {"draw_up": 0.04, "fold_loss": "0"}
    taped = built(my_numbers=numbers, readings=[{"after": 1, "side": "top", "edge": "3.36"}])
    marked = built(my_numbers=numbers, readings=[{"after": 1, "side": "top", "edge": "3.36", "by": "marks"}])

    assert pytest.approx(3.25, abs=1e-4) == taped.pieces[5].seam_at
    assert pytest.approx(3.11, abs=1e-4) == marked.pieces[5].seam_at


def test_two_places_give_a_slanted_edge() -> None:
    """Readings 3 and 3 1/4, eight inches apart, turn the next seam by the slope 1/32."""
    readings = [
        {"after": 1, "side": "top", "edge": "3 1/4", "along": -2.0},
        {"after": 1, "side": "top", "edge": "3 1/8", "along": 2.0},
    ]
    normal = built(readings=readings).pieces[5].normal

    # along runs with sewing (leftward on the top side), so the edge drops by 1/8 in 4 in toward the left
    assert pytest.approx(1 / 32) == abs(normal[0] / normal[1])


def test_the_line_through_two_places_passes_through_both() -> None:
    """Both measured places satisfy the equation of the line, whatever the side's direction."""
    nx, ny = 0.6, 0.8
    mx, my, r = _line_through(nx, ny, [(-2.0, 3.0), (3.0, 3.5)])

    for along, edge in ((-2.0, 3.0), (3.0, 3.5)):
        x, y = nx * edge - ny * along, ny * edge + nx * along
        assert pytest.approx(r) == mx * x + my * y
    assert pytest.approx(1.0) == hypot(mx, my)
    assert mx * nx + my * ny > 0


def test_a_reading_the_strip_cannot_give_is_not_used() -> None:
    """A strip cut 2 on an edge at 2 cannot end at 5: the plan stays and says so."""
    build = built(readings=[{"after": 1, "side": "top", "edge": "5"}])

    assert ["reading.impossible"] == [note.code for note in build.notes]
    assert pytest.approx(3.25) == build.pieces[5].seam_at


def test_a_strip_cut_too_short_shows_its_raw_end_and_leaves_its_place_bare() -> None:
    """The first top strip is 4 long; cut 3 and laid at its start it leaves 1 x 1 1/2 of its place uncovered.

    Its place: from the seam at y = 1.75 up; the strip opened is 1 3/4 wide, 1 1/2 of it shows (next seam at
    3 1/4), and 1/4 of the missing inch lies under the allowance of the left strip, so 3/4 x 1 1/2 is bare of
    it, less the center's allowance of 1/4 that shows there instead.
    """
    short = built(short_strips=[{"step": 1, "long": "3", "from_start": "0"}])
    whole = built()

    lost = area(whole.pieces[1].visible[0]) - area(short.pieces[1].visible[0])
    assert pytest.approx(0.75 * 1.5) == lost
    assert ["stop"] == [spot.grade for spot in short.bare]
    bare = sum(spot.area for spot in short.bare)
    assert pytest.approx(0.75 * 1.25) == bare
    assert {1} == {step for step, _, _ in short.raw_edges_on_show}


def test_visible_and_bare_fill_the_trim_when_a_strip_is_short() -> None:
    """Nothing is lost or counted twice in the general difference: visible + bare inside the trim = 81."""
    short = built(short_strips=[{"step": 3, "long": "2 1/2"}])

    visible = sum(area(polygon) for piece in short.pieces for polygon in piece.visible)
    assert pytest.approx(81.0) == visible + sum(spot.area for spot in short.bare)


def test_a_short_seam_ends_inside_and_is_loose() -> None:
    """Where the short strip stops nothing crosses it: that end is loose, the other stays crossed."""
    seam = built(short_strips=[{"step": 1, "long": "3", "from_start": "0"}]).pieces[1].seam

    assert seam is not None
    assert (EndClass.CROSSED, EndClass.LOOSE) == (seam.start.kind, seam.end.kind)
