"""Base, backing, batting, binding and fabrics as they stand in the plan's document."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.planning.json_values import Document, number, numbers, places, plain, wide_and_long

if TYPE_CHECKING:
    from stitchflip.cutting.model import FabricPlan, Row, StripPlan
    from stitchflip.finishing.model import BackingChoice
    from stitchflip.lengths import Speaker
    from stitchflip.planning.model import Plan


def base_as_json(plan: Plan, say: Speaker) -> Document:
    """The base to cut, its spare, its marks, and where the first piece goes."""
    base = plan.base
    wide, long = wide_and_long(plan, base.wide, base.high)
    least_wide, least_long = wide_and_long(plan, base.least_wide, base.least_high)
    return {
        "wide_in": number(wide),
        "long_in": number(long),
        "least_wide_in": number(least_wide),
        "least_long_in": number(least_long),
        "is_given": base.is_given,
        "spare_left_and_right_in": number(base.spare_x),
        "spare_top_and_bottom_in": number(base.spare_y),
        "first_piece": places(base.first_piece),
        "marks": [{"axis": axis, "at_in": number(at)} for axis, at in base.marks],
        "text": plain(f"cut {say.size(wide, long)}, wide × long"),
    }


def backing_as_json(plan: Plan, say: Speaker) -> Document:
    """The backing: the best way to get it and the others."""
    backing = plan.backing
    wide, long = wide_and_long(plan, backing.wide, backing.high)
    return {
        "fabric": backing.fabric,
        "wide_in": number(wide),
        "long_in": number(long),
        "usable_width_in": number(backing.usable_width),
        **_backing_choice(backing.best, say),
        "others": [_backing_choice(choice, say) for choice in backing.others],
    }


def _backing_choice(choice: BackingChoice, say: Speaker) -> Document:
    return {
        "way": choice.way,
        "widths": choice.widths,
        "need_in": number(choice.length_in),
        "buy_in": number(choice.buy_in),
        "seam_in": number(choice.seam_in),
        "seams_at_in": numbers(choice.seams_at),
        "side_by_side": choice.how_many_wide,
        "remark": plain(choice.remark),
        "text": plain(f"{choice.way}: buy {say.purchase(choice.buy_in)}"),
    }


def batting_as_json(plan: Plan, say: Speaker) -> Document:
    """The batting to cut, and what it is made of."""
    batting = plan.batting
    wide, long = wide_and_long(plan, batting.wide, batting.high)
    return {
        "wide_in": number(wide),
        "long_in": number(long),
        "pieces": [plain(piece) for piece in batting.pieces],
        "join_axis": batting.join_axis,
        "join_at_in": number(batting.join_at),
        "short_in": number(batting.short),
        "text": plain(f"cut {say.size(wide, long)}, wide × long"),
    }


def binding_as_json(plan: Plan, say: Speaker) -> Document:
    """The binding: strips, need and made, corners, where to start."""
    binding = plan.binding
    return {
        "fabric": binding.fabric,
        "cut_width_in": number(binding.cut),
        "seam_in": number(binding.seam),
        "perimeter_in": number(binding.perimeter),
        "need_in": number(binding.need),
        "made_in": number(binding.made),
        "grain": binding.grain,
        "panels": binding.pieces,
        "strips_per_piece": binding.strips_per_piece,
        "strips": binding.strips,
        "least_strips": binding.bound,
        "strip_length_in": number(binding.strip_length),
        "shows_on_back_in": number(binding.shows_on_back),
        "passes_stitching_in": number(binding.passes_stitching),
        "corners": [
            {"angle_deg": number(corner.angle), "stop_before_in": number(corner.stop_before)}
            for corner in binding.corners
        ],
        "joins_at_in": numbers(binding.joins_at),
        "start_at": plain(binding.start_at),
        "text": plain(
            f"{binding.strips} strips cut {say.width(binding.cut)} wide; {say.cut(binding.need)} needed, "
            f"{say.margin(binding.made)} made"
        ),
    }


def fabric_as_json(plan: Plan, fabric: FabricPlan, say: Speaker) -> Document:
    """One fabric: need, buy, what no cutting plan can do without, and which strip gives what."""
    return {
        "name": fabric.fabric,
        "letter": plan.letter_of(fabric.fabric),
        "usable_width_in": number(fabric.usable_width),
        "used_in": number(fabric.used_in),
        "straightening_in": number(fabric.straightening_in),
        "need_in": number(fabric.need_in),
        "buy_in": number(fabric.buy_in),
        "spare_in": number(fabric.spare_in),
        "short_in": number(fabric.short_in),
        "lower_bound_in": number(fabric.bound_in),
        "gap_in": number(max(0.0, fabric.need_in - fabric.bound_in)),
        "status": fabric.status.value,
        "miscuts": fabric.miscuts,
        "strips": [_strips(one) for one in fabric.strip_plans],
        "rows": [_row(row) for row in fabric.rows],
        "from_hand": [plain(text) for text in fabric.from_hand],
        "tipping_points": [
            {"text": plain(point.what), "slack_in": number(point.slack_in)} for point in fabric.tipping_points
        ],
        "text": plain(f"buy {say.purchase(fabric.buy_in)}" if fabric.buy_in > 0 else "nothing to buy"),
    }


def _strips(strips: StripPlan) -> Document:
    return {
        "cut_width_in": number(strips.width),
        "count": len(strips.strips),
        "least_count": strips.bound,
        "status": strips.status.value,
        "trim_as_you_go": strips.as_you_go,
        "spare_in": number(strips.spare_in),
        "each": [
            {
                "from": plain(one.stock),
                "length_in": number(one.length),
                "pieces": [{"name": name, "length_in": number(length)} for name, length in one.pieces],
                "rest_in": number(one.rest),
            }
            for one in strips.strips
        ],
    }


def _row(row: Row) -> Document:
    return {
        "height_in": number(row.height),
        "turned": row.turned,
        "pieces": [{"name": name, "width_in": number(width)} for name, width in row.pieces],
    }
