"""What every page says the same way: numbers in the maker's unit, fabrics by letter, sizes wide × long.

Lengths go through the project's `Speaker`, never past it; here are only the turns of phrase round them.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property
from math import ceil

from stitchflip.lengths import TIMES, UNIT_SPACE, Rounding, Speaker, Unit, format_inches, round_to
from stitchflip.pattern.model import Mark, Span, Words, words
from stitchflip.pictures import kind_plan
from stitchflip.piecing.model import SewnPiece
from stitchflip.planning.model import BlockKind, Plan
from stitchflip.project.model import CenterShape, Fabric, Outline, Runs, Way
from stitchflip.values import dataclass

METERS_PER_YARD = 0.9144
_NUMBER_WORDS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
_ROUND_WORDS = {Outline.ROUND: "round", Outline.OVAL: "oval"}
_SHAPES = {3: "triangle", 4: "square", 5: "pentagon", 6: "hexagon", 7: "heptagon", 8: "octagon"}


def listed(parts: Sequence[str], last: str = "and") -> str:
    """Words in a row.

    Example:
        >>> listed(["A", "B", "C"])
        'A, B and C'
    """
    return "".join(parts) if len(parts) < 2 else f"{', '.join(parts[:-1])} {last} {parts[-1]}"


def counted(number: int, one: str, many: str = "") -> str:
    """A number and what it counts.

    Example:
        >>> counted(1, "strip"), counted(28, "strip")
        ('1 strip', '28 strips')
    """
    return f"{number} {one if number == 1 else many or one + 's'}"


def number_word(number: int) -> str:
    """A small count as a word, a larger one in figures.

    Example:
        >>> number_word(4), number_word(28)
        ('four', '28')
    """
    return _NUMBER_WORDS[number] if 0 <= number < len(_NUMBER_WORDS) else str(number)


def sentence(text: str) -> str:
    """The text with its first letter large.

    Example:
        >>> sentence("four alike")
        'Four alike'
    """
    return text[:1].upper() + text[1:]


def runs_of(numbers: Sequence[int]) -> str:
    """Steps in a row drawn together.

    Example:
        >>> runs_of([1, 2, 3, 7, 9, 10])
        '1 to 3, 7, 9, 10'
    """
    groups: list[list[int]] = []
    for number in numbers:
        if groups and number == groups[-1][-1] + 1:
            groups[-1].append(number)
        else:
            groups.append([number])
    said = [f"{group[0]} to {group[-1]}" if len(group) > 2 else ", ".join(map(str, group)) for group in groups]
    return ", ".join(said)


class Teller:
    """Speaks about one plan."""

    def __init__(self, plan: Plan) -> None:
        self.plan = plan
        self.project = plan.project
        self.unit = plan.project.units
        self.say = Speaker(self.unit)
        self.bare = self.say.bare

    # --- numbers -----------------------------------------------------------------------------------------

    @property
    def unit_word(self) -> str:
        """Unit for the head of a table's column."""
        return self.unit.value

    def pick(self, inches: float, cm: float) -> float:
        """A house number that is one round figure in inches and another in centimeters; inches."""
        return inches if self.unit is Unit.INCH else cm / 2.54

    def whole(self, length_in: float) -> str:
        """A length told roughly, to the whole inch or centimeter."""
        step = self.pick(1, 1)
        return self.say.near(round_to(length_in, step, Rounding.NEAREST))

    def hours(self, hours: float) -> str:
        """Hours to the half."""
        return format_inches(hours, 0.5)

    def thread(self, yards: float) -> str:
        """Thread in yards or meters, up to a whole one."""
        if self.unit is Unit.INCH:
            return f"{ceil(yards - 1e-6)}{UNIT_SPACE}yd"
        return f"{ceil(yards * METERS_PER_YARD - 1e-6)}{UNIT_SPACE}m"

    def wide_long(self, x_extent: float, y_extent: float) -> tuple[float, float]:
        """(wide, long) of something measured along x and y, as the project says wide and long."""
        is_across = self.project.squared_up.length_runs is Runs.ACROSS
        return (y_extent, x_extent) if is_across else (x_extent, y_extent)

    def size_of(self, x_extent: float, y_extent: float) -> str:
        """Wide × long of something measured along x and y."""
        return self.say.size(*self.wide_long(x_extent, y_extent))

    # --- the piece ---------------------------------------------------------------------------------------

    @property
    def edition(self) -> str:
        """Edition and date in words."""
        date = f" · {self.project.date}" if self.project.date else ""
        return f"edition {self.project.edition}{date}"

    @cached_property
    def shape_word(self) -> str:
        """The squared-up shape in a word; "" for a rectangle."""
        wanted = self.project.squared_up
        if wanted.shape is not Outline.POLYGON:
            return ""
        count = len(self.plan.square_up.sides)
        return _SHAPES.get(count, f"shape with {count} sides")

    @property
    def is_pointed(self) -> bool:
        """True when the trim has points at its ends that are not corners of a rectangle or regular shape."""
        return self.project.squared_up.shape is Outline.RECTANGLE and len(self.plan.square_up.sides) == 6

    def squared_up_size(self) -> str:
        """The squared-up size word by word: of a quilt as a whole, of a base that is cut apart a panel's."""
        quilt, panels = self.plan.quilt, self.plan.panels
        if quilt is not None:
            return f"{self.size_of(quilt.wide, quilt.high)} (wide × long)"
        if panels is not None:
            shape = _ROUND_WORDS.get(self.project.squared_up.shape, "")
            return f"{self.size_of(panels.wide, panels.high)} each (wide × long{f', {shape}' if shape else ''})"
        return self.block_size()

    def block_size(self) -> str:
        """The squared-up size of what is sewn on one base, word by word."""
        square = self.plan.square_up
        shape = self.project.squared_up.shape
        if shape is Outline.ROUND:
            return f"{self.say.near(square.wide)} across (round)"
        if shape is Outline.OVAL:
            return f"{self.size_of(square.wide, square.high)} (wide × long, oval)"
        if self.shape_word:
            across = self._across_flats()
            if across is not None:
                corners = (
                    f", {self.say.near(max(square.diagonals))} between opposite corners" if square.diagonals else ""
                )
                return f"{self.say.near(across)} between opposite sides{corners} ({self.shape_word})"
            return f"{self.size_of(square.wide, square.high)} (wide × long, over all; {self.shape_word})"
        ends = ", point to point" if self.is_pointed else ""
        radius = self.project.squared_up.corner_radius
        rounded = f", corners rounded, radius {self.say.width(radius.inches)}" if radius is not None else ""
        return f"{self.size_of(square.wide, square.high)} (wide × long{ends}{rounded})"

    def _across_flats(self) -> float | None:
        """Distance between opposite sides of a shape with an even number of sides."""
        sides = self.plan.square_up.sides
        if len(sides) % 2:
            return None
        return sides[0].distance + sides[len(sides) // 2].distance

    @cached_property
    def strips(self) -> tuple[SewnPiece, ...]:
        """The strips that are really sewn, in order."""
        return tuple(strip for strip in self.plan.build.strips if strip.cut_length > 0)

    @property
    def how_many(self) -> int:
        """Pieces alike."""
        return self.project.how_many

    @property
    def is_quilt(self) -> bool:
        """True for a piece of several joined blocks."""
        return self.plan.quilt is not None and self.project.blocks_in_one > 1

    @property
    def is_bordered(self) -> bool:
        """True for a single piece that only gets borders."""
        return self.plan.quilt is not None and not self.is_quilt

    @property
    def bases(self) -> int:
        """Bases to make for all pieces: one for each block."""
        return self.project.bases

    @property
    def kinds(self) -> tuple[BlockKind, ...]:
        """Kinds of block; one for a piece by itself."""
        return self.plan.kinds

    @cached_property
    def used_kinds(self) -> tuple[int, ...]:
        """Indices of the kinds of which there is at least one block; the first alone for a piece by itself."""
        return tuple(index for index, kind in enumerate(self.kinds) if kind.count > 0) or (0,)

    def for_kind(self, kind: int) -> Teller:
        """Speaks about one block of a kind, by itself."""
        return Teller(kind_plan(self.plan, kind))

    @cached_property
    def strips_in_all(self) -> int:
        """Strips to sew for everything that is made."""
        return self.how_many * sum(
            kind.count * sum(1 for strip in kind.build.strips if strip.cut_length > 0) for kind in self.kinds
        )

    @property
    def is_foundation(self) -> bool:
        """True when patches are sewn along numbered lines."""
        return self.project.building.way is Way.FOUNDATION

    def number(self, step: int) -> str:
        """The number of a step as pages and pictures have it; patches are counted from the first, without a line."""
        return str(step + 1 if self.is_foundation else step)

    @property
    def strips_word(self) -> str:
        """More than one of them."""
        return "patches" if self.is_foundation else f"{self.strip_word}s"

    def counted_strips(self, count: int) -> str:
        """A count of strips with its word: "28 strips", "1 patch"."""
        return counted(count, self.strip_word, self.strips_word)

    @property
    def strip_word(self) -> str:
        """What one sewn piece is called: a strip, a patch of a numbered foundation, a square on a corner."""
        return {Way.FOUNDATION: "patch", Way.FOLDED_CORNERS: "square"}.get(self.project.building.way, "strip")

    @property
    def is_several(self) -> bool:
        """True when more than one piece is made."""
        return self.project.how_many > 1

    @property
    def first_name(self) -> str:
        """What the first piece is called."""
        if self.plan.build.first_is_strip:
            return "middle strip" if self.plan.build.first_is_middle else "first strip"
        if self.is_half_done:
            return "half-done piece"
        return "patch 1" if self.is_foundation else "center"

    @property
    def the_first(self) -> str:
        """The first piece in a sentence: a patch has a number, everything else an article."""
        return self.first_name if self.is_foundation else f"the {self.first_name}"

    @property
    def mirror(self) -> float:
        """-1 where places are marked on the side that is sewn from, the front in a mirror; 1 on the front."""
        return -1.0 if self.is_foundation else 1.0

    @property
    def is_half_done(self) -> bool:
        """True when the strips go round a piece that is sewn already."""
        return self.project.center is not None and self.project.center.sewn_already

    @property
    def is_shaped(self) -> bool:
        """True for a center that is cut to its shape out of a rectangle."""
        center = self.project.center
        return center is not None and center.shape in {CenterShape.POLYGON, CenterShape.CORNERS}

    def cut_numbers(self, kind: str, wide_in: float, long_in: float) -> str:
        """Wide × long of a piece as cut, without the unit; the rectangle round a shaped center is rounded up."""
        if kind == "rectangle" and self.is_shaped:
            return f"{self.bare.cut(wide_in)}{TIMES}{self.bare.cut(long_in)}"
        return self.bare.cut_size(wide_in, long_in)

    # --- fabrics -----------------------------------------------------------------------------------------

    def mark(self, fabric: str) -> Mark:
        """The fabric's letter beside its color."""
        color = next((one.color for one in self.plan.letters if one.fabric == fabric), "#ffffff")
        return Mark(self.plan.letter_of(fabric), color)

    def named(self, fabric: str) -> Words:
        """Letter and name of a fabric."""
        return words(self.mark(fabric), Span(f" {fabric}"))

    def fabric(self, name: str) -> Fabric | None:
        """The project's entry for a fabric."""
        return next((one for one in self.project.fabrics if one.name == name), None)

    @property
    def iron_is_safe(self) -> bool:
        """True when the batting stands the iron."""
        batting = self.project.batting
        return batting.iron if batting.iron is not None else batting.fiber.value != "polyester"

    @property
    def usable_width(self) -> float:
        """Usable width reckoned with where a fabric gives none of its own, inches."""
        return self.plan.numbers.usable_width

    def purchase(self, length_in: float) -> str:
        """What to buy; in an inch project with the metric counter's amount in brackets."""
        said = self.say.purchase(length_in)
        if self.unit is Unit.CM:
            return said
        return f"{said} ({Speaker(Unit.CM).purchase(length_in)})"


@dataclass(frozen=True, slots=True)
class Piecewise:
    """How the strips are grouped for telling: a run of strips of one round, fabric and cut width."""

    round: int
    strips: tuple[SewnPiece, ...]


def runs_of_strips(strips: Sequence[SewnPiece]) -> tuple[Piecewise, ...]:
    """Neighboring strips of one round, fabric and cut width together, in sewing order."""
    groups: list[list[SewnPiece]] = []
    for strip in strips:
        last = groups[-1][-1] if groups else None
        same = (
            last
            and (last.round, last.fabric) == (strip.round, strip.fabric)
            and abs(last.cut_width - strip.cut_width) < 1e-6
        )
        if same:
            groups[-1].append(strip)
        else:
            groups.append([strip])
    return tuple(Piecewise(group[0].round, tuple(group)) for group in groups)
