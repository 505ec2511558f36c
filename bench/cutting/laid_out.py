"""Check a plan by its rectangles alone: no solver and no data class of the engine is used here.

A plan is cut edge to edge when its rectangles can be parted by full cuts again and again. Cutting at every place
where a full cut is possible loses nothing: what is left over from a finer cut is easier to part, never harder.
"""

from __future__ import annotations

from collections import Counter

from bench.cutting.jobs import CutSheet, Job

Box = tuple[int, int, int, int]
"""Left, lower, right, upper."""


def faults(job: Job, sheets: tuple[CutSheet, ...], value: int) -> list[str]:
    """Everything that is wrong with a plan, as sentences; none when it can be cut and is worth what is claimed."""
    found = _counts(job, sheets)
    worth = 0
    for number, sheet in enumerate(sheets):
        stock = job.stocks[sheet.stock]
        boxes = _boxes(job, sheet)
        right, upper = max((box[2] for box in boxes), default=0), max((box[3] for box in boxes), default=0)
        if any(box[0] < 0 or box[1] < 0 for box in boxes) or right > stock.wide or upper > (stock.long or upper):
            found.append(f"sheet {number}: a piece lies outside")
        if not _can_be_cut(job, boxes):
            found.append(f"sheet {number}: not cut edge to edge in the stages asked for")
        if job.aim == "length":
            worth += upper * sheet.times
        elif job.aim == "value":
            worth += sheet.times * sum(job.items[piece[0]].value for piece in sheet.placed)
        else:
            worth += stock.cost * sheet.times
    if job.better(value, worth):
        found.append(f"claims {value}, is worth {worth}")
    return found


def tallest_strip(job: Job, sheets: tuple[CutSheet, ...]) -> int:
    """Height of the tallest first cut of an open sheet."""
    strips = [strip for sheet in sheets for strip in _parts(_boxes(job, sheet), 1)]
    return max((max(box[3] for box in strip) - min(box[1] for box in strip) for strip in strips), default=0)


def _counts(job: Job, sheets: tuple[CutSheet, ...]) -> list[str]:
    found = []
    used: Counter[int] = Counter()
    made: Counter[int] = Counter()
    for sheet in sheets:
        used[sheet.stock] += sheet.times
        for kind, _, _, turned in sheet.placed:
            made[kind] += sheet.times
            if turned and not job.items[kind].can_turn:
                found.append(f"item {kind} is turned")
    for number, stock in enumerate(job.stocks):
        if stock.count is not None and used[number] > stock.count:
            found.append(f"{used[number]} sheets of kind {number}, there are {stock.count}")
    for number, item in enumerate(job.items):
        is_right = made[number] <= item.count if job.aim == "value" else made[number] == item.count
        if not is_right:
            found.append(f"item {number} made {made[number]} times, not {item.count}")
    return found


def _boxes(job: Job, sheet: CutSheet) -> list[Box]:
    found = []
    for number, x, y, turned in sheet.placed:
        item = job.items[number]
        wide, long = (item.long, item.wide) if turned else (item.wide, item.long)
        found.append((x, y, x + wide, y + long))
    return found


def _can_be_cut(job: Job, boxes: list[Box]) -> bool:
    ways = {"across": (False,), "along": (True,), "either": (False, True)}[job.first_cut]
    sides = [[(low, left, up, right) for left, low, right, up in boxes] if way else boxes for way in ways]
    if not job.stages:
        return any(_in_any_stages(side) for side in sides)
    return any(_in_stages(job, side) for side in sides)


def _parts(boxes: list[Box], axis: int) -> list[list[Box]]:
    """Parted by every full cut: axis 0 between left and right, axis 1 between lower and upper."""
    parts: list[list[Box]] = []
    reach = 0
    for box in sorted(boxes, key=lambda box: box[axis]):
        if parts and box[axis] < reach:
            parts[-1].append(box)
            reach = max(reach, box[axis + 2])
        else:
            parts.append([box])
            reach = box[axis + 2]
    return parts


def _in_any_stages(boxes: list[Box]) -> bool:
    open_parts = [(part, 0) for part in _parts(boxes, 1)]
    while open_parts:
        part, axis = open_parts.pop()
        if len(part) == 1:
            continue
        smaller = _parts(part, axis)
        if len(smaller) == 1:
            smaller = _parts(part, 1 - axis)
            if len(smaller) == 1:
                return False
            open_parts += [(each, axis) for each in smaller]
        else:
            open_parts += [(each, 1 - axis) for each in smaller]
    return True


def _in_stages(job: Job, boxes: list[Box]) -> bool:
    """Strips, stacks, and with three stages what lies over one another in a stack."""
    for strip in _parts(boxes, 1):
        high = max(box[3] for box in strip) - min(box[1] for box in strip)
        for stack in _parts(strip, 0):
            bits = _parts(stack, 1) if job.stages == 3 else [stack]
            if any(len(bit) > 1 for bit in bits):
                return False
            if not job.trims and not _fills(job, stack, high):
                return False
            if job.same_stack and len({(box[2] - box[0], box[3] - box[1]) for box in stack}) > 1:
                return False
    return True


def _fills(job: Job, stack: list[Box], high: int) -> bool:
    """Whether no piece of a stack needs a cut more: it is as high as its strip, or as wide as its stack."""
    if job.stages == 2:
        return all(box[3] - box[1] == high for box in stack)
    wide = max(box[2] for box in stack) - min(box[0] for box in stack)
    return all(box[2] - box[0] == wide for box in stack)
