"""The project as the maker writes it down: one small frozen model for each thing on the table.

Everything a plan depends on is here and nothing that is computed. Lengths are exact (`Length`); the file
reader hands the project's unit to the parser, so "13" means inches in an inch project and centimeters in
a metric one. The models only hold and check values that can be judged alone; what needs the geometry
(does the center fit the base?) is a finding of the plan.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, ValidationInfo

from stitchflip.lengths import Length, Unit, parse_length


def _read_length(value: object, info: ValidationInfo) -> object:
    """Read a length typed by hand; a bare number counts in the project's unit."""
    if isinstance(value, Length):
        return value
    unit = (info.context or {}).get("unit", Unit.INCH)
    return parse_length(str(value), unit)


Measure = Annotated[Length, BeforeValidator(_read_length)]


class _Model(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid", arbitrary_types_allowed=True)


class Working(StrEnum):
    """How she works: everything cut from the list, or from the strip in the hand."""

    CUT_FIRST = "cut first"
    TRIM_AS_YOU_GO = "trim as you go"


class Outline(StrEnum):
    """Shape of the squared-up piece."""

    RECTANGLE = "rectangle"
    POLYGON = "polygon"


class Ends(StrEnum):
    """Ends of a rectangle: straight across, or 45-degree points."""

    SQUARE = "square"
    POINTED = "pointed"


class Runs(StrEnum):
    """Which way the long measure lies in pictures and side names."""

    UP = "up"
    ACROSS = "across"


class SquaredUp(_Model):
    """The size wanted after squaring up (taped, trim edge to trim edge)."""

    shape: Outline = Outline.RECTANGLE
    wide: Measure | None = None
    long: Measure | None = None
    beyond_points: Measure | None = None
    """Instead of wide and long: this much beyond the center's points, to the trim edge."""
    ends: Ends = Ends.SQUARE
    length_runs: Runs = Runs.UP
    sides: int | None = None
    across_flats: Measure | None = None
    turned: float = 0.0
    """Polygon only, degrees counter-clockwise; 0 has a side at the bottom."""
    wish_beyond_points: Measure | None = None
    """What she wants beyond each point of the center, to the trim edge (default: my numbers)."""


class Through(StrEnum):
    """What is sewn through."""

    BACKING_AND_BATTING = "backing and batting"
    BATTING_ONLY = "batting only"
    BATTING_ON_FOUNDATION = "batting on foundation"


class Base(_Model):
    """The base: what the strips are sewn to. Sizes left out are computed."""

    through: Through = Through.BACKING_AND_BATTING
    wide: Measure | None = None
    long: Measure | None = None
    spare_across: Measure | None = None
    """Spare per side, across the width (x when the length runs up)."""
    spare_at_ends: Measure | None = None


class CenterShape(StrEnum):
    """Shape of the center as cut."""

    SQUARE = "square"
    RECTANGLE = "rectangle"
    POLYGON = "polygon"
    CORNERS = "corners"


class Center(_Model):
    """The first piece, by its cut size."""

    fabric: str
    shape: CenterShape = CenterShape.SQUARE
    cut: Measure | None = None
    """Square: side as cut. Polygon: across the flats as cut."""
    cut_wide: Measure | None = None
    cut_long: Measure | None = None
    sides: int | None = None
    corners: tuple[tuple[float, float], ...] | None = None
    """Cut corners in the project's unit, counter-clockwise, x across and y up, from the center mark."""
    turned: float = 0.0
    """Degrees counter-clockwise; the file also says "straight" (0) and "on point" (45)."""
    off_center: tuple[float, float] = (0.0, 0.0)
    """Where its middle lies from the base's center mark, x and y in the project's unit."""


class Way(StrEnum):
    """Way of building."""

    LOG_CABIN = "log cabin"
    TWO_SIDED = "two-sided log cabin"
    COURTHOUSE = "courthouse steps"
    POINTS = "pairs round the point"
    AROUND = "round after round"
    ROWS = "rows of strips"
    SIDES = "sides in my order"


class Turning(StrEnum):
    """Which way a log cabin turns, seen from the right side."""

    CLOCKWISE = "clockwise"
    COUNTERCLOCKWISE = "counter-clockwise"


class RowsRun(StrEnum):
    """How rows of strips lie."""

    ACROSS = "across"
    ALONG = "along"
    SLANTED = "slanted"


class RowsFrom(StrEnum):
    """Where rows of strips begin."""

    MIDDLE = "the middle"
    ONE_END = "one end"


class PairFirst(StrEnum):
    """Which strip of a pair round the point is sewn first."""

    UPPER = "upper"
    LOWER = "lower"
    ALTERNATE = "alternate"


class Building(_Model):
    """How the strips go on."""

    way: Way = Way.LOG_CABIN
    start: str | None = None
    """Name of the first side: top, right, bottom, left, upper right ...; or "side 3" of a polygon."""
    turning: Turning = Turning.CLOCKWISE
    first_pair: tuple[str, str] = ("top", "bottom")
    """Courthouse steps: the pair sewn first in each round."""
    strips_per_visit: int = 1
    pair_first: PairFirst = PairFirst.UPPER
    """Pairs round the point: the right pair, then the left pair; which strip of a pair goes first."""
    one_ended: bool = False
    """Pairs round the point: only the right pair of each round is sewn."""
    rows_run: RowsRun = RowsRun.ACROSS
    rows_from: RowsFrom = RowsFrom.MIDDLE
    slant: float = 45.0
    """Slanted rows: degrees of the strips from the x direction, counter-clockwise."""
    until_covered: bool = False
    """Repeat the listed rounds until the base is covered; skip strips that would cover nothing bare."""


class Round(_Model):
    """One round (or, in rows, one strip on each side)."""

    cut: Measure | None = None
    cuts: tuple[Measure, ...] | None = None
    """Unequal strips, in the order sewn; instead of cut."""
    fabric: str | None = None
    fabrics: tuple[str, ...] | None = None
    """In turn over the strips of the round, in the order sewn; instead of fabric."""
    cut_long: Measure | None = None
    """Cut length the maker wants for every strip of the round; left out, it is computed."""


class Step(_Model):
    """One strip of "sides in my order"."""

    side: str
    cut: Measure
    fabric: str | None = None


class ReadBy(StrEnum):
    """How a place was read: with a tape on the sewn piece, or off the marks drawn on the base."""

    TAPE = "tape"
    MARKS = "marks"


class Reading(_Model):
    """Where a raw edge really is, measured after a step."""

    after: int
    """Step after which it was measured; 0 = the first piece alone."""
    side: str
    edge: Measure
    """From the center mark, square to the side, to its raw edge."""
    along: float | None = None
    """Place along the side, in the project's unit from the foot of the center mark; two places give a slant."""
    by: ReadBy = ReadBy.TAPE


class ShortStrip(_Model):
    """A strip that was cut shorter than its place needs, as it was sewn."""

    step: int
    long: Measure
    from_start: Measure | None = None
    """How far its first end stays inside the full one; left out, it lies in the middle."""


class FabricOrder(StrEnum):
    """Where each fabric goes when the rounds name none."""

    IN_TURN = "in turn"
    SHUFFLED = "shuffled"
    LIGHT_TO_DARK = "light to dark from the middle"
    HALVES = "light and dark halves"


class FabricRule(_Model):
    """The eye's rules, applied to rounds that name no fabric."""

    order: FabricOrder = FabricOrder.IN_TURN
    fabrics: tuple[str, ...] = ()
    seed: int = 1
    none_next_to_itself: bool = False
    light_sides: tuple[str, ...] = ()
    """Halves: these sides take the light fabrics, the others the dark ones."""
    accent: str | None = None
    accent_every: int | None = None


class Wash(StrEnum):
    """State of a fabric."""

    UNWASHED = "unwashed"
    WASHED = "washed"
    STARCHED = "starched"


class OnHand(_Model):
    """A piece of fabric on the shelf, as measured; `strip` pieces are precut strips."""

    wide: Measure
    long: Measure
    count: int = 1
    name: str = ""
    """Plain words such as "fat quarter" or "precut strip"."""


class Fabric(_Model):
    """One fabric."""

    name: str
    color: str = "#b0a79b"
    """CSS hex color, for the pictures."""
    role: str = ""
    usable_width: Measure | None = None
    on_hand: tuple[OnHand, ...] = ()
    only_on_hand: bool = False
    """True: nothing can be bought (a saved print, quarters from a box)."""
    one_way: bool = False
    washed: Wash = Wash.UNWASHED
    precut: bool = False
    dark_dye: bool = False
    dye_tested: bool = False
    price: float | None = None
    """For one yard, or one meter in a metric project."""
    repeat: Measure | None = None


class Fiber(StrEnum):
    """Batting fiber."""

    COTTON = "cotton"
    POLYESTER = "polyester"
    BLEND = "blend"
    WOOL = "wool"
    BAMBOO = "bamboo"


class Batting(_Model):
    """The batting, as its wrapper says."""

    fiber: Fiber = Fiber.COTTON
    loft: Measure | None = None
    iron: bool | None = None
    widest_gap: Measure | None = None
    on_hand: tuple[OnHand, ...] = ()


class Backing(_Model):
    """The backing fabric; its name may be one of the fabrics or its own."""

    fabric: str = "Backing"
    usable_width: Measure | None = None
    one_way: bool = False


class Finish(StrEnum):
    """How the binding is sewn down."""

    MACHINE = "machine"
    HAND = "hand"


class Binding(_Model):
    """Double-fold straight binding."""

    fabric: str
    cut: Measure | None = None
    seam: Measure | None = None
    finish: Finish = Finish.MACHINE


class MyNumbers(_Model):
    """The maker's own numbers; what is left out takes the house default of the project's unit.

    Read the effective values through `stitchflip.project.numbers.effective(project)`, never from here.
    """

    seam: Measure | None = None
    usable_width: Measure | None = None
    straightening: Measure | None = None
    buy_in_steps_of: Measure | None = None
    buy_at_least: Measure | None = None
    draw_up: float | None = None
    """Fraction, both ways (0.015 = 1.5 %)."""
    draw_up_across: float | None = None
    draw_up_along: float | None = None
    fold_loss: Measure | None = None
    reach: Measure | None = None
    """Reach past the trim line."""
    round_cuts_to: Measure | None = None
    extra_free_end: Measure | None = None
    extra_raw_edges: Measure | None = None
    round_base_to: Measure | None = None
    spare_across: Measure | None = None
    spare_at_ends: Measure | None = None
    wish_beyond_points: Measure | None = None
    binding_extra: Measure | None = None
    binding_extra_per_corner: Measure | None = None
    stitch: Measure | None = None
    counts_as_crossed: Measure | None = None
    widest_gap: Measure | None = None
    longest_cut: Measure | None = None
    mat_wide: Measure | None = None
    mat_long: Measure | None = None
    backing_seam: Measure | None = None
    prewash_across: float | None = None
    prewash_along: float | None = None
    minutes_per_strip: float | None = None
    thread_per_inch: float | None = None


class Project(_Model):
    """A whole project, as written in its file."""

    name: str = Field(min_length=1, max_length=120)
    about: str = ""
    edition: str = "1"
    date: str = ""
    units: Unit = Unit.INCH
    how_many: int = Field(default=1, ge=1, le=24)
    working: Working = Working.CUT_FIRST
    squared_up: SquaredUp
    base: Base = Base()
    center: Center | None = None
    """None only in rows of strips that begin with a strip."""
    building: Building = Building()
    rounds: tuple[Round, ...] = ()
    """In rows: the strips from the first outward; the first entry is the first strip when there is no center."""
    steps: tuple[Step, ...] = ()
    readings: tuple[Reading, ...] = ()
    """What was measured while sewing; the plan follows."""
    short_strips: tuple[ShortStrip, ...] = ()
    fabric_rule: FabricRule = FabricRule()
    fabrics: tuple[Fabric, ...]
    batting: Batting = Batting()
    backing: Backing = Backing()
    binding: Binding
    my_numbers: MyNumbers = MyNumbers()
