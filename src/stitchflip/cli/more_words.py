"""What stays behind a door: time, thread, cost, other ways to buy, and how sure the cutting plan is."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cli.plan_words import speaker
from stitchflip.cutting.model import Status
from stitchflip.lengths import CM_PER_INCH, INCHES_PER_YARD, Rounding, Unit, format_inches, round_to
from stitchflip.planning.json_values import wide_and_long

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.cutting.model import FabricPlan
    from stitchflip.finishing.quilt_model import Layout
    from stitchflip.planning.model import Plan

_YARDS_PER_METER = 100 / CM_PER_INCH / INCHES_PER_YARD


def more_facts(plan: Plan) -> Iterator[tuple[str, str]]:
    """Heading and sentence of each.

    Args:
        plan: the plan.
    """
    yield "Time", f"about {_hours(plan.work.hours_low)} to {_hours(plan.work.hours_high)} hours, all told"
    yield "Thread", f"about {_thread(plan)}, needle and bobbin together, for {_seams(plan)} of seams"
    yield "Cost", _cost(plan)
    yield "How sure", "\n".join(_how_sure(plan, fabric) for fabric in plan.fabrics if fabric.need_in > 0)
    tips = [tip.what for fabric in plan.fabrics for tip in fabric.tipping_points]
    if tips:
        yield "Tipping points", "\n".join(tips)
    others = [f"{other.way}: {speaker(plan).purchase(other.buy_in)}" for other in plan.backing.others]
    if others:
        yield "Backing, other ways", "\n".join(others)
    if plan.quilt is not None and plan.quilt.layouts:
        yield "Other layouts", "\n".join(_layout(plan, layout) for layout in plan.quilt.layouts)


def _layout(plan: Plan, layout: Layout) -> str:
    """One other way to lay the same blocks: size, proportion, what is left over, and the backing it needs."""
    size = speaker(plan).size(*wide_and_long(plan, layout.wide, layout.high))
    short, long = sorted((layout.wide, layout.high))
    left = f"{layout.left_over} left over" if layout.left_over else "none left over"
    return (
        f"{layout.across} × {layout.down}: {size} (wide × long), 1 to {long / short:.1f}, {left}; backing "
        f"{layout.backing}"
    )


def _hours(hours: float) -> str:
    return format_inches(hours, 0.5)


def _thread(plan: Plan) -> str:
    """Thread as a range for the seams through the base, and with everything else."""
    is_inch = plan.project.units is Unit.INCH
    work = plan.work
    yards = (work.thread_low_yards, work.thread_yards, work.thread_all_yards)
    low, high, everything = (round_to(one if is_inch else one / _YARDS_PER_METER, 1, Rounding.UP) for one in yards)
    unit = "yd" if is_inch else "m"
    return f"{low:.0f} to {high:.0f} {unit}; with stay-stitching and binding up to {everything:.0f} {unit}"


def _seams(plan: Plan) -> str:
    seams = plan.work.seams_in
    if plan.project.units is Unit.INCH:
        return f"{round_to(seams, 1, Rounding.NEAREST):.0f} in"
    return f"{round_to(seams * CM_PER_INCH, 1, Rounding.NEAREST):.0f} cm"


def _cost(plan: Plan) -> str:
    """What the fabric to buy costs at the prices in the file; says what it does not know."""
    prices = {fabric.name: fabric.price for fabric in plan.project.fabrics}
    per_in = 1 / INCHES_PER_YARD if plan.project.units is Unit.INCH else CM_PER_INCH / 100
    known = [fabric for fabric in plan.fabrics if prices.get(fabric.fabric) is not None]
    unknown = [fabric.fabric for fabric in plan.fabrics if prices.get(fabric.fabric) is None and fabric.buy_in > 0]
    if not known:
        return "no prices in the project file (a price is for one yard, or one meter in a metric project)"
    total = sum((prices[fabric.fabric] or 0) * fabric.buy_in * per_in for fabric in known)
    without = f", without {', '.join(unknown)}" if unknown else ""
    return f"{total:.2f} for fabric at the prices in the file{without}; backing and batting not counted"


def _how_sure(plan: Plan, fabric: FabricPlan) -> str:
    say = speaker(plan)
    least = say.shortage(fabric.bound_in)
    if fabric.status is Status.PROVED and fabric.need_in - fabric.bound_in < 1 / 16:
        return f"{fabric.fabric}: no way of cutting needs less than {least}"
    if fabric.status is Status.IMPOSSIBLE:
        return f"{fabric.fabric}: the pieces cannot be had from this fabric"
    better = say.shortage(fabric.need_in - fabric.bound_in)
    return f"{fabric.fabric}: {say.shortage(fabric.need_in)} as planned; could be up to {better} less, nobody knows"
