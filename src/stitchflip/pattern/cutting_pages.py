"""Cutting: one table a fabric. Every size stands here once, and every count adds up."""

from __future__ import annotations

from collections import Counter

from stitchflip.cutting.model import FabricPlan, Piece, StripPlan
from stitchflip.pattern.center_words import how_to_cut
from stitchflip.pattern.model import (
    Align,
    Block,
    Column,
    Columns,
    Heading,
    Items,
    Paragraph,
    Table,
    Together,
    Words,
    muted,
    strong,
    words,
)
from stitchflip.pattern.purchases import by_letter, way_words
from stitchflip.pattern.reading import plain
from stitchflip.pattern.strip_facts import length_words
from stitchflip.pattern.telling import Teller, counted, listed, number_word, runs_of, sentence
from stitchflip.project.model import Through, Working
from stitchflip.values import dataclass

_MOST_ROWS = 30
_LONG_NAME = 14
"""Letters in the name of a piece from which its column needs more room."""


@dataclass(frozen=True, slots=True)
class Cut:
    """Pieces of one fabric with the same cut size."""

    wide: float
    long: float
    kind: str
    pieces: tuple[Piece, ...]

    @property
    def count(self) -> int:
        """How many to cut."""
        return sum(piece.count for piece in self.pieces)


def cuts_of(pieces: tuple[Piece, ...]) -> tuple[Cut, ...]:
    """Pieces of one fabric gathered by cut size, the largest first.

    Args:
        pieces: the fabric's pieces.

    Returns:
        One entry a size: squares and rectangles, then strips by width and length, then binding.
    """
    groups: dict[tuple[str, float, float], list[Piece]] = {}
    for piece in pieces:
        groups.setdefault((piece.kind, round(piece.wide, 6), round(piece.long, 6)), []).append(piece)
    made = [Cut(wide, long, kind, tuple(group)) for (kind, wide, long), group in groups.items()]
    order = {"rectangle": 0, "strip": 1, "binding": 2}
    return tuple(sorted(made, key=lambda cut: (order.get(cut.kind, 1), -cut.wide, -cut.long)))


def cutting_tables(teller: Teller) -> tuple[Block, ...]:
    """A table for each fabric, and base and backing before them."""
    plan = teller.plan
    as_you_go = plan.project.working is Working.TRIM_AS_YOU_GO
    later = (
        "Cut the base, the first piece and what finishes the edge now. Cut strips across the fabric as below; their "
        "lengths are trimmed after sewing, and the rest of each strip is used next."
        if as_you_go
        else f"Everything is cut first, the largest pieces first. {length_words(teller)}"
    )
    all_of_them = f" “How many” counts all {_all_words(teller)}." if teller.bases > 1 else ""
    opening = Paragraph(words(f"{later} Label each piece with its step number as you cut it.{all_of_them}"))
    patches = f"patch 1 of {teller.bases} bases" if teller.bases > 1 else "patch 1"
    firsts = patches if teller.is_foundation else counted(teller.bases, teller.first_name)
    adds_up = Paragraph(
        words(
            "Count: ",
            strong(f"{teller.counted_strips(teller.strips_in_all)} to sew"),
            "" if teller.is_half_done else f" and {firsts}",
            ", as at a glance.",
            _around_words(teller),
        )
    )
    used = [fabric for fabric in by_letter(teller) if plan.pieces_by_fabric.get(fabric.fabric)]
    return Heading(2, "Cutting"), opening, _base_block(teller), *_fabric_tables(teller, used), adds_up


def _all_words(teller: Teller) -> str:
    """All that is made, in words."""
    if teller.is_quilt:
        return f"{teller.bases} blocks"
    return f"{number_word(teller.how_many)} pieces"


def _around_words(teller: Teller) -> str:
    """What else the tables count: strips that join blocks, triangles, borders, pieces for the edge and the back."""
    others = [piece for piece in teller.plan.pieces if not piece.step and piece.name != "Binding"]
    firsts = {"center", "middle", "first", "1"}
    around: Counter[str] = Counter()
    for piece in others:
        name = piece.name[:1].lower() + piece.name[1:]
        if name.split(" ")[0] not in firsts:
            around[name] += piece.count
    return f" Besides: {'; '.join(f'{name} ({count})' for name, count in around.items())}." if around else ""


def _fabric_tables(teller: Teller, fabrics: list[FabricPlan]) -> list[Block]:
    """Short tables two and two side by side, each pair kept together; then the long ones, over pages if they must."""
    parts = [_fabric_parts(teller, fabric) for fabric in fabrics]
    planned = {fabric.fabric for fabric in teller.plan.fabrics}
    parts += [_backing_parts(teller, name) for name in teller.plan.pieces_by_fabric if name not in planned]
    short: list[tuple[Block, ...]] = [(*above, table) for above, table in parts if len(table.rows) <= _MOST_ROWS]
    made: list[Block] = [
        Together((Columns((one, other), (1, 1)),)) for one, other in zip(short[::2], (*short[1::2], ()), strict=False)
    ]
    for above, table in parts:
        if len(table.rows) > _MOST_ROWS:
            made += [*above, table]
    return made


def _base_block(teller: Teller) -> Block:
    plan, say = teller.plan, teller.say
    base = say.size(*teller.wide_long(plan.base.wide, plan.base.high))
    back = say.size(*teller.wide_long(plan.backing.wide, plan.backing.high))
    times = f"{teller.bases} of each: " if teller.bases > 1 else ""
    if plan.project.base.through is Through.BACKING_AND_BATTING:
        items = [words(sentence(f"{times}batting "), strong(base), " and backing ", strong(back), ", for the base.")]
    else:
        thin = ", and a thin foundation as large," if plan.project.base.through is Through.BATTING_ON_FOUNDATION else ""
        times_one = f"{teller.bases} pieces: " if teller.bases > 1 else ""
        items = [
            words(sentence(f"{times_one}batting "), strong(base), thin, " for the base."),
            words(
                "Backing ",
                strong(back),
                f", added when the {'blocks are joined' if teller.is_quilt else 'strips are sewn'}.",
            ),
        ]
    pieced = plan.backing.best
    if pieced.seams_at:
        seam = say.width(plan.numbers.backing_seam)
        panels = f" from panels cut {listed([say.cut(one) for one in pieced.panels])} wide" if pieced.panels else ""
        off = listed([say.near(abs(place)) for place in pieced.seams_at])
        items.append(
            words(
                f"The backing is {way_words(teller, pieced)}{panels}: sew with a {seam} seam, press it open; "
                f"the seam lies {off} off the center line."
            )
        )
    if plan.batting.join_at is not None:
        items.append(words(f"Batting: {listed(list(plan.batting.pieces)).rstrip('.')}."))
    items += _under_lines(teller)
    return Together((Heading(3, "Base"), Items(tuple(items))))


def _under_lines(teller: Teller) -> list[Words]:
    """Batting and backing besides the bases: below triangles, borders and joins."""
    quilt, say = teller.plan.quilt, teller.say
    lines: list[Words] = []
    for one in quilt.under if quilt is not None else ():
        count = one.count * teller.how_many
        batting = words("batting ", strong(say.cut_size(*one.batting)))
        if one.backing is None:
            backing: Words = ()
        elif one.backing == one.batting:
            batting = words("batting and backing ", strong(say.cut_size(*one.batting)))
            backing = ()
        else:
            backing = words(" and backing ", strong(say.cut_size(*one.backing)))
        name = one.name if " below " in one.name else f"for the {one.name}"
        of_each = " of each: " if one.backing is not None else ": "
        lines.append(words(f"{count}{of_each}", batting, backing, f", {name}."))
    return lines


def _fabric_parts(teller: Teller, fabric: FabricPlan) -> tuple[tuple[Block, ...], Table]:
    """What stands above a fabric's table, and the table."""
    cuts = cuts_of(teller.plan.pieces_by_fabric[fabric.fabric])
    heading = Heading(3, f"{teller.plan.letter_of(fabric.fabric)} · {fabric.fabric}")
    first = Items((*_across(teller, fabric), *_center_lines(teller, cuts)))
    return ((heading, first) if first.items else (heading,)), _table(teller, cuts)


def _backing_parts(teller: Teller, name: str) -> tuple[tuple[Block, ...], Table]:
    """Pieces cut from the fabric of the backing, such as a sleeve and a label."""
    cuts = cuts_of(teller.plan.pieces_by_fabric[name])
    said = "backing" if name.lower() == "backing" else f"backing · {name}"
    note = Paragraph(words("Cut from what the backing leaves, or from the length bought with it."))
    return (Heading(3, f"From the {said}"), note), _table(teller, cuts)


def _table(teller: Teller, cuts: tuple[Cut, ...]) -> Table:
    """One row a cut size, and the sum."""
    rows = tuple(_row(teller, cut) for cut in cuts)
    foot: tuple[Words, ...] = (words(str(sum(cut.count for cut in cuts))), words("pieces in all"), (), ())
    shows = any(row[-1] for row in rows)
    are_long = max((len(plain(row[2])) for row in rows), default=0) > _LONG_NAME
    columns: tuple[Column, ...] = (
        Column("how many", Align.END),
        Column(f"cut wide × long, {teller.unit_word}", share=1.55),
        Column("for step", share=2.0 if are_long else 1.05),
        Column("shows", share=1.4),
    )
    if not shows:
        columns, foot = columns[:-1], foot[:-1]
        rows = tuple(row[:-1] for row in rows)
    return Table(columns, rows, total=foot if len(cuts) > 1 else ())


def _row(teller: Teller, cut: Cut) -> tuple[Words, ...]:
    as_you_go = teller.project.working is Working.TRIM_AS_YOU_GO
    bare = teller.bare
    if cut.kind == "binding":
        return (
            words(strong(str(cut.count))),
            words(f"{bare.width(cut.wide)} × width of fabric"),
            words(", ".join(dict.fromkeys(piece.name.lower() for piece in cut.pieces))),
            (),
        )
    steps = [piece.step for piece in cut.pieces if piece.step and piece.name == str(piece.step)]
    names = [_piece_name(teller, piece) for piece in cut.pieces if not (piece.step and piece.name == str(piece.step))]
    steps = [int(teller.number(step)) for step in steps]
    numbered = [runs_of(sorted(steps))] if steps else []
    parts = [name for name in names if name[:1].isdigit()]
    what = ", ".join((*(name for name in names if name not in parts), *numbered, *parts))
    wide = " wide" if cut.kind == "strip" else ""
    shows = dict.fromkeys(f"{piece.finished}{wide}" for piece in cut.pieces if piece.finished)
    size = words(strong(teller.cut_numbers(cut.kind, cut.wide, cut.long)))
    if as_you_go and steps:
        shortest = max(piece.shortest or piece.long for piece in cut.pieces)
        size = words(size, muted(f" ({bare.cut(shortest)} reaches)" if shortest < cut.long - 1e-6 else ""))
    return words(strong(str(cut.count))), size, words(what), words(", ".join(shows))


def _piece_name(teller: Teller, piece: Piece) -> str:
    """What a piece is called in the table: its own name, the first patch of a foundation by what it is."""
    if piece.step:
        return piece.name
    return teller.first_name if piece.name == "1" else piece.name.lower()


def _across(teller: Teller, fabric: FabricPlan) -> list[Words]:
    """What is cut across the fabric before the lengths are cut from it."""
    return [line for strips in fabric.strip_plans if (line := _strips_line(teller, strips))]


def _center_lines(teller: Teller, cuts: tuple[Cut, ...]) -> list[Words]:
    """What a center cut on the slant, or to a shape, needs to be told."""
    centers = [cut.pieces[0] for cut in cuts if cut.kind == "rectangle" and cut.pieces[0].name.startswith("Center")]
    return [words(line) for piece in centers for line in how_to_cut(teller, piece)]


def _strips_line(teller: Teller, strips: StripPlan) -> Words:
    if not strips.strips or strips.is_whole:
        return ()
    stocks = list(dict.fromkeys(strip.stock for strip in strips.strips))
    count = counted(len(strips.strips), "strip")
    wide = teller.say.width(strips.width)
    where = "across the fabric" if stocks == ["width of fabric"] else f"from {listed(stocks)}"
    rest = teller.say.margin(strips.spare_in)
    of_each = f"{rest} of it" if len(strips.strips) == 1 else f"at least {rest} of each"
    spare = f"; {of_each} is left" if strips.spare_in > 0 and not strips.as_you_go else ""
    return words(f"First cut {count} ", strong(wide), f" wide {where}{spare}.")
