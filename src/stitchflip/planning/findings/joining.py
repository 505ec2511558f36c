"""What joined blocks leave to look at: joins that overlap, gape or stay bare, blocks that do not meet, thin borders."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from stitchflip.finishing import plan_quilt
from stitchflip.finishing.joined import (
    flat_cut_that_fills,
    folded_cut_that_passes,
    laid_kinds,
    passes_by,
    row_counts,
    usual_flat_cut,
)
from stitchflip.finishing.measures import COVER_PASSES, THIN_FILLER
from stitchflip.finishing.words import size_in_words
from stitchflip.lengths import Length, Rounding, Speaker, Unit, format_length, round_to
from stitchflip.piecing import trim_polygon
from stitchflip.piecing.geometry import TOLERANCE
from stitchflip.planning.model import Cure, Finding, Severity
from stitchflip.project.model import Change, CutAlong, Filler, Join, Through, Unequal

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from stitchflip.finishing.quilt_model import JoinCheck, QuiltPlan
    from stitchflip.planning.model import Plan
    from stitchflip.project.model import Joined, Project

EXACT = 1 / 16
"""A cover that passes by no more than this (inches) meets the stitching exactly."""
_UNEVEN = 1 / 4
"""Blocks that differ by more than this (inches) are to be mended, not only told."""


def joins(plan: Plan) -> Iterator[Finding]:
    """Raw edges that overlap or leave a hollow, and a cover that does not pass the far stitching."""
    quilt, joined = plan.quilt, plan.project.joined
    if quilt is None or joined is None or joined.join is Join.PLAIN_SEAM or plan.project.blocks_in_one == 1:
        return
    if quilt.join.gap < -TOLERANCE:
        yield _overlap(plan.project, joined, quilt.join)
        return
    yield from _cover(plan.project, joined, quilt.join)
    yield from _hollow(plan.project, joined, quilt.join)


def _overlap(project: Project, joined: Joined, check: JoinCheck) -> Finding:
    say, seam = Speaker(project.units), check.seam
    over = -check.gap
    what = f"In every join the raw edges of the blocks overlap by {say.shortage(over)} and make a ridge."
    if joined.join is Join.COVERED:
        shows = _up(project.units, 2 * seam + check.loft)
        cure = Cure(
            f"Let {say.width(shows)} show between the blocks.", (Change(("joined", "shows"), _text(project, shows)),)
        )
    else:
        cure = _flat_strip(project, joined, usual_flat_cut(seam, project.units), seam)
    return Finding("join.overlap", Severity.STOP, what, "joins", numbers={"overlap_in": over}, cures=(cure,))


def _cover(project: Project, joined: Joined, check: JoinCheck) -> Iterator[Finding]:
    """The folded strip against the far stitching."""
    say = Speaker(project.units)
    if check.passes > EXACT + TOLERANCE:
        return
    flat = _between(joined, check) + 2 * check.seam
    wide = folded_cut_that_passes(COVER_PASSES.of(project.units), flat, check.seam, project.units)
    cure = Cure(
        f"Cut the folded strip {say.width(wide)}: it passes by {say.margin(passes_by(wide, flat, check.seam))}.",
        (Change(("joined", "folded_cut"), _text(project, wide)),),
    )
    facts = {"passes_in": check.passes}
    if check.passes < -TOLERANCE:
        what = f"The folded strip ends {say.shortage(-check.passes)} short of the far stitching and does not cover it."
        yield Finding("join.not-covered", Severity.STOP, what, "joins", numbers=facts, cures=(cure,))
        return
    by = "exactly" if check.passes < EXACT / 2 else f"all but exactly ({say.margin(check.passes)} beyond)"
    what = f"The folded strip meets the far stitching {by}; cut it wider to be safe."
    yield Finding("join.meets-exactly", Severity.FIX, what, "joins", numbers=facts, cures=(cure,))


def _between(joined: Joined, check: JoinCheck) -> float:
    """From seam line to seam line, whatever shows on the front."""
    return check.gap + 2 * check.seam if joined.join is not Join.PLAIN_SEAM else 0.0


def _hollow(project: Project, joined: Joined, check: JoinCheck) -> Iterator[Finding]:
    """A gap the batting does not fill by its own thickness, and a filler too thin to lie flat."""
    say = Speaker(project.units)
    facts = {"filler_in": check.filler, "loft_in": check.loft}
    if check.filler <= 0:
        return
    if joined.join is Join.COVERED:
        if check.filler < THIN_FILLER.of(project.units) - TOLERANCE:
            what = f"The strip of batting in each join is only {say.near(check.filler)} wide and will not lie flat."
            cure = Cure("Zigzag it to the batting of one block before the join is closed.")
            yield Finding("join.filler-thin", Severity.NOTE, what, "joins", numbers=facts, cures=(cure,))
        return
    what = (
        f"In every join the battings of two blocks stand {say.near(check.filler)} apart, and batting "
        f"{say.near(check.loft)} thick does not fill that: the join stays hollow."
    )
    cures = [Cure(f"Lay a strip of batting {say.near(check.filler)} wide in every join.")]
    if joined.batting_reaches is Filler.SEAM:
        change = Change(("joined", "batting_reaches"), Filler.RAW_EDGE.value)
        cures.append(Cure("Leave the batting of the blocks in their seam allowances, to the raw edge.", (change,)))
    else:
        flat = flat_cut_that_fills(check.seam, check.loft, project.units)
        cures.append(_flat_strip(project, joined, flat, check.seam))
    yield Finding("join.hollow", Severity.FIX, what, "joins", numbers=facts, cures=tuple(cures))


def _flat_strip(project: Project, joined: Joined, flat: float, seam: float) -> Cure:
    """Another flat strip, and the folded one that goes with it when the maker's own would not."""
    say = Speaker(project.units)
    changes = [Change(("joined", "flat_cut"), _text(project, flat))]
    also = ""
    passes = COVER_PASSES.of(project.units)
    own = joined.folded_cut
    if own is not None and passes_by(own.inches, flat, seam) < passes - TOLERANCE:
        folded = folded_cut_that_passes(passes, flat, seam, project.units)
        changes.append(Change(("joined", "folded_cut"), _text(project, folded)))
        also = f" and the folded strip {say.width(folded)}"
    return Cure(f"Cut the flat strip {say.width(flat)}{also}.", tuple(changes))


def unequal_blocks(plan: Plan) -> Iterator[Finding]:
    """Blocks measured in several sizes: how far they differ, what the chosen way costs, what others would."""
    quilt, project, joined = plan.quilt, plan.project, plan.project.joined
    if quilt is None or joined is None or not quilt.repairs:
        return
    say = Speaker(project.units)
    sides = [
        side.inches for row in joined.measured for one in row for side in (one if isinstance(one, tuple) else (one,))
    ]
    least, most = min(sides), max(sides)
    wished = _replanned(plan, measured=())
    what = f"The blocks measure from {say.near(least)} to {say.near(most)} and do not meet at the joins: "
    what += f"{_done(joined.unequal)}, the whole is {size_in_words(project, quilt.wide, quilt.high)}"
    if wished is not None and max(abs(wished.wide - quilt.wide), abs(wished.high - quilt.high)) > TOLERANCE:
        what += f" instead of {size_in_words(project, wished.wide, wished.high)}"
    cures = []
    for way in Unequal:
        other = None if way is joined.unequal else _replanned(plan, unequal=way)
        if other is not None:
            text = f"{_done(way).capitalize()}: the whole is {size_in_words(project, other.wide, other.high)}."
            cures.append(Cure(text, (Change(("joined", "unequal"), way.value),)))
    severity = Severity.FIX if most - least > _UNEVEN + TOLERANCE else Severity.NOTE
    facts = {"smallest_in": least, "largest_in": most, "wide_in": quilt.wide, "long_in": quilt.high}
    yield Finding("join.blocks-unequal", severity, f"{what}.", "blocks", numbers=facts, cures=tuple(cures))


def _done(way: Unequal) -> str:
    return {
        Unequal.TRIM: "all trimmed to the smallest",
        Unequal.FRAME: "the small ones framed",
        Unequal.COLUMNS: "like sizes laid in one column",
    }[way]


def _replanned(plan: Plan, **joined: object) -> QuiltPlan | None:
    """The quilt with something else said about its blocks; None when that cannot be planned."""
    from stitchflip.errors import BuildError

    if plan.project.joined is None:
        return None
    project = plan.project.model_copy(update={"joined": plan.project.joined.model_copy(update=joined)})
    try:
        return plan_quilt(project, plan.numbers, trim_polygon(project, plan.numbers))
    except BuildError:
        return None


def borders(plan: Plan) -> Iterator[Finding]:
    """Borders that their two seams use up."""
    project, seam = plan.project, plan.numbers.seam
    say = Speaker(project.units)
    for index, border in enumerate(project.borders if plan.quilt is not None else ()):
        if border.cut.inches > 2 * seam + TOLERANCE:
            continue
        which = "The border" if len(project.borders) == 1 else f"Border {index + 1}"
        what = f"{which} ({border.fabric}), cut {say.width(border.cut.inches)}, is used up by its two seams."
        wide = _up(project.units, 4 * seam)
        cure = Cure(
            f"Cut it {say.width(wide)}: {say.near(wide - 2 * seam)} shows.",
            (Change(("borders", index, "cut"), _text(project, wide)),),
        )
        facts = {"cut_in": border.cut.inches, "seams_in": 2 * seam}
        yield Finding("join.border-narrow", Severity.STOP, what, f"border {index + 1}", numbers=facts, cures=(cure,))


def one_way_borders(plan: Plan) -> Iterator[Finding]:
    """A border of a one-way print that lies on its side on two of the four sides."""
    project = plan.project
    one_way = {fabric.name for fabric in project.fabrics if fabric.one_way}
    for index, border in enumerate(project.borders if plan.quilt is not None else ()):
        if border.fabric not in one_way or border.cut_along is CutAlong.SIDES:
            continue
        which = "the border" if len(project.borders) == 1 else f"border {index + 1}"
        cut, lies = ("across", "the two sides") if border.cut_along is CutAlong.NONE else ("along", "top and bottom")
        what = f"{border.fabric} is a one-way print: with all strips of {which} cut {cut} it, {lies} lie on their side."
        cure = Cure(
            "Cut the sides along the fabric, top and bottom across it: the print stands upright all round.",
            (Change(("borders", index, "cut_along"), CutAlong.SIDES.value),),
        )
        yield Finding("join.border-one-way", Severity.NOTE, what, f"border {index + 1}", cures=(cure,))


def backing_width(plan: Plan) -> Iterator[Finding]:
    """A backing added later that only the borders make too wide for one width of its fabric."""
    quilt, project, numbers = plan.quilt, plan.project, plan.numbers
    if quilt is None or not project.borders or project.base.through is Through.BACKING_AND_BATTING:
        return
    side = plan.backing.wide if project.backing.one_way else min(plan.backing.wide, plan.backing.high)
    over = side - plan.backing.usable_width
    last = len(project.borders) - 1
    cut = project.borders[last].cut.inches
    narrower = _down(project.units, cut - over / 2)
    if over <= TOLERANCE or narrower < 4 * numbers.seam - TOLERANCE:
        return
    say = Speaker(project.units)
    which = "the border" if last == 0 else f"border {last + 1}"
    what = (
        f"The backing must be {say.cut(side)} and its fabric gives {say.margin(plan.backing.usable_width)}: {which} "
        f"makes it {say.shortage(over)} too wide for one width."
    )
    cure = Cure(
        f"Cut {which} {say.width(narrower)}: then one width is enough.",
        (Change(("borders", last, "cut"), _text(project, narrower)),),
    )
    facts = {"over_in": over, "usable_in": plan.backing.usable_width}
    yield Finding("join.backing-width", Severity.NOTE, what, "backing", numbers=facts, cures=(cure,))


def kinds(plan: Plan) -> Iterator[Finding]:
    """Kinds of block: numbers under places that name none, rows that do not fit, counts that do not add up."""
    project, joined = plan.project, plan.project.joined
    if joined is None or not project.blocks:
        return
    rows = row_counts(joined)
    laid = laid_kinds(joined, len(project.blocks))
    if laid and (len(laid) != len(rows) or any(len(row) != count for row, count in zip(laid, rows, strict=False))):
        what = (
            f"Places are given in rows of {', '.join(str(len(row)) for row in laid)}; the quilt has rows of "
            f"{', '.join(str(count) for count in rows)}. The others are filled in turn."
        )
        yield Finding("join.places", Severity.FIX, what, "joined.places")
    for number, row in enumerate(laid, 1):
        if None in row:
            place = row.index(None) + 1
            what = (
                f"Row {number} of the places names a kind of block that is not there at place {place}; there are "
                f"{len(project.blocks)}. It is filled in turn."
            )
            yield Finding("join.places", Severity.FIX, what, "joined.places")
    yield from _counts(project, laid, sum(rows))


def _counts(project: Project, laid: tuple[tuple[int | None, ...], ...], places: int) -> Iterator[Finding]:
    given = [block.count for block in project.blocks if block.count is not None]
    total = sum(given)
    if given and (total > places or (len(given) == len(project.blocks) and total != places)):
        what = f"{total} blocks are counted over all kinds, and the quilt has {places} places."
        yield Finding("join.counts", Severity.FIX, what, "blocks", cures=tuple(_last_count(project, total, places)))
    stand = Counter(kind for row in laid for kind in row)
    for index, block in enumerate(project.blocks):
        if laid and block.count is not None and stand[index] != block.count:
            what = f"{block.name}: {block.count} are counted, and the places hold {stand[index]}."
            change = Change(("blocks", index, "count"), str(stand[index]))
            cure = Cure(f"Count {stand[index]} of {block.name}.", (change,))
            yield Finding("join.counts", Severity.FIX, what, block.name, cures=(cure,))


def _last_count(project: Project, total: int, places: int) -> Iterator[Cure]:
    """As many of the last counted kind as there are places left."""
    index = max(place for place, block in enumerate(project.blocks) if block.count is not None)
    count = (project.blocks[index].count or 0) + places - total
    if count >= 0:
        change = Change(("blocks", index, "count"), str(count))
        yield Cure(f"Count {count} of {project.blocks[index].name}.", (change,))


def _up(unit: Unit, inches: float) -> float:
    """Up to the next 1/8 in or 0.5 cm."""
    return round_to(inches, 1 / 8 if unit is Unit.INCH else 0.5 / 2.54, Rounding.UP)


def _down(unit: Unit, inches: float) -> float:
    """Down to the last 1/8 in or 0.5 cm."""
    return round_to(inches, 1 / 8 if unit is Unit.INCH else 0.5 / 2.54, Rounding.DOWN)


def _text(project: Project, inches: float) -> str:
    return format_length(Length.of_inches(inches), project.units)


ABOUT_JOINS: tuple[Callable[[Plan], Iterator[Finding]], ...] = (
    joins,
    unequal_blocks,
    borders,
    one_way_borders,
    backing_width,
    kinds,
)
"""What can be told of joined blocks."""
