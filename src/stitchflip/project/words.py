"""The words a project file knows: every choice with the spelling that is written and what it means.

A maker does not have to hit the spelling: capitals, hyphens and spaces do not matter, the British spelling is
read, and the first words are enough when they can mean only one thing.
"""

from __future__ import annotations

import re
from enum import StrEnum
from typing import TypeVar

_Word = TypeVar("_Word", bound=StrEnum)


class Working(StrEnum):
    """How she works: everything cut from the list, or from the strip in the hand."""

    CUT_FIRST = "cut first"
    TRIM_AS_YOU_GO = "trim as you go"


class Outline(StrEnum):
    """Shape of the squared-up piece."""

    RECTANGLE = "rectangle"
    POLYGON = "polygon"
    ROUND = "round"
    OVAL = "oval"


class Ends(StrEnum):
    """Ends of a rectangle: straight across, or 45-degree points."""

    SQUARE = "square"
    POINTED = "pointed"


class Runs(StrEnum):
    """Which way the long measure lies in pictures and side names."""

    UP = "up"
    ACROSS = "across"


class Through(StrEnum):
    """What is sewn through."""

    BACKING_AND_BATTING = "backing and batting"
    BATTING_ONLY = "batting only"
    BATTING_ON_FOUNDATION = "batting on foundation"


class CenterShape(StrEnum):
    """Shape of the center as cut."""

    SQUARE = "square"
    RECTANGLE = "rectangle"
    POLYGON = "polygon"
    CORNERS = "corners"
    HALF_SQUARE = "half square"


class Way(StrEnum):
    """Way of building."""

    LOG_CABIN = "log cabin"
    TWO_SIDED = "two-sided log cabin"
    COURTHOUSE = "courthouse steps"
    POINTS = "pairs round the point"
    AROUND = "round after round"
    ROWS = "rows of strips"
    STRINGS = "string block"
    BRAID = "braid"
    CHEVRON = "chevron"
    CORNER_SQUARES = "rounds with corner squares"
    FOLDED_CORNERS = "stitch-and-flip corners"
    WONKY = "wonky strips"
    FOUNDATION = "numbered foundation"
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


class Widths(StrEnum):
    """Where the widths of the strips come from."""

    LISTED = "as listed"
    ON_HAND = "from what is on hand"


class StripEnds(StrEnum):
    """How the ends of strips are cut."""

    STRAIGHT = "straight"
    PARALLEL = "parallel to the neighbor"


class LinesSeen(StrEnum):
    """From which face the lines of a numbered foundation are drawn."""

    FRONT = "from the front"
    BACK = "from the back"


class ReadBy(StrEnum):
    """How a place was read: with a tape on the sewn piece, or off the marks drawn on the base."""

    TAPE = "tape"
    MARKS = "marks"


class FabricOrder(StrEnum):
    """Where each fabric goes when the rounds name none."""

    IN_TURN = "in turn"
    SHUFFLED = "shuffled"
    LIGHT_TO_DARK = "light to dark from the middle"
    HALVES = "light and dark halves"


class Wash(StrEnum):
    """State of a fabric."""

    UNWASHED = "unwashed"
    WASHED = "washed"
    STARCHED = "starched"


class Fiber(StrEnum):
    """Batting fiber."""

    COTTON = "cotton"
    POLYESTER = "polyester"
    BLEND = "blend"
    WOOL = "wool"
    BAMBOO = "bamboo"


class Finish(StrEnum):
    """How the binding is sewn down."""

    MACHINE = "machine"
    HAND = "hand"


class Edge(StrEnum):
    """How the edge of the squared-up piece is finished."""

    BINDING = "binding"
    SELF_BINDING = "self-binding"
    FACING = "facing"
    TURNED_THROUGH = "turned through"


class Grain(StrEnum):
    """How binding strips are cut."""

    STRAIGHT = "straight"
    BIAS = "bias"


class Setting(StrEnum):
    """How joined blocks lie."""

    STRAIGHT = "straight"
    ON_POINT = "on point"


class Join(StrEnum):
    """How quilted blocks are joined."""

    FLAT_AND_FOLDED = "flat and folded strips"
    COVERED = "covered strips"
    PLAIN_SEAM = "plain seam"


class Fold(StrEnum):
    """On which face the folded strip lies."""

    BEHIND = "behind"
    IN_FRONT = "in front"


class Joining(StrEnum):
    """What is joined first."""

    ROWS = "rows"
    COLUMNS = "columns"


class Filler(StrEnum):
    """How far the batting of joined blocks reaches."""

    RAW_EDGE = "to the raw edge"
    SEAM = "to the seam"


class Unequal(StrEnum):
    """What is done with blocks of unequal size."""

    TRIM = "trim all to the smallest"
    FRAME = "frame the small ones"
    COLUMNS = "like sizes share a column"


class Triangles(StrEnum):
    """How large setting triangles are cut."""

    EXACT = "exact"
    TRADE = "usual additions"
    OVERSIZE = "oversize"


class BorderCorners(StrEnum):
    """Corners of a border."""

    BUTTED = "butted"
    MITERED = "mitered"
    SQUARES = "corner squares"


class CutAlong(StrEnum):
    """Which strips of a border are cut along the fabric instead of across it."""

    NONE = "none"
    SIDES = "the sides"
    ALL = "all"


class Covers(StrEnum):
    """What a piece made for a table covers of it."""

    RUNNER = "runner"
    WHOLE_TABLE = "whole table"


class LabelShape(StrEnum):
    """Shape of a label."""

    RECTANGLE = "rectangle"
    CORNER = "corner"


_ALSO: dict[str, str] = {
    "anticlockwise": "counter-clockwise",
    "inch": "in",
    "inches": "in",
    "centimeter": "cm",
    "centimeters": "cm",
    "centimetre": "cm",
    "centimetres": "cm",
    "metric": "cm",
    "middle": "the middle",
    "from the middle out": "the middle",
    "from the middle": "the middle",
    "end": "one end",
    "from one end": "one end",
    "diagonal": "slanted",
    "points": "pointed",
    "by machine": "machine",
    "by hand": "hand",
    "trim as I go": "trim as you go",
    "square": "rectangle",
    "circle": "round",
    "ellipse": "oval",
    "mitred": "mitered",
    "cornerstones": "corner squares",
    "snowball corners": "stitch-and-flip corners",
    "backing brought to the front": "self-binding",
    "pillowcase": "turned through",
    "faced": "facing",
    "half-square triangle": "half square",
    "strings": "string block",
    "plaited": "braid",
    "diamond": "on point",
}
"""What else is said for a word; used only where the words asked for do not have it themselves."""

_LEAST_LETTERS = 4
"""A beginning shorter than this is no word."""


def bare(text: str) -> str:
    """A word without what does not matter in it: capitals, spaces, hyphens.

    Example:
        >>> bare("Counter-Clockwise") == bare("counterclockwise")
        True
    """
    return re.sub(r"[\W_]+", "", text.casefold())


def meant(text: str, words: type[_Word]) -> _Word | None:
    """The word a maker means.

    Args:
        text: what she wrote.
        words: the words that would do.

    Returns:
        The word with this spelling, else the one this is another name or the beginning of; None when that is
        none or more than one.

    Example:
        >>> meant("Courthouse", Way), meant("anti-clockwise", Turning), meant("log", Way)
        (<Way.COURTHOUSE: 'courthouse steps'>, <Turning.COUNTERCLOCKWISE: 'counter-clockwise'>, None)
    """
    wanted = bare(text)
    for word in words:
        if bare(word.value) == wanted:
            return word
    for other, value in _ALSO.items():
        if bare(other) == wanted:
            found = next((word for word in words if word.value == value), None)
            if found is not None:
                return found
    begun = [word for word in words if len(wanted) >= _LEAST_LETTERS and bare(word.value).startswith(wanted)]
    return begun[0] if len(begun) == 1 else None
