"""The maker's effective numbers: house values are common practice, no source, unless a test says otherwise."""

from __future__ import annotations

from dataclasses import asdict
from typing import Any

import pytest
from hypothesis import assume, given, settings

from stitchflip.project import Change, Numbers, Project, apply_changes, effective, project_from
from stitchflip.project.house import HOUSE
from stitchflip.project.model import Building, Way
from stitchflip.project.numbers import is_runner
from tests.project_strategies import projects

CM = 1 / 2.54

INCH_AND_METRIC = {
    # in an inch project (inches), in a metric project (centimeters)
    "seam": (1 / 4, 0.75),
    "usable_width": (40, 105),
    "straightening": (1, 3),
    "fat_quarter_straightening": (1 / 2, 1),
    "buy_in_steps_of": (36 / 8, 10),
    "buy_at_least": (36 / 4, 20),
    "fold_loss": (1 / 32, 0.08),
    "reach": (1 / 2, 1.2),
    "round_cuts_to": (1 / 4, 0.5),
    "extra_free_end": (1 / 2, 1.5),
    "extra_raw_edges": (1 / 4, 0.5),
    "round_base_to": (1 / 2, 1),
    "wish_beyond_points": (1, 2.5),
    "points_note": (3 / 4, 2),
    "points_fix": (1 / 2, 1.2),
    "points_stop": (1 / 4, 0.75),
    "last_strip_note": (3 / 4, 2),
    "last_strip_fix": (1 / 2, 1.2),
    "binding_cut": (2.5, 6.5),
    "binding_seam": (1 / 4, 0.75),
    "binding_extra": (10, 25),
    "binding_extra_per_corner": (1 / 2, 1.5),
    "binding_passes": (1 / 4, 0.5),
    "loft": (1 / 8, 0.3),
    "stitch": (0.1, 0.25),
    "counts_as_crossed": (1 / 8, 0.3),
    "widest_gap": (8, 20),
    "longest_cut": (23.5, 59),
    "mat_wide": (23, 58),
    "mat_long": (17, 43),
    "backing_seam": (1 / 2, 1.2),
    "patch_extra": (1 / 2, 1.2),
    "backing_later_spare": (2, 5),
    "least_shown": (3 / 4, 2),
    "spare_x": (1, 2),
    "spare_y": (1, 2),
}
THE_SAME_IN_BOTH = {
    "draw_up_x": 0.015,
    "draw_up_y": 0.015,
    "shrink_x": 0.03,
    "shrink_y": 0.03,
    "prewash_across": 0.0,
    "prewash_along": 0.0,
    "minutes_per_strip": 3.5,
    "minutes_per_further_20_in": 1.0,
    "thread_per_inch": 3.5,
    "binding_join": 0.0,
}


def project(**tables: Any) -> Project:
    """A mat 18 x 13 with whole tables replaced or added."""
    return project_from(
        {
            "name": "Mat",
            "squared_up": {"wide": "18", "long": "13"},
            "fabrics": [{"name": "Oat"}],
            "binding": {"fabric": "Oat"},
            **tables,
        }
    )


def test_the_house_numbers_in_inches() -> None:
    """What holds for a mat in inches until the maker says otherwise."""
    expected = {name: inches for name, (inches, _) in INCH_AND_METRIC.items()} | THE_SAME_IN_BOTH

    assert pytest.approx(expected) == asdict(effective(project()))


def test_the_house_numbers_in_centimeters() -> None:
    """A metric project has its own numbers; none is an inch number converted."""
    expected = {name: cm * CM for name, (_, cm) in INCH_AND_METRIC.items()} | THE_SAME_IN_BOTH

    assert pytest.approx(expected) == asdict(effective(project(units="cm", squared_up={"wide": "46", "long": "33"})))


OF_EDGES_AND_JOINS = {
    # common practice, no source
    "join_flat_cut": (1 + 1 / 8, 3.3),
    "join_folded_cut": (2, 6),
    "self_binding_shows": (1 / 2, 1.2),
    "self_binding_turn": (1 / 4, 0.6),
    "facing_cut": (2 + 1 / 2, 6.5),
    "turned_through_seam": (1 / 2, 1.2),
    "turned_through_opening": (5, 13),
    "runner_hangs": (6, 15),
}


@pytest.mark.parametrize(("name", "expected"), OF_EDGES_AND_JOINS.items())
def test_the_house_numbers_of_edges_and_joins(name: str, expected: tuple[float, float]) -> None:
    """In inches and in centimeters, what holds for joins, edges and tables until the maker says otherwise."""
    assert expected == (HOUSE[name].inches, HOUSE[name].cm)


@pytest.mark.parametrize("name", HOUSE)
def test_a_house_number_is_of_one_size_in_both_units(name: str) -> None:
    """Each is rounded to what the other ruler shows, so the two differ by a quarter of the larger at most."""
    number = HOUSE[name]
    smaller, larger = sorted((number.inches * 2.54, number.cm))

    assert smaller >= 0.75 * larger


def test_each_house_number_says_something_else() -> None:
    """No number is there twice under two names."""
    assert len(HOUSE) == len({number.says for number in HOUSE.values()})


def test_every_number_is_a_float() -> None:
    """Numbers are inches to compute with, never whole numbers by accident."""
    assert {float} == {type(value) for value in asdict(effective(project())).values()}


@pytest.mark.parametrize(
    ("name", "written"),
    [(name, "3/8") for name in INCH_AND_METRIC if name in project().my_numbers.model_dump()],
)
def test_her_own_number_wins(name: str, written: str) -> None:
    """Whatever she writes under my numbers is used instead of the house number."""
    numbers = effective(project(my_numbers={name: written}))

    assert 0.375 == asdict(numbers)[name]


@pytest.mark.parametrize(
    ("name", "expected"),
    [("prewash_across", 0.04), ("prewash_along", 0.04), ("minutes_per_strip", 0.04), ("thread_per_inch", 0.04)],
)
def test_her_own_plain_number_wins(name: str, expected: float) -> None:
    """Shares, minutes and thread as well."""
    assert expected == asdict(effective(project(my_numbers={name: 0.04})))[name]


@pytest.mark.parametrize(
    ("tables", "name", "expected"),
    [
        ({"batting": {"widest_gap": "4"}, "my_numbers": {"widest_gap": "6"}}, "widest_gap", 4),
        ({"batting": {"loft": "1/4"}}, "loft", 1 / 4),
        ({"batting": {"fiber": "polyester"}}, "loft", 1 / 4),
        ({"batting": {"fiber": "polyester"}, "units": "cm"}, "loft", 0.6 * CM),
        ({"batting": {"fiber": "bamboo"}}, "loft", 1 / 8),
        ({"binding": {"fabric": "Oat", "finish": "hand"}}, "binding_cut", 2.25),
        ({"binding": {"fabric": "Oat", "finish": "hand"}, "units": "cm"}, "binding_cut", 6 * CM),
        ({"binding": {"fabric": "Oat", "finish": "hand", "cut": "2"}}, "binding_cut", 2),
        ({"binding": {"fabric": "Oat", "finish": "hand"}}, "binding_passes", 1 / 8),
        ({"binding": {"fabric": "Oat", "finish": "hand"}, "units": "cm"}, "binding_passes", 0.3 * CM),
        ({"binding": {"fabric": "Oat", "seam": "3/8"}}, "binding_seam", 3 / 8),
        ({"binding": {"fabric": "Oat", "seam": "3/8"}}, "points_stop", 3 / 8),
        ({"my_numbers": {"wish_beyond_points": "3/4"}}, "wish_beyond_points", 3 / 4),
        (
            {
                "my_numbers": {"wish_beyond_points": "3/4"},
                "squared_up": {"wide": "18", "long": "13", "wish_beyond_points": "0"},
            },
            "wish_beyond_points",
            0,
        ),
        ({"base": {"spare_across": "0"}, "my_numbers": {"spare_across": "2"}}, "spare_x", 0),
        ({"my_numbers": {"spare_at_ends": "2"}}, "spare_y", 2),
    ],
)
def test_what_is_written_beside_the_thing_wins(tables: dict[str, Any], name: str, expected: float) -> None:
    """The wrapper, the binding, the base and the piece before my numbers, those before the house."""
    assert pytest.approx(expected) == asdict(effective(project(**tables)))[name]


@pytest.mark.parametrize(
    ("squared_up", "units", "spare"),
    [
        # a runner is at least twice as long as wide: 1 and 1 1/2 in, or 2.5 and 4 cm; other pieces 1 in or 2 cm
        ({"wide": "13", "long": "44"}, "in", (1, 1.5)),
        ({"wide": "13", "long": "44", "length_runs": "across"}, "in", (1.5, 1)),
        ({"wide": "13", "long": "26"}, "in", (1, 1.5)),
        ({"wide": "13", "long": "25 3/4"}, "in", (1, 1)),
        ({"wide": "33", "long": "92"}, "cm", (2.5 * CM, 4 * CM)),
        ({"wide": "46", "long": "33"}, "cm", (2 * CM, 2 * CM)),
        ({"sides": 6, "across_flats": "22"}, "in", (1, 1)),
    ],
)
def test_a_runner_gets_more_spare_at_its_ends(
    squared_up: dict[str, Any], units: str, spare: tuple[float, float]
) -> None:
    """Spare is across and at the ends, which are left and right when the runner is drawn lying."""
    numbers = effective(project(squared_up=squared_up, units=units))

    assert pytest.approx(spare) == (numbers.spare_x, numbers.spare_y)


@pytest.mark.parametrize(
    ("side", "units", "spare", "reach"),
    [
        # a block that is joined to others: 1/2 in up to 10 in, 3/4 above; 1.5 cm up to 25, 2 above; reach 3/8 or 1 cm
        ("8 1/2", "in", 1 / 2, 3 / 8),
        ("10", "in", 1 / 2, 3 / 8),
        ("13", "in", 3 / 4, 3 / 8),
        ("22", "cm", 1.5 * CM, 1 * CM),
        ("33", "cm", 2 * CM, 1 * CM),
    ],
)
def test_blocks_to_be_joined_get_less(side: str, units: str, spare: float, reach: float) -> None:
    """Blocks are small and trimmed close; one block by itself with a border is a mat like others."""
    tables: dict[str, Any] = {"squared_up": {"wide": side, "long": side}, "units": units}
    joined = {"across": 2, "down": 2, "join": "plain seam"}
    numbers = effective(project(**tables, joined=joined))
    alone = effective(project(**tables, joined={"across": 1, "down": 1}))

    assert pytest.approx((spare, spare, reach)) == (numbers.spare_x, numbers.spare_y, numbers.reach)
    assert alone == effective(project(**tables))
    assert 0.5 == effective(project(**tables, joined=joined, my_numbers={"reach": "1/2 in"})).reach


@pytest.mark.parametrize(
    ("center", "expected"),
    [
        # 1 in beyond the seam lines: 3 1/2 + 2 by 11 1/2 + 2 is 5 1/2 x 13 1/2, a runner; 5 1/2 x 10 1/2 is none
        ({"cut_wide": "4", "cut_long": "12"}, True),
        ({"cut_wide": "12", "cut_long": "4"}, True),
        ({"cut_wide": "4", "cut_long": "9"}, False),
        ({"cut": "6", "turned": "on point"}, False),
        ({"sides": 6, "cut": "6"}, False),
    ],
)
def test_a_piece_wished_beyond_its_points_is_judged_by_its_center(center: dict[str, Any], expected: bool) -> None:  # noqa: FBT001
    """Without a written size the center and what lies beyond it say whether it is a runner."""
    made = project(squared_up={"beyond_points": "1"}, center={"fabric": "Oat", **center})

    assert expected is is_runner(made)


@pytest.mark.parametrize(
    ("mine", "runs", "expected"),
    [
        ({"draw_up": "1 %"}, "up", (0.01, 0.01)),
        ({"draw_up": 0}, "up", (0.0, 0.0)),
        ({"draw_up": "1 %", "draw_up_along": "3 %"}, "up", (0.01, 0.03)),
        ({"draw_up": "1 %", "draw_up_along": "3 %"}, "across", (0.03, 0.01)),
        ({"draw_up_across": "2 %"}, "across", (0.015, 0.02)),
    ],
)
def test_draw_up_follows_the_length(mine: dict[str, Any], runs: str, expected: tuple[float, float]) -> None:
    """Draw-up of width and length turns with the picture; one number serves both ways."""
    numbers = effective(project(my_numbers=mine, squared_up={"wide": "13", "long": "44", "length_runs": runs}))

    assert pytest.approx(expected) == (numbers.draw_up_x, numbers.draw_up_y)


@settings(max_examples=50, deadline=None)
@given(projects())
def test_numbers_of_any_project_are_complete(project: Project) -> None:
    """Whatever is left out, every number is there and none is below zero."""
    values = asdict(effective(project))

    assert set(Numbers.__dataclass_fields__) == set(values)
    assert all(value >= 0 for value in values.values())


def _buildings(project: Project) -> list[Building | None]:
    """How the piece and every kind of block are built."""
    return [project.building, *(block.building for block in project.blocks)]


@settings(max_examples=50, deadline=None)
@given(projects())
def test_turning_the_picture_turns_the_numbers(project: Project) -> None:
    """Drawn the other way, spare, draw-up and shrinkage change places, the rest stays; a braid is drawn upright."""
    assume(not any(kind is not None and kind.way in (Way.BRAID, Way.CHEVRON) for kind in _buildings(project)))
    numbers = effective(project)
    other = "up" if project.squared_up.length_runs == "across" else "across"
    turned = effective(apply_changes(project, [Change(("squared_up", "length_runs"), other)]))

    assert (numbers.spare_x, numbers.draw_up_x, numbers.shrink_x) == (turned.spare_y, turned.draw_up_y, turned.shrink_y)
    across = {"spare_x", "spare_y", "draw_up_x", "draw_up_y", "shrink_x", "shrink_y"}
    assert {name: value for name, value in asdict(numbers).items() if name not in across} == {
        name: value for name, value in asdict(turned).items() if name not in across
    }


def test_the_effective_seam_takes_half_of_what_a_fold_takes() -> None:
    """1/4 in and a fold of 1/32: 17/64 from the raw edge to where the fabric turns."""
    assert 17 / 64 == effective(project()).effective_seam


@pytest.mark.parametrize(("written", "share"), [("0", 0.0), ("0.015", 0.015), ("1,5 %", 0.015), (0.015, 0.015)])
def test_a_share_is_read_as_a_fraction_or_with_a_percent_sign(written: object, share: float) -> None:
    """A bare number is a fraction, as text too; with a percent sign it is a hundredth."""
    assert pytest.approx(share) == effective(project(my_numbers={"draw_up": written})).draw_up_x
