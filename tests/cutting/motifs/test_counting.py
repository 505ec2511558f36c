"""How many windows round motifs a piece of fabric gives."""

from __future__ import annotations

from functools import cache
from itertools import product

from hypothesis import given, settings
from hypothesis import strategies as st

from stitchflip.cutting.model import Status
from stitchflip.cutting.motifs import Counting, Motif, Repeat, Start, Window, most_windows, places
from tests.twins import motifs as twin

HALVES = st.integers(0, 7).map(lambda n: n / 2)


def counted(repeat: Repeat, window: Window, wide: float, long: float) -> tuple[int, int]:
    """Surely and at best, both proved."""
    count = Counting(repeat, window, wide).count(long)
    assert Status.PROVED is count.status
    return count.surely, count.at_best


def test_a_yard_of_a_9_in_repeat_gives_four_at_best_and_three_surely() -> None:
    """Motifs lengthwise from 36 in, repeat 9, cut 4 1/2: floor(31 1/2 / 9) + 1 = 4 at best, floor(31 1/2 / 9) = 3."""
    assert (3, 4) == counted(Repeat(9), Window(4.5, 4.5), 40, 36)


@given(st.integers(4, 60), st.integers(1, 30), st.integers(3, 12))
def test_one_column_counts_as_by_the_formula(long: int, half_repeat: int, cut: int) -> None:
    """No window over another: floor((L - c) / r) surely and one more at best, where the repeat is not shorter."""
    repeat, long_in, cut_in = max(half_repeat / 2, cut / 2), long / 2, cut / 2
    surely = int((long_in - cut_in) / repeat) if long_in >= cut_in else 0
    at_best = surely + 1 if long_in >= cut_in else 0
    assert (surely, at_best) == counted(Repeat(repeat), Window(cut_in, cut_in), 40, long_in)


def test_a_repeat_shorter_than_the_window_uses_every_second_motif() -> None:
    """Cut 5, motifs every 3 in: windows every 6 in. 20 in hold six motifs at best, five surely: three either way."""
    assert (3, 3) == counted(Repeat(3), Window(5, 5), 40, 20)


def test_a_diamond_uses_a_half_drop_print_wholly() -> None:
    """A window 6 root 2 square on point reaches 12 in; in a half-drop print of 12 by 12 its neighbors touch it.

    The nearest motifs of two columns lie (12, 6) apart: along the window's own edges 18 / root 2 = 12.73, more than
    8.49, so none overlap. In 36 by 36 in: three columns of two or three.
    """
    repeat, window = Repeat(12, 12, half_drop=True), Window(72**0.5, 72**0.5, on_point=True)
    start = (0.0, 0.0)
    found = places(repeat, window, 36, 36, start)
    assert [(6, 6), (30, 6), (18, 12), (6, 18), (30, 18), (18, 24), (6, 30), (30, 30)] == [(p.x, p.y) for p in found]
    assert 8 == len(most_windows([(p.x, p.y) for p in found], window).picked)


def test_places_are_told_by_column_and_repeat() -> None:
    """Columns are counted over the whole width, half-drop ones between."""
    found = places(Repeat(10, 8, half_drop=True), Window(4, 4), 40, 20, (0.0, 0.0))
    assert [0, 1, 2, 3, 4] == sorted({place.column for place in found})
    assert {(4.0, 5.0, 0, 0), (12.0, 10.0, 1, 0)} <= {(p.x, p.y, p.column, p.row) for p in found}


def test_a_known_start_leaves_nothing_open() -> None:
    """Motif centers at 5, 14, 23, 32 of 36 in: with a window of 4 1/2 all four are whole, surely and at best."""
    count = Counting(Repeat(9), Window(4.5, 4.5), 40, Start(along=0.5)).count(36)
    assert (4, 4) == (count.surely, count.at_best)


def test_no_window_comes_from_fabric_narrower_than_it() -> None:
    """A window of 12 in on point reaches 16.97 in: nothing from 16 in, whatever the length."""
    assert (0, 0) == counted(Repeat(4, 4), Window(12, 12, on_point=True), 16, 90)


@given(
    st.lists(st.tuples(HALVES, HALVES), min_size=1, max_size=2, unique=True),
    st.integers(2, 4),
    st.integers(2, 4),
    st.booleans(),
    st.integers(2, 6),
    st.integers(2, 6),
)
@settings(max_examples=12, deadline=None)
def test_upright_windows_are_counted_as_by_trying(
    motifs: list[tuple[float, float]],
    across: int,
    along: int,
    half_drop: bool,  # noqa: FBT001  drawn
    wide: int,
    long: int,
) -> None:
    """Sizes in halves of an inch: starts on a grid of eighths see every touching and every place between.

    A window's half and half a repeat fall on quarters, so what touches touches at a quarter.
    """
    a, r, w, c = across / 2, along / 2, wide / 2, long / 2
    repeat = Repeat(r, a, half_drop, tuple(Motif(x, y) for x, y in motifs))
    starts = product(
        [n / 8 for n in range(round((2 if half_drop else 1) * a * 8))], [n / 8 for n in range(round(r * 8))]
    )
    seen = {_by_trying(repeat, (w, c, 0), (3.5, 4.0), start) for start in starts}
    assert (min(seen), max(seen)) == counted(repeat, Window(w, c, 0.1), 3.5, 4.0)


@given(
    st.lists(st.tuples(HALVES, HALVES), min_size=1, max_size=2, unique=True),
    st.integers(3, 8),
    st.integers(3, 8),
    st.booleans(),
    st.tuples(st.integers(3, 8), st.integers(3, 8)),
    st.tuples(HALVES, HALVES),
)
@settings(max_examples=40, deadline=None)
def test_windows_on_point_are_chosen_as_by_trying(
    motifs: list[tuple[float, float]],
    across: int,
    along: int,
    half_drop: bool,  # noqa: FBT001  drawn
    window: tuple[int, int],
    start: tuple[float, float],
) -> None:
    """For one start of the print: corners turned by hand, every choice of windows tried."""
    repeat = Repeat(along / 2, across / 2, half_drop, tuple(Motif(x, y) for x, y in motifs))
    cut = Window(window[0] / 2, window[1] / 2, 0.1, on_point=True)
    known = Counting(repeat, cut, 8.0, Start(*start)).count(7.0)
    tried = _by_trying(repeat, (cut.wide, cut.long, 45), (8.0, 7.0), start)
    assert (tried, tried) == (known.surely, known.at_best)


def _by_trying(
    repeat: Repeat, window: tuple[float, float, float], room: tuple[float, float], start: tuple[float, float]
) -> int:
    assert repeat.across is not None
    own = [(motif.across, motif.along) for motif in repeat.motifs]
    centers = twin.centers(own, repeat.across, repeat.along, half_drop=repeat.half_drop, start=start, reach=8)
    shapes = [shape for center in centers if twin.whole(shape := twin.corners(center, *window), *room)]
    return _most(tuple(tuple((round(x, 5), round(y, 5)) for x, y in shape) for shape in shapes))


@cache
def _most(shapes: tuple[tuple[tuple[float, float], ...], ...]) -> int:
    return twin.most(shapes)
