"""Widths drawn from what is on hand: the first listed piece that is long enough, used up strip by strip."""

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stitchflip.errors import BuildError
from stitchflip.piecing import build_project
from stitchflip.piecing.model import Build
from stitchflip.planning import plan
from stitchflip.planning.findings import geometry_findings, see
from stitchflip.planning.model import Severity
from stitchflip.project.changes import apply_changes
from stitchflip.project.model import Project
from tests.strategies import quarters
from tests.twins.table import house, project, trim

RUST = {"name": "Rust", "on_hand": [{"wide": "2", "long": "20", "count": 2}, {"wide": "30", "long": "2 1/2"}]}
OAT = {"name": "Oat", "on_hand": [{"wide": "3", "long": "40"}]}
WIDTHS = "from what is on hand"


def scraps(*fabrics: dict[str, Any], rounds: list[dict[str, Any]], **parts: Any) -> Project:
    """A log cabin round a center of 4 whose rounds leave their widths out."""
    building = {"way": "log cabin", "widths": WIDTHS, **parts.pop("building", {})}
    return project(
        **{
            "squared_up": trim(40, 40),
            "center": {"fabric": "Linen", "cut": "4"},
            "fabrics": [{"name": "Linen"}, *fabrics],
            "building": building,
            "rounds": rounds,
            "my_numbers": {"fold_loss": "0", "draw_up": 0.0},
            **parts,
        }
    )


def widths(build: Build) -> list[float]:
    """Cut widths in the order sewn."""
    return [strip.cut_width for strip in build.strips]


def test_each_strip_is_as_wide_as_the_piece_it_comes_from() -> None:
    """Two strips of 2 x 20, then one of 2 1/2 x 30, a center of 4, seams of 1/4, 1 1/2 shown of each strip of 2.

    4, 5 1/2 and 5 1/2 from the first strip leave 5; 7 and 7 from the second leave 6; the next place takes 8 1/2,
    which only the wider piece has.
    """
    build = build_project(scraps(RUST, rounds=[{"fabric": "Rust"}] * 2), house())

    assert [2, 2, 2, 2, 2, 2.5] == widths(build)[:6]
    assert [4, 5.5, 5.5, 7, 7, 8.5] == [strip.cut_length for strip in build.strips][:6]


def test_shorter_side_is_the_width_however_a_piece_is_written() -> None:
    """30 wide and 2 1/2 long is a strip 2 1/2 wide."""
    lying = {"name": "Rust", "on_hand": [{"wide": "30", "long": "2 1/2"}]}

    assert [2.5] * 4 == widths(build_project(scraps(lying, rounds=[{"fabric": "Rust"}]), house()))


def test_a_strip_is_never_joined_from_two_pieces() -> None:
    """Two of 2 x 5 1/4 have 10 1/2 in together, but no single one has the 5 1/2 of the second place."""
    short = {"name": "Rust", "on_hand": [{"wide": "2", "long": "5 1/4", "count": 2}, {"wide": "3", "long": "40"}]}

    assert [2, 3, 3, 3] == widths(build_project(scraps(short, rounds=[{"fabric": "Rust"}]), house()))


def test_extra_length_is_taken_too() -> None:
    """The first place takes 4 and an extra of 1/2: a piece of 4 1/4 is passed over."""
    near = {"name": "Rust", "on_hand": [{"wide": "2", "long": "4 1/4"}, {"wide": "3", "long": "60"}]}
    laid = scraps(near, rounds=[{"fabric": "Rust"}])

    assert 2 == widths(build_project(laid, house(extra_raw_edges=0.25)))[0]
    assert 3 == widths(build_project(laid, house(extra_raw_edges=0.5)))[0]


def test_pieces_alike_take_their_strips_alike() -> None:
    """For two mats each place takes two strips: 2 x 20 and 2 x 20 give two of 4, 5 1/2, 5 1/2, and then no two of 7."""
    build = build_project(scraps(RUST, rounds=[{"fabric": "Rust"}], how_many=2), house())

    assert [2, 2, 2, 2.5] == widths(build)


def test_without_a_fabric_those_with_pieces_take_turns() -> None:
    """Rust, oat, rust, oat; linen has nothing on hand."""
    build = build_project(scraps(RUST, OAT, rounds=[{}]), house())

    assert ["Rust", "Oat", "Rust", "Oat"] == [strip.fabric for strip in build.strips]
    assert [2, 3, 2, 3] == widths(build)


def test_fabric_whose_pieces_are_too_short_is_passed_over() -> None:
    """It is rust's turn, but its only piece is 3 long, so oat takes every place."""
    stub = {"name": "Rust", "on_hand": [{"wide": "2", "long": "3"}]}

    assert ["Oat"] * 4 == [strip.fabric for strip in build_project(scraps(stub, OAT, rounds=[{}]), house()).strips]


def test_a_width_that_is_written_stays() -> None:
    """Only rounds without a width take it from a piece."""
    build = build_project(scraps(RUST, rounds=[{"fabric": "Rust", "cut": "1 3/4"}, {"fabric": "Rust"}]), house())

    assert [1.75, 1.75, 1.75, 1.75, 2] == widths(build)[:5]


def test_pieces_that_two_seams_use_up_are_left_aside() -> None:
    """1/2 in wide shows nothing with seams of 1/4."""
    thin = {"name": "Rust", "on_hand": [{"wide": "1/2", "long": "40"}, {"wide": "2", "long": "40"}]}

    assert [2] * 4 == widths(build_project(scraps(thin, rounds=[{"fabric": "Rust"}]), house()))


def test_pieced_strips_take_what_lies_between_their_squares() -> None:
    """Center 4, all strips 2: the sides take 4 and not 7, so four of 4 come from pieces of 8."""
    eights = {"name": "Rust", "on_hand": [{"wide": "2", "long": "8", "count": 2}]}
    laid = scraps(
        eights,
        rounds=[{"fabric": "Rust", "corner_fabric": "Linen"}],
        building={"way": "rounds with corner squares"},
    )
    build = build_project(laid, house())

    assert [2] * 4 == widths(build)
    assert () == build.notes


COVERED = {"squared_up": trim(12, 12), "building": {"until_covered": True}}


def test_sewing_stops_where_no_piece_is_long_enough() -> None:
    """After 4, 5 1/2, 5 1/2, 7, 7 of the strips 2 wide and 8 1/2, 9 1/2, 10 1/2 of 30 in there are 1 1/2 in left.

    The places so far: 4 + 4 x 1 1/2 high and so on: after five strips of 2 the sixth (right) is 8 1/2 long, the next
    two grow by 2 each turn: 9 and 10 1/2 (bottom: 7 + 2; left: 8 1/2 + 2), 28 in all; strip 9 on top takes 11.
    """
    laid = scraps(RUST, rounds=[{"fabric": "Rust"}], **COVERED)
    build = build_project(laid, house())
    (out, more) = build.notes

    assert [8.5, 9, 10.5] == [strip.cut_length for strip in build.strips][5:]
    assert ("build.runs-out", 9, "top", "Rust") == (out.code, out.step, out.side, out.fabric)
    assert pytest.approx(11 - 6) == out.value  # 6 in of a strip 2 wide lack less than the 2 in of the other
    assert ("build.more-needed", 2.0) == (more.code, more.width)
    assert build.bare


def test_what_is_missing_is_told_and_goes_on_to_the_end() -> None:
    """With what the cure says the same rounds cover everything, strip for strip."""
    laid = scraps(RUST, rounds=[{"fabric": "Rust"}], **COVERED)
    (finding,) = [one for one in geometry_findings(see(laid)) if one.code == "strips.run-out"]
    cured = apply_changes(laid, finding.cures[0].changes)

    assert Severity.STOP is finding.severity
    assert "5" in finding.what
    assert "top" in finding.what
    assert "strips.run-out" not in {one.code for one in geometry_findings(see(cured))}
    assert [] == [spot for spot in build_project(cured, house()).bare if spot.grade != "note"]


def test_running_out_when_all_is_covered_is_good_to_know() -> None:
    """Squared up at 6 one round covers it: raw edges at 2 + 1 1/2. The second round takes 7 a strip and is left off."""
    twos = {"name": "Rust", "on_hand": [{"wide": "2", "long": "20", "count": 2}]}
    laid = scraps(twos, rounds=[{"fabric": "Rust"}] * 2, squared_up=trim(6, 6))
    (finding,) = [one for one in geometry_findings(see(laid)) if one.code == "strips.run-out"]

    assert Severity.NOTE is finding.severity


@settings(max_examples=30, deadline=None)
@given(
    pieces=st.lists(st.tuples(quarters(1, 3), quarters(6, 40), st.integers(1, 3)), min_size=1, max_size=6),
    size=quarters(8, 16),
)
def test_strips_can_really_be_cut_from_the_pieces(pieces: list[Any], size: float) -> None:
    """Every width is that of a piece, and no width takes more length than its pieces have."""
    kinds = [{"wide": str(wide), "long": str(long), "count": count} for wide, long, count in pieces]
    laid = scraps(
        {"name": "Rust", "on_hand": kinds},
        rounds=[{"fabric": "Rust"}],
        squared_up=trim(size, size),
        building={"until_covered": True},
    )
    build = build_project(laid, house(extra_raw_edges=0.25))

    for width in set(widths(build)):
        have = sum(max(w, h) * count for w, h, count in pieces if min(w, h) == width)
        take = sum(strip.cut_length for strip in build.strips if strip.cut_width == width)
        longest = max(max(w, h) for w, h, _ in pieces if min(w, h) == width)
        assert 0 < take <= have + 1e-6
        assert max(strip.cut_length for strip in build.strips if strip.cut_width == width) <= longest + 1e-6


def test_cutting_list_is_cut_from_the_pieces_alone() -> None:
    """Nothing of rust is bought: its eight strips fit into the three pieces."""
    laid = scraps(RUST, rounds=[{"fabric": "Rust"}] * 2, squared_up=trim(9, 9))
    made = plan(laid, with_cures=False)
    (rust,) = [fabric for fabric in made.fabrics if fabric.fabric == "Rust"]

    assert {2.0, 2.5} == {piece.wide for piece in made.pieces_by_fabric["Rust"]}
    assert 0 == rust.buy_in


@pytest.mark.parametrize(
    ("fabrics", "parts", "code"),
    [
        ([{"name": "Rust"}], {"rounds": [{"fabric": "Rust"}]}, "build.nothing-on-hand"),
        ([{"name": "Rust"}], {"rounds": [{}]}, "build.nothing-on-hand"),
        ([RUST], {"rounds": [{"fabric": "Rust"}], "building": {"way": "wonky strips"}}, "build.no-width"),
    ],
)
def test_widths_that_come_from_nowhere_are_refused(fabrics: list[Any], parts: dict[str, Any], code: str) -> None:
    """The error says which round and what would do."""
    with pytest.raises(BuildError, match="round 1") as caught:
        build_project(scraps(*fabrics, **parts), house())

    assert code == caught.value.code
    assert "cut width" in caught.value.fix
