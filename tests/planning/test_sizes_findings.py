"""What a table or bed asks for, beside what the piece comes to; and what the wash leaves."""

from __future__ import annotations

from pathlib import Path

import pytest

from stitchflip.planning import Finding, plan
from stitchflip.planning.washed import washed_size
from stitchflip.project import Change, Project, apply_changes, effective, read_project
from tests.planning.conftest import Draft

EXAMPLES = Path(__file__).parents[2] / "examples"


def sheds(*changes: Change) -> Project:
    """The lap quilt of 4 × 5 blocks, 52⅜ × 65½, changed."""
    return apply_changes(read_project((EXAMPLES / "harbour-sheds.toml").read_text(encoding="utf-8")), changes)


def about_sizes(project: Project) -> list[Finding]:
    """The findings about sizes."""
    return [one for one in plan(project, with_cures=False).findings if one.code.startswith("size.")]


def test_the_blocks_a_bed_asks_for_are_counted() -> None:
    """Twin 39 × 75 with 12 in of drop is 63 × 87: 13⅛ n - ⅛ with blocks of 13 is 65½ for 5 and 91¾ for 7."""
    quilt = sheds(Change(("made_for", "mattress"), "twin"))
    (found,) = about_sizes(quilt)
    assert ("size.blocks-for", "note") == (found.code, found.severity.value)
    assert (63, 87, 65.5, 91.75) == tuple(found.numbers.values())
    assert "5 × 7 blocks" in found.what.replace("\u202f", " ")
    assert [] == about_sizes(apply_changes(quilt, found.cures[0].changes))


def test_a_quilt_for_nothing_in_particular_is_not_judged() -> None:
    """Without a bed there is nothing to say."""
    assert [] == about_sizes(sheds())


def test_a_size_written_beside_a_table_is_compared(draft: Draft) -> None:
    """14 long on a table of 30 with 6 hanging over both ends, which asks for 42; the width of a runner is free."""
    piece = draft(made_for={"table_wide": "30", "table_long": "30", "hang": "6"})
    (found,) = about_sizes(piece)
    assert ("size.other-than-made-for", "squared_up.long") == (found.code, found.where)
    assert {"asked_in": 42.0, "written_in": 14.0} == found.numbers


def test_leaving_the_size_to_the_table_cures_it(draft: Draft) -> None:
    """Taken out, the length is the table's: 42."""
    piece = draft(made_for={"table_wide": "30", "table_long": "30", "hang": "6"})
    (found,) = about_sizes(piece)
    cured = apply_changes(piece, found.cures[0].changes)
    assert [] == about_sizes(cured)
    assert pytest.approx(42) == plan(cured, with_cures=False).square_up.high


def test_a_size_that_is_the_tables_is_fine(draft: Draft) -> None:
    """A table of 10 with 2 hanging over both ends asks for 14."""
    assert [] == about_sizes(draft(made_for={"table_long": "10", "hang": "2"}))


def test_the_wash_takes_its_share_each_way(draft: Draft) -> None:
    """14 × 14 less 5 % across and 2 % along: 13.3 × 13.72."""
    numbers = effective(draft(my_numbers={"shrink_across": "5 %", "shrink_along": "2 %"}))
    washed = washed_size(numbers, 14, 14)
    assert pytest.approx((13.3, 13.72)) == (washed.wide, washed.high)


def test_a_piece_wanted_after_washing_is_squared_up_larger(draft: Draft) -> None:
    """14 ÷ 0.97 = 14.43, up to 14½ both ways."""
    made = plan(draft(squared_up={"wide": "14", "long": "14", "after_washing": True}), with_cures=False)
    assert pytest.approx((14.5, 14.5)) == (made.square_up.wide, made.square_up.high)


def test_a_cure_says_which_size_it_means(draft: Draft) -> None:
    """Where the size is wanted after washing, so is the smaller size that a cure offers, and the cure says so."""
    before = plan(draft(squared_up={"wide": "13", "long": "13"}))
    after = plan(draft(squared_up={"wide": "13", "long": "13", "after_washing": True}))
    offered = [
        cure
        for one in after.findings
        for cure in one.cures
        if cure.changes and cure.changes[0].path in {("squared_up", "wide"), ("squared_up", "long")}
    ]
    assert offered
    assert all("after washing" in cure.text for cure in offered)
    assert not any("after washing" in cure.text for one in before.findings for cure in one.cures)
