"""What each way of building is called on paper, and where it asks for other words than the rest."""

from __future__ import annotations

from stitchflip.project.model import Join, Project, Way

_STRAIGHT_ON = "sewn straight onto the base"

WAYS = {
    Way.LOG_CABIN: f"log cabin, {_STRAIGHT_ON}",
    Way.TWO_SIDED: f"two-sided log cabin, {_STRAIGHT_ON}",
    Way.COURTHOUSE: f"courthouse steps, {_STRAIGHT_ON}",
    Way.POINTS: f"pairs round the point, {_STRAIGHT_ON}",
    Way.AROUND: f"round after round, {_STRAIGHT_ON}",
    Way.ROWS: f"rows of strips, {_STRAIGHT_ON}",
    Way.STRINGS: f"string block, its strips slanted and {_STRAIGHT_ON}",
    Way.BRAID: f"braid, its strips {_STRAIGHT_ON}",
    Way.CHEVRON: f"chevron, its strips {_STRAIGHT_ON}",
    Way.CORNER_SQUARES: f"rounds with corner squares, {_STRAIGHT_ON}",
    Way.FOLDED_CORNERS: f"stitch-and-flip corners, {_STRAIGHT_ON}",
    Way.WONKY: f"wonky strips, {_STRAIGHT_ON}",
    Way.FOUNDATION: "numbered foundation, sewn along drawn lines",
    Way.SIDES: f"strips side by side, {_STRAIGHT_ON}",
}
"""The technique of a piece, to follow "quilt-as-you-go: "."""

WITHOUT_ROUNDS = frozenset({Way.ROWS, Way.STRINGS, Way.BRAID, Way.CHEVRON, Way.FOUNDATION, Way.FOLDED_CORNERS})
"""Ways in which a maker does not think in rounds."""

_JOINS = {
    Join.FLAT_AND_FOLDED: "flat and folded strips",
    Join.COVERED: "covered strips",
    Join.PLAIN_SEAM: "plain seams",
}


def technique(project: Project) -> str:
    """The technique of a project in one line, with how its blocks are joined."""
    said = f"quilt-as-you-go: {WAYS[project.building.way]}"
    if project.joined is None or project.blocks_in_one == 1:
        return said
    return f"{said}; blocks joined by {_JOINS[project.joined.join]}"
