"""Sleeve and label: what goes onto the back, and that it goes on before the edge is closed over it."""

from __future__ import annotations

from collections.abc import Iterator

from stitchflip.finishing.binding import panels_of
from stitchflip.finishing.edge_model import EdgePiece, ExtrasPlan
from stitchflip.finishing.edges import corner_angles, trim_edges
from stitchflip.finishing.measures import LABEL, LABEL_SQUARE
from stitchflip.finishing.sleeve import Sleeve, sleeve_for
from stitchflip.lengths import TOLERANCE_IN, Rounding, Speaker, round_to
from stitchflip.piecing.geometry import HalfPlane, clip, extent
from stitchflip.piecing.model import Polygon
from stitchflip.piecing.shapes import panel_polygon
from stitchflip.project.model import Edge, LabelShape, Project, Through
from stitchflip.project.numbers import Numbers

_SQUARE_CORNER = 1.0
"""A corner within so many degrees of a right angle takes a folded square."""
_DOWN_THE_PIECE = 8
"""On a piece without a straight top the sleeve's upper edge lies one part in so many below the highest place."""


def plan_extras(project: Project, numbers: Numbers, outline_taped: Polygon) -> ExtrasPlan:
    """Sleeve and label: pieces to cut, and what to do and when.

    Args:
        project: For what is wanted and of which fabric.
        numbers: For seams.
        outline_taped: The squared-up outline of the whole, taped, counter-clockwise.

    Returns:
        Pieces for one base (every panel has its own when it is cut apart), and words.
    """
    panels = panels_of(project)
    outline = outline_taped if panels == 1 else panel_polygon(project, numbers)
    pieces: list[EdgePiece] = []
    words: list[str] = []
    if project.extras.sleeve:
        depth = _sleeve_depth(outline)
        wide = _width_at(outline, depth)
        if depth > 0:
            wide = round_to(wide, numbers.round_cuts_to, Rounding.DOWN)
        sleeve = sleeve_for(wide, numbers.seam, project.units)
        fabric = project.extras.sleeve_fabric or project.backing.fabric
        pieces.append(EdgePiece("Sleeve", fabric, sleeve.cut_wide, sleeve.cut_long, panels))
        words += _sleeve_words(project, numbers, sleeve, depth)
    if project.extras.label is not None:
        fabric = project.extras.label_fabric or project.backing.fabric
        wide, high = label_size(project, numbers, outline)
        pieces.append(EdgePiece("Label", fabric, wide, high, panels))
        words += _label_words(project, numbers, (wide, high))
    return ExtrasPlan(tuple(pieces), tuple(words))


def _sleeve_depth(outline: Polygon) -> float:
    """How far below the highest place a sleeve's upper edge lies: 0 where the top is straight and long enough."""
    low, high = extent(outline, 0, 1)
    top = [x for x, y in outline if y > high - TOLERANCE_IN]
    left, right = extent(outline, 1, 0)
    return 0.0 if max(top) - min(top) > (right - left) / 2 else (high - low) / _DOWN_THE_PIECE


def _width_at(outline: Polygon, depth: float) -> float:
    """How wide a piece is so far below its highest place."""
    high = extent(outline, 0, 1)[1]
    below: HalfPlane = (0.0, 1.0, high - depth)
    rest = clip(outline, *below)
    places = [x for x, y in rest if y > high - depth - TOLERANCE_IN]
    return max(places) - min(places)


def _sleeve_words(project: Project, numbers: Numbers, sleeve: Sleeve, depth: float) -> Iterator[str]:
    say = Speaker(project.units)
    hem = (sleeve.cut_long - sleeve.finished_long) / 2
    is_caught = depth <= 0 and project.binding.edge is Edge.BINDING
    pressed = "" if is_caught else " and press it open"
    yield (
        f"Sleeve, cut {say.cut_size(sleeve.cut_wide, sleeve.cut_long)}: hem both short ends by {say.near(hem)}, sew "
        f"the long edges wrong sides together with a seam of {say.width(numbers.seam)}{pressed}: a tube "
        f"{say.near(sleeve.finished_wide)} wide flat and {say.near(sleeve.finished_long)} long."
    )
    edge = project.binding.edge
    if depth > 0:
        yield (
            f"Before the edge is finished sew the tube to the back by hand, its upper edge {say.near(depth)} below the "
            "highest place, its seam against the back; let the upper layer bulge a little for the rod."
        )
    elif edge is Edge.BINDING:
        yield (
            "Before the binding is sewn on baste the raw-edged seam of the tube level with the top edge of the back, "
            "in the middle, so that the binding catches it; sew its lower fold down by hand, with a little bulge "
            "for the rod."
        )
    else:
        yield (
            f"{_when_the_sleeve(edge)} sew the tube to the back by hand just below the top edge, its seam against the "
            "back, with a little bulge for the rod."
        )


def _when_the_sleeve(edge: Edge) -> str:
    if edge is Edge.FACING:
        return "When the facing is hemmed down"
    return "Before the edge is folded over" if edge is Edge.SELF_BINDING else "When the piece is turned and topstitched"


def takes_corner_label(project: Project, outline: Polygon) -> bool:
    """True when a folded square can be laid into a right-angled corner and is caught there by a binding or a seam.

    Args:
        project: For its shape, and for its edge: a facing would cover the label, a self-binding catches nothing.
        outline: Of one piece, taped.
    """
    if project.binding.edge not in {Edge.BINDING, Edge.TURNED_THROUGH}:
        return False
    angles = corner_angles(trim_edges(project, outline))
    return any(abs(angle - 90) <= _SQUARE_CORNER for angle in angles)


def label_size(project: Project, numbers: Numbers, outline: Polygon) -> tuple[float, float]:
    """(wide, high) to cut a label, inches: a square to fold, or a rectangle with a seam turned under all round.

    Args:
        project: For the kind of label; a piece without a corner for it gets a rectangle.
        numbers: For the seam.
        outline: Of one piece, taped.
    """
    if project.extras.label is LabelShape.CORNER and takes_corner_label(project, outline):
        square = LABEL_SQUARE.of(project.units)
        return square, square
    wide, high = (side.of(project.units) for side in LABEL)
    return wide + 2 * numbers.seam, high + 2 * numbers.seam


def _label_words(project: Project, numbers: Numbers, size: tuple[float, float]) -> Iterator[str]:
    say = Speaker(project.units)
    when = {
        Edge.BINDING: "Before the binding is sewn on",
        Edge.FACING: "Before the facing is sewn on",
        Edge.SELF_BINDING: "Before the edge is folded over",
        Edge.TURNED_THROUGH: "Before the piece is sewn together and turned",
    }[project.binding.edge]
    write = "write or stitch on it for whom it is, from whom, the year, and how to wash it"
    if size[0] == size[1]:
        yield (
            f"Label, a square cut {say.cut_size(*size)}: {write}, in one half, fold it from corner to corner, wrong "
            "sides together, and press."
        )
        if project.binding.edge is Edge.TURNED_THROUGH:
            yield (
                f"{when} mark the squared-up size on the right side of the backing, lay the triangle into a marked "
                "corner at the lower edge, its raw edges on the marks, and baste it there: the seam all round catches "
                "both short sides; sew down its fold by hand."
            )
        else:
            yield (
                f"{when} lay the triangle on the back into a right-angled corner at the lower edge, its raw edges "
                "level with the trimmed edges, and baste it there inside the seam allowance: the binding catches both "
                "short sides; sew down its fold by hand."
            )
        return
    shows = say.size(size[0] - 2 * numbers.seam, size[1] - 2 * numbers.seam)
    yield (
        f"Label, cut {say.cut_size(min(size), max(size))}: {write}, and press {say.width(numbers.seam)} under all "
        f"round; it shows {shows} (wide × high)."
    )
    later = "the backing" if project.base.through is not Through.BACKING_AND_BATTING else "the back"
    yield f"{when} sew it to {later} by hand near the lower edge, clear of what the edge will cover."
