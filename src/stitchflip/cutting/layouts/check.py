"""Is an answer of the engine true? Everything is laid out and looked at again, by someone who did not search.

No code of the search is used here. Every piece becomes a rectangle with coordinates, laid out from the plan's own
words, and what is checked is checked on those rectangles: that they are the pieces asked for, lie apart and on the
fabric, and come apart by cuts from edge to edge. Then the sums, the stock and the proof.
"""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.edge_to_edge import Part, Rect, Way, cut_apart, overlap
from stitchflip.cutting.layouts.model import Aim, FirstCut
from stitchflip.cutting.model import Status

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.cutting.layouts.model import Answer, LaidStrip, Layout, LayoutTask, Sheet, Want

_SURELY_PLANNED = 1_000
"""Fewer pieces than this are never too many to plan; with two or three cuts after one another, or any number."""


def check_layouts(task: LayoutTask, answer: Answer) -> tuple[str, ...]:
    """Everything about an answer that is not true.

    Args:
        task: what was wanted from what.
        answer: what is said to be the best plan.

    Returns:
        One sentence for each fault; empty when the answer can be trusted.

    Example:
        >>> from stitchflip.cutting.layouts.model import Answer, LayoutTask, Sheet, Want
        >>> task = LayoutTask(wants=(Want(wide=3, long=2, count=1),), sheets=(Sheet(wide=7, long=None),))
        >>> check_layouts(task, Answer(status=Status.PROVED, layouts=(), value=0, bound=0))
        ('piece 1 is wanted once and cut never',)
    """
    if answer.status is Status.IMPOSSIBLE or _is_without_plan(task, answer):
        return tuple(_no_plan_holds(task, answer))
    faults = [*_numbers_hold(task, answer)]
    if faults:
        return tuple(faults)
    for number, layout in enumerate(answer.layouts, 1):
        faults += [f"layout {number}: {fault}" for fault in _layout_holds(task, layout)]
    return (*faults, *_pieces_are_made(task, answer), *_stock_is_there(task, answer), *_sums_hold(task, answer))


# --- answers without a plan --------------------------------------------------------------------------------


def _is_without_plan(task: LayoutTask, answer: Answer) -> bool:
    """Whether the search ended before it had any plan, and says so."""
    ended = answer.status is Status.BEST_FOUND and bool(answer.because)
    return ended and not answer.layouts and task.aim is not Aim.VALUE and any(want.count > 0 for want in task.wants)


def _no_plan_holds(task: LayoutTask, answer: Answer) -> Iterator[str]:
    """No plan is given and a reason is; nothing is called impossible that is plainly possible."""
    if answer.layouts or answer.value:
        yield f"an answer without a plan gives {_times(len(answer.layouts), 'layout')} and a value of {answer.value}"
    if not answer.because:
        yield "nothing is planned and no reason is told"
    wanted = [want for want in task.wants if want.count > 0]
    if answer.status is not Status.IMPOSSIBLE or sum(want.count for want in wanted) > _SURELY_PLANNED:
        return
    if task.stages not in {0, 2, 3} or any(_is_contradictory(task, sheet) for sheet in task.sheets):
        return
    fitting = [[sheet for sheet in task.sheets if _fits(task, want, sheet)] for want in wanted]
    if task.aim is Aim.VALUE and any(sheet.count != 0 for sheets in fitting for sheet in sheets):
        yield "it is called impossible, and there is a piece that fits"
    if task.aim is not Aim.VALUE and all(any(_is_enough(sheet) for sheet in sheets) for sheets in fitting):
        yield "it is called impossible, and every piece fits on fabric of which there is enough"


def _is_contradictory(task: LayoutTask, sheet: Sheet) -> bool:
    """Whether a sheet makes no sense with the aim: a length to find of one that has it, or a cost below nothing."""
    return (sheet.long is None) is not (task.aim is Aim.LENGTH) or sheet.cost < 0


def _is_enough(sheet: Sheet) -> bool:
    """Whether there is as much of it as anybody wants."""
    return sheet.count is None or (sheet.long is None and sheet.count > 0)


def _fits(task: LayoutTask, want: Want, sheet: Sheet) -> bool:
    """Whether a piece alone can be cut from a sheet."""
    sizes = [(want.wide, want.long), (want.long, want.wide)][: 1 + want.can_turn]
    goes_along = task.first_cut is FirstCut.ALONG and task.aim is not Aim.LENGTH
    return any(
        0 < wide <= sheet.wide
        and long > 0
        and (sheet.long is None or long <= sheet.long)
        and (task.tallest_strip is None or (wide if goes_along else long) <= task.tallest_strip)
        for wide, long in sizes
    )


# --- one layout --------------------------------------------------------------------------------------------


def _numbers_hold(task: LayoutTask, answer: Answer) -> Iterator[str]:
    """Every number in the plan is one that something can have."""
    for number, layout in enumerate(answer.layouts, 1):
        if not 0 <= layout.sheet < len(task.sheets):
            yield f"layout {number}: sheet {layout.sheet + 1} does not exist"
        if layout.times < 1:
            yield f"layout {number}: it is cut {layout.times} times"
        for strip in layout.strips:
            if strip.high <= 0 or any(stack.wide <= 0 for stack in strip.stacks):
                yield f"layout {number}: a strip or a stack has no size"
            for bit in (bit for stack in strip.stacks for bit in stack.bits):
                if not 0 <= bit.want < len(task.wants):
                    yield f"layout {number}: piece {bit.want + 1} does not exist"


def _layout_holds(task: LayoutTask, layout: Layout) -> Iterator[str]:
    """The pieces of one sheet lie apart, on it, and can be cut from it."""
    sheet = task.sheets[layout.sheet]
    rects = list(_laid_out(task, layout))
    yield from _is_told_right(task, layout)
    yield from _lie_on(rects, sheet)
    if any(rect.right <= rect.left or rect.high <= rect.low for rect in rects):
        yield "a piece has no size"
        return
    pair = overlap(rects)
    if pair:
        yield f"{pair[0].at} and {pair[1].at} lie over one another"
        return
    yield from _come_apart(task, layout, sheet, rects)


def _laid_out(task: LayoutTask, layout: Layout) -> Iterator[Rect]:
    """Every piece with its coordinates on the sheet, counted up from the plan."""
    low = 0
    for strip in layout.strips:
        left = 0
        for stack in strip.stacks:
            y = low
            for bit in stack.bits:
                want = task.wants[bit.want]
                wide, long = (want.long, want.wide) if bit.turned else (want.wide, want.long)
                name = f"piece {bit.want + 1}"
                if layout.along:
                    yield Rect(y, left, y + wide, left + long, name)
                    y += wide
                else:
                    yield Rect(left, y, left + wide, y + long, name)
                    y += long
            left += stack.wide
        low += strip.high


def _is_told_right(task: LayoutTask, layout: Layout) -> Iterator[str]:
    """Turned only what may turn; strips no taller than allowed; stacks of one want where they have to be."""
    allowed = FirstCut.ACROSS if task.aim is Aim.LENGTH else task.first_cut
    if allowed is not FirstCut.EITHER and layout.along is not (allowed is FirstCut.ALONG):
        yield f"its first cuts go {Way.ALONG if layout.along else Way.ACROSS}, which is not allowed"
    for strip in layout.strips:
        if task.tallest_strip is not None and strip.high > task.tallest_strip:
            yield f"a strip is {strip.high} high, and {task.tallest_strip} is the most"
        yield from _strip_is_told_right(task, layout, strip)


def _strip_is_told_right(task: LayoutTask, layout: Layout, strip: LaidStrip) -> Iterator[str]:
    """Its stacks are as wide and it is as high as what they hold."""
    for stack in strip.stacks:
        if task.stages in {1, 2} and len(stack.bits) > 1:
            yield f"{len(stack.bits)} pieces lie over one another, and there is no third cut"
        sides = []
        for bit in stack.bits:
            want = task.wants[bit.want]
            if bit.turned and not want.can_turn:
                yield f"piece {bit.want + 1} is turned and may not be"
            sides.append((want.long, want.wide) if bit.turned is not layout.along else (want.wide, want.long))
        if task.same_stack and len(set(sides)) > 1:
            yield "a stack holds different pieces, or one laid two ways, which is not allowed"
        if sum(long for _, long in sides) > strip.high:
            yield f"{sum(long for _, long in sides)} of pieces lie over one another in a strip {strip.high} high"
        if any(wide > stack.wide for wide, _ in sides):
            yield f"a piece {max(wide for wide, _ in sides)} wide lies in a stack {stack.wide} wide"


def _lie_on(rects: list[Rect], sheet: Sheet) -> Iterator[str]:
    """Nothing reaches past the fabric."""
    for rect in rects:
        if rect.right > sheet.wide or (sheet.long is not None and rect.high > sheet.long):
            size = f"{sheet.wide} wide" if sheet.long is None else f"{sheet.wide} wide × {sheet.long} long"
            yield f"{rect.at} leaves the sheet, which is {size}"


def _come_apart(task: LayoutTask, layout: Layout, sheet: Sheet, rects: list[Rect]) -> Iterator[str]:
    """Cuts from edge to edge, so many after one another, part all pieces, and bring them to size unless trimmed."""
    top = max((rect.high for rect in rects), default=0) if sheet.long is None else sheet.long
    first = Way.ALONG if layout.along else Way.ACROSS
    for part in cut_apart(Part(0, 0, sheet.wide, top, tuple(rects)), first, task.stages):
        one = part.rects[0]
        if len(part.rects) > 1:
            cuts = "cuts from edge to edge" if task.stages == 0 else f"{_times(task.stages, 'cut')} after one another"
            yield f"{one.at} and {part.rects[1].at} are not parted by {cuts}"
        elif not task.trims and not part.is_at_size:
            yield f"{one.at} needs one more cut to come to its size, and trimming is not allowed"


# --- all layouts together ----------------------------------------------------------------------------------


def _pieces_are_made(task: LayoutTask, answer: Answer) -> Iterator[str]:
    """Every piece as often as wanted; with a value to gain, no more often."""
    made: Counter[int] = Counter()
    for layout in answer.layouts:
        for bit in (bit for strip in layout.strips for stack in strip.stacks for bit in stack.bits):
            made[bit.want] += layout.times
    for number, want in enumerate(task.wants):
        wanted, cut = max(want.count, 0), made[number]
        if cut > wanted or (cut < wanted and task.aim is not Aim.VALUE):
            yield f"piece {number + 1} is wanted {_often(wanted)} and cut {_often(cut)}"


def _stock_is_there(task: LayoutTask, answer: Answer) -> Iterator[str]:
    """No kind of sheet is cut more often than there are sheets of it."""
    used: Counter[int] = Counter()
    for layout in answer.layouts:
        used[layout.sheet] += layout.times
    for number, sheet in enumerate(task.sheets):
        if sheet.count is not None and used[number] > max(sheet.count, 0):
            yield f"sheet {number + 1} is cut {_often(used[number])} and there {_are(sheet.count)}"
        if sheet.long is None and used[number] > 1:
            yield f"sheet {number + 1} has an open length and is cut {_often(used[number])}"


def _sums_hold(task: LayoutTask, answer: Answer) -> Iterator[str]:
    """The value is the plan's own, the bound on the right side of it, and a proof is one."""
    value = sum(_worth(task, layout) * layout.times for layout in answer.layouts)
    if value != answer.value:
        yield f"the plan's {_named(task.aim)} is {value}, not {answer.value}"
    if answer.bound < 0:
        yield f"the bound is {answer.bound}"
    if task.aim is Aim.VALUE and answer.bound < answer.value:
        yield f"the plan is worth {answer.value}, and nothing is said to be worth more than {answer.bound}"
    if task.aim is not Aim.VALUE and answer.bound > answer.value:
        yield f"the plan's {_named(task.aim)} is {answer.value}, and nothing is said to go under {answer.bound}"
    steps = [-(-number // max(task.step, 1)) for number in (answer.value, answer.bound)]
    if answer.status is Status.PROVED and steps[0] != steps[1]:
        yield f"{answer.value} is called proved with a bound of {answer.bound}, in steps of {max(task.step, 1)}"


def _worth(task: LayoutTask, layout: Layout) -> int:
    """What one sheet cut this way adds to the plan's value."""
    if task.aim is Aim.LENGTH:
        return sum(strip.high for strip in layout.strips)
    if task.aim is Aim.COST:
        return task.sheets[layout.sheet].cost
    return sum(task.wants[bit.want].value for strip in layout.strips for stack in strip.stacks for bit in stack.bits)


# --- words -------------------------------------------------------------------------------------------------


def _named(aim: Aim) -> str:
    return {Aim.LENGTH: "length", Aim.COST: "cost", Aim.VALUE: "worth"}[aim]


def _times(number: int, word: str) -> str:
    return f"{number} {word}" if number == 1 else f"{number} {word}s"


def _often(number: int) -> str:
    return {0: "never", 1: "once", 2: "twice"}.get(number, f"{number} times")


def _are(number: int) -> str:
    return {0: "is none", 1: "is 1"}.get(number, f"are {number}")
