"""The starter pieces themselves: what a maker reads in a new project file, in inches and in centimeters.

The metric ones are redrafted, not converted: sizes a metric ruler shows, chosen so that nothing has to be
mended. Braces stand for sizes.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cli.more_starters import MORE_STARTERS
from stitchflip.cli.starter_kinds import FOUR_PAPERS, SQUARE_CENTER, Starter
from stitchflip.lengths import Unit
from stitchflip.project.model import Way

if TYPE_CHECKING:
    from collections.abc import Mapping


STARTERS: Mapping[Way, Starter] = {
    Way.LOG_CABIN: Starter(
        piece="table topper",
        strips="""\
# One line a round, from the center outward: the cut width, and the fabrics of its four strips as they are sewn.
rounds = [
    { cut = "{narrow}", fabrics = ["Cream", "Cream", "Slate", "Slate"] },
    { cut = "{narrow}", fabrics = ["Straw", "Straw", "Night", "Night"] },
    { cut = "{narrow}", fabrics = ["Cream", "Cream", "Slate", "Slate"] },
    { cut = "{last}", fabrics = ["Straw", "Straw", "Night", "Night"] },
]
""",
        shape="""\
[squared_up]                  # the size you want after squaring up; binding does not change it
wide = "{wide}"
long = "{long}"

"""
        + SQUARE_CENTER,
        building="""\
[building]
way = "log cabin"
start = "top"                 # the side of the first strip
turning = "clockwise"         # or "counter-clockwise", seen from the right side
""",
        fabrics=(
            ("Print", "#c8553d"),
            ("Cream", "#f0e7d3"),
            ("Straw", "#e0c68c"),
            ("Slate", "#66788a"),
            ("Night", "#2f3b4c"),
        ),
        inches={"wide": "15", "long": "15", "center": "4", "narrow": "2", "last": "2 1/2", "bind": "Night"},
        centimeters={"wide": "36", "long": "36", "center": "10", "narrow": "5", "last": "6.5", "bind": "Night"},
    ),
    Way.TWO_SIDED: Starter(
        piece="corner block",
        strips="""\
# One line a round: each round puts a strip on two neighboring sides of what is there.
rounds = [
    { cut = "{narrow}", fabric = "Light" },
    { cut = "{narrow}", fabric = "Middle" },
    { cut = "{narrow}", fabric = "Light" },
    { cut = "{narrow}", fabric = "Middle" },
{extra}    { cut = "{last}", fabric = "Dark" },
]
""",
        shape="""\
[squared_up]                  # the size you want after squaring up; binding does not change it
wide = "{wide}"
long = "{long}"

[center]                      # the first piece, by its cut size; it lies in a corner and passes two edges
fabric = "Print"
shape = "square"
cut = "{center}"
off_center = [{off}, {off}]   # where its middle lies from the base's center mark: across, then up
""",
        building="""\
[building]
way = "two-sided log cabin"
start = "top"                 # the sides grown here: top, then right
turning = "clockwise"
""",
        fabrics=FOUR_PAPERS,
        inches={
            "wide": "12",
            "long": "12",
            "center": "5",
            "off": "-4.25",
            "narrow": "2",
            "last": "3",
            "extra": "",
            "bind": "Dark",
        },
        centimeters={
            "wide": "30",
            "long": "30",
            "center": "12",
            "off": "-11.0",
            "narrow": "5",
            "last": "6.5",
            "extra": '    { cut = "5", fabric = "Light" },\n',
            "bind": "Dark",
        },
    ),
    Way.COURTHOUSE: Starter(
        piece="placemat",
        strips="""\
# One line a round, from the center outward: top and bottom first, then the two sides.
rounds = [
    { cut = "{narrow}", fabric = "Light" },
    { cut = "{narrow}", fabric = "Middle" },
    { cut = "{last}", fabric = "Dark" },
]
""",
        shape="""\
[squared_up]                  # the size you want after squaring up; binding does not change it
wide = "{wide}"               # as it lies on the table
long = "{long}"

[center]                      # the first piece, by its cut size
fabric = "Print"
shape = "rectangle"
cut_wide = "{center_wide}"
cut_long = "{center_long}"
""",
        building="""\
[building]
way = "courthouse steps"
first_pair = ["top", "bottom"]
""",
        fabrics=FOUR_PAPERS,
        inches={
            "wide": "18",
            "long": "13",
            "center_wide": "10",
            "center_long": "5",
            "narrow": "2",
            "last": "2 1/2",
            "bind": "Dark",
        },
        centimeters={
            "wide": "46",
            "long": "33",
            "center_wide": "26",
            "center_long": "13",
            "narrow": "5",
            "last": "6.5",
            "bind": "Dark",
        },
    ),
    Way.POINTS: Starter(
        piece="table runner",
        strips="""\
# One line a round, from the center outward: four strips each, a pair on the right, then a pair on the left.
rounds = [
    { cut = "{narrow}", fabric = "Light" },
    { cut = "{broad}", fabric = "Middle" },
    { cut = "{narrow}", fabric = "Light" },
    { cut = "{broad}", fabric = "Middle" },
    { cut = "{last}", fabric = "Dark" },
]
""",
        shape="""\
[squared_up]                  # the size you want after squaring up; binding does not change it
wide = "{wide}"
long = "{long}"                   # from tip to tip
ends = "pointed"              # or "square"
length_runs = "across"        # how it lies in the pictures: "across" or "up"

[center]                      # the first piece, by its cut size
fabric = "Print"
shape = "square"
cut = "{center}"
turned = "on point"           # or "straight"
""",
        building="""\
[building]
way = "pairs round the point"
pair_first = "upper"          # which strip of a pair goes first: "upper", "lower" or "alternate"
""",
        fabrics=FOUR_PAPERS,
        inches={
            "wide": "13",
            "long": "36",
            "center": "8",
            "narrow": "2",
            "broad": "2 1/2",
            "last": "3 1/4",
            "bind": "Dark",
        },
        centimeters={
            "wide": "33",
            "long": "92",
            "center": "21",
            "narrow": "5",
            "broad": "6.5",
            "last": "9",
            "bind": "Dark",
        },
    ),
    Way.AROUND: Starter(
        piece="hexagon topper",
        strips="""\
# One line a round, from the center outward: one strip on each of the six sides.
rounds = [
    { cut = "{narrow}", fabric = "Light" },
    { cut = "{narrow}", fabric = "Middle" },
    { cut = "{narrow}", fabric = "Light" },
    { cut = "{last}", fabric = "Dark" },
]
""",
        shape="""\
[squared_up]                  # the size you want after squaring up; binding does not change it
shape = "polygon"
sides = 6
across_flats = "{across}"         # from side to opposite side

[center]                      # the first piece, by its cut size
fabric = "Print"
shape = "polygon"
sides = 6
cut = "{center}"                  # from side to opposite side
""",
        building="""\
[building]
way = "round after round"
turning = "clockwise"
""",
        fabrics=FOUR_PAPERS,
        inches={"across": "17", "center": "5 1/2", "narrow": "2", "last": "2 3/4", "bind": "Dark"},
        centimeters={"across": "40", "center": "14", "narrow": "5", "last": "6.5", "bind": "Dark"},
    ),
    Way.ROWS: Starter(
        piece="table runner",
        strips="""\
# The middle strip first, then one line for each pair of strips: one on each side of what is there.
rounds = [
    { cut = "{middle}", fabric = "Print" },
    { cut = "{broad}", fabric = "Light" },
    { cut = "{broad}", fabric = "Middle" },
    { cut = "{broad}", fabric = "Dark" },
    { cut = "{broad}", fabric = "Light" },
    { cut = "{broad}", fabric = "Middle" },
    { cut = "{broad}", fabric = "Dark" },
    { cut = "{broad}", fabric = "Light" },
    { cut = "{broad}", fabric = "Middle" },
    { cut = "{last}", fabric = "Dark" },
]
""",
        shape="""\
[squared_up]                  # the size you want after squaring up; binding does not change it
wide = "{wide}"
long = "{long}"
""",
        building="""\
[building]
way = "rows of strips"
rows_run = "across"           # or "along", or "slanted"
rows_from = "the middle"      # or "one end"
""",
        fabrics=FOUR_PAPERS,
        inches={"wide": "12", "long": "38", "middle": "3", "broad": "2 1/2", "last": "3 1/2", "bind": "Dark"},
        centimeters={"wide": "30", "long": "96", "middle": "7.5", "broad": "6.5", "last": "9", "bind": "Dark"},
    ),
    Way.SIDES: Starter(
        piece="small mat",
        strips="""\
# One line a strip, in the order you sew them: any side, any width.
steps = [
    { side = "right", cut = "{narrow}", fabric = "Light" },
    { side = "left", cut = "{narrow}", fabric = "Light" },
    { side = "top", cut = "{narrow}", fabric = "Middle" },
    { side = "bottom", cut = "{narrow}", fabric = "Middle" },
    { side = "right", cut = "{last}", fabric = "Dark" },
    { side = "left", cut = "{last}", fabric = "Dark" },
    { side = "top", cut = "{last}", fabric = "Dark" },
    { side = "bottom", cut = "{last}", fabric = "Dark" },
]
""",
        shape="""\
[squared_up]                  # the size you want after squaring up; binding does not change it
wide = "{wide}"
long = "{long}"

"""
        + SQUARE_CENTER,
        building="""\
[building]
way = "sides in my order"
""",
        fabrics=FOUR_PAPERS,
        inches={"wide": "10 1/2", "long": "10 1/2", "center": "5", "narrow": "2", "last": "2 1/2", "bind": "Middle"},
        centimeters={"wide": "25", "long": "25", "center": "12", "narrow": "5", "last": "6.5", "bind": "Middle"},
    ),
    **MORE_STARTERS,
}

HEAD = """\
# {name}: a {piece}, planned with stitchflip.
#
# Lines and words after a # are notes for you. Change any number, save, and plan again.
# {units_note}
# Sizes are wide × long. "Cut" sizes are as you cut them, seam allowances included.

name = {quoted}
units = "{unit}"                  # "in" or "cm"
how_many = 1                  # pieces alike, up to 24
way_of_working = "cut first"  # or "trim as you go": sew from the strip in the hand, trim, use the rest next

"""

UNITS_NOTE = {
    Unit.INCH: 'Lengths are inches, written as you say them: "2 1/2", "2½" or "2.5".',
    Unit.CM: 'Lengths are centimeters: "6.5" or "6,5".',
}

TAIL = """\
[binding]
fabric = "{bind}"
finish = "machine"            # or "hand"

[batting]
fiber = "cotton"              # or "polyester", "blend", "wool", "bamboo"
{batting_note}
# Your own numbers, when you know them. Take the # away from a line to use it; what is left out has these values.
# [my_numbers]
{numbers}"""

NUMBERS = {
    Unit.INCH: """\
# seam = "1/4"                # as you sew it
# usable_width = "40"         # of fabric, selvages off; a fabric can have its own
# draw_up = 0.015             # how much stitching pulls the piece in (0.015 = 1.5 %)
# reach = "1/2"               # how far fabric should reach past the trim line
# wish_beyond_points = "1"    # beyond each point of the center, to the trimmed edge
""",
    Unit.CM: """\
# seam = "0.75"               # as you sew it
# usable_width = "105"        # of fabric, selvages off; a fabric can have its own
# draw_up = 0.015             # how much stitching pulls the piece in (0.015 = 1.5 %)
# reach = "1.2"               # how far fabric should reach past the trim line
# wish_beyond_points = "2.5"  # beyond each point of the center, to the trimmed edge
""",
}

BATTING_NOTE = {
    Unit.INCH: '# widest_gap = "8"            # the wrapper says how far apart stitching may be\n',
    Unit.CM: '# widest_gap = "20"           # the wrapper says how far apart stitching may be\n',
}

FABRIC = """\
[[fabrics]]
name = "{name}"
color = "{color}"             # for the pictures

"""
