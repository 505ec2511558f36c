"""Add it all up again: does a cutting plan give every piece, from fabric that is really there?

This module shares no code with what makes plans. It only reads the finished plan, the pieces asked for, the
fabric and the maker's numbers, and says in words everything that does not add up.
"""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from stitchflip.cutting.claims import claims_hold, is_proof
from stitchflip.cutting.model import FabricPlan, HandSheet, JoinedLength, OneStrip, Piece, Row, StackPiece, StripPlan
from stitchflip.project.model import Fabric, Wash, Working

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from stitchflip.project.numbers import Numbers

_NEW = "width of fabric"
_SLACK = 1e-4
"""Inches that sums of floats and the tolerance of counting may be off."""

_Key = tuple[str, float]
_Size = tuple[float, float]


def verify_fabric_plan(
    plan: FabricPlan,
    fabric: Fabric,
    pieces: Sequence[Piece],
    numbers: Numbers,
    working: Working,
    joined: Sequence[JoinedLength] = (),
) -> tuple[str, ...]:
    """Everything about a plan that does not add up.

    Args:
        plan: the plan to check.
        fabric: the fabric it is for.
        pieces: what was asked for.
        numbers: the maker's numbers.
        working: whether lengths are the shortest that reach.
        joined: lengths that are to be joined from strips; every join is charged to them.

    Returns:
        One sentence for each fault; empty when the plan can be trusted.
    """
    checker = _Checker(plan, fabric, pieces, numbers, working)
    faults = tuple(
        fault
        for check in (
            checker.pieces_made,
            checker.sizes_made,
            checker.strips_hold,
            checker.rows_hold,
            checker.joined_lengths_hold,
            checker.blocks_hold,
            checker.sheets_hold,
            checker.stock_is_there,
            checker.purchase_adds_up,
            checker.bounds_hold,
            checker.hand_follows,
        )
        for fault in check()
    )
    return (*faults, *claims_hold(plan, fabric, pieces, numbers, joined))


class _Checker:
    def __init__(
        self, plan: FabricPlan, fabric: Fabric, pieces: Sequence[Piece], numbers: Numbers, working: Working
    ) -> None:
        self.plan = plan
        self.fabric = fabric
        self.pieces = pieces
        self.numbers = numbers
        self.working = working
        loses = fabric.washed is not Wash.WASHED and not fabric.precut
        self.across = 1 - numbers.prewash_across * loses
        self.along = 1 - numbers.prewash_along * loses
        given = fabric.usable_width.inches if fabric.usable_width is not None else numbers.usable_width
        self.width = given * self.across

    @property
    def strips(self) -> list[OneStrip]:
        return [strip for plan in self.plan.strip_plans for strip in plan.strips]

    @property
    def rows(self) -> list[Row]:
        return [*self.plan.rows, *(row for sheet in self.plan.hand_sheets for row in sheet.rows)]

    def asked(self, piece: Piece) -> float:
        """Length a strip piece is cut to."""
        as_you_go = self.working is Working.TRIM_AS_YOU_GO and not piece.cut_first and piece.kind == "strip"
        return piece.shortest if as_you_go and piece.shortest > 0 else piece.long

    # --- every piece, the right number of times ------------------------------------------------------------

    def pieces_made(self) -> Iterator[str]:
        """Each label with each width as often as asked, no more and no less."""
        asked: Counter[str] = Counter()
        for piece in self.pieces:
            asked[piece.name] += piece.count
        made: Counter[str] = Counter(self.plan.left_out)
        made.update(label for strip in self.strips for label, _ in strip.pieces)
        made.update(label for row in self.rows for label, _ in row.pieces)
        for name in sorted(asked.keys() | made.keys()):
            if asked[name] != made[name]:
                yield f"{name} is asked for {asked[name]} times and accounted for {made[name]} times"
        if bool(self.plan.left_out) != bool(self.plan.because):
            yield "pieces are left out without a reason, or a reason is given for nothing"

    def sizes_made(self) -> Iterator[str]:
        """Where pieces of several sizes go by one name, each size as often as asked."""
        by_name: dict[str, list[Piece]] = {}
        for piece in self.pieces:
            by_name.setdefault(piece.name, []).append(piece)
        for name, asked in by_name.items():
            if len(asked) == 1 or name in self.plan.left_out:
                continue
            made = list(self._made_as(name, asked))
            for place, piece in enumerate(asked):
                surely, perhaps = made.count([place]), sum(place in places for places in made)
                if surely > piece.count or perhaps < piece.count:
                    yield f"{name}, {piece.wide:g} × {piece.long:g} in, is not made {piece.count} times"

    def _made_as(self, name: str, asked: Sequence[Piece]) -> Iterator[list[int]]:
        """For each piece made by that name, the places of those it can be."""
        numbered = list(enumerate(asked))
        for plan in self.plan.strip_plans:
            for strip in plan.strips:
                for length in (length for label, length in strip.pieces if label == name):
                    yield [n for n, p in numbered if self._is_cut_right(p, strip.width, length, plan)]
        rows = [(row, False) for row in self.plan.rows]
        rows += [(row, sheet.along == "long") for sheet in self.plan.hand_sheets for row in sheet.rows]
        for row, swapped in rows:
            for laid in (piece for stack in row.stacks for piece in stack.pieces if piece.label == name):
                yield [n for n, p in numbered if self._may_lie(p, laid, swapped=swapped)]
            for taken in () if row.stacks else (taken for label, taken in row.pieces if label == name):
                yield [n for n, p in numbered if self._lies_in(p, row, taken, swapped=swapped)]

    # --- strips --------------------------------------------------------------------------------------------

    def strips_hold(self) -> Iterator[str]:
        """No strip gives more than its length, and each piece is as wide and long as asked."""
        for plan in self.plan.strip_plans:
            for strip in plan.strips:
                yield from self._strip_holds(plan, strip)
            rests = [strip.rest for strip in plan.strips]
            if rests and abs(min(rests) - plan.spare_in) > _SLACK:
                yield f"the smallest rest of the {plan.width:g} in strips is {min(rests):g}, not {plan.spare_in:g} in"

    def _strip_holds(self, plan: StripPlan, strip: OneStrip) -> Iterator[str]:
        taken = sum(length for _, length in strip.pieces)
        if taken > strip.length + _SLACK:
            yield f"a strip of {strip.length:g} in gives {taken:g} in"
        if abs(strip.length - taken - strip.rest) > _SLACK:
            yield f"a strip of {strip.length:g} in with {taken:g} in cut keeps {strip.rest:g} in"
        if strip.stock == _NEW and strip.length > self.width + _SLACK:
            yield f"a strip of {strip.length:g} in is cut across {self.width:g} in"
        if abs(strip.width - plan.width) > _SLACK:
            yield f"a strip {strip.width:g} in wide stands among those of {plan.width:g} in"
        for label, length in strip.pieces:
            fitting = [piece for piece in self.pieces if piece.name == label]
            if not any(self._is_cut_right(piece, strip.width, length, plan) for piece in fitting):
                yield f"{label} is cut {strip.width:g} × {length:g} in, which nobody asked for"

    def _is_cut_right(self, piece: Piece, wide: float, length: float, plan: StripPlan) -> bool:
        if piece.kind == "rectangle" or abs(piece.wide - wide) > _SLACK or plan.is_whole != (piece.kind == "binding"):
            return False
        if piece.kind == "binding":
            whole = piece.long if piece.long > 0 else self.width
            return length > min(whole, self.width) - _SLACK
        return abs(self.asked(piece) - length) < _SLACK

    # --- rows ----------------------------------------------------------------------------------------------

    def rows_hold(self) -> Iterator[str]:
        """No row is wider than the fabric or lower than a piece in it, nothing is turned that must not be."""
        for row in self.plan.rows:
            yield from self._row_holds(row, self.width, swapped=False)
        for sheet in self.plan.hand_sheets:
            for row in sheet.rows:
                yield from self._row_holds(row, sheet.usable_length, swapped=sheet.along == "long")

    def _row_holds(self, row: Row, width: float, *, swapped: bool) -> Iterator[str]:
        if row.stacks:
            yield from self._stacks_hold(row, width, swapped=swapped)
            return
        across = sum(taken for _, taken in row.pieces)
        if across > width + _SLACK:
            yield f"a row of {across:g} in is laid across {width:g} in"
        for label, taken in row.pieces:
            if not any(
                self._lies_in(piece, row, taken, swapped=swapped) for piece in self.pieces if piece.name == label
            ):
                yield f"{label} does not lie in a row {row.height:g} in high, {taken:g} in across, as it may be laid"

    def _lies_in(self, piece: Piece, row: Row, taken: float, *, swapped: bool) -> bool:
        if piece.kind == "binding":
            return False
        is_long_strip = piece.kind == "strip"
        wide, long = (piece.wide, self.asked(piece)) if is_long_strip else piece.takes
        if swapped:
            wide, long = long, wide
        upright = abs(taken - wide) < _SLACK and long < row.height + _SLACK
        turned = abs(taken - long) < _SLACK and wide < row.height + _SLACK
        may_turn = piece.can_turn and not self.fabric.one_way and not is_long_strip
        return upright or (turned and may_turn)

    def _stacks_hold(self, row: Row, width: float, *, swapped: bool) -> Iterator[str]:
        """Parts of a row stand side by side, the pieces of a part over one another, each laid as it may be."""
        across = sum(stack.wide for stack in row.stacks)
        if across > width + _SLACK:
            yield f"a row of {across:g} in is laid across {width:g} in"
        for stack in row.stacks:
            high = sum(piece.along for piece in stack.pieces)
            if high > row.height + _SLACK:
                yield f"{high:g} in of pieces lie over one another in a row {row.height:g} in high"
            for piece in stack.pieces:
                if piece.across > stack.wide + _SLACK:
                    yield f"{piece.label} is {piece.across:g} in across, its part of the row {stack.wide:g} in"
                named = [asked for asked in self.pieces if asked.name == piece.label]
                if not any(self._may_lie(asked, piece, swapped=swapped) for asked in named):
                    yield f"{piece.label} is laid {piece.across:g} × {piece.along:g} in, which nobody asked for"
        laid = sorted((piece.label, piece.across) for stack in row.stacks for piece in stack.pieces)
        if laid != sorted(row.pieces):
            yield f"a row {row.height:g} in high lists other pieces than lie in it"

    def _may_lie(self, asked: Piece, piece: StackPiece, *, swapped: bool) -> bool:
        """Strips run across the fabric unless they are longer than it is wide; what may turn lies either way."""
        if asked.kind == "rectangle":
            wide, long = asked.takes
            ways = [(long, wide) if swapped else (wide, long)]
        else:
            whole = min(asked.long or self.width, self.width) if asked.kind == "binding" else asked.long
            lengths = [whole] + [asked.last_long] * (asked.kind == "binding" and asked.last_long > 0)
            ways = [(asked.wide, n) if n > self.width + _SLACK else (n, asked.wide) for n in lengths]
        if asked.can_turn and not self.fabric.one_way:
            ways += [(along, across) for across, along in ways]
        return any(abs(piece.across - a) < _SLACK and abs(piece.along - b) < _SLACK for a, b in ways)

    def blocks_hold(self) -> Iterator[str]:
        """Windows that share a block lie in a row as high as the block: nothing is cut before they are found."""
        for asked in self.pieces:
            if asked.block_in <= 0 or asked.name in self.plan.left_out or self.fabric.only_on_hand:
                continue
            for row in self.plan.rows:
                own = sum(label == asked.name for label, _ in row.pieces)
                if own and (row.height < asked.block_in - _SLACK or own < asked.count):
                    yield f"{asked.name}: {own} of {asked.count} windows from {row.height:g} of {asked.block_in:g} in"

    def joined_lengths_hold(self) -> Iterator[str]:
        """Of whole strips that are joined no more are cut short than there are joined lengths."""
        laid = [piece for row in self.plan.rows for stack in row.stacks for piece in stack.pieces]
        for asked in self.pieces:
            whole = min(asked.long or self.width, self.width)
            own = [piece for piece in laid if piece.label == asked.name]
            short = sum(max(piece.across, piece.along) < whole - _SLACK for piece in own)
            if asked.kind == "binding" and short > asked.last_count:
                yield f"{asked.name}: {short} strips are cut short for {asked.last_count} joined lengths"

    # --- the shelf -----------------------------------------------------------------------------------------

    def sheets_hold(self) -> Iterator[str]:
        """No piece on hand gives more strips and rows side by side than it is wide after straightening."""
        for sheet in self.plan.hand_sheets:
            own = Counter(round(strip.width, 6) for strip in self.strips if strip.stock == sheet.name)
            if own != Counter({round(width, 6): count for width, count in sheet.strips}):
                yield f"{sheet.name} lists strips {sheet.strips}, the plan takes {dict(own)} from it"
            taken = sum(width * count for width, count in own.items()) + sum(row.height for row in sheet.rows)
            if taken > sheet.usable_stack + _SLACK or abs(taken - sheet.used_in) > _SLACK:
                yield f"{sheet.name} gives {taken:g} in side by side of {sheet.usable_stack:g} in"
            yield from self._is_as_measured(sheet)

    def _is_as_measured(self, sheet: HandSheet) -> Iterator[str]:
        wide, long = sheet.wide * self.across, sheet.long * self.along
        length, stack = (long, wide) if sheet.along == "long" else (wide, long)
        if sheet.usable_length > length + _SLACK or sheet.usable_stack > stack + _SLACK:
            yield f"{sheet.name} is used as {sheet.usable_length:g} × {sheet.usable_stack:g} in, more than it measures"
        off = min(self.numbers.fat_quarter_straightening, self.numbers.straightening)
        if sheet.usable_stack > max(stack - off, 0.0) + _SLACK:
            yield f"{sheet.name} is used without straightening"
        for strip in self.strips:
            if strip.stock == sheet.name and strip.length > sheet.usable_length + _SLACK:
                yield f"{sheet.name} gives a strip of {strip.length:g} in and is {sheet.usable_length:g} in long"

    def stock_is_there(self) -> Iterator[str]:
        """Nothing is taken that is not on hand, and nothing is bought that cannot be bought."""
        sheets = {sheet.name for sheet in self.plan.hand_sheets}
        if len(sheets) != len(self.plan.hand_sheets):
            yield "two pieces on hand have one name"
        on_hand: Counter[_Size] = Counter()
        for kind in self.fabric.on_hand:
            on_hand[round(kind.wide.inches, 5), round(kind.long.inches, 5)] += kind.count
        used = Counter((round(sheet.wide, 5), round(sheet.long, 5)) for sheet in self.plan.hand_sheets)
        for size, count in used.items():
            if count > on_hand[size]:
                yield f"{count} pieces of {size[0]:g} × {size[1]:g} in are cut and {on_hand[size]} are on hand"
            on_hand[size] -= count
        yield from self._precut_is_there(sheets, on_hand)

    def _precut_is_there(self, sheets: set[str], on_hand: Counter[_Size]) -> Iterator[str]:
        precut: Counter[_Size] = Counter()
        for strip in self.strips:
            if strip.stock == _NEW and self.fabric.only_on_hand:
                yield "a strip is bought although nothing can be"
            elif strip.stock != _NEW and strip.stock not in sheets:
                precut[round(strip.width, 5), round(strip.length, 5)] += 1
        for (wide, long), count in precut.items():
            there = on_hand[wide, long] + (on_hand[long, wide] if wide != long else 0)
            if count > there:
                yield f"{count} precut strips of {wide:g} × {long:g} in are used and {there} are on hand"

    # --- the purchase --------------------------------------------------------------------------------------

    def purchase_adds_up(self) -> Iterator[str]:
        """Widths side by side and straightening fit what is bought, and the shop sells it so."""
        plan = self.plan
        new = [strip.width for strip in self.strips if strip.stock == _NEW] + [row.height for row in plan.rows]
        if abs(sum(new) - plan.used_in) > _SLACK:
            yield f"cuts take {sum(new):g} in, the plan says {plan.used_in:g} in"
        need = (sum(new) + self.numbers.straightening) / self.along if new else 0.0
        if abs(need - plan.need_in) > _SLACK:
            yield f"{need:g} in are needed, the plan says {plan.need_in:g} in"
        if plan.need_in > plan.buy_in + _SLACK:
            yield f"{plan.need_in:g} in are needed and {plan.buy_in:g} in bought"
        if abs(plan.buy_in - plan.need_in - plan.spare_in) > _SLACK:
            yield f"{plan.buy_in:g} in less {plan.need_in:g} in is not {plan.spare_in:g} in"
        if plan.buy_in > 0:
            yield from self._is_sold(plan.buy_in)
        if plan.miscuts and new:
            strips = [strip.width for strip in self.strips if strip.stock == _NEW]
            if plan.miscuts * max(strips or new) > plan.spare_in * self.along + _SLACK:
                yield f"{plan.miscuts} further strips do not come from {plan.spare_in:g} in"
        if plan.short_in > _SLACK and not plan.left_out:
            yield f"{plan.short_in:g} in are short although every piece is cut"

    def _is_sold(self, bought: float) -> Iterator[str]:
        steps = bought / self.numbers.buy_in_steps_of
        at_least = abs(bought - self.numbers.buy_at_least) < _SLACK
        if abs(steps - round(steps)) * self.numbers.buy_in_steps_of > _SLACK and not at_least:
            yield f"{bought:g} in is no step of the shop"
        if bought < self.numbers.buy_at_least - _SLACK:
            yield f"{bought:g} in is less than a shop cuts"
        if bought - self.numbers.buy_in_steps_of > self.plan.need_in + _SLACK and not at_least:
            yield f"a step less than {bought:g} in would do"

    # --- proofs --------------------------------------------------------------------------------------------

    def bounds_hold(self) -> Iterator[str]:
        """No bound lies above what the plan does, and "proved" means that they meet."""
        for plan in self.plan.strip_plans:
            new = sum(strip.stock == _NEW for strip in plan.strips)
            if plan.bound > len(plan.strips) or plan.new_bound > new:
                yield f"the bound of the {plan.width:g} in strips lies above the plan"
            if plan.status == "proved" and plan.new_bound != new:
                yield f"{new} strips of {plan.width:g} in are called proved with a bound of {plan.new_bound}"
        if self.plan.bound_in > self.plan.need_in + _SLACK:
            yield f"the bound of {self.plan.bound_in:g} in lies above the need of {self.plan.need_in:g} in"
        if self.plan.status == "proved" and not is_proof(self.plan, self.numbers):
            yield f"{self.plan.need_in:g} in are called proved with a bound of {self.plan.bound_in:g} in"
        if (self.plan.status == "impossible") != bool(self.plan.left_out):
            yield f"the plan is called {self.plan.status} and leaves out {len(self.plan.left_out)} pieces"

    # --- the strip in the hand -----------------------------------------------------------------------------

    def hand_follows(self) -> Iterator[str]:
        """Step by step the rests are what is left, in sewing order, and every piece is taken once."""
        for plan in self.plan.strip_plans:
            if plan.as_you_go:
                yield from self._steps_follow(plan)

    def _steps_follow(self, plan: StripPlan) -> Iterator[str]:
        rests: dict[int, float] = {}
        taken: dict[int, list[_Key]] = {}
        steps = [step.step for step in plan.hand_steps]
        if steps != sorted(steps):
            yield f"the steps {steps} are not in sewing order"
        for step in plan.hand_steps:
            number = step.strip_number
            if step.opens_new != (number not in rests):
                yield f"strip {number} is opened twice or never (step {step.step})"
            if not 1 <= number <= len(plan.strips):
                yield f"step {step.step} takes strip {number} of {len(plan.strips)}"
                continue
            there = rests.get(number, plan.strips[number - 1].length)
            if abs(there - step.rest_before) > _SLACK or step.length > there + _SLACK:
                yield f"step {step.step} finds {there:g} in, not {step.rest_before:g}, and takes {step.length:g}"
            if abs(max(there - step.length, 0.0) - step.rest_after) > _SLACK:
                yield f"step {step.step} leaves {there - step.length:g} in, not {step.rest_after:g}"
            rests[number] = step.rest_after
            taken.setdefault(number, []).append((step.piece, step.length))
        for number, strip in enumerate(plan.strips, 1):
            if sorted(taken.get(number, [])) != sorted(strip.pieces):
                yield f"the steps take other pieces from strip {number} than the plan"
