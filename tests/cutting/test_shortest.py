"""If you only have so much: amounts that work and what each gives up, worked out by hand and from published counts."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stitchflip.cutting import Piece
from stitchflip.cutting.model import JoinedLength
from stitchflip.cutting.moving import Supply, Terms
from stitchflip.cutting.shortest import Shortest, shortest, with_only
from stitchflip.cutting.shortest_words import only_have_words, shortest_words
from stitchflip.cutting.verify import verify_fabric_plan
from stitchflip.lengths import Unit
from stitchflip.project.model import Working
from stitchflip.project.numbers import Numbers
from tests.cutting.lists import CM, METRIC, binding, fabric, plain, strips
from tests.twins.table import house

BRASS = tuple(
    Piece(str(step), 1.5, long, shortest=least, step=step)
    for step, long, least in (
        (1, 9, 8.25),
        (2, 10, 9.25),
        (3, 10, 9.25),
        (4, 11, 10.25),
        (17, 11, 10.15),
        (18, 12, 11.15),
        (19, 11, 10.15),
        (20, 12, 11.15),
    )
)
"""Strips of a runner on point: cut lengths, and the shortest that reach."""
TRIMMED = "strips 1, 2, 3, 4, 17, 18, 19 and 20 (1½ in wide) are trimmed after sewing: 2 strips instead of 3"
LARCH = tuple(
    Piece(name, 2, long, count, shortest=least, step=step)
    for name, step, long, count, least in (
        ("7", 7, 6.75, 1, 6.35),
        ("8", 8, 8.5, 4, 8.08),
        ("12", 12, 10.25, 1, 9.81),
        ("19", 19, 10.25, 1, 9.81),
        ("20", 20, 12, 4, 11.55),
        ("24", 24, 13.75, 1, 13.28),
    )
)
"""Two rounds of a hexagon."""
CLOVER = (Piece("Center", 27 * CM, 15 * CM, 4, "rectangle", can_turn=False),)


def terms(numbers: Numbers | None = None, unit: Unit = Unit.INCH, working: Working = Working.CUT_FIRST) -> Terms:
    """The house's numbers, cut first."""
    return Terms(numbers or house(), working, unit)


def ladder(asked: Supply, own: Terms | None = None, joined: tuple[JoinedLength, ...] = ()) -> Shortest:
    """The ladder, every rung of it added up again."""
    own = own or terms()
    answer = shortest(asked, own, joined)
    for rung in answer.rungs:
        told = verify_fabric_plan(rung.plan, rung.fabric, rung.pieces, own.numbers, rung.working, joined)
        assert () == told
        assert rung.need_in == pytest.approx(rung.plan.need_in)
    needs = [rung.need_in for rung in answer.rungs]
    assert needs == sorted(set(needs), reverse=True)
    return answer


def test_two_strips_are_enough_when_they_are_trimmed_after_sewing() -> None:
    """Cut first 86 in take three strips, 3 × 1½ + 1; the shortest that reach are 79.6 in, 39.8 on each of two."""
    answer = ladder(Supply(fabric("Brass"), BRASS))

    assert [5.5, 4] == [rung.need_in for rung in answer.rungs]
    assert [9, 9] == [rung.buy_in for rung in answer.rungs]
    (trimmed,) = answer.least.trimmed
    assert (1.5, 3, 2) == (trimmed.width, trimmed.before, trimmed.after)
    assert 0.2 == pytest.approx(answer.least.plan.strip_plans[0].spare_in)
    assert (
        "5½ in are enough, cut as planned (in the shop ¼ yd).",
        f"4 in are enough if {TRIMMED} (in the shop ¼ yd).",
    ) == tuple(plain(line) for line in shortest_words(answer, Unit.INCH))


def test_nothing_to_spare_becomes_two_inches_to_spare() -> None:
    """Four strips of 2 in and 1 for straightening are all of ¼ yd; 117.77 in of shortest lengths come from three.

    13.28 + 11.55 + 8.08 + 6.35 = 39.26; 11.55 + 11.55 + 8.08 + 8.08 = 39.26; 11.55 + 9.81 + 9.81 + 8.08 = 39.25.
    """
    answer = ladder(Supply(fabric("Larch"), LARCH))

    assert [9, 7] == [rung.need_in for rung in answer.rungs]
    assert [(4, 3)] == [(one.before, one.after) for one in answer.least.trimmed]


def test_only_strips_that_save_one_are_trimmed_after_sewing() -> None:
    """A second width gains nothing by it and stays cut first."""
    wide = (Piece("30", 3, 20, shortest=19, step=30), Piece("31", 3, 12, shortest=11, step=31))
    answer = ladder(Supply(fabric("Brass"), (*BRASS, *wide)))

    assert [8.5, 7] == [rung.need_in for rung in answer.rungs]
    assert [1.5] == [one.width for one in answer.least.trimmed]
    assert {"30", "31"} == {piece.name for piece in answer.least.pieces if piece.cut_first}


def test_a_one_way_print_takes_less_when_it_lies_on_its_side() -> None:
    """Upright two rows of 15 cm and 3; turned one row of 27 and 3."""
    answer = ladder(Supply(fabric("Clover", Unit.CM, one_way=True), CLOVER), terms(METRIC, Unit.CM))

    assert [33, 30] == [round(rung.need_in / CM, 6) for rung in answer.rungs]
    assert ("Center",) == answer.least.turned
    assert (
        "33 cm are enough, cut as planned (in the shop 40 cm).",
        "30 cm are enough if Center lies on its side, the print with it (in the shop 30 cm).",
    ) == tuple(plain(line) for line in shortest_words(answer, Unit.CM))


def test_a_motif_and_a_slanted_window_are_never_turned() -> None:
    """Where the print decides, there is one rung only."""
    motif = (Piece("Center", 27 * CM, 15 * CM, 4, "rectangle", can_turn=False, motif_in=10 * CM),)
    window = (Piece("Center", 27 * CM, 15 * CM, 4, "rectangle", window=(30 * CM, 20 * CM)),)
    asked = fabric("Clover", Unit.CM, one_way=True)

    assert 1 == len(ladder(Supply(asked, motif), terms(METRIC, Unit.CM)).rungs)
    assert 1 == len(ladder(Supply(asked, window), terms(METRIC, Unit.CM)).rungs)


def test_the_last_part_of_a_binding_comes_from_what_is_left_of_a_strip() -> None:
    """85 in of binding: three whole strips, or two and 10 in from the strip that keeps 29: 4 × 2½ + 1 = 11 in."""
    asked = Supply(fabric("Midnight"), (*strips(2.5, 11, 13, 11, 13), binding(2.5, 40, 3)))
    answer = ladder(asked, joined=(JoinedLength("Binding", 85, 2.5),))

    assert [13.5, 11] == [rung.need_in for rung in answer.rungs]
    assert [("Binding", (40, 40, 10), 3)] == [(one.name, one.lengths, one.instead_of) for one in answer.least.joined]
    said = "11 in are enough if the binding is joined from 2 of 40 in and 1 of 10 in (in the shop 3/8 yd)."
    assert said.replace("3/8", "⅜") == plain(shortest_words(answer, Unit.INCH)[1])


def test_a_binding_joined_from_shorter_parts_saves_a_strip() -> None:
    """Two strips of 23½ keep 16½ in each; 57½ in of binding are two whole strips, or four parts of 16¼.

    (57½ + 3 joins × 2½) ÷ 4 = 16¼: one beside each strip, two from a third. With 40 in and a part of 20 it is four.
    """
    asked = Supply(fabric("Midnight"), (*strips(2.5, 23.5, 23.5), binding(2.5, 40, 2)))
    answer = ladder(asked, joined=(JoinedLength("Binding", 57.5, 2.5),))

    assert [11, 8.5] == [rung.need_in for rung in answer.rungs]
    assert (16.25,) * 4 == answer.least.joined[0].lengths
    said = "8½ in are enough if the binding is joined from 4 of 16¼ in, 2 joins more (in the shop ¼ yd)."
    assert said == plain(shortest_words(answer, Unit.INCH)[1])


def test_with_enough_nothing_is_given_up() -> None:
    """6 in of Brass are ½ in more than it takes."""
    answer = with_only(6, Supply(fabric("Brass"), BRASS), terms())

    assert answer.rung is not None
    assert answer.rung.is_as_planned
    assert ("With 6 in of Brass: enough as planned, ½ in to spare.",) == tuple(
        plain(line) for line in only_have_words(answer, Unit.INCH)
    )


def test_with_less_the_mildest_way_is_told() -> None:
    """4½ in of Brass give two strips."""
    answer = with_only(4.5, Supply(fabric("Brass"), BRASS), terms())

    assert (f"With 4½ in of Brass: enough if {TRIMMED}.",) == tuple(
        plain(line) for line in only_have_words(answer, Unit.INCH)
    )


def test_with_too_little_another_fabric_or_fewer_pieces_are_offered() -> None:
    """3 in of Brass are one strip: 9 + 10 + 10 + 11 = 40; the other four come from Ember, two strips of 40."""
    ember = Supply(fabric("Ember"), (), has_in=4)
    answer = with_only(3, Supply(fabric("Brass"), BRASS), terms(), others=[ember])

    assert answer.rung is None
    assert (
        f"With 3 in of Brass: not enough, even if {TRIMMED}; short by 1 in.",
        "Cut strips 17, 18, 19 and 20 from Ember instead of Brass: nothing need be bought.",
        "Alone it gives everything but strips 17, 18, 19 and 20.",
    ) == tuple(plain(line) for line in only_have_words(answer, Unit.INCH))


def test_of_several_alike_fewer_come_out() -> None:
    """Four mats take six strips of Slate; 25 cm give four, three mats; 12 cm one strip, which is no mat."""
    slate = (Piece("5", 5 * CM, 34 * CM, 8, step=5), Piece("7", 5 * CM, 29 * CM, 8, step=7))
    asked = Supply(fabric("Slate", Unit.CM), slate)
    own = terms(METRIC, Unit.CM)

    three = with_only(25 * CM, asked, own, alike=4)
    none = with_only(12 * CM, asked, own, alike=4)

    assert three.fewer is not None
    assert (3, 4) == (three.fewer.alike, three.fewer.of)
    assert "3 of the 4 come out of it." == only_have_words(three, Unit.CM)[-1]
    assert "Not even one of the 4 comes out of it." == only_have_words(none, Unit.CM)[-1]


def test_trim_as_you_go_is_no_concession_to_who_works_so_already() -> None:
    """The ladder of the same strips begins where the other one ends."""
    pieces = tuple(Piece(p.name, p.wide, p.long, shortest=p.shortest, step=p.step, cut_first=False) for p in BRASS)
    answer = ladder(Supply(fabric("Brass"), pieces), terms(working=Working.TRIM_AS_YOU_GO))

    assert [4] == [rung.need_in for rung in answer.rungs]


def test_what_no_amount_gives_is_said_by_the_plan() -> None:
    """A center wider than the fabric comes from no length of it."""
    asked = Supply(fabric("Moss"), (Piece("Center", 50, 45, 1, "rectangle"),))
    answer = with_only(100, asked, terms())

    assert answer.rung is None
    assert ("Center",) == answer.least.plan.left_out


@given(
    sizes=st.lists(st.tuples(st.integers(16, 100), st.integers(1, 3), st.integers(0, 6)), min_size=1, max_size=5),
    need=st.integers(170, 700),
    one_way=st.booleans(),
)
@settings(max_examples=20, deadline=None)
def test_every_rung_adds_up(sizes: list[tuple[int, int, int]], need: int, *, one_way: bool) -> None:
    """Whatever is cut, every rung is a true plan, takes less than the one above and is bound long enough.

    n strips of 40 in joined at 2½ make 40 + (n − 1) × 37½; need is in quarters of an inch.
    """
    pieces = tuple(
        Piece(str(step), 2.5, long / 4, count, shortest=long / 4 - less / 8, step=step)
        for step, (long, count, less) in enumerate(sizes, 1)
    )
    center = Piece("Center", 12, 8, 2, "rectangle", can_turn=False)
    whole = 1 + -(-(need - 160) // 150)
    asked = Supply(fabric("Fog", one_way=one_way), (*pieces, center, binding(2.5, 40, whole)))

    answer = ladder(asked, joined=(JoinedLength("Binding", need / 4, 2.5),))

    assert answer.rungs[0].is_as_planned
