"""Kinds of block in one quilt: each is built as it is meant."""

from __future__ import annotations

from stitchflip import read_project
from stitchflip.planning import plan
from stitchflip.project.changes import apply_changes

MIXED = """
name = "Mixed"
rounds = [{ cut = "2", fabric = "Light" }, { cut = "2 3/4", fabric = "Dark" }]
[squared_up]
wide = "8 1/2"
long = "8 1/2"
[center]
fabric = "Print"
cut = "4"
[joined]
across = 2
down = 2
join = "plain seam"
[[blocks]]
name = "Cabin"
[[blocks]]
name = "Strings"
building = { way = "string block" }
rounds = [
    { cut = "2", fabric = "Print" },
    { cut = "3", fabric = "Light" },
    { cut = "3", fabric = "Dark" },
    { cut = "3", fabric = "Light" },
]
[[blocks]]
name = "Ticket"
building = { way = "numbered foundation" }
patches = [{ fabric = "Dark" }, { fabric = "Light", line = [[-3, 1], [3, 1]] }]
[[fabrics]]
name = "Print"
[[fabrics]]
name = "Light"
[[fabrics]]
name = "Dark"
[binding]
fabric = "Dark"
"""


def test_a_block_without_a_center_does_not_take_over_that_of_the_others() -> None:
    """A string block begins with its middle strip, a foundation with its first patch, beside a log cabin of 4 in."""
    cabin, strings, ticket = plan(read_project(MIXED), with_cures=False).kinds

    assert ("Cabin", "Print", 4.0, 4.0) == (
        cabin.name,
        cabin.build.pieces[0].fabric,
        cabin.build.pieces[0].cut_width,
        cabin.build.pieces[0].cut_length,
    )
    assert ("Print", 2.0) == (strings.build.pieces[0].fabric, strings.build.pieces[0].cut_width)
    assert "Dark" == ticket.build.pieces[0].fabric
    # three rounds after the middle strip, one strip on both sides each
    assert 6 == len(strings.build.strips)
    assert 1 == len(ticket.build.strips)
    assert 4 == cabin.count + strings.count + ticket.count


def test_a_block_that_says_nothing_is_the_project_s_own() -> None:
    """What a kind of block leaves out is as the project says."""
    cabin, *_ = plan(read_project(MIXED), with_cures=False).kinds

    assert read_project(MIXED) == cabin.project


def test_cures_of_a_later_kind_of_block_mend_that_kind() -> None:
    """Where only the second kind is bare, every cure for it changes the second kind, or the whole, and mends it."""
    narrow = MIXED[: MIXED.index('[[blocks]]\nname = "Strings"')] + (
        '[[blocks]]\nname = "Narrow"\nrounds = [{ cut = "2", fabric = "Light" }, { cut = "1", fabric = "Dark" }]\n'
    )
    project = read_project(narrow + MIXED[MIXED.index("[[fabrics]]") :])

    bare = [one for one in plan(project).findings if one.code == "coverage.batting-shows"]

    assert {"block Narrow"} == {one.where for one in bare}
    changed = [cure.changes for one in bare for cure in one.cures]
    assert ("blocks", 1, "rounds", 1, "cut") in [change.path for changes in changed for change in changes]
    for changes in changed:
        mended = plan(apply_changes(project, changes), with_cures=False)
        assert "coverage.batting-shows" not in {one.code for one in mended.findings}
