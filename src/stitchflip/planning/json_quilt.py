"""Joined blocks, the edge, panels and extras in the plan's document."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.planning.json_values import Document, number, place, places, plain, wide_and_long

if TYPE_CHECKING:
    from stitchflip.finishing.edge_model import EdgePiece
    from stitchflip.finishing.quilt_model import BorderPlan, QuiltPlan, SettingTriangles
    from stitchflip.lengths import Speaker
    from stitchflip.planning.model import Plan


def quilt_as_json(plan: Plan, say: Speaker) -> Document | None:
    """The joined quilt; None for a piece by itself."""
    quilt = plan.quilt
    if quilt is None:
        return None
    join = quilt.join
    return {
        "wide_in": number(quilt.wide),
        "long_in": number(quilt.high),
        "text": plain(f"squared up {say.size(quilt.wide, quilt.high)}, wide × long"),
        "kinds": [{"name": kind.name, "count": kind.count} for kind in plan.kinds],
        "blocks": [
            {
                "kind": placed.kind,
                "row": placed.row,
                "column": placed.column,
                "turned_degrees": placed.turned,
                "wide_in": number(placed.wide),
                "long_in": number(placed.high),
                **place(placed.middle),
            }
            for placed in quilt.blocks
        ],
        "join": {
            "way": join.way,
            "shows_in": number(join.shows),
            "gap_in": number(join.gap),
            "passes_in": number(join.passes),
            "filler_in": number(join.filler),
            "seam_in": number(join.seam),
        },
        "strips": [
            {
                "name": strip.name,
                "fabric": strip.fabric,
                "cut_width_in": number(strip.cut),
                "cut_length_in": number(strip.long),
                "count": strip.count,
                "is_pieced": strip.is_pieced,
            }
            for strip in quilt.strips
        ],
        "triangles": _triangles(quilt.triangles),
        "borders": [_border(border) for border in quilt.borders],
        "trimmed_to": _trimmed(quilt),
        "repairs": [plain(repair) for repair in quilt.repairs],
        "words": [plain(sentence) for sentence in quilt.words],
        "layouts": [
            {
                "across": layout.across,
                "down": layout.down,
                "left_over": layout.left_over,
                "wide_in": number(layout.wide),
                "long_in": number(layout.high),
                "backing": plain(layout.backing),
            }
            for layout in quilt.layouts
        ],
    }


def _trimmed(quilt: QuiltPlan) -> Document | None:
    if quilt.trimmed_to is None:
        return None
    return {"wide_in": number(quilt.trimmed_to[0]), "long_in": number(quilt.trimmed_to[1])}


def _triangles(triangles: SettingTriangles | None) -> Document | None:
    if triangles is None:
        return None
    return {
        "fabric": triangles.fabric,
        "side_triangles": triangles.side_count,
        "side_cut_in": number(triangles.side_cut),
        "side_square_in": number(triangles.side_square),
        "side_squares": triangles.side_squares,
        "side_exact_in": number(triangles.exact_side),
        "corner_triangles": triangles.corner_count,
        "corner_cut_in": number(triangles.corner_cut),
        "corner_square_in": number(triangles.corner_square),
        "corner_squares": triangles.corner_squares,
        "corner_exact_in": number(triangles.exact_corner),
    }


def _border(border: BorderPlan) -> Document:
    return {
        "fabric": border.fabric,
        "cut_width_in": number(border.cut),
        "corners": border.corners,
        "sides_cut_length_in": number(border.sides_long),
        "ends_cut_length_in": number(border.ends_long),
        "corner_fabric": border.corner_fabric,
        "corner_square_in": number(border.corner_square),
        "cut_along": border.cut_along,
    }


def edge_as_json(plan: Plan) -> Document:
    """How the edge is finished."""
    edge = plan.edge
    return {
        "kind": edge.kind,
        "grain": edge.grain,
        "seam_in": number(edge.seam),
        "shows_in": number(edge.shows),
        "backing_extra_in": number(edge.backing_extra),
        "opening_in": number(edge.opening),
        "bias_square_in": number(edge.bias_square),
        "bias_strips": edge.bias_strips,
        "pieces": [_edge_piece(piece) for piece in edge.pieces],
        "words": [plain(sentence) for sentence in edge.words],
    }


def _edge_piece(piece: EdgePiece) -> Document:
    return {
        "name": piece.name,
        "fabric": piece.fabric,
        "cut_width_in": number(piece.wide),
        "cut_length_in": number(piece.long),
        "count": piece.count,
    }


def panels_as_json(plan: Plan, say: Speaker) -> Document | None:
    """What a long base is cut into; None when nothing is cut apart."""
    panels = plan.panels
    if panels is None:
        return None
    wide, long = wide_and_long(plan, panels.wide, panels.high)
    return {
        "across": panels.across,
        "down": panels.down,
        "wide_in": number(wide),
        "long_in": number(long),
        "text": plain(f"each panel squared up {say.size(wide, long)}, wide × long"),
        "loss_in": number(panels.loss),
        "panels": [places(panel) for panel in panels.panels],
        "cuts": [places(cut) for cut in panels.cuts],
        "ends_to_lock": [{"step": step, **place(at)} for step, at in panels.ends_to_lock],
    }


def extras_as_json(plan: Plan) -> Document:
    """Sleeve and label."""
    return {
        "pieces": [_edge_piece(piece) for piece in plan.extras.pieces],
        "words": [plain(sentence) for sentence in plan.extras.words],
    }
