"""The order of the hand in words: what to do, what is left, and when to look before going on.

One sentence a step. Every number in it is one the ruler is set to, and what a stranger needs to follow it stands in
it: how the fabric lies, how often to cut, which pieces come of it.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.hand import SELVAGES_IN
from stitchflip.cutting.hand_bands import TRIMMED_LATER
from stitchflip.cutting.hand_model import NEW_FABRIC, Act, CuttingOrder, Given, OrderStep, Part
from stitchflip.lengths import CM_PER_INCH, INCHES_PER_YARD, Speaker, Unit

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Sequence

    from stitchflip.project.numbers import Numbers

_RULER_WIDE_IN = {Unit.INCH: 6.5, Unit.CM: 15 / CM_PER_INCH}
"""The usual ruler is 6½ × 24 in, or 15 × 60 cm."""
_SQUARE_UP_AFTER = 4
"""So many cuts and the folded edge is looked at again."""
_MOST_LAYERS = 4
_TIGHT_IN = 3 / 16
"""A row or strip that keeps less than this is measured before it is cut."""
_NOTHING_IN = 1 / 16
_SLACK = 1e-4
_TIMES = {1: "once", 2: "twice"}
_UNNAMED = "piece on hand"
_MOST_DIGITS = 6
"""Numbers of steps are no longer, so that they sort as they are sewn."""

CAUTION = (
    "Rotary cutter: stand, cut away from yourself, fingers behind the ruler's edge; close the guard each time you put "
    "it down; never near children, never when tired. What the makers of your tools say comes first."
)
"""The usual caution, once for all orders."""


class HandWords:
    """Says the steps of an order in the maker's unit."""

    def __init__(self, numbers: Numbers, unit: Unit) -> None:
        """Keep the voice, and what ruler and mat can do."""
        self._say = Speaker(unit)
        self._numbers = numbers
        self._ruler_wide = _RULER_WIDE_IN[unit]

    # --- the three columns ---------------------------------------------------------------------------------

    def does(self, step: OrderStep) -> str:
        """What to do, one sentence or two.

        Args:
            step: one step of an order.
        """
        match step.act:
            case Act.WASH:
                size = self._rest(*step.before)
                what = f"it ({size} as bought)" if step.source == NEW_FABRIC else f"{_the(step.source)} ({size})"
                return f"Wash and dry {what} as you will the finished piece, then press it."
            case Act.STRAIGHTEN:
                return self._straighten(step)
            case Act.COLUMN:
                return self._column(step)
            case Act.ACROSS:
                return self._across(step)
            case Act.TAKE:
                size = self._size(step.wide, step.long)
                of = "" if size in step.source else f" of {step.source}"
                return f"From the shelf take {_counted(len(step.numbers), 'strip')} {size}{of}{_numbered(step)}."
            case Act.SUBCUT:
                return self._subcut(step)
            case Act.LABEL:
                need = "need" if len(step.numbers) > 1 else "needs"
                selvages = ", selvages off" if step.source == NEW_FABRIC else ""
                return f"{_sentence(self._bands(step))} {need} no further cut{selvages}: {_labels(step.gives)}."
            case Act.KEEP:
                return self._keep(step)

    def left(self, step: OrderStep) -> str:
        """What remains after it: of the fabric, or of each row or strip; "" where nothing changes.

        Args:
            step: one step of an order.
        """
        match step.act:
            case Act.WASH | Act.STRAIGHTEN | Act.COLUMN | Act.ACROSS:
                if min(step.left) < _NOTHING_IN:
                    return "nothing"
                return self._rest(*step.left)
            case Act.SUBCUT:
                if any(given.has_motif for given in step.gives):
                    return "what lies round the windows"
                wide, long = step.left if step.what == "strip" else (step.left[1], step.left[0])
                each = " of each" if len(step.numbers) > 1 else ""
                return f"{self._rest(wide, long)}{each}" if min(wide, long) >= _NOTHING_IN else "nothing"
            case _:
                return ""

    def check(self, step: OrderStep) -> str:
        """What to look at before going on; "" when there is nothing.

        Args:
            step: one step of an order.
        """
        said: list[str] = []
        if step.act is Act.ACROSS and step.folds and step.parts[0].count > _SQUARE_UP_AFTER:
            said.append(
                f"After every {_SQUARE_UP_AFTER} cuts open a {step.what}: is it straight at the fold? If not, square "
                "the fold up again before you go on."
            )
        if step.act is Act.ACROSS and step.parts[0].count > 1:
            said.append(f"Count: {_counted(step.parts[0].count, step.what)}.")
        if (
            step.act is Act.SUBCUT
            and not any(given.has_motif for given in step.gives)
            and max(step.left[1], 0.0) < _TIGHT_IN
            and not step.parts[0].then
        ):
            takes, room = self._say.near(step.long - step.left[1]), self._say.near(step.long)
            said.append(f"Measure first: it takes {f'all of its {room}' if takes == room else f'{takes} of {room}'}.")
        return " ".join(said)

    # --- each act ------------------------------------------------------------------------------------------

    def _straighten(self, step: OrderStep) -> str:
        say = self._say
        across, along = step.before
        if step.source != NEW_FABRIC and abs(step.left[0] - across) > _SLACK:
            off = " and ".join(
                dict.fromkeys(say.width(before - after) for before, after in zip(step.before, step.left, strict=True))
            )
            return (
                f"Lay {_the(step.source)} ({self._size(across, along)}) flat and straighten two neighboring sides: "
                f"{off} off each, no more."
            )
        name = "the fabric" if step.source == NEW_FABRIC else f"{_the(step.source)} ({self._size(across, along)})"
        off = say.width(along - step.left[1])
        return f"{self._folded(name, step)} Straighten one cut end: {off} off, no more."

    def _folded(self, name: str, step: OrderStep) -> str:
        """How the fabric lies before it is cut across."""
        half = self._say.near(step.before[0] / 2**step.folds)
        if not step.folds:
            return f"Lay {name} flat, one layer."
        if step.folds == 1:
            return f"Fold {name} once, selvage on selvage: {half} wide as it lies."
        return f"Fold {name} selvage on selvage, then the fold on the selvages: {half} wide as it lies, 4 layers."

    def _column(self, step: OrderStep) -> str:
        measure = step.parts[0].measure
        column = step.before[0] - measure
        size = self._rest(column, step.before[1])
        return (
            f"{self._by(measure, step.cut_in)}: cut once from side to side; the part beyond, {size}, is for the shelf."
        )

    def _across(self, step: OrderStep) -> str:
        part = step.parts[0]
        wide = self._say.width(part.measure)
        word = "wide" if step.what == "strip" else "high"
        made = f"{_counted(part.count, step.what)} {wide} {word}{_numbered(step)}"
        return f"{self._by(part.measure, self._lies(step))}: cut across {_times(part.count)}{self._how(step)}, {made}."

    def _lies(self, step: OrderStep) -> float:
        return step.folded_in

    def _how(self, step: OrderStep) -> str:
        """The folded measure, and what to do when the ruler is too short all the same."""
        said = f" ({self._say.near(step.long / 2**step.folds)} folded)" if step.folds else ""
        if step.folded_in > self._numbers.longest_cut + _SLACK:
            said += ", longer than your ruler even so: cut as far as it reaches, slide it along the cut and go on"
        return said

    def _subcut(self, step: OrderStep) -> str:
        many = len(step.numbers) > 1
        layers = f", up to {_MOST_LAYERS} on one another" if many else ""
        selvages = ", selvages off" if step.source == NEW_FABRIC else ""
        opened = ", opened out" if self._was_folded(step) and not step.folds else ""
        fold = ""
        if step.folds:
            folded = self._say.near(step.folded_in)
            fold = f", folded {_times(step.folds)} for each cut ({folded} folded)"
        windows = [part for part in step.parts if any(given.has_motif for given in part.pieces())]
        parts = [self._part(part, step.folded_in, each=many) for part in step.parts if part not in windows]
        said = [self._windows(windows)] if windows else []
        said += [f"subcut {'; '.join(parts)}"] if parts else []
        if windows:
            opened, layers, fold = ", opened out", "", ""
        return f"{_sentence(self._bands(step))}{opened}{selvages}{layers}{fold}: {'; '.join(said)}."

    def _was_folded(self, step: OrderStep) -> bool:
        """True for a strip or row of fabric that was cut across as it lay folded."""
        return step.source == NEW_FABRIC and step.long + SELVAGES_IN > self._numbers.longest_cut + _SLACK

    def _windows(self, parts: Sequence[Part]) -> str:
        """Windows round motifs: their places are found before anything is cut."""
        first = parts[0]
        long = first.then[0].measure if first.then else first.room
        gives = [given for part in parts for given in part.pieces()]
        count = sum(given.count for given in gives)
        size = self._say.cut_size(first.measure, long)
        one, them = ("the motif", "it") if count == 1 else ("the motifs", "them")
        what = f"{_labels(gives)}{self._slanted(gives)}"
        return f"find {one} first, then cut round {them} {_counted(count, 'window')} {size}: {what}"

    def _slanted(self, gives: Sequence[Given]) -> str:
        one = next((given for given in gives if given.is_slanted), None)
        if one is None:
            return ""
        return f", cut {self._say.cut_size(one.wide, one.long)} on the slant out of it"

    def _part(self, part: Part, cut_in: float, *, each: bool) -> str:
        """One setting of the ruler, with what comes of it."""
        how = "" if self._is_for_ruler(part.measure, cut_in) else f" {self._tool(part.measure, cut_in)}"
        times = f"{_times(part.count)}{' each' if each else ''}"
        said = f"{self._say.width(part.measure)}{how} {times}"
        if part.gives:
            return f"{said}: {self._what(part.gives)}"
        return f"{said}, {self._then(part)}"

    def _then(self, part: Part) -> str:
        """Cuts the other way."""
        if len(part.then) == 1 and part.then[0].count == 1 and part.then[0].gives:
            one = part.then[0]
            return f"trim to {self._say.width(one.measure)}: {self._what(one.gives)}"
        inner = ", ".join(self._inner(one) for one in part.then)
        return f"off it {inner}"

    def _inner(self, part: Part) -> str:
        said = f"{self._say.width(part.measure)} {_times(part.count)}"
        if part.gives:
            return f"{said} ({self._what(part.gives)})"
        one = part.then[0]
        return f"{said} and trim to {self._say.width(one.measure)} ({self._what(one.gives)})"

    def _what(self, gives: Sequence[Given]) -> str:
        return f"{_labels(gives)}{self._slanted(gives)}"

    def _keep(self, step: OrderStep) -> str:
        stay = f"{_sentence(self._bands(step))} {'stays' if len(step.numbers) == 1 else 'stay'} whole"
        if step.purpose == TRIMMED_LATER:
            as_sewn = sorted(step.gives, key=lambda given: (not given.label.isdigit(), given.label.zfill(_MOST_DIGITS)))
            return f"{stay}; trim as you sew: {_labels(as_sewn)}."
        return f"{stay}: {_labels(step.gives, _strips)}."

    # --- words ---------------------------------------------------------------------------------------------

    def _bands(self, step: OrderStep) -> str:
        """Which strips or rows."""
        many = "s" if len(step.numbers) > 1 else ""
        return f"{step.what}{many} no. {_runs(step.numbers)}"

    def _by(self, measure: float, cut_in: float) -> str:
        said = self._say.width(measure)
        if self._is_for_ruler(measure, cut_in):
            return f"Ruler at {said}"
        if self._is_for_mat(measure, cut_in):
            return f"Mat lines at {said} (wider than the ruler)"
        return f"Tape at {said}, marked at both ends (wider than ruler and mat)"

    def _is_for_ruler(self, measure: float, cut_in: float) -> bool:
        """True when one ruler measures it, across or along."""
        longest = self._numbers.longest_cut
        across = measure <= self._ruler_wide + _SLACK
        along = cut_in <= self._ruler_wide + _SLACK and measure <= longest + _SLACK
        return across or along

    def _is_for_mat(self, measure: float, cut_in: float) -> bool:
        """True when the fabric lies on the mat's lines from the edge to the cut, which way round ever."""
        wide, long = self._numbers.mat_wide + _SLACK, self._numbers.mat_long + _SLACK
        return measure <= long or (measure <= wide and cut_in <= long)

    def _tool(self, measure: float, cut_in: float) -> str:
        return "by the mat's lines" if self._is_for_mat(measure, cut_in) else "by tape"

    def _size(self, wide: float, long: float) -> str:
        return self._say.size(wide, long)

    def _rest(self, wide: float, long: float) -> str:
        """Wide × long of what is left, never more than there is."""
        bare = self._say.bare
        return f"{bare.margin(wide)}\u202f×\u202f{self._say.margin(long)}"


def leftover_words(order: CuttingOrder, unit: Unit) -> tuple[str, ...]:
    """What is left for the shelf, one phrase each.

    Args:
        order: the order it is left from.
        unit: the maker's unit.

    Returns:
        Such as "Brass leftover 1: 40 × 3½ in".
    """
    say = Speaker(unit)
    return tuple(
        f"{one.name}: {f'{one.count} of ' if one.count > 1 else ''}"
        f"{say.bare.margin(one.wide)}\u202f×\u202f{say.margin(one.long)}"
        for one in order.leftovers
    )


def amount_words(length_in: float, unit: Unit) -> str:
    """A length of fabric: as the shop sells it, or as it measures when it is no step of a shop.

    Args:
        length_in: inches of length.
        unit: the maker's unit.

    Example:
        >>> [amount_words(length, Unit.INCH).replace("\u202f", " ") for length in (18, 24, 13)]
        ['½ yd', '⅔ yd', '13 in']
    """
    say = Speaker(unit)
    steps = (INCHES_PER_YARD / 8, INCHES_PER_YARD / 3) if unit is Unit.INCH else (5 / CM_PER_INCH,)
    is_sold = any(abs(length_in / step - round(length_in / step)) < _SLACK for step in steps)
    return say.purchase(length_in) if is_sold else say.margin(length_in)


def _the(source: str) -> str:
    return f"the {source}" if source[:1].islower() and source != _UNNAMED else source


def _counted(count: int, what: str) -> str:
    return f"{count} {what}{'' if count == 1 else 's'}"


def _times(count: int) -> str:
    return _TIMES.get(count, f"{count} times")


def _numbered(step: OrderStep) -> str:
    return f" (no. {_runs(step.numbers)})"


def _runs(numbers: Sequence[int]) -> str:
    """Numbers as one says them: "1", "1 and 2", "1 to 4, 7"."""
    runs: list[list[int]] = []
    for number in sorted(numbers):
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    said: list[str] = []
    for run in runs:
        said += [f"{run[0]} to {run[-1]}"] if len(run) > 2 else [str(number) for number in run]
    return f"{', '.join(said[:-1])} and {said[-1]}" if len(said) > 1 else said[0]


def _strips(count: int) -> str:
    return _counted(count, "strip")


def _labels(gives: Iterable[Given], counted: Callable[[int], str] = _times) -> str:
    """What pieces are called, with their counts: "pieces 5, 6 (twice)", "center", "binding (3 strips)"."""
    counts: dict[str, int] = {}
    for given in gives:
        counts[given.label] = counts.get(given.label, 0) + given.count
    numbered = [_often(label, count, counted) for label, count in counts.items() if label.isdigit()]
    word = f"piece{'s' if len(numbered) > 1 else ''} "
    said = [f"{word}{', '.join(numbered)}"] if numbered else []
    said += [_often(_small(label), count, counted) for label, count in counts.items() if not label.isdigit()]
    return ", ".join(said)


def _often(label: str, count: int, counted: Callable[[int], str]) -> str:
    return label if count == 1 else f"{label} ({counted(count)})"


def _small(name: str) -> str:
    return name[:1].lower() + name[1:]


def _sentence(text: str) -> str:
    return text[:1].upper() + text[1:]
