"""The finished edge in section, where it is no binding: what is folded which way, and where the stitching holds it.

Widths and the thickness of the batting are to scale; fabric is drawn thicker than it is, or nobody would see it.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.errors import BuildError
from stitchflip.finishing.measures import FACING_TURNED_UNDER
from stitchflip.lengths import Speaker
from stitchflip.pictures.drawing import color_of
from stitchflip.pictures.ink import BATTING, HAIR, INK, SOFT, STRONG, THREAD
from stitchflip.pictures.model import Area, Dash, Dimension, Figure, Line, Margins, Pen, Primitive, Text
from stitchflip.piecing.geometry import box
from stitchflip.project.model import Edge

if TYPE_CHECKING:
    from stitchflip.planning.model import Plan

_THICK = 0.024
"""A layer of fabric as drawn, inches."""
_THIN_BATTING = 0.07
_REACH = 1.15
"""How much of the piece is seen, inches."""
_LAYER = Pen(INK, HAIR)
_SOFT_EDGE = Pen(SOFT, HAIR)
_STITCHES = Pen(THREAD, STRONG, Dash.SEAM)
_NEAR_FOLD = 0.05
"""How far inside its fold a turned edge is sewn down, inches."""


def edge_section(plan: Plan) -> Figure:
    """The edge as if cut through: self-binding, facing, or turned through.

    Args:
        plan: A plan whose edge is not bound.

    Returns:
        The figure, in inches of the real thing, the finished edge at x = 0 and the piece to its left; made to be
        printed larger than life.

    Raises:
        BuildError: If the edge is bound; its corners are drawn instead.
    """
    sketch = _Sketch(plan)
    items: list[Primitive] = []
    match plan.project.binding.edge:
        case Edge.SELF_BINDING:
            items = sketch.self_binding()
        case Edge.FACING:
            items = sketch.facing()
        case Edge.TURNED_THROUGH:
            items = sketch.turned_through()
        case Edge.BINDING:
            raise BuildError(
                what="a bound edge has no section",
                fix="Ask for its corners, or for the section of another edge.",
                code="build.edge-is-bound",
            )
    return Figure(
        (*items, *sketch.names()),
        sketch.low,
        sketch.high,
        f"{plan.project.name}, the edge in section",
        _described(plan),
        Margins(left=44.0, right=12.0, top=26.0, bottom=28.0),
        4.0,
    )


class _Sketch:
    """Layers of the piece up to its finished edge; front up, batting from 0 to `_high`."""

    def __init__(self, plan: Plan) -> None:
        self._say = Speaker(plan.project.units)
        self._edge = plan.edge
        self._high = max(plan.numbers.loft, _THIN_BATTING)
        self._top = color_of(plan, plan.build.pieces[-1].fabric)
        self._backing = color_of(plan, plan.backing.fabric)
        pieces = plan.edge.pieces
        self._facing = color_of(plan, pieces[0].fabric) if pieces else self._backing
        turned = FACING_TURNED_UNDER.of(plan.project.units)
        self._hem = turned
        wide = min((piece.wide for piece in pieces), default=0.0) if not plan.edge.bias_square else 0.0
        self._behind = (wide - plan.edge.seam - turned) if wide else 1.5
        """How far a facing reaches on the back; of a bias facing, whose strip is not among the pieces, as usual."""
        is_faced = plan.project.binding.edge is Edge.FACING
        reach = max(_REACH, self._behind + 0.35) if is_faced else _REACH
        self.low = (-reach, -4.5 * _THICK)
        self.high = (2 * _THICK, self._high + 3.5 * _THICK)

    def _band(self, x0: float, x1: float, layer: int, color: str, what: str) -> Area:
        """One layer of fabric; 0 and up lie on the batting, -1 and down under it."""
        low = self._high + layer * _THICK if layer >= 0 else layer * _THICK
        return Area(box((x0, low), (x1, low + _THICK)), color, pen=_LAYER, what=what)

    def _batting(self, end: float) -> Area:
        return Area(box((self.low[0], 0.0), (end, self._high)), BATTING, pen=_SOFT_EDGE, what="batting")

    def _wall(self, low_layer: int, high_layer: int, color: str, what: str) -> Area:
        """Fabric that turns round the edge, from one layer to another."""
        low = low_layer * _THICK
        high = self._high + (high_layer + 1) * _THICK
        return Area(box((0.0, low), (_THICK, high)), color, pen=_LAYER, what=what)

    def self_binding(self) -> list[Primitive]:
        """The backing comes round the trimmed edge, its own edge folded in, and is sewn down along its fold."""
        shows, far = self._edge.shows, self.low[0]
        fold = -shows
        return [
            self._batting(0.0),
            self._band(far, 0.0, 0, self._top, "top"),
            self._band(far, _THICK, -1, self._backing, "backing"),
            self._wall(-1, 2, self._backing, "backing"),
            self._band(fold, 0.0, 1, self._backing, "turned in"),
            self._band(fold, _THICK, 2, self._backing, "self-binding"),
            self._stitch(fold + _NEAR_FOLD, self.high[1], self.low[1] / 2),
            Dimension((fold, self.high[1]), (0.0, self.high[1]), (f"shows {self._say.near(shows)}",), away=8.0),
        ]

    def facing(self) -> list[Primitive]:
        """The facing lies behind; the seam allowance of the piece is turned in under it."""
        seam, far = self._edge.seam, self.low[0]
        inner = -self._behind
        return [
            self._batting(0.0),
            self._band(far, _THICK, 0, self._top, "top"),
            self._band(far, 0.0, -1, self._backing, "backing"),
            self._wall(-2, 0, self._top, "top"),
            self._band(-seam, 0.0, -2, self._top, "allowance"),
            self._band(inner, inner + self._hem, -2, self._facing, "turned under"),
            self._band(inner, _THICK, -3, self._facing, "facing"),
            self._stitch(inner + _NEAR_FOLD, 0.0, self.low[1]),
            self._stitch(-_NEAR_FOLD, -_THICK, self.low[1]),
            Dimension((-seam, self.low[1]), (0.0, self.low[1]), (f"seam {self._say.near(seam)}",), away=-10.0),
            Dimension((inner, self.high[1]), (0.0, self.high[1]), (f"{self._say.near(-inner)} on the back",), away=8.0),
        ]

    def turned_through(self) -> list[Primitive]:
        """Front and backing turned in at the edge, their allowances between the layers, stitched once more on top."""
        seam, far = self._edge.seam, self.low[0]
        top_in, back_in = box((-seam, self._high - _THICK), (0.0, self._high)), box((-seam, 0.0), (0.0, _THICK))
        return [
            self._batting(-_THICK),
            self._band(far, _THICK, 0, self._top, "top"),
            self._band(far, _THICK, -1, self._backing, "backing"),
            Area(top_in, self._top, pen=_LAYER, what="allowance"),
            Area(back_in, self._backing, pen=_LAYER, what="allowance"),
            self._stitch(-max(2 * _NEAR_FOLD, seam / 4), self.high[1], self.low[1] / 2),
            Dimension((-seam, self.low[1]), (0.0, self.low[1]), (f"seam {self._say.near(seam)}",), away=-10.0),
        ]

    def _stitch(self, x: float, top: float, foot: float) -> Line:
        return Line(((x, top), (x, foot)), _STITCHES, what="stitching")

    def names(self) -> list[Primitive]:
        """What the layers are, at the left."""
        left = self.low[0]
        rows = (("front", self._high, 4.0), ("batting", self._high / 2, 0.0), ("backing", 0.0, -4.0))
        return [Text((left, y), said, 7.0, anchor="end", color=SOFT, shift=(-5.0, up)) for said, y, up in rows]


def _described(plan: Plan) -> str:
    say, made = Speaker(plan.project.units), plan.edge
    match plan.project.binding.edge:
        case Edge.SELF_BINDING:
            how = (
                f"the backing comes round the trimmed edge to the front, its raw edge folded in to the edge, and shows "
                f"{say.near(made.shows)}; it is sewn down along its fold"
            )
        case Edge.FACING:
            how = f"a facing lies behind, sewn {say.near(made.seam)} from the trimmed edge and turned to the back"
        case _:
            how = f"front and backing are turned in by the seam of {say.near(made.seam)} and stitched once more on top"
    return f"The edge in section, the piece at the left: {how}."
