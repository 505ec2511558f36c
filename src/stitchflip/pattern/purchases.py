"""What to buy or take from the shelf, said the same way on the shop sheet and in the pattern."""

from __future__ import annotations

import re
from math import ceil

from stitchflip.cutting.model import FabricPlan, HandSheet
from stitchflip.finishing.edge_model import EdgePiece
from stitchflip.finishing.model import BackingChoice
from stitchflip.lengths import Unit
from stitchflip.pattern.model import Words, muted, strong, words
from stitchflip.pattern.telling import Teller, counted, listed, runs_of, sentence
from stitchflip.pattern.way_words import WITHOUT_ROUNDS
from stitchflip.project.model import Edge, Finish, Through

_INCHES_WIDE = re.compile(r"(\d+) in wide")
_DARK, _PALE = 0.18, 0.5
"""Relative luminance below which a fabric is a dark tone, and from which it is a pale one."""


def by_letter(teller: Teller) -> tuple[FabricPlan, ...]:
    """The fabrics in the order of their letters; one without a letter comes last."""
    order = [one.fabric for one in teller.plan.letters]
    return tuple(
        sorted(teller.plan.fabrics, key=lambda one: order.index(one.fabric) if one.fabric in order else len(order))
    )


def amount_words(teller: Teller, fabric: FabricPlan) -> Words:
    """How much of one fabric the piece takes, for somebody whose shelf is another one."""
    if fabric.buy_in > 0 or not fabric.hand_sheets:
        return buy_words(teller, fabric)
    sheets = [f"{sheet.name} {teller.say.size(sheet.wide, sheet.long)}" for sheet in fabric.hand_sheets]
    return words(strong(listed(sheets)))


def buy_words(teller: Teller, fabric: FabricPlan) -> Words:
    """How much to buy of one fabric, or that the shelf is enough."""
    if fabric.buy_in <= 0:
        return words("nothing to buy")
    said = words(strong(teller.purchase(fabric.buy_in)))
    return words(said, ", or one fat quarter") if fabric.fits_fat_quarter else said


def basis_words(teller: Teller, fabric: FabricPlan) -> Words:
    """What the amount is based on."""
    say = teller.say
    if fabric.hand_sheets and fabric.buy_in <= 0:
        return words(listed([_sheet_words(teller, sheet) for sheet in fabric.hand_sheets]))
    parts = [f"{say.near(fabric.usable_width)} usable width"]
    strips = sum(len(one.strips) for one in fabric.strip_plans)
    if strips:
        parts.append(f"{counted(strips, 'strip')} across")
    if fabric.rows:
        parts.append(counted(len(fabric.rows), "row"))
    parts += [f"and {sheet.name}, {_sheet_words(teller, sheet)}" for sheet in fabric.hand_sheets]
    return words(", ".join(parts))


def _sheet_words(teller: Teller, sheet: HandSheet) -> str:
    """What one piece on hand gives."""
    count = sum(number for _, number in sheet.strips)
    long = teller.say.near(sheet.long if sheet.along == "long" else sheet.wide)
    parts = [f"{counted(count, 'strip')} along its {long}"] if count else []
    parts += [counted(len(sheet.rows), "row")] if sheet.rows else []
    used, room = teller.say.near(sheet.used_in), teller.say.near(sheet.usable_stack)
    return f"{listed(parts)}, {used} of {room} used"


def spare_words(teller: Teller, fabric: FabricPlan) -> Words:
    """What is left of the purchase, and how many slips of the cutter it survives."""
    if fabric.buy_in <= 0:
        return ()
    if fabric.has_nothing_to_spare:
        return words("nothing to spare")
    mistakes = counted(fabric.miscuts, "further strip") if fabric.miscuts else "no further strip"
    return words(muted(f"{teller.say.margin(fabric.spare_in)} spare, {mistakes} in it"))


def nothing_to_spare(teller: Teller, fabric: FabricPlan) -> str:
    """That a purchase leaves nothing to spare, with the first cure; "" when it leaves something."""
    found = (one for one in teller.plan.findings if one.code == "fabric.nothing-to-spare")
    finding = next((one for one in found if one.where == fabric.fabric), None)
    if finding is None:
        return ""
    cure = finding.cures[0].text.rstrip(".") if finding.cures else ""
    return f"nothing to spare{f': {cure[:1].lower()}{cure[1:]}' if cure else ''}"


def role_words(teller: Teller, name: str) -> str:
    """What a fabric is used for, in the order one meets it."""
    own = teller.fabric(name)
    if own is not None and own.role:
        return own.role
    plan = teller.plan
    uses = []
    if any(kind.build.pieces[0].fabric == name for kind in plan.kinds):
        uses.append(teller.first_name)
    uses += _in_the_strips(teller, name)
    uses += _around_the_blocks(teller, name)
    if plan.binding.fabric == name and plan.project.binding.edge is Edge.BINDING:
        uses.append("binding")
    uses += [piece.name[:1].lower() + piece.name[1:] for piece in _edge_and_back(teller) if piece.fabric == name]
    if plan.backing.fabric == name:
        uses.append("backing")
    return listed(list(dict.fromkeys(uses)))


def _edge_and_back(teller: Teller) -> list[EdgePiece]:
    """Pieces of facing, sleeve and label; a square for bias strips is binding and named as that."""
    edge = teller.plan.edge
    return [*(() if edge.bias_square and edge.kind == Edge.BINDING else edge.pieces), *teller.plan.extras.pieces]


def _in_the_strips(teller: Teller, name: str) -> list[str]:
    """Where a fabric stands among the strips: its rounds, or simply the strips where there are many."""
    strips = [strip for kind in teller.plan.kinds for strip in kind.build.strips if strip.cut_length > 0]
    own = [strip for strip in strips if name in ({section.fabric for section in strip.sections} or {strip.fabric})]
    rounds = sorted({strip.round for strip in own})
    if not rounds:
        return []
    if teller.strip_word != "strip" or (teller.project.building.way in WITHOUT_ROUNDS and len(rounds) > 1):
        return [teller.strips_word]
    return [f"{'round' if len(rounds) == 1 else 'rounds'} {runs_of(rounds)}"]


def _around_the_blocks(teller: Teller, name: str) -> list[str]:
    """What a fabric joins, fills or surrounds in a quilt."""
    quilt = teller.plan.quilt
    if quilt is None:
        return []
    uses = []
    if any(strip.fabric == name for strip in quilt.strips):
        uses.append("joining")
    if quilt.triangles is not None and quilt.triangles.fabric == name:
        uses.append("setting triangles")
    if any(name in {border.fabric, border.corner_fabric} for border in quilt.borders):
        uses.append("border")
    return uses


def tone_word(color: str) -> str:
    """A fabric's tone, to find another one by: pale, middle or dark."""
    parts = [int(color[place : place + 2], 16) / 255 for place in (1, 3, 5)] if len(color) == 7 else [0.5] * 3
    linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
    light = sum(weight * part for weight, part in zip((0.2126, 0.7152, 0.0722), linear, strict=True))
    return "pale" if light >= _PALE else "dark" if light < _DARK else "middle"


def way_words(teller: Teller, choice: BackingChoice) -> str:
    """The way a backing is got, its widths in the maker's unit."""
    if teller.unit is Unit.INCH:
        return choice.way
    return _INCHES_WIDE.sub(lambda found: f"{teller.whole(float(found[1]))} wide", choice.way)


def backing_words(teller: Teller, choice: BackingChoice) -> str:
    """One way to get the backing."""
    say = teller.say
    amount = teller.purchase(choice.buy_in)
    remark = f"; {choice.remark[:1].lower()}{choice.remark[1:].rstrip('.')}" if choice.remark else ""
    return f"{amount}, {way_words(teller, choice)} ({say.near(choice.length_in)} with straightening{remark})"


def backing_size(teller: Teller) -> str:
    """Backing as cut, wide × long."""
    backing = teller.plan.backing
    return teller.say.size(*teller.wide_long(backing.wide, backing.high))


def batting_words(teller: Teller) -> Words:
    """Batting: size as cut, fiber, what it must be able to do, where it comes from."""
    plan, say = teller.plan, teller.say
    size = say.size(*teller.wide_long(plan.batting.wide, plan.batting.high))
    times = f"{teller.bases} pieces, each " if teller.bases > 1 else ""
    batting = teller.project.batting
    loft = f", {say.width(plan.numbers.loft)} thick" if plan.numbers.loft > 0 else ""
    source = f" {sentence(listed(list(plan.batting.pieces)))}." if plan.batting.pieces else ""
    bought = f" Packaged: {plan.batting.packaged}." if plan.batting.packaged and not batting.on_hand else ""
    return words(
        f"{times}cut ",
        strong(size),
        f" ({batting.fiber.value}{loft}). Its wrapper must allow {say.near(plan.build.widest_gap.diameter)} or more "
        f"between stitching lines.{source}{bought}",
    )


def thread_words(teller: Teller) -> str:
    """Thread, and the bobbin."""
    return (
        f"about {teller.thread(teller.plan.work.thread_all_yards)} of 50 weight cotton in all, "
        f"{teller.thread(teller.plan.work.thread_yards)} of it in the seams through the base; "
        f"{_bobbin_words(teller)}; wind two before you start"
    )


def _bobbin_words(teller: Teller) -> str:
    """Which color goes on the bobbin: the back is seen only where the backing is sewn through."""
    if teller.project.base.through is Through.BACKING_AND_BATTING:
        return "half is for the bobbin, in a color that vanishes on the backing"
    return "half is for the bobbin, in any color: the backing hides it"


def notions(teller: Teller) -> tuple[Words, ...]:
    """Small things to have at hand."""
    is_bound = teller.project.binding.edge is Edge.BINDING
    by_hand = teller.project.binding.finish is Finish.HAND and is_bound
    every = teller.say.width(teller.pick(4, 10))
    pins = pin_count(teller)
    items = [
        thread_words(teller),
        "needles: 90/14 for sewing through the base, a new one for this piece; 80/12 for joining strips",
        f"basting: about {pins} safety pins, one every {every}, or basting spray",
        "straight pins or clips",
        "a marking pen that you tested on a scrap",
        *_foundation(teller),
        "label" + (" and hand-sewing needle for the binding" if by_hand else ""),
    ]
    return tuple(words(sentence(item)) for item in items)


def _foundation(teller: Teller) -> tuple[str, ...]:
    """The thin fabric below the batting, which is bought like everything else; nothing where there is none."""
    if teller.project.base.through is not Through.BATTING_ON_FOUNDATION:
        return ()
    size = teller.say.size(*teller.wide_long(teller.plan.base.wide, teller.plan.base.high))
    pieces = f"{teller.bases} pieces, each cut" if teller.bases > 1 else "cut"
    return (f"thin foundation, such as muslin, {pieces} {size}; it stays in",)


def pin_count(teller: Teller) -> int:
    """Safety pins, one every 4 in (10 cm) both ways, to the next ten: on all bases, or on a later backing."""
    every = teller.pick(4, 10)
    if teller.project.base.through is Through.BATTING_ONLY:
        layered, pieces = teller.plan.backing, teller.how_many
        count = ceil(layered.wide / every) * ceil(layered.high / every) * pieces
    else:
        base = teller.plan.base
        count = ceil(base.wide / every) * ceil(base.high / every) * teller.bases
    return ceil(count / 10) * 10


def tools(teller: Teller) -> tuple[Words, ...]:
    """Tools with their sizes."""
    numbers, say = teller.plan.numbers, teller.say
    ruler = say.size(6.5, 24) if teller.unit is Unit.INCH else say.size(15 / 2.54, 60 / 2.54)
    square = say.width(teller.pick(12.5, 32))
    mat = say.size(numbers.mat_wide, numbers.mat_long)
    items = [
        f"rotary cutter with a sharp blade, and a mat with a grid of {mat} or larger",
        f"ruler {ruler}, and a square ruler {square} for squaring up",
        f"sewing machine with a {say.width(numbers.seam)} foot; a walking foot helps through the base",
        "iron and board"
        if teller.iron_is_safe
        else "iron for the fabric before sewing; a roller or your fingers on the base",
        f"tape measure of {teller.whole(teller.pick(60, 150))}",
        "letters or numbers on slips and clips, to label pieces as you cut",
    ]
    return tuple(words(sentence(item)) for item in items)
