"""How blocks are joined and bordered, said at the sewing machine: one sentence each, with its numbers."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from stitchflip.finishing.joined.bases import under_triangles
from stitchflip.finishing.joined.borders import border_adds, lengthwise_need
from stitchflip.finishing.joined.faces import is_longer_than_fabric, usable_width
from stitchflip.finishing.joined.joins import JoinCuts
from stitchflip.finishing.measures import MEASURES_APART
from stitchflip.finishing.quilt_model import BorderPlan, JoinCheck, JoiningStrip, SettingTriangles
from stitchflip.finishing.words import size_in_words
from stitchflip.lengths import TOLERANCE_IN, Speaker, Unit
from stitchflip.project.model import (
    BorderCorners,
    CutAlong,
    Fold,
    Join,
    Joined,
    Joining,
    Project,
    Setting,
    Through,
    Triangles,
)
from stitchflip.project.numbers import Numbers


def joining_words(
    project: Project,
    numbers: Numbers,
    joined: Joined,
    cuts: JoinCuts,
    check: JoinCheck,
    strips: Sequence[JoiningStrip],
    block: tuple[float, float],
) -> Iterator[str]:
    """How the blocks are joined, in the order of the work.

    Args:
        project: For its unit and what is sewn through.
        numbers: The maker's numbers.
        joined: How the blocks are joined.
        cuts: Cut widths of the strips.
        check: One join in section.
        strips: All joining strips.
        block: Squared-up size of a block, inches.
    """
    say = Speaker(project.units)
    yield _order(joined)
    match joined.join:
        case Join.PLAIN_SEAM:
            yield from _plain(project, numbers, block, say)
            return
        case Join.COVERED:
            yield (
                f"At each join sew both strips, the front one cut {say.width(cuts.flat)}, to the edge of the first "
                f"block in one seam, one on either face; on the back {_turned_under(cuts, check, say)} and stitch the "
                "fold to the back of the next block by hand, not through to its front; then turn the front strip under "
                f"so that {say.near(check.shows)} of it shows, and stitch that fold to the next block by hand."
            )
            yield f"The back strip passes the far stitching by {say.margin(check.passes)}."
        case Join.FLAT_AND_FOLDED:
            yield from _flat_and_folded(joined, check, say)
    if check.filler > 0:
        yield f"In every join lay a strip of batting {say.near(check.filler)} wide between the blocks, edges butted."
    yield (
        "Cut every strip to the block or the row as measured and pin both ends and the middle; a strip that is sewn on "
        "long and cut off stretches. Sew every second strip from the other end."
    )
    if any(strip.name.startswith("corner square") for strip in strips):
        yield (
            f"Piece each long front strip from its strips and corner squares with {say.near(check.seam)} seams before "
            "it is sewn on, and match those seams to the short joins; behind it lies one strip."
        )
    if joined.setting is Setting.ON_POINT:
        yield "Long strips pass the edge line at both ends; trim them with the edge of the quilt, not before."
    if any(strip.is_pieced for strip in strips):
        longest = max(strip.long for strip in strips if strip.is_pieced)
        yield f"Strips up to {say.cut(longest)} long are joined from several; keep those joins off the block corners."


def _turned_under(cuts: JoinCuts, check: JoinCheck, say: Speaker) -> str:
    if cuts.folded:
        return f"bring over the strip that is cut {say.width(cuts.folded)} and folded in half"
    return f"turn {say.near(check.seam)} under"


def _order(joined: Joined) -> str:
    """What is joined first."""
    if joined.setting is Setting.ON_POINT:
        way = "up to the right" if joined.first is Joining.ROWS else "up to the left"
        return (
            f"Join blocks and triangles to diagonal rows that run {way}, then the rows to each other; two corner "
            "triangles end a row, the other two are sewn on last."
        )
    first, then = ("row", "rows") if joined.first is Joining.ROWS else ("column", "columns")
    return f"Join the blocks of each {first} first, with short joins, then the {then} to each other with long ones."


def _flat_and_folded(joined: Joined, check: JoinCheck, say: Speaker) -> Iterator[str]:
    behind = joined.fold is Fold.BEHIND
    flat_on, fold_on = ("front", "back") if behind else ("back", "front")
    yield "Fold each folded strip in half lengthwise, wrong sides together, and press it."
    yield (
        f"At each join sew the flat strip to the {flat_on} and the folded strip to the {fold_on} of the first block in "
        f"one seam, all raw edges together; sew the other edge of the flat strip to the next block on the {flat_on}; "
        f"bring the fold over that seam on the {fold_on} and stitch it down."
    )
    yield (
        f"{say.near(check.shows)} shows between the blocks on the front; their raw edges stand {say.margin(check.gap)} "
        f"apart, and the fold passes the far stitching by {say.margin(check.passes)}."
    )


def _plain(project: Project, numbers: Numbers, block: tuple[float, float], say: Speaker) -> Iterator[str]:
    if project.base.through is Through.BACKING_AND_BATTING:
        yield (
            "Fold the backings out of the way and sew the fronts right sides together; trim the battings until they "
            f"meet; trim one backing even with the seam, turn the other {say.near(numbers.seam)} under and stitch it "
            "over by hand."
        )
        return
    yield (
        f"Trim the batting out of every seam allowance, {say.near(numbers.seam)} back from the raw edge, sew the "
        "blocks right sides together and press the seams open."
    )
    wide, high = (side - 2 * numbers.seam for side in block)
    yield (
        "When all is joined, layer it on its backing and stitch in the ditch between the blocks: the strips hold top "
        f"and batting everywhere, the backing is held only every {say.near(max(wide, high))}."
    )


def triangle_words(project: Project, numbers: Numbers, joined: Joined, made: SettingTriangles) -> Iterator[str]:
    """The setting triangles: squares, grain, and the bases they are quilted on.

    Args:
        project: For its unit.
        numbers: For draw-up and spare.
        joined: For how large the squares are cut.
        made: The triangles.
    """
    say = Speaker(project.units)
    if made.side_squares:
        spare = 4 * made.side_squares - made.side_count
        left = f", {spare} to spare" if spare else ""
        yield (
            f"{made.side_count} side triangles from {_squares(made.side_squares)} cut {say.cut(made.side_cut)}, "
            f"{_quilted(say, made.side_cut, made.side_square)}cut twice from corner to "
            f"corner{left}: the long side lies on the straight grain at the edge "
            f"(exactly needed: {say.near(made.exact_side)})."
        )
    yield (
        f"4 corner triangles from {_squares(made.corner_squares)} cut {say.cut(made.corner_cut)}, "
        f"{_quilted(say, made.corner_cut, made.corner_square)}cut once: their short sides "
        f"lie on the straight grain (exactly needed: {say.near(made.exact_corner)})."
    )
    yield _bases(numbers, made, say)
    if joined.triangles is Triangles.OVERSIZE:
        yield f"The squares are oversize: trim the edge {say.near(numbers.seam)} beyond the corners of the blocks."
    if joined.triangles is Triangles.TRADE and project.units is Unit.CM:
        yield (
            "The additions in print, 3.5 and 2.5 cm for a seam of 0.75 cm, come out 1.2 and 0.6 mm small; here they "
            "are rounded up."
        )


def _quilted(say: Speaker, cut: float, square: float) -> str:
    """What happens between cutting a square and cutting it into triangles; nothing where quilting takes nothing."""
    return f"quilted and squared up to {say.cut(square)}, " if cut > square + TOLERANCE_IN else ""


def _squares(count: int) -> str:
    return "1 square" if count == 1 else f"{count} squares"


def _bases(numbers: Numbers, made: SettingTriangles, say: Speaker) -> str:
    """Triangles are layered and quilted like blocks; whole squares, so that no bias edge is quilted."""
    bases = [f"{under.count} of {say.cut_size(*under.batting)}" for under in under_triangles(numbers, made)]
    return (
        "Triangles are layered and quilted like the blocks: quilt the squares whole, on more bases "
        f"({' and '.join(bases)}), square them up, and cut them into triangles afterwards."
    )


def border_words(project: Project, numbers: Numbers, plans: Sequence[BorderPlan]) -> Iterator[str]:
    """How borders go on, what is laid under them, and what they take when they are cut along the fabric.

    Args:
        project: For what is sewn through and the widths of fabrics.
        numbers: For the seam as stitched.
        plans: The borders, from the inside out.
    """
    say = Speaker(project.units)
    behind = project.base.through is Through.BACKING_AND_BATTING
    for number, border in enumerate(plans, 1):
        adds = border_adds(border.cut, numbers.seam)
        if adds <= 0:
            continue
        which = "The border" if len(plans) == 1 else f"Border {number}"
        strip = ", and in the same seam a strip of backing as wide as the border to the back" if behind else ""
        yield (
            f"{which} ({border.fabric}, cut {say.width(border.cut)}, {border.corners}) is sewn to the "
            f"quilt as measured through its middle, both opposite strips alike{strip}; lay batting {say.near(adds)} "
            f"wide under it, butted to what is there."
        )
        if number == 1:
            yield (
                "Measure in three places and cut to the mean; where one is more than "
                f"{say.near(MEASURES_APART.of(project.units))} off it, mend that edge before a border goes on."
            )
        joined = [border.ends_long] if border.cut_along == CutAlong.SIDES else [border.sides_long, border.ends_long]
        longest = max(joined)
        if border.cut_along != CutAlong.NONE:
            which = "The sides" if border.cut_along == CutAlong.SIDES else "Its strips"
            yield f"{which} are cut along the length of the fabric, whole: that way it stretches least."
        if border.cut_along != CutAlong.ALL and is_longer_than_fabric(project, numbers, border.fabric, longest):
            usable = usable_width(project, numbers, border.fabric)
            need = lengthwise_need(border.cut, longest, usable) + numbers.straightening
            which = "Its strips" if len(joined) > 1 else "Top and bottom"
            yield (
                f"{which} are joined from several; cut along the length of the fabric they come whole, from "
                f"{say.near(need)}."
            )
        if border.corners == BorderCorners.MITERED.value:
            yield "Of a striped fabric cut all four strips alike, so that the stripes meet at the miters."


def size_words(project: Project, wide: float, high: float) -> str:
    """The size of the whole in the maker's order.

    Args:
        project: For its unit and which way the length runs.
        wide: Squared up, inches.
        high: The same from top to bottom, inches.
    """
    return size_in_words(project, wide, high)
