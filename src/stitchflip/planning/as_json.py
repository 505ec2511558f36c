"""The plan as one document for other programs: stable keys, lengths in inches, a sentence beside them.

Keys never change once released; new ones may come. Numbers are inches (`_in`), square inches (`_in2`) or
plain counts, rounded to a millionth so that the same plan always gives the same document; `text` says the
same in the maker's own units. Everything is a dict, a list, a number, a text, true, false or null.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.finishing.words import once_finished
from stitchflip.lengths import Speaker
from stitchflip.piecing.angled import angled_strip
from stitchflip.piecing.geometry import area
from stitchflip.planning.json_materials import (
    backing_as_json,
    base_as_json,
    batting_as_json,
    binding_as_json,
    fabric_as_json,
)
from stitchflip.planning.json_quilt import edge_as_json, extras_as_json, panels_as_json, quilt_as_json
from stitchflip.planning.json_values import Document, number, numbers, place, places, plain, wide_and_long
from stitchflip.planning.washed import washed_size, washed_words
from stitchflip.project.model import Ends, Outline

if TYPE_CHECKING:
    from stitchflip.finishing.model import PointNumber
    from stitchflip.piecing.model import BareSpot, CenterPoint, SeamEnd, SewnPiece
    from stitchflip.planning.model import Finding, Plan


def plan_as_json(plan: Plan) -> Document:
    """The whole plan as one document.

    Args:
        plan: The plan.

    Returns:
        A dict ready for `json.dumps`, the same for the same plan. `wide` and `long` are meant as the maker
        says them; places (`x_in`, `y_in`) are in the flat frame, from the base's center mark.
    """
    say = Speaker(plan.project.units)
    return {
        "project": {
            "name": plan.project.name,
            "edition": plan.project.edition,
            "units": plan.project.units.value,
            "how_many": plan.project.how_many,
        },
        "pieces": [_piece(plan, piece, say) for piece in plan.build.pieces],
        "seams": [_seam(plan, piece, say) for piece in plan.build.pieces if piece.seam is not None],
        "trim": _trim(plan, say),
        "base": base_as_json(plan, say),
        "backing": backing_as_json(plan, say),
        "batting": batting_as_json(plan, say),
        "binding": binding_as_json(plan, say),
        "edge": edge_as_json(plan),
        "panels": panels_as_json(plan, say),
        "extras": extras_as_json(plan),
        "quilt": quilt_as_json(plan, say),
        "after_wash": _after_wash(plan),
        "fabrics": [fabric_as_json(plan, fabric, say) for fabric in plan.fabrics],
        "findings": [_finding(finding) for finding in plan.findings],
    }


def square_up_as_json(plan: Plan) -> Document:
    """The planned squaring-up numbers alone.

    Args:
        plan: The plan.

    Returns:
        A dict ready for `json.dumps`: the `trim` of the plan's document, and the findings about points.
    """
    return {
        "project": {"name": plan.project.name, "units": plan.project.units.value},
        "trim": _trim(plan, Speaker(plan.project.units)),
        "findings": [_finding(finding) for finding in about_squaring_up(plan)],
    }


def about_squaring_up(plan: Plan) -> tuple[Finding, ...]:
    """The findings that matter at the mat: points, coverage, base, and a center that is not central.

    Args:
        plan: the plan.
    """
    areas = ("points", "coverage", "base", "center")
    return tuple(finding for finding in plan.findings if finding.code.split(".")[0] in areas)


def name_of_piece(plan: Plan, step: int) -> str:
    """What the cutting list calls the piece of a step: "Center", "Middle", "First" or its number.

    Args:
        plan: The plan.
        step: 0 for the first piece.
    """
    if step:
        return str(step)
    if plan.build.first_is_strip:
        return "Middle" if plan.build.first_is_middle else "First"
    return "Center"


def _piece(plan: Plan, piece: SewnPiece, say: Speaker) -> Document:
    name = name_of_piece(plan, piece.step)
    return {
        "step": piece.step,
        "name": name,
        "round": piece.round,
        "side": piece.side,
        "fabric": piece.fabric,
        "letter": plan.letter_of(piece.fabric),
        "cut_width_in": number(piece.cut_width),
        "full_length_in": number(piece.full_length),
        "needed_length_in": number(piece.needed_length),
        "inset_start_in": number(piece.inset_start),
        "inset_end_in": number(piece.inset_end),
        "cut_length_in": number(piece.cut_length),
        "visible_area_in2": number(sum(area(part) for part in piece.visible)),
        "shown_area_in2": number(sum(area(part) for part in piece.shown)),
        "square_cut_in": number(piece.square_cut),
        "sections": [
            {"fabric": section.fabric, "cut_length_in": number(section.cut_length)} for section in piece.sections
        ],
        "angled": _angled(plan, piece),
        "text": plain(_piece_text(plan, piece, name, say)),
    }


def _after_wash(plan: Plan) -> Document:
    """The size after the first wash."""
    whole = plan.quilt or plan.square_up
    washed = washed_size(plan.numbers, whole.wide, whole.high)
    wide, long = wide_and_long(plan, washed.wide, washed.high)
    return {"wide_in": number(wide), "long_in": number(long), "text": plain(washed_words(plan))}


def _angled(plan: Plan, piece: SewnPiece) -> Document | None:
    """Both long edges of a strip whose ends are cut parallel to its neighbors; None when it ends in a point."""
    strip = angled_strip(plan.build, piece) if piece.seam is not None else None
    if strip is None:
        return None
    return {
        "sewn_edge_in": number(strip.sewn_edge),
        "outer_edge_in": number(strip.outer_edge),
        "start_degrees": number(strip.start_angle),
        "end_degrees": number(strip.end_angle),
    }


def _piece_text(plan: Plan, piece: SewnPiece, name: str, say: Speaker) -> str:
    if piece.step == 0 and not plan.build.first_is_strip:
        cut = next((one for one in plan.pieces if one.name == name), None)
        return f"cut {say.cut_size(cut.wide, cut.long)}" if cut else ""
    if piece.needed_length <= 0:
        return "not needed: nothing of it would be seen or hold anything"
    cut_size = say.cut_size(piece.cut_width, piece.cut_length)
    return f"cut {cut_size}; shortest that reaches {say.cut(piece.needed_length)}"


def _seam(plan: Plan, piece: SewnPiece, say: Speaker) -> Document:
    if piece.seam is None:
        return {}
    return {
        "step": piece.step,
        "piece": name_of_piece(plan, piece.step),
        "start": place(piece.seam.start.at),
        "end": place(piece.seam.end.at),
        "ends": [_end(piece.seam.start), _end(piece.seam.end)],
        "length_in": number(piece.seam.length),
        "seam_flat_in": number(piece.seam_at),
        "seam_taped_in": number(piece.seam_taped),
        "raw_edge_flat_in": number(piece.raw_edge_at),
        "raw_edge_taped_in": number(piece.raw_edge_taped),
        "text": plain(
            f"from the center mark: seam line {say.near(piece.seam_at)} marked on the base, "
            f"{say.near(piece.seam_taped)} by tape when sewn; raw edge {say.near(piece.raw_edge_at)} marked, "
            f"{say.near(piece.raw_edge_taped)} by tape"
        ),
    }


def _end(end: SeamEnd) -> Document:
    return {
        "class": end.kind.value,
        "crossed_by": end.crossed_by,
        "is_hidden": end.is_hidden,
        **place(end.at),
    }


def _trim(plan: Plan, say: Speaker) -> Document:
    square_up = plan.square_up
    wide, long = wide_and_long(plan, square_up.wide, square_up.high)
    return {
        "shape": _shape(plan),
        "wide_in": number(wide),
        "long_in": number(long),
        "text": plain(f"squared up {say.size(wide, long)}, wide × long"),
        "corners": places(square_up.corners),
        "curve": plain(square_up.curve),
        "area_in2": number(square_up.area),
        "perimeter_in": number(square_up.perimeter),
        "sides": [
            {
                "name": side.name,
                "from_center_mark_in": number(side.distance),
                "length_in": number(side.length),
                "text": plain(f"{say.near(side.distance)} from the center mark"),
            }
            for side in square_up.sides
        ],
        "points": [_point(plan, point, say) for point in square_up.points],
        "diagonals_in": numbers(square_up.diagonals),
        "widest_unstitched_in": number(plan.build.widest_gap.diameter),
        "uncovered": [_bare(spot) for spot in plan.build.bare],
    }


def _shape(plan: Plan) -> str:
    squared_up = plan.project.squared_up
    if squared_up.shape is Outline.POLYGON:
        return f"polygon with {squared_up.sides} sides"
    if squared_up.shape in (Outline.ROUND, Outline.OVAL):
        return squared_up.shape.value
    if squared_up.corner_radius is not None:
        return "rectangle with rounded corners"
    return "rectangle with pointed ends" if squared_up.ends is Ends.POINTED else "rectangle"


def _flat_twin(plan: Plan, point: PointNumber) -> CenterPoint | None:
    return next((twin for twin in plan.build.points if twin.name == point.name), None)


def _point(plan: Plan, point: PointNumber, say: Speaker) -> Document:
    twin = _flat_twin(plan, point)
    return {
        "name": point.name,
        "to_base_edge_in": number(twin.to_base_edge if twin else None),
        "to_trim_edge_in": number(point.to_edge),
        "shown_in": number(point.shown),
        "text": plain(
            f"{say.margin(point.to_edge)} to the trimmed edge, {say.margin(point.shown)} {once_finished(plan.project)}"
        ),
    }


def _bare(spot: BareSpot) -> Document:
    return {
        "grade": spot.grade,
        "side": spot.side,
        "step": spot.step,
        "short_by_in": number(spot.by),
        "area_in2": number(spot.area),
        "corners": places(spot.polygon),
    }


def _finding(finding: Finding) -> Document:
    cures = [
        {
            "text": plain(cure.text),
            "changes": [{"path": list(change.path), "to": change.to} for change in cure.changes],
        }
        for cure in finding.cures
    ]
    return {
        "code": finding.code,
        "severity": finding.severity.value,
        "where": plain(finding.where),
        "step": finding.step,
        "what": plain(finding.what),
        "numbers": {key: number(finding.numbers[key]) for key in sorted(finding.numbers)},
        "place": places(finding.place),
        "cures": cures,
    }
