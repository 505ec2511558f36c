"""The house's own measures for finishing, each in both units.

They are what makers do, not what anybody types into a project file: common practice, no source, unless said.
A metric project takes the metric value as it stands; it is never converted from inches.
"""

from __future__ import annotations

from stitchflip.lengths import CM_PER_INCH, Unit
from stitchflip.values import dataclass


@dataclass(frozen=True, slots=True)
class Measure:
    """One measure as an inch maker and as a metric maker uses it.

    Example:
        >>> Measure(4, 10).of(Unit.INCH), round(Measure(4, 10).of(Unit.CM), 3)
        (4.0, 3.937)
    """

    inches: float
    cm: float

    def of(self, unit: Unit) -> float:
        """The measure in inches, as makers of this unit use it."""
        return float(self.inches) if unit is Unit.INCH else self.cm / CM_PER_INCH


MARK_EVERY = Measure(4, 10)
"""A placement line on the base every so far out from the center lines."""
BACKING_SEAM_OFF_MIDDLE = Measure(6, 15)
"""A backing seam lies at least so far from the middle, where a piece is folded most."""
NARROWEST_BACKING_PANEL = Measure(4, 10)
"""A panel joined to a backing is cut no narrower; less would be a seam close to the binding."""
BATTING_JOIN_OFF_FOLDS = Measure(3, 8)
"""Butted batting is joined at least so far from center lines and folds."""
BINDING_TAIL = Measure(8, 20)
"""Left loose at the start, for the closing join."""
BINDING_START_OFF_CORNER = Measure(6, 15)
"""The seam starts so far or more from a corner."""
BINDING_JOIN_OFF_CORNER = Measure(2, 5)
"""Joins in the binding lie so far or more from corners and points."""
BINDING_START_STEP = Measure(0.25, 0.5)
"""The start is given on this grid."""
BINDING_TRIM_STEP = Measure(1, 2)
"""What a first strip is cut shorter by, when that brings the joins off the corners, is on this grid."""
BINDING_PIECE_STEP = Measure(0.25, 0.5)
"""A piece added to a binding is cut on this grid."""
RULER_SLIP = Measure(1 / 16, 0.2)
"""What a ruler or a fold is easily off by."""
INNER_FOLD_BACK = Measure(1, 2.5)
"""Folded twice the same way, the first fold stays at least so far behind the cut."""
FOLD_STEP = Measure(0.5, 1)
"""Where to bring a fold is given on this grid."""
COVER_PASSES = Measure(1 / 8, 0.3)
"""The cover of a join passes the far stitching by so much, unless the maker gives its width."""
COVERED_SHOWS = Measure(2, 5)
"""Covered strips show so much, unless the maker says."""
JOIN_CUT_STEP = Measure(1 / 8, 0.5)
"""Computed joining strips are cut on this grid."""
THIN_FILLER = Measure(1 / 2, 1.2)
"""A strip of batting narrower than this does not lie flat by itself."""
LEAST_FRAME = Measure(1 / 2, 1.2)
"""The frame of a block that is too small shows at least so much."""
MITER_SPARE = Measure(2, 5)
"""A mitered border is cut so much longer than the quilt and both border widths (published for inches)."""
OVERSIZE = Measure(1 / 2, 1.5)
"""Oversize setting triangles: the square is cut so much larger than usual and trimmed after sewing."""
EXACT_STEP = Measure(1 / 16, 0.1)
"""Squares for exact setting triangles are cut on this grid, rounded up."""
BIAS_SQUARE_STEP = Measure(1, 1)
"""Squares for bias binding are cut on this grid, rounded up."""
BIAS_STRIP_STEP = Measure(0.5, 1)
"""Length of fabric for bias strips cut one by one is on this grid."""
BIAS_STRIP_AT_LEAST = Measure(12, 30)
"""Bias strips are no shorter than this: more joins than that show."""
SPARE_OF_TURNED_BACKING = Measure(0.5, 1.2)
"""Per side, of the backing of a piece that is turned through (published: "separate back 1 in larger than front")."""
FACING_TURNED_UNDER = Measure(0.25, 0.6)
"""The loose long edge of a facing is turned under by so much."""
FACING_END_TURNED = Measure(0.5, 1.2)
"""Facing strips at top and bottom reach beyond the piece by so much at each end, to be turned under."""
TOPSTITCH_FROM_EDGE = Measure(1 / 8, 0.3)
"""Topstitching of a piece that was turned through, from its edge."""
STAY_STITCH_BESIDE_CUT = Measure(1 / 8, 0.3)
"""Stay-stitching beside a cut that opens seams, on both sides of it."""
LABEL = (Measure(4, 10), Measure(3, 7.5))
"""A label as it shows, wide and high."""
LABEL_SQUARE = Measure(5, 13)
"""Square that is folded from corner to corner for a label in a corner, cut."""
MEASURES_APART = Measure(1 / 4, 0.6)
"""Measures of one side in several places are no farther than this off their mean."""
