"""The kernel: plane geometry, flips, orders, the build and its seam ends. Pure; floats in inches.

Frame: origin at the base's center mark, x across, y up, face up. *Flat* places lie on the base before any
stitching, *taped* ones are what a tape reads afterward.
"""

from stitchflip.piecing.project_build import bare_of, build_project, start_of
from stitchflip.piecing.shapes import trim_polygon
from stitchflip.piecing.ways import first_piece_polygon

__all__ = ["bare_of", "build_project", "first_piece_polygon", "start_of", "trim_polygon"]
