"""Cutting rectangles apart from edge to edge, told from where they lie alone."""

from __future__ import annotations

from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st

from stitchflip.cutting.layouts.edge_to_edge import Part, Rect, Way, cut_apart, overlap

PINWHEEL = (Rect(0, 0, 2, 1, "a"), Rect(2, 0, 3, 2, "b"), Rect(1, 2, 3, 3, "c"), Rect(0, 1, 1, 3, "d"))
"""Four pieces round a hole: the smallest layout no cut from edge to edge can begin."""


def parts(rects: tuple[Rect, ...], stages: int, first: Way = Way.ACROSS) -> list[int]:
    """How many pieces each part holds after cutting a sheet 12 × 12."""
    return [len(part.rects) for part in cut_apart(Part(0, 0, 12, 12, rects), first, stages)]


@st.composite
def scattered(draw: st.DrawFn) -> tuple[Rect, ...]:
    """Up to six rectangles on 6 × 6 squares that lie apart."""
    out: list[Rect] = []
    for number in range(draw(st.integers(0, 6))):
        left, low = draw(st.integers(0, 5)), draw(st.integers(0, 5))
        new = Rect(left, low, left + draw(st.integers(1, 3)), low + draw(st.integers(1, 3)), f"piece {number}")
        if not any(_share(new, old) for old in out):
            out.append(new)
    return tuple(out)


def _share(a: Rect, b: Rect) -> bool:
    """Whether two rectangles have fabric in common."""
    return a.left < b.right and b.left < a.right and a.low < b.high and b.low < a.high


def _can_part(rects: tuple[Rect, ...], way: Way, stages: int) -> bool:
    """The slow way: try one cut after another, every one of them, and never more than one at a time."""
    if len(rects) < 2:
        return True
    if stages == 0:
        return False
    if _can_part(rects, way.other, stages - 1):
        return True
    for place in {edge for r in rects for edge in ((r.low, r.high) if way is Way.ACROSS else (r.left, r.right))}:
        spans = [(r.low, r.high) if way is Way.ACROSS else (r.left, r.right) for r in rects]
        before = tuple(r for r, (_, end) in zip(rects, spans, strict=True) if end <= place)
        after = tuple(r for r, (begin, _) in zip(rects, spans, strict=True) if begin >= place)
        if before and after and len(before) + len(after) == len(rects):
            return _can_part(before, way, stages) and _can_part(after, way, stages)
    return False


def test_a_pinwheel_is_never_cut_apart() -> None:
    """Four pieces that lie round a hole stay together however often the way of the cuts changes."""
    assert [4] == parts(PINWHEEL, 0)
    assert [4] == parts(PINWHEEL, 0, Way.ALONG)


def test_a_pinwheel_without_one_wing_takes_three_cuts_after_one_another() -> None:
    """Without its first piece it comes apart along 1, then across 2; the other way first takes one cut more."""
    assert [1, 1, 1] == parts(PINWHEEL[1:], 2, Way.ALONG)
    assert [1, 2] == parts(PINWHEEL[1:], 2)
    assert [1, 1, 1] == parts(PINWHEEL[1:], 3)


def test_rows_come_apart_across_and_columns_along() -> None:
    """Two pieces side by side take a cut along, two over one another one across."""
    beside = (Rect(0, 0, 2, 2, "a"), Rect(2, 0, 5, 2, "b"))
    above = (Rect(0, 0, 2, 2, "a"), Rect(0, 2, 2, 5, "b"))
    assert ([2], [1, 1]) == (parts(beside, 1), parts(beside, 1, Way.ALONG))
    assert ([1, 1], [2]) == (parts(above, 1), parts(above, 1, Way.ALONG))


def test_touching_pieces_do_not_overlap_and_others_are_named() -> None:
    """Pieces may share an edge; a pair that shares fabric is told."""
    apart = (Rect(0, 0, 2, 2, "a"), Rect(2, 0, 4, 2, "b"), Rect(0, 2, 4, 3, "c"))
    assert overlap(apart) is None
    found = overlap((*apart, Rect(3, 1, 5, 2, "d")))
    assert found is not None
    assert {"b", "d"} == {rect.name for rect in found}


@given(st.lists(st.tuples(*[st.integers(0, 8)] * 2, *[st.integers(1, 5)] * 2), max_size=9))
def test_an_overlap_is_found_exactly_when_some_pair_shares_fabric(places: list[tuple[int, int, int, int]]) -> None:
    """The sweep over the sheet agrees with looking at every pair."""
    rects = [Rect(x, y, x + wide, y + long, str(n)) for n, (x, y, wide, long) in enumerate(places)]
    assert any(_share(a, b) for a, b in combinations(rects, 2)) == (overlap(rects) is not None)


@given(scattered(), st.integers(1, 4), st.sampled_from(Way))
def test_cutting_everywhere_at_once_does_what_cut_after_cut_can(
    rects: tuple[Rect, ...], stages: int, first: Way
) -> None:
    """Pieces come apart exactly when some series of single cuts from edge to edge parts them."""
    assert _can_part(rects, first, stages) == all(number == 1 for number in parts(rects, stages, first))


@given(scattered())
def test_unlimited_cuts_do_what_six_turns_can(rects: tuple[Rect, ...]) -> None:
    """Six pieces never take more than six turns of the way of the cuts."""
    assert all(number == 1 for number in parts(rects, 7)) == all(number == 1 for number in parts(rects, 0))
