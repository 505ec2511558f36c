"""Sizes that come from a table, a bed or the wash."""

from __future__ import annotations

from typing import Any

import pytest

from stitchflip.errors import ProjectFileError
from stitchflip.lengths import CM_PER_INCH, Unit
from stitchflip.project import Project, effective, project_from, read_project
from stitchflip.project.beds import MATTRESSES, mattress_named
from stitchflip.project.model import MadeFor
from stitchflip.project.numbers import is_runner
from stitchflip.project.sizes import (
    before_washing,
    made_for_size,
    size_grid,
    stated_size,
    wanted_across,
    wanted_size,
    wash_shrink,
)


def project(**tables: Any) -> Project:
    """A piece of one fabric round a center, with whole tables replaced or added."""
    return project_from(
        {
            "name": "Kitchen",
            "squared_up": {},
            "center": {"fabric": "Oat", "cut": "4"},
            "rounds": [{"cut": "2", "fabric": "Oat"}],
            "fabrics": [{"name": "Oat"}],
            "binding": {"fabric": "Oat"},
            **tables,
        }
    )


TABLE = {"table_wide": "36", "table_long": "60"}


def test_a_runner_hangs_over_both_ends_and_takes_a_third_of_the_table() -> None:
    """60 + 2 × 6 = 72, and 36 ÷ 3 = 12."""
    assert (12.0, 72.0) == wanted_size(project(made_for={**TABLE, "hang": "6"}))


def test_a_runner_hangs_six_inches_or_fifteen_centimeters_when_nobody_says() -> None:
    """60 + 2 × 6 in = 72 in; 150 + 2 × 15 cm = 180 cm, a third of 90 cm is 30 cm."""
    assert (12.0, 72.0) == wanted_size(project(made_for=TABLE))
    metric = wanted_size(project(units="cm", made_for={"table_wide": "90", "table_long": "150"}))
    assert metric is not None
    assert pytest.approx((30.0, 180.0)) == tuple(size * CM_PER_INCH for size in metric)


def test_a_runner_may_end_at_the_edge_or_before_the_plates() -> None:
    """Hang 0 gives the table's own 60; stopping 8 in short of both ends gives 60 - 16 = 44."""
    assert (12.0, 60.0) == wanted_size(project(made_for={**TABLE, "hang": "0"}))
    assert (12.0, 44.0) == wanted_size(project(made_for={**TABLE, "short_of_ends": "8"}))


def test_a_third_of_the_table_goes_to_the_quarter_inch() -> None:
    """40 ÷ 3 = 13.33, and the nearest quarter is 13¼."""
    assert (13.25, 72.0) == wanted_size(project(made_for={"table_wide": "40", "table_long": "60", "hang": "6"}))


def test_her_own_width_wins_over_the_table() -> None:
    """With wide given, only the length comes from the table, and the table's width may be left out."""
    piece = project(squared_up={"wide": "14"}, made_for={"table_long": "60", "hang": "6"})
    assert (14.0, 72.0) == wanted_size(piece)


def test_a_cloth_hangs_over_all_four_edges() -> None:
    """36 + 2 × 9 by 60 + 2 × 9."""
    piece = project(made_for={**TABLE, "covers": "whole table", "hang": "9"})
    assert (54.0, 78.0) == wanted_size(piece)


def test_a_bed_has_three_drops_and_a_tuck() -> None:
    """Queen 60 × 80 with drop 12 and tuck 14: 60 + 24 by 80 + 12 + 14."""
    assert (84.0, 106.0) == wanted_size(project(made_for={"mattress": "Queen", "drop": "12", "tuck": "14"}))


def test_her_own_mattress_measures_win_over_its_name() -> None:
    """A queen that measures 59 wide: 59 + 24 = 83."""
    piece = project(made_for={"mattress": "queen", "mattress_wide": "59", "drop": "12"})
    assert (83.0, 92.0) == wanted_size(piece)


def test_a_mattress_in_the_other_unit_comes_to_the_grid_of_the_project() -> None:
    """A UK double is 135 × 190 cm = 53.15 × 74.80 in; with drop 12: 77.15 × 86.80, to the half inch 77 × 87."""
    assert (77.0, 87.0) == wanted_size(project(made_for={"mattress": "UK double", "drop": "12"}))


def test_the_runner_made_for_a_table_gets_a_runners_spare() -> None:
    """72 × 12 is a runner though no size is written: 1 in spare across and 1½ at the ends."""
    numbers = effective(project(made_for=TABLE))
    assert (True, 1.0, 1.5) == (is_runner(project(made_for=TABLE)), numbers.spare_x, numbers.spare_y)


def test_a_block_is_not_as_large_as_the_bed() -> None:
    """Where blocks are joined, squared_up is one block, and the bed says nothing about it."""
    piece = project(
        squared_up={"wide": "12 1/2", "long": "12 1/2"},
        joined={"across": 7, "down": 9, "fabric": "Oat"},
        made_for={"mattress": "queen"},
    )
    assert (12.5, 12.5) == wanted_size(piece)


def test_sizes_by_sides_or_beyond_the_points_are_not_wide_and_long() -> None:
    """A hexagon and a piece wished beyond its points state no wide and long."""
    hexagon = project(squared_up={"sides": 6, "across_flats": "22"}, building={"way": "round after round"})
    beyond = project(squared_up={"beyond_points": "1"})
    assert [None, None] == [stated_size(hexagon), stated_size(beyond)]
    assert 22.0 == wanted_across(hexagon)


def test_a_placemat_is_made_larger_for_the_wash() -> None:
    """3 % of cotton: 18 ÷ 0.97 = 18.557 and 13 ÷ 0.97 = 13.402, up to the quarter inch."""
    piece = project(squared_up={"wide": "18", "long": "13", "after_washing": True})
    assert ((18.0, 13.0), (18.75, 13.5)) == (stated_size(piece), wanted_size(piece))


def test_each_direction_shrinks_by_itself() -> None:
    """1 in of 22 across and 1 in of 18 along: 80 ÷ (1 - 1/22) = 83.81 and 92 ÷ (1 - 1/18) = 97.41, to half inches."""
    piece = project(
        squared_up={"wide": "80", "long": "92", "after_washing": True},
        my_numbers={"shrink_across": 1 / 22, "shrink_along": 1 / 18},
    )
    assert (84.0, 97.5) == wanted_size(piece)


def test_polyester_takes_nothing() -> None:
    """A piece with polyester batting keeps its size."""
    piece = project(squared_up={"wide": "18", "long": "13", "after_washing": True}, batting={"fiber": "polyester"})
    assert ((0.0, 0.0), (18.0, 13.0)) == (wash_shrink(piece), wanted_size(piece))


def test_a_hexagon_is_enlarged_by_the_direction_that_shrinks_more() -> None:
    """22 ÷ 0.95 = 23.16, up to 23¼."""
    piece = project(
        squared_up={"sides": 6, "across_flats": "22", "after_washing": True},
        building={"way": "round after round"},
        my_numbers={"shrink_across": "5 %", "shrink_along": "2 %"},
    )
    assert 23.25 == wanted_across(piece)


@pytest.mark.parametrize(("size", "unit", "expected"), [(36, "in", 0.25), (36.25, "in", 0.5), (35, "cm", 0.5 / 2.54)])
def test_large_sizes_are_told_in_larger_steps(size: float, unit: str, expected: float) -> None:
    """Up to a yard in quarters, beyond it in halves; metric 0.5 cm and 1 cm."""
    assert pytest.approx(expected) == size_grid(size, Unit(unit))


def test_nothing_that_does_not_shrink_is_rounded() -> None:
    """A size of 13⅛ stays 13⅛ without shrinkage."""
    assert 13.125 == before_washing(13.125, 0.0, Unit.INCH)


def test_every_listed_mattress_is_longer_than_wide_or_square() -> None:
    """A slip of the two measures would show here."""
    assert [] == [name for name, bed in MATTRESSES.items() if bed.wide > bed.long]
    assert [] == [name for name in MATTRESSES if mattress_named(name.upper().replace(" ", "-")) != name]


def test_only_what_the_bed_measures_is_known() -> None:
    """A bed of which only the width was measured says nothing about the length."""
    assert (84.0, None) == made_for_size(MadeFor(mattress_wide="60", drop="12"), Unit.INCH)


FILE = """
name = "Kitchen"
rounds = [{{ cut = "2", fabric = "Oat" }}]
[squared_up]
{squared_up}
[center]
fabric = "Oat"
cut = "4"
[made_for]
{made_for}
[[fabrics]]
name = "Oat"
[binding]
fabric = "Oat"
"""


@pytest.mark.parametrize(
    ("squared_up", "made_for", "key"),
    [
        ("", 'table_long = "60"', "squared_up.wide"),
        ('wide = "12"', 'mattress_wide = "60"', "squared_up.long"),
        ('wide = "12"\nlong = "72"', 'mattress = "qeen"', "made_for.mattress"),
        ('wide = "12"\nlong = "72"', 'mattress = "queen"\ntable_long = "60"', "made_for.mattress"),
        ('wide = "12"\nlong = "72"', 'table_long = "60"\nhang = "6"\nshort_of_ends = "8"', "made_for.short_of_ends"),
        ('wide = "12"\nlong = "72"', 'hang = "6"', "made_for.table_long"),
        ('wide = "12"', 'table_long = "60"\nshort_of_ends = "30"', "made_for.short_of_ends"),
    ],
)
def test_what_the_table_or_bed_lacks_is_told_with_its_place(squared_up: str, made_for: str, key: str) -> None:
    """A measure that is missing, a name nobody knows, two things that cannot both be meant."""
    text = FILE.format(squared_up=squared_up or "# nothing yet", made_for=made_for)
    if not squared_up:
        text = text.replace("# nothing yet", 'length_runs = "up"')
    with pytest.raises(ProjectFileError) as refused:
        read_project(text)
    assert [key] == [mistake.key for mistake in refused.value.mistakes]


def test_a_misspelled_mattress_is_answered_with_the_one_that_looks_like_it() -> None:
    """The first answer to "qeen" is "queen"."""
    text = FILE.format(squared_up='wide = "12"\nlong = "72"', made_for='mattress = "qeen"')
    with pytest.raises(ProjectFileError) as refused:
        read_project(text)
    assert refused.value.mistakes[0].would_do.startswith('"queen"')
