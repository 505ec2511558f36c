"""Plans made level by level: whole, in no time, and with nothing imported."""

from __future__ import annotations

import subprocess
import sys

from hypothesis import given
from hypothesis import strategies as st

from stitchflip.cutting.layouts.columns.column import given_by
from stitchflip.cutting.layouts.columns.strips import Kind, StripKnapsack, Way
from stitchflip.cutting.layouts.levels import level_plans
from stitchflip.cutting.layouts.watch import Watch


@st.composite
def kinds_on_a_sheet(draw: st.DrawFn) -> tuple[int, tuple[Kind, ...]]:
    """A width and pieces that fit on it, some of them two ways."""
    wide = draw(st.integers(3, 30))
    kinds = []
    for _ in range(draw(st.integers(1, 8))):
        across, along = draw(st.integers(1, wide)), draw(st.integers(1, 40))
        ways = [Way(across, along, is_turned=False)]
        if along <= wide and along != across and draw(st.booleans()):
            ways.append(Way(along, across, is_turned=True))
        kinds.append(Kind(draw(st.integers(1, 30)), tuple(sorted(ways, key=lambda way: way.long))))
    return wide, tuple(kinds)


@given(kinds_on_a_sheet(), st.booleans())
def test_every_piece_is_cut_as_often_as_it_is_wanted_and_no_strip_is_overfull(
    case: tuple[int, tuple[Kind, ...]],
    is_trimmed: bool,  # noqa: FBT001  a parameter of the test
) -> None:
    """Each plan gives exactly the pieces; its strips hold them side by side."""
    wide, kinds = case
    knapsack = StripKnapsack(kinds, wide, is_trimmed=is_trimmed)

    for plan in level_plans(kinds, wide, Watch(5.0), is_trimmed=is_trimmed):
        assert [kind.count for kind in kinds] == given_by(plan, len(kinds))
        for column in plan:
            fit = [
                [
                    way.wide
                    for way in kinds[kind].ways
                    if way.long == column.cost or (is_trimmed and way.long < column.cost)
                ]
                for kind, _ in column.uses
            ]
            assert all(fit)
            assert sum(min(widths) * count for widths, (_, count) in zip(fit, column.uses, strict=True)) <= wide
            lowest = knapsack.column(column.uses)
            assert lowest is not None
            assert lowest.cost <= column.cost


def test_one_plan_is_made_even_when_time_is_over() -> None:
    """The first plan is never left out."""
    kinds = (Kind(3, (Way(2, 5, is_turned=False), Way(5, 2, is_turned=True))),)

    assert 1 == len(level_plans(kinds, 10, Watch(0.0), is_trimmed=True))


def test_a_plan_needs_no_heavy_library() -> None:
    """A list whose first plan is proved imports neither numpy nor HiGHS."""
    script = (
        "import sys\n"
        "from stitchflip.cutting.layouts.model import LayoutTask, Sheet, Want\n"
        "from stitchflip.cutting.layouts.solving import solve\n"
        "from stitchflip.cutting.layouts.watch import Watch\n"
        "answer = solve(LayoutTask((Want(5, 3, 8),), (Sheet(40, None),)), Watch(1.0))\n"
        "print(answer.value, answer.bound, 'numpy' in sys.modules, 'highspy' in sys.modules)\n"
    )
    said = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True).stdout

    assert "3 3 False False" == said.strip()
