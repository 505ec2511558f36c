"""The edge of the piece, panels cut apart, and the label: what cannot be sewn as asked, and what a cut opens."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.finishing.binding import panels_of
from stitchflip.finishing.edges import corner_angles, trim_edges
from stitchflip.finishing.extras import takes_corner_label
from stitchflip.finishing.measures import STAY_STITCH_BESIDE_CUT
from stitchflip.lengths import Length, Rounding, Speaker, format_length, round_to
from stitchflip.piecing.geometry import TOLERANCE, clip_all, counts, extent, half_planes, holds, middle, moved, scaled
from stitchflip.piecing.shapes import flat, panel_polygon
from stitchflip.planning.findings.sewing import holds_circle
from stitchflip.planning.findings.words import capital, listed, strips
from stitchflip.planning.model import Cure, Finding, Severity
from stitchflip.project.model import Change, Edge, Grain, LabelShape, Through

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.finishing.edges import Edge as TrimEdge
    from stitchflip.piecing.model import Point, Polygon
    from stitchflip.planning.model import Plan

_LEAST_SHOWN = 0.5
"""A patch beside a cut that shows less looks like a slip; inches."""


def _say(plan: Plan) -> Speaker:
    return Speaker(plan.project.units)


def _edges_of_piece(plan: Plan) -> tuple[TrimEdge, ...]:
    """The edges of what is bound: a panel of a base that is cut apart, else the whole piece."""
    outline = panel_polygon(plan.project, plan.numbers) if panels_of(plan.project) > 1 else plan.build.trim_taped
    return trim_edges(plan.project, outline)


def _is_curved(plan: Plan) -> bool:
    return plan.quilt is None and any(edge.is_curve for edge in _edges_of_piece(plan))


def straight_on_curve(plan: Plan) -> Iterator[Finding]:
    """An edge cut on the straight grain that must go round a curve."""
    kind = plan.project.binding.edge
    if not _is_curved(plan):
        return
    if kind is Edge.BINDING and plan.project.binding.grain is Grain.STRAIGHT:
        yield Finding(
            "binding.straight-on-curve",
            Severity.FIX,
            "The edge curves, and a binding cut on the straight grain does not lie flat round a curve.",
            "binding",
            cures=(Cure("Cut the binding on the bias.", (Change(("binding", "grain"), Grain.BIAS.value),)),),
        )
    elif kind is Edge.SELF_BINDING:
        yield Finding(
            "edge.self-binding-on-curve",
            Severity.STOP,
            "The edge curves, and a backing folded round to the front makes pleats on a curve.",
            "edge",
            cures=(_bind_instead(plan, "Bind it with a bias binding"),),
        )


def _bind_instead(plan: Plan, text: str) -> Cure:
    """A binding in place of another edge: of the last strip's fabric when none is named, its width its own."""
    binding, changes = plan.project.binding, [Change(("binding", "edge"), Edge.BINDING.value)]
    if binding.shows is not None:
        changes.append(Change(("binding", "shows"), None))
    if binding.fabric:
        return Cure(f"{text}.", tuple(changes))
    fabric = plan.build.pieces[-1].fabric
    return Cure(f"{text}, with {fabric}.", (*changes, Change(("binding", "fabric"), fabric)))


def cannot_turn(plan: Plan) -> Iterator[Finding]:
    """A piece to be turned through whose backing is sewn into it already."""
    if plan.project.binding.edge is not Edge.TURNED_THROUGH:
        return
    if plan.project.base.through is Through.BACKING_AND_BATTING:
        alone = Change(("base", "through"), Through.BATTING_ONLY.value)
        yield Finding(
            "edge.cannot-turn",
            Severity.STOP,
            "The strips are sewn through the backing, so the piece cannot be turned through.",
            "edge",
            cures=(
                Cure("Sew the strips to the batting only and add the backing when you turn.", (alone,)),
                _bind_instead(plan, "Bind it instead"),
            ),
        )


def no_backing_to_fold(plan: Plan) -> Iterator[Finding]:
    """Self-binding where no backing reaches beyond the edge: joined blocks, panels with too little between them."""
    project, beyond = plan.project, plan.edge.backing_extra
    if beyond <= 0:
        return
    say, is_in_base = _say(plan), project.base.through is Through.BACKING_AND_BATTING
    if plan.quilt is not None and is_in_base:
        yield Finding(
            "edge.no-backing-to-fold",
            Severity.STOP,
            f"Every block has its own backing, and none reaches {say.near(beyond)} beyond the edge of the whole piece.",
            "edge",
            numbers={"needed_in": beyond},
            cures=(_bind_instead(plan, "Bind it instead"),),
        )
    elif plan.panels is not None and len(plan.panels.panels) > 1 and plan.panels.loss < 2 * beyond - TOLERANCE:
        enough = format_length(Length.of_inches(round_to(2 * beyond, 1 / 64, Rounding.UP)), project.units)
        yield Finding(
            "edge.no-backing-to-fold",
            Severity.STOP,
            f"The backing of every panel must reach {say.near(beyond)} beyond its edge, and between two panels "
            f"there is {say.margin(plan.panels.loss)}.",
            "edge",
            numbers={"needed_in": 2 * beyond, "between_in": plan.panels.loss},
            cures=(
                Cure(f"Leave {say.near(2 * beyond)} between panels.", (Change(("cut_apart", "loss"), enough),)),
                _bind_instead(plan, "Bind them instead"),
            ),
        )


def binding_reaches(plan: Plan) -> Iterator[Finding]:
    """A binding whose fold does not come over the stitching on the back, or not as far as wished."""
    binding, wish = plan.binding, plan.numbers.binding_passes
    if not binding.strips or binding.passes_stitching >= wish - TOLERANCE:
        return
    say, passes = _say(plan), binding.passes_stitching
    grid = 0.25 if plan.project.units.value == "in" else 0.5 / 2.54
    cut = round_to(binding.least_cut, grid, Rounding.UP)
    does = (
        f"does not reach the stitching on the back: {say.shortage(-passes)} is missing"
        if passes < -TOLERANCE
        else f"passes the stitching on the back by {say.margin(passes)} only, and {say.near(wish)} is wished"
    )
    change = Change(("binding", "cut"), format_length(Length.of_inches(cut), plan.project.units))
    yield Finding(
        "binding.too-narrow",
        Severity.FIX if passes < TOLERANCE else Severity.NOTE,
        f"A binding cut {say.width(binding.cut)} {does}.",
        "binding",
        numbers={"passes_in": passes, "least_cut_in": binding.least_cut},
        cures=(Cure(f"Cut the binding {say.width(Length.of_inches(cut).inches)} wide.", (change,)),),
    )


def ends_at_cuts(plan: Plan) -> Iterator[Finding]:
    """Seams that a cut between panels opens."""
    panels = plan.panels
    if panels is None or not panels.ends_to_lock:
        return
    steps = sorted({step for step, _ in panels.ends_to_lock})
    beside = _say(plan).near(STAY_STITCH_BESIDE_CUT.of(plan.project.units))
    places = tuple(_flat(plan, place) for _, place in panels.ends_to_lock)
    count, cuts = len(places), len(panels.cuts)
    yield Finding(
        "edge.ends-at-cuts",
        Severity.NOTE,
        f"The {'cut' if cuts == 1 else f'{cuts} cuts'} between the panels {'goes' if cuts == 1 else 'go'} through "
        f"seams at {count} {'place' if count == 1 else 'places'} ({strips(steps)}): lock each seam on both sides of "
        f"the cut, or stay-stitch {beside} beside every cut, on both sides, before you cut.",
        strips(steps),
        steps[0],
        places,
        {"places": float(count)},
    )


def _flat(plan: Plan, place: Point) -> Point:
    return (place[0] / (1 - plan.build.draw_up[0]), place[1] / (1 - plan.build.draw_up[1]))


def cut_through_center(plan: Plan) -> Iterator[Finding]:
    """A cut between panels that goes through the center."""
    panels, build = plan.panels, plan.build
    if panels is None or build.first_is_strip:
        return
    for polygon in build.pieces[0].visible:
        for start, end in panels.cuts:
            axis = 0 if abs(start[0] - end[0]) < TOLERANCE else 1
            line = _flat(plan, start)[axis]
            low, high = extent(polygon, *((1.0, 0.0) if axis == 0 else (0.0, 1.0)))
            if low + TOLERANCE < line < high - TOLERANCE:
                yield Finding(
                    "edge.cut-through-center",
                    Severity.FIX,
                    "A cut between two panels goes through the center, so each of them has a part of it.",
                    "center",
                    0,
                    polygon,
                    cures=(Cure("Make an odd number of panels that way, or sew every panel on a base of its own."),),
                )
                return


def center_at_cut(plan: Plan) -> Iterator[Finding]:
    """A center that a cut between panels spares, but the binding beside the cut covers in part."""
    panels, build = plan.panels, plan.build
    if panels is None or build.first_is_strip or any(True for _ in cut_through_center(plan)):
        return
    say, seam = _say(plan), plan.numbers.binding_seam
    for polygon in build.pieces[0].visible:
        shown = scaled(polygon, 1 - build.draw_up[0], 1 - build.draw_up[1])
        inner = next((moved(panel, -seam) for panel in panels.panels if holds(panel, middle(shown))), ())
        over = max((nx * x + ny * y - reach for nx, ny, reach in half_planes(inner) for x, y in shown), default=0.0)
        if over > TOLERANCE:
            yield Finding(
                "edge.center-at-cut",
                Severity.FIX,
                f"The center goes {say.shortage(over)} under the edge of its panel, beside a cut.",
                "center",
                0,
                polygon,
                {"under_in": over},
                (Cure(f"Make the panels {say.shortage(2 * over)} larger that way, or cut the center smaller by it."),),
            )


def slivers_at_cuts(plan: Plan) -> Iterator[Finding]:
    """Strips of which a cut between panels leaves so little that it looks like a slip."""
    panels, numbers = plan.panels, plan.numbers
    if panels is None or len(panels.panels) < 2:
        return
    found: dict[int, Polygon] = {}
    inner = [flat(moved(panel, -numbers.binding_seam), numbers) for panel in panels.panels]
    for piece in plan.build.pieces:
        least = min(_LEAST_SHOWN, piece.cut_width - 2 * plan.build.seam_allowance)
        for whole in piece.shown:
            parts = [clip_all(whole, half_planes(panel)) for panel in inner]
            if not holds_circle(whole, least):
                continue
            thin = next((part for part in parts if counts(part) and not holds_circle(part, least)), None)
            if thin is not None:
                found.setdefault(piece.step, thin)
    if found:
        steps = sorted(found)
        yield Finding(
            "edge.sliver-at-cut",
            Severity.NOTE,
            capital(
                f"{strips(steps)} would show less than {_say(plan).near(_LEAST_SHOWN)} beside a cut between panels, "
                "which looks like a slip."
            ),
            strips(steps),
            steps[0],
            found[steps[0]],
            {"strips": float(len(steps))},
        )


def label_in_corner(plan: Plan) -> Iterator[Finding]:
    """A label for a corner, on a piece that has no right-angled one."""
    project = plan.project
    if project.extras.label is not LabelShape.CORNER:
        return
    if plan.quilt is not None:
        outline = plan.quilt.outline
    else:
        outline = panel_polygon(project, plan.numbers) if panels_of(project) > 1 else plan.build.trim_taped
    if takes_corner_label(project, outline):
        return
    kind = project.binding.edge
    if kind in {Edge.FACING, Edge.SELF_BINDING}:
        why = "the facing would cover it" if kind is Edge.FACING else "a self-bound edge catches nothing"
        what = f"A label folded for a corner is caught in a binding or a seam, and {why}"
    else:
        corners = sorted({f"{angle:.0f}°" for angle in corner_angles(trim_edges(project, outline))})
        has = f"its corners are {listed(corners)}" if corners else "its edge curves"
        what = f"A label folded for a corner needs a right-angled one, and {has}"
    yield Finding(
        "edge.no-corner-for-label",
        Severity.NOTE,
        f"{what}: the label is planned as a rectangle.",
        "label",
        cures=(Cure("Make the label a rectangle.", (Change(("extras", "label"), LabelShape.RECTANGLE.value),)),),
    )


ABOUT_EDGES = (
    straight_on_curve,
    cannot_turn,
    no_backing_to_fold,
    binding_reaches,
    cut_through_center,
    center_at_cut,
    ends_at_cuts,
    slivers_at_cuts,
    label_in_corner,
)
"""All of them."""
