"""The document as a tree of small values: what is said, in which order, and what must stay together.

Builders make it from a plan, writers turn it into paper or a screen page. A writer knows nothing of quilts
and a builder nothing of paper, so the same page can be printed, read on a phone and checked by a program.
"""

from __future__ import annotations

from enum import Enum, StrEnum

from stitchflip.lengths import Unit
from stitchflip.pictures.model import Figure
from stitchflip.values import dataclass


class Look(StrEnum):
    """How a run of words looks."""

    PLAIN = "plain"
    STRONG = "strong"
    MUTED = "muted"
    """Beside the point, such as "shortest that reaches"."""


@dataclass(frozen=True, slots=True)
class Span:
    """A run of words in one look."""

    text: str
    look: Look = Look.PLAIN


@dataclass(frozen=True, slots=True)
class Mark:
    """A fabric's letter beside a chip of its color; it reads as the letter alone."""

    letter: str
    color: str
    """CSS hex color."""


@dataclass(frozen=True, slots=True)
class Mention:
    """The number of a figure elsewhere in the document, read as "figure 3"."""

    key: str


Inline = Span | Mark | Mention
Words = tuple[Inline, ...]


def words(*parts: str | Inline | Words) -> Words:
    """Words from plain text, runs and words put one after the other.

    Args:
        parts: text, single runs, or words made before.

    Returns:
        One line of words; empty text is left out.

    Example:
        >>> words("Cut ", strong("2½ in"))
        (Span(text='Cut ', look=<Look.PLAIN: 'plain'>), Span(text='2½ in', look=<Look.STRONG: 'strong'>))
    """
    made: list[Inline] = []
    for part in parts:
        if isinstance(part, str):
            made.extend((Span(part),) if part else ())
        elif isinstance(part, tuple):
            made.extend(part)
        else:
            made.append(part)
    return tuple(made)


def strong(text: str) -> Span:
    """Words the eye should find first."""
    return Span(text, Look.STRONG)


def muted(text: str) -> Span:
    """Words beside the point."""
    return Span(text, Look.MUTED)


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading; a writer never leaves it at the foot of a page."""

    level: int
    """1 for the document's own name, then 2, 3; never skipping one."""
    text: str


class Voice(StrEnum):
    """What a paragraph is for."""

    BODY = "body"
    LEAD = "lead"
    """Opens a page."""
    SMALL = "small"
    """Small print."""


@dataclass(frozen=True, slots=True)
class Paragraph:
    """One paragraph."""

    words: Words
    voice: Voice = Voice.BODY


class Align(StrEnum):
    """Where the words of a column stand."""

    START = "start"
    MIDDLE = "center"
    END = "end"


@dataclass(frozen=True, slots=True)
class Swatch:
    """An empty frame to pin or glue a scrap into."""

    wide_in: float
    high_in: float


Cell = Words | Swatch


@dataclass(frozen=True, slots=True)
class Column:
    """One column of a table."""

    title: str
    align: Align = Align.START
    share: float | None = None
    """Part of the free width; None takes as much as its longest words."""


@dataclass(frozen=True, slots=True)
class Table:
    """A table that is kept on one page."""

    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]
    title: str = ""
    """Short name above it; "" where the heading says it."""
    total: tuple[Words, ...] = ()
    """A last row that adds up; empty for none."""


@dataclass(frozen=True, slots=True)
class Facts:
    """Labels and what they say, one line each."""

    rows: tuple[tuple[str, Words], ...]


@dataclass(frozen=True, slots=True)
class FigureBox:
    """A picture at its place."""

    figure: Figure
    width_in: float
    """Widest it may be on paper, inches."""
    high_in: float
    """Highest it may be on paper, inches."""
    key: str = ""
    """Name by which the text mentions it; "" for a picture that belongs to its step or cover."""
    caption: Words = ()


@dataclass(frozen=True, slots=True)
class Step:
    """One sewing step with its picture; never split."""

    number: str
    """As the maker reads it, such as "7" or "7 and 8"."""
    title: Words
    do: Words
    """What to do, verb first."""
    picture: FigureBox
    notes: tuple[tuple[str, Words], ...] = ()
    """Label and words, such as ("Lock", "none")."""
    after: tuple[Words, ...] = ()
    """Closing lines: turn over and look, a good stopping place."""


@dataclass(frozen=True, slots=True)
class Steps:
    """Steps in sewing order."""

    steps: tuple[Step, ...]
    ticks: str = ""
    """Name under which a screen page remembers what is done."""


class BoxKind(StrEnum):
    """What a box is for."""

    CAUTION = "caution"
    TIP = "tip"
    LOOK = "look"
    """Something to look at in this plan."""


@dataclass(frozen=True, slots=True)
class Box:
    """A framed aside, kept whole."""

    kind: BoxKind
    title: str
    blocks: tuple[Block, ...]


@dataclass(frozen=True, slots=True)
class Items:
    """A plain list."""

    items: tuple[Words, ...]


@dataclass(frozen=True, slots=True)
class Numbered:
    """Things to do, in this order."""

    items: tuple[Words, ...]


@dataclass(frozen=True, slots=True)
class TickList:
    """A list to tick off; a screen page remembers the ticks."""

    items: tuple[Words, ...]
    ticks: str
    """Name under which they are remembered; one of a kind in the document."""


@dataclass(frozen=True, slots=True)
class CheckMarks:
    """Squares and bars that measure true when printed at 100 %."""

    unit: Unit
    """Which pair comes first."""


@dataclass(frozen=True, slots=True)
class Columns:
    """Blocks side by side."""

    columns: tuple[tuple[Block, ...], ...]
    shares: tuple[float, ...]
    """Width of each, in parts."""


@dataclass(frozen=True, slots=True)
class Together:
    """Blocks that stay on one page."""

    blocks: tuple[Block, ...]


@dataclass(frozen=True, slots=True)
class PageBreak:
    """A new page."""


@dataclass(frozen=True, slots=True)
class BlankLines:
    """Lines to write on, each behind its label."""

    labels: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class CoverPage:
    """The first page of a pattern: the picture large, everything else quiet."""

    picture: FigureBox
    name: str
    about: str
    facts: Facts
    maker_label: str


Block = (
    Heading
    | Paragraph
    | Table
    | Facts
    | FigureBox
    | Steps
    | Box
    | Items
    | Numbered
    | TickList
    | CheckMarks
    | Columns
    | Together
    | PageBreak
    | BlankLines
    | CoverPage
)


class Fit(Enum):
    """How a document takes up paper."""

    PAGES = "pages"
    """As many as it needs."""
    ONE_PAGE = "one page"
    """One: pictures and words are set smaller until it fits. What no readable size can fit takes a second page."""


class Paper(StrEnum):
    """Paper to print on; both share one field of 7½ × 10 in."""

    LETTER = "letter"
    A4 = "a4"


@dataclass(frozen=True, slots=True)
class Document:
    """Something to print or to read on a screen."""

    name: str
    """The piece's name."""
    kind: str
    """"Pattern", "Table sheet", "Shop sheet"."""
    edition: str
    """Edition and date in words, for the foot of each page."""
    unit: Unit
    blocks: tuple[Block, ...]
    fit: Fit = Fit.PAGES
    language: str = "en-US"

    @property
    def title(self) -> str:
        """Name and kind, for a reader's list of open documents."""
        return f"{self.name}: {self.kind.lower()}"
