"""Starter pieces with slants, corners and patches: string block, braid, chevron, wonky strips, foundation."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cli.starter_kinds import FOUR_PAPERS, SQUARE_CENTER, Starter
from stitchflip.project.model import Way

if TYPE_CHECKING:
    from collections.abc import Mapping

_SIZE = """\
[squared_up]                  # the size you want after squaring up; binding does not change it
wide = "{wide}"
long = "{long}"

"""

_HALF_SQUARE_CENTER = """\
[center]                      # a square cut once from corner to corner; its long side lies at the lower end
fabric = "Print"
shape = "half square"
cut = "{center}"                     # side of that square
"""

MORE_STARTERS: Mapping[Way, Starter] = {
    Way.STRINGS: Starter(
        piece="string block",
        strips="""\
# The middle strip first, then one line for each pair of strips: one above it, one below.
rounds = [
    { cut = "{middle}", fabric = "Print" },
    { cut = "{first}", fabric = "Light" },
    { cut = "{second}", fabric = "Middle" },
    { cut = "{third}", fabric = "Light" },
    { cut = "{last}", fabric = "Dark" },
]
""",
        shape=_SIZE.rstrip("\n") + "\n",
        building="""\
[building]
way = "string block"          # strips from corner to corner
turning = "clockwise"         # rising to the right; "counter-clockwise" rises to the left

# Several blocks make a quilt. Take the # away from these lines to join sixteen of them.
# [joined]
# across = 4                  # blocks in a row
# down = 4
# join = "plain seam"         # or "flat and folded strips", or "covered strips", each with a fabric
""",
        fabrics=FOUR_PAPERS,
        inches={
            "wide": "8 1/2",
            "long": "8 1/2",
            "middle": "2",
            "first": "1 1/2",
            "second": "2 1/4",
            "third": "1 3/4",
            "last": "2 3/4",
            "bind": "Dark",
        },
        centimeters={
            "wide": "22",
            "long": "22",
            "middle": "5",
            "first": "4",
            "second": "6",
            "third": "4.5",
            "last": "7.5",
            "bind": "Dark",
        },
    ),
    Way.BRAID: Starter(
        piece="braided runner",
        strips="""\
# One line for two strips, one on each upper side; the lines are repeated until the base is covered.
rounds = [
    { cut = "{cut}", fabric = "Light" },
    { cut = "{cut}", fabric = "Middle" },
    { cut = "{cut}", fabric = "Dark" },
]
""",
        shape=_SIZE + _HALF_SQUARE_CENTER,
        building="""\
[building]
way = "braid"
start = "upper right"         # the side of the first strip; or "upper left"
slant = 45                    # degrees of the strips from level
until_covered = true
""",
        fabrics=FOUR_PAPERS,
        inches={"wide": "12", "long": "38", "center": "7", "cut": "2 1/2", "bind": "Dark"},
        centimeters={"wide": "30", "long": "96", "center": "18", "cut": "6.5", "bind": "Dark"},
    ),
    Way.CHEVRON: Starter(
        piece="runner of arrows",
        strips="""\
# One line for the two strips of one V; the lines are repeated until the base is covered.
rounds = [
    { cut = "{cut}", fabric = "Light" },
    { cut = "{cut}", fabric = "Middle" },
    { cut = "{cut}", fabric = "Dark" },
]
""",
        shape=_SIZE + _HALF_SQUARE_CENTER,
        building="""\
[building]
way = "chevron"
pair_first = "alternate"      # which leg goes first: "upper" (the right one), "lower", or the other one each time
slant = 45                    # degrees of the strips from level
until_covered = true
""",
        fabrics=FOUR_PAPERS,
        inches={"wide": "12", "long": "38", "center": "7", "cut": "2 1/2", "bind": "Dark"},
        centimeters={"wide": "30", "long": "96", "center": "18", "cut": "6.5", "bind": "Dark"},
    ),
    Way.CORNER_SQUARES: Starter(
        piece="table topper",
        strips="""\
# One line a round: its four strips, and the squares that stand in its four corners.
rounds = [
    { cut = "{narrow}", fabric = "Light", corner_fabric = "Print" },
    { cut = "{narrow}", fabric = "Middle", corner_fabric = "Light" },
    { cut = "{last}", fabric = "Dark", corner_fabric = "Print" },
]
""",
        shape=_SIZE + SQUARE_CENTER,
        building="""\
[building]
way = "rounds with corner squares"
first_pair = ["top", "bottom"]    # strips without squares; the other two are pieced with them beforehand
""",
        fabrics=FOUR_PAPERS,
        inches={"wide": "12", "long": "12", "center": "4 1/2", "narrow": "2", "last": "2 3/4", "bind": "Dark"},
        centimeters={"wide": "30", "long": "30", "center": "11", "narrow": "5.5", "last": "6.5", "bind": "Dark"},
    ),
    Way.FOLDED_CORNERS: Starter(
        piece="hot pad",
        strips="""\
# One line for the squares on all corners: laid on level with the edges, sewn from corner to corner, flipped.
rounds = [
    { cut = "{large}", fabric = "Middle" },
    { cut = "{small}", fabric = "Dark" },
]
""",
        shape=_SIZE
        + """\
[center]                      # one patch over the whole base, its spare included
fabric = "Print"
shape = "square"
cut = "{center}"
""",
        building="""\
[building]
way = "stitch-and-flip corners"
corners = ["upper right", "upper left", "lower left", "lower right"]    # in the order sewn
""",
        fabrics=FOUR_PAPERS,
        inches={"wide": "8", "long": "8", "center": "9 1/2", "large": "4 1/4", "small": "2 3/4", "bind": "Dark"},
        centimeters={"wide": "20", "long": "20", "center": "23", "large": "10", "small": "6.5", "bind": "Dark"},
    ),
    Way.WONKY: Starter(
        piece="small mat",
        strips="""\
# One line a round, from the center outward; the slant of each strip comes from the seed below.
rounds = [
    { cut = "{narrow}", fabric = "Light" },
    { cut = "{broad}", fabric = "Middle" },
    { cut = "{narrow}", fabric = "Light" },
    { cut = "{last}", fabric = "Dark" },
]
""",
        shape=_SIZE + SQUARE_CENTER,
        building="""\
[building]
way = "wonky strips"
seed = 7                      # another number slants the strips another way
smallest_angle = 4            # degrees against the edge, at least
largest_angle = 14            # and at most
no_sliver_under = "{least}"       # the narrow end of a strip shows at least so much
""",
        fabrics=FOUR_PAPERS,
        inches={
            "wide": "12",
            "long": "12",
            "center": "4 1/2",
            "narrow": "2 1/4",
            "broad": "2 1/2",
            "last": "3",
            "least": "3/4",
            "bind": "Dark",
        },
        centimeters={
            "wide": "30",
            "long": "30",
            "center": "11",
            "narrow": "6",
            "broad": "6.5",
            "last": "8",
            "least": "2",
            "bind": "Dark",
        },
    ),
    Way.FOUNDATION: Starter(
        piece="numbered block",
        strips="""\
# One line a patch, in the order sewn. Each after the first is sewn along a line through two places,
# each so far right of the center mark and so far above it; a minus is left or below.
patches = [
    { fabric = "Print" },
    { fabric = "Light", line = [[-{inner}, -{edge}], [-{outer}, {edge}]] },
    { fabric = "Light", line = [[{inner}, -{edge}], [{outer}, {edge}]] },
    { fabric = "Middle", line = [[-{edge}, {inner}], [{edge}, {outer}]] },
    { fabric = "Dark", line = [[-{edge}, -{outer}], [{edge}, -{inner}]] },
]
""",
        shape=_SIZE.rstrip("\n") + "\n",
        building="""\
[building]
way = "numbered foundation"
lines_seen = "from the front" # or "from the back": as drawn on the side you sew from, mirrored
""",
        fabrics=FOUR_PAPERS,
        inches={"wide": "6", "long": "6", "edge": "3", "inner": "1.5", "outer": "2", "bind": "Dark"},
        centimeters={"wide": "15", "long": "15", "edge": "7.5", "inner": "4", "outer": "5", "bind": "Dark"},
    ),
}
