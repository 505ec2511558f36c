"""The back for checking, the coloring page, the words used, and the imprint with its empty line."""

from __future__ import annotations

from stitchflip.pattern.model import (
    BlankLines,
    Block,
    Facts,
    FigureBox,
    Heading,
    Items,
    Mention,
    Paragraph,
    Together,
    Words,
    words,
)
from stitchflip.pattern.strip_facts import loose_ends
from stitchflip.pattern.table_sheet import locks
from stitchflip.pattern.telling import Teller
from stitchflip.pictures import back, coloring
from stitchflip.project.model import Through

_COLOR_WIDE_IN, _COLOR_HIGH_IN = 7.2, 8.2
"""Room on the coloring page."""

_BASE = {
    Through.BACKING_AND_BATTING: "backing and batting, layered; the strips are sewn straight onto it",
    Through.BATTING_ONLY: "the batting alone; the strips are sewn straight onto it, and the backing comes later",
    Through.BATTING_ON_FOUNDATION: (
        "batting on a thin foundation; the strips are sewn straight onto it, and the backing comes later"
    ),
}
_GLOSSARY = (
    ("center mark", "the middle of the base, where both center lines cross; all distances start there"),
    ("cut", "as cut, seam allowances in it"),
    ("diagonal join", "two strips joined end to end on the slant, so that the bulk is spread"),
    ("draw-up", "how much stitching pulls the base in; the numbers here allow for it"),
    ("flat strip", "a strip sewn to both blocks, right sides together, that shows between them"),
    ("folded strip", "a strip folded in half lengthwise, laid over a join and sewn down along its fold"),
    ("loft", "how thick batting is"),
    ("lock", "hold a seam end that nothing else holds"),
    ("miter", "a corner where two strips meet in a slanted line"),
    ("numbered foundation", "lines drawn on what is sewn through, numbered in the order they are sewn"),
    ("on point", "turned 45°, standing on a corner"),
    ("raw edge", "the cut edge of a fabric"),
    ("round", "one strip on each side"),
    ("shows", "what is to be seen when the neighbors are sewn on"),
    ("squared up", "trimmed to its size with true corners"),
    ("usable width", "width of a fabric without its selvages"),
    ("width of fabric", "across the fabric from selvage to selvage, without them"),
)


def the_back(teller: Teller) -> tuple[Block, ...]:
    """The back as stitched."""
    loose = sum(len(loose_ends(strip)) for strip in teller.strips)
    ends = locks(teller) if loose else words("Ends: ", locks(teller))
    picture = FigureBox(
        back(teller.plan), 7.0, 4.2, key="back", caption=words("The back as stitched, seen from behind.")
    )
    said = words(
        "Turn the piece over and compare with ",
        Mention("back"),
        ": every line is one seam. A seam missing or crossing another where none is drawn shows here first. ",
        words("To lock: " if loose else ""),
        ends,
    )
    whole = (words(" Shown is one block."),) if teller.is_quilt else ()
    return (Together((Heading(2, "The back, for checking"), Paragraph(words(said, *whole)), picture)),)


def coloring_page(teller: Teller) -> tuple[Block, ...]:
    """Outlines only, to try fabrics with pencils."""
    outlines = coloring(teller.plan)
    (x0, y0), (x1, y1) = outlines.low, outlines.high
    copies = max(1, min(2, int(_COLOR_HIGH_IN / (_COLOR_WIDE_IN * (y1 - y0) / (x1 - x0) + 0.3))))
    first = FigureBox(outlines, _COLOR_WIDE_IN, _COLOR_HIGH_IN, key="coloring")
    more = (FigureBox(outlines, _COLOR_WIDE_IN, _COLOR_HIGH_IN),) * (copies - 1)
    said = words("Try your own fabrics with pencils on ", Mention("coloring"), "; copy the page first.")
    return Together((Heading(2, "To color in"), Paragraph(said), first)), *more


def closing(teller: Teller, spoken: str) -> tuple[Block, ...]:
    """Words used and imprint.

    Args:
        teller: speaks about the plan.
        spoken: everything the document says, so that only words it uses are explained.
    """
    base = _BASE[teller.project.base.through]
    used = tuple((word, words(said)) for word, said in (("base", base), *_GLOSSARY) if word in spoken)
    empty = BlankLines(("Tested by", "Date", "Report a slip to"))
    imprint = (Heading(2, "Imprint"), Items(tuple(_imprint(teller))), empty)
    return (Together((Heading(2, "Words used here"), Facts(used), *imprint)),)


def _imprint(teller: Teller) -> list[Words]:
    return [
        words(f"{teller.project.name}, {teller.edition}."),
        words("All numbers and pictures on these pages come from one computed plan of this size."),
        words("Corrections to this edition: none known when it was printed."),
        words("What you may do with pieces sewn from this pattern is for its maker to say."),
        words("Found a slip? Say the edition, the page and the step."),
    ]
