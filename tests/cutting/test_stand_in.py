"""Fabrics that stand in for one another: which pieces go, how few, and whether the other one can spare them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from itertools import product

from hypothesis import given, settings
from hypothesis import strategies as st

from stitchflip.cutting import Piece, plan_fabric
from stitchflip.cutting.moving import Supply, Terms, fewest_moved, gives
from stitchflip.cutting.stand_in import StandIn, moved_words, stand_in, stand_in_words
from stitchflip.cutting.verify import verify_fabric_plan
from stitchflip.lengths import Unit
from stitchflip.project.model import Working
from stitchflip.project.numbers import Numbers
from tests.cutting.lists import fabric, plain, strips
from tests.twins.table import house

# Eight strips of a runner on point, 1½ in wide, 86 in together; two strips of 40 in are there, and 6 in are missing.
BRASS = (
    *(Piece(str(step), 1.5, long, step=step) for step, long in ((1, 9), (2, 10), (3, 10), (4, 11))),
    *(Piece(str(step), 1.5, long, step=step) for step, long in ((17, 11), (18, 12), (19, 11), (20, 12))),
)


def only(name: str, pieces: tuple[Piece, ...], *on_hand: Mapping[str, object], unseen: tuple[str, ...] = ()) -> Supply:
    """A fabric of which there is nothing but what is on hand."""
    return Supply(fabric(name, on_hand=list(on_hand)), pieces, unseen=frozenset(unseen))


def precut(long: str, count: int = 1, wide: str = "1 1/2") -> dict[str, object]:
    """Strips on hand."""
    return {"name": "precut strip", "wide": wide, "long": long, "count": count}


def terms(numbers: Numbers | None = None) -> Terms:
    """Cut first, in inches."""
    return Terms(numbers or house(), Working.CUT_FIRST, Unit.INCH)


def moved(answer: StandIn) -> list[tuple[str, int]]:
    """Names of what goes, and how many of each."""
    return [] if answer.moved is None else [(piece.name, piece.count) for piece in answer.moved.pieces]


def test_one_strip_goes_to_the_fabric_that_has_a_rest_long_enough() -> None:
    """Without one of 11 in the rest is 9 + 10 + 10 + 11 = 40 and 11 + 12 + 12 = 35; area alone asks for one piece.

    No shorter one would do: without 10 the four shortest are 41 in. Of the three 11 in long the last one sewn goes.
    """
    answer = stand_in(only("Brass", BRASS, precut("40", 2)), [only("Ember", (), precut("20"))], terms())

    assert ([("19", 1)], "Ember", True) == (moved(answer), answer.to, answer.is_enough)
    assert answer.moved is not None
    assert (1, 1, True) == (answer.moved.seen, answer.moved.at_least, answer.moved.is_fewest)
    said = "Cut strip 19 from Ember instead of Brass: nothing need be bought. Fewer pieces would not do."
    assert said == plain(stand_in_words(answer, Unit.INCH))


def test_what_the_other_fabric_has_decides_which_strip_goes() -> None:
    """Ember has but 10½ in twice: two strips go, 9 and 10; 10 + 11 + 11 = 32 and 11 + 12 + 12 = 35 stay."""
    ember = only("Ember", strips(1.5, 12, 12, first=30), precut("22 1/2", 2))
    answer = stand_in(only("Brass", BRASS, precut("40", 2)), [ember], terms())

    assert [("1", 1), ("3", 1)] == moved(answer)


def test_what_does_not_show_goes_first_though_it_is_more() -> None:
    """Two strips for a sleeve nobody sees go rather than one strip of the front."""
    hidden = (*BRASS[:6], Piece("Sleeve strip", 1.5, 11, 1), Piece("Loop", 1.5, 12, 1))
    short = only("Brass", hidden, precut("40", 1), precut("24"), unseen=("Sleeve strip", "Loop"))
    answer = stand_in(short, [only("Ember", (), precut("40"))], terms())

    # 9, 10, 10, 11, 11, 12 are 63 of 64 in and would be cut as 40 + 23 if nothing else were wanted
    assert {("Sleeve strip", 1), ("Loop", 1)} == set(moved(answer))
    assert answer.moved is not None
    assert 0 == answer.moved.seen


def test_the_fabric_that_need_take_fewest_wins() -> None:
    """One has room for two short strips, the other for a longer one that is enough by itself."""
    small = only("Moss", (), precut("10", 2))
    answer = stand_in(only("Brass", BRASS, precut("40", 2)), [small, only("Ember", (), precut("20"))], terms())

    assert ("Ember", [("19", 1)]) == (answer.to, moved(answer))


def test_a_fabric_that_is_enough_gives_nothing_away() -> None:
    """Three strips of 40 in are enough."""
    answer = stand_in(only("Brass", BRASS, precut("40", 3)), [only("Ember", (), precut("20"))], terms())

    assert ([], "", True) == (moved(answer), answer.to, answer.is_enough)
    assert "Brass is enough: nothing goes to another fabric." == stand_in_words(answer, Unit.INCH)


def test_when_no_fabric_can_spare_it_the_shortage_is_told() -> None:
    """Ember has 8 in: no strip of Brass is so short."""
    answer = stand_in(only("Brass", BRASS, precut("40", 2)), [only("Ember", (), precut("8"))], terms())

    assert (None, False) == (answer.moved, answer.is_enough)
    said = plain(stand_in_words(answer, Unit.INCH))
    assert "Brass is not enough: 1½ in of length are missing, and no other fabric can spare what it takes." == said


def test_a_one_way_print_stands_in_without_being_turned() -> None:
    """A center 12 wide and 8 long does not come from a one-way piece 10 wide and 14 long."""
    short = only("Clover", (Piece("Center", 12, 8, 1, "rectangle"),), {"wide": "6", "long": "6"})
    lying = {"name": "remnant", "wide": "10", "long": "14"}
    upright = Supply(fabric("Moss", on_hand=[lying], one_way=True), ())

    assert not stand_in(short, [upright], terms()).is_enough
    assert stand_in(short, [only("Moss", (), lying)], terms()).is_enough


def test_a_binding_goes_as_a_whole() -> None:
    """Of three whole strips none is cut from another fabric alone."""
    binding = Piece("Binding", 1.5, 40, 3, "binding")
    answer = stand_in(
        only("Brass", (binding, *strips(1.5, 20, 20)), precut("40", 2)), [only("Ember", (), precut("40", 3))], terms()
    )

    assert [("Binding", 3)] == moved(answer)


def test_many_pieces_are_taken_one_by_one() -> None:
    """Ten sizes of ten pieces: too many sets to try them all, and still an answer that comes out."""
    pieces = tuple(Piece(str(step), 1.5, 5 + step / 2, 10, step=step) for step in range(1, 11))
    answer = stand_in(only("Brass", pieces, precut("40", 12)), [only("Ember", (), precut("40", 20))], terms())

    assert answer.is_enough
    assert answer.moved is not None
    assert not answer.moved.is_fewest
    # 775 in of 480, so 295 in go: 100 + 95 + 90 in thirty pieces of the longest sizes, and two of 8½
    assert 32 == answer.moved.at_least
    assert 32 <= answer.moved.count <= 40


def test_words_name_what_is_moved() -> None:
    """Strips by number, other pieces by name, several with their count."""
    pieces = (
        Piece("7", 2.5, 11, 2),
        Piece("9", 2.5, 11, 1),
        Piece("Center", 8, 8, 1, "rectangle"),
        Piece("2", 4, 5, 1, "rectangle"),
        Piece("Border, sides", 3, 30, 2),
        Piece("Binding", 2.5, 40, 3, "binding"),
    )

    said = "strip 9, 2 of strip 7, center, piece 2, 2 of border (sides) and the binding"
    assert said == moved_words(pieces)
    assert "nothing" == moved_words(())


def test_a_search_that_is_ended_still_answers() -> None:
    """Told to end at once, it takes pieces one by one; four strips of 40 in are there, 140 of 160 in stay."""
    pieces = strips(1.5, 19, 19, 21, 21, 20, 20, 18, 22, 10, 10)
    short = only("Brass", pieces, precut("40", 4))
    found = fewest_moved(short, None, Terms(house(), Working.CUT_FIRST, Unit.INCH, over=lambda: True))

    assert found is not None
    assert gives(short, without(pieces, found.pieces), terms()) is not None


def without(pieces: tuple[Piece, ...], moved: tuple[Piece, ...]) -> list[Piece]:
    """What stays of pieces that are one of each."""
    gone = {piece.name for piece in moved}
    return [piece for piece in pieces if piece.name not in gone]


@given(
    st.lists(st.tuples(st.integers(10, 60), st.integers(1, 2)), min_size=1, max_size=4),
    st.integers(0, 3),
    st.integers(0, 3),
)
@settings(max_examples=40, deadline=None)
def test_no_smaller_set_comes_out(sizes: list[tuple[int, int]], here: int, there: int) -> None:
    """Every way of dividing a few pieces is tried by planning both fabrics, and none moves fewer."""
    pieces = tuple(Piece(str(step), 2.5, long / 2, count, step=step) for step, (long, count) in enumerate(sizes, 1))
    short = only("Brass", pieces, *[precut("30", here, "2 1/2")] * (here > 0))
    other = only("Ember", (), *[precut("24", there, "2 1/2")] * (there > 0))
    found = fewest_moved(short, other, terms())

    assert _fewest(short, other) == (None if found is None else found.count)
    if found is not None:
        assert found.at_least <= found.count
        both = stand_in(short, [other], terms())
        for plan, supply in zip(both.plans, (short, other), strict=False):
            asked = tuple(p for p in both_pieces(supply, both) if p.count)
            wanted = supply.fabric.model_copy(update={"only_on_hand": True})
            assert () == verify_fabric_plan(plan, wanted, asked, house(), Working.CUT_FIRST)


@given(
    st.lists(st.tuples(st.integers(10, 84), st.integers(1, 2)), min_size=1, max_size=4),
    st.integers(0, 20),
    st.integers(0, 12),
)
@settings(max_examples=40, deadline=None)
def test_no_smaller_set_comes_out_of_so_much_length(sizes: list[tuple[int, int]], here: int, there: int) -> None:
    """The same with lengths of 40 in fabric, strips longer than that among the pieces, and a center to be cut."""
    pieces = tuple(Piece(str(step), 2.5, long / 2, count, step=step) for step, (long, count) in enumerate(sizes, 1))
    short = Supply(fabric("Brass"), (*pieces[:3], Piece("Center", 12, 4, 1, "rectangle")), has_in=here)
    other = Supply(fabric("Ember"), (), has_in=there)
    found = fewest_moved(short, other, terms())

    assert _fewest(short, other) == (None if found is None else found.count)


def _fewest(short: Supply, other: Supply) -> int | None:
    """By trying every way of dividing the pieces, planning both fabrics in full each time."""
    counts = []
    for away in product(*(range(piece.count + 1) for piece in short.pieces)):
        stay = [replace(p, count=p.count - n) for p, n in zip(short.pieces, away, strict=True)]
        go = [replace(p, count=n) for p, n in zip(short.pieces, away, strict=True)]
        if _comes_out(short, stay) and _comes_out(other, go):
            counts.append(sum(away))
    return min(counts, default=None)


def _comes_out(supply: Supply, pieces: list[Piece]) -> bool:
    """Whether the fabric's plan leaves nothing out and takes no more than there is."""
    wanted = tuple(piece for piece in pieces if piece.count)
    own = supply.fabric.model_copy(update={"only_on_hand": supply.has_in is None})
    plan = plan_fabric(own, wanted, house(), Working.CUT_FIRST, Unit.INCH)
    return not plan.left_out and (supply.has_in is None or plan.need_in <= supply.has_in + 1e-6)


def both_pieces(supply: Supply, answer: StandIn) -> tuple[Piece, ...]:
    """What is cut from a fabric after the move."""
    gone = {piece.name: piece.count for piece in answer.moved.pieces} if answer.moved is not None else {}
    if supply.fabric.name == answer.fabric:
        return tuple(Piece(p.name, p.wide, p.long, p.count - gone.get(p.name, 0), step=p.step) for p in supply.pieces)
    return answer.moved.pieces if answer.moved is not None else ()
