"""A piece in the other system: drafted anew, never converted cut by cut.

What was chosen (sizes, strips, spares) becomes what a maker of the other system would choose. What was measured
(fabric on the shelf, a table, a mat, a wrapper) is as long as it is, and only its number changes.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.lengths import CM_PER_INCH, INCHES_PER_YARD, Unit
from stitchflip.planning.resize.drawn import drawn
from stitchflip.planning.resize.pen import Pen, setting
from stitchflip.project.model import Finish, Outline
from stitchflip.project.numbers import effective, is_runner
from stitchflip.project.words import Covers

if TYPE_CHECKING:
    from stitchflip.lengths import Length
    from stitchflip.project.model import Fabric, Joined, MadeFor, Project, SquaredUp

_MY_SETTINGS = (
    "seam",
    "straightening",
    "buy_in_steps_of",
    "buy_at_least",
    "reach",
    "round_cuts_to",
    "extra_free_end",
    "extra_raw_edges",
    "round_base_to",
    "wish_beyond_points",
    "patch_extra",
    "backing_later_spare",
    "binding_extra",
    "binding_extra_per_corner",
    "stitch",
    "counts_as_crossed",
    "backing_seam",
)
"""Numbers of hers that are choices; the others were measured."""

_METERS_PER_YARD = INCHES_PER_YARD * CM_PER_INCH / 100


def in_unit(project: Project, unit: Unit) -> Project:
    """The project drafted anew in the other system, its squared-up size too.

    Args:
        project: the project.
        unit: the system wanted; the same one gives the same project.

    Returns:
        The project; its rounds may no longer cover to the last bit, which is for the caller to see to.
    """
    if unit is project.units:
        return project
    numbers = effective(project).seam
    mine = _my_numbers(project, unit)
    after = project.model_copy(update={"my_numbers": mine, "units": unit})
    pen = Pen(project.units, unit, numbers, effective(after).seam)
    made = drawn(after, pen)
    return made.model_copy(
        update={
            "squared_up": _squared_up(project, pen),
            "base": made.base.model_copy(update={"wide": None, "long": None, **_spares(project, unit)}),
            "building": made.building.model_copy(
                update={"no_sliver_under": setting(made.building.no_sliver_under, "least_shown", pen.before, unit)}
            ),
            "binding": made.binding.model_copy(update=_binding(project, unit)),
            "joined": made.joined and _joined(made.joined, pen),
            "cut_apart": made.cut_apart
            and made.cut_apart.model_copy(update={"loss": _plain(made.cut_apart.loss, pen)}),
            "made_for": made.made_for and _made_for(made.made_for, pen),
            "fabrics": tuple(_fabric(fabric, unit) for fabric in made.fabrics),
        }
    )


def _plain(size: Length | None, pen: Pen) -> Length | None:
    return size if size is None or size.ticks == 0 else pen.plain(size, 1.0)


def _made_for(made_for: MadeFor, pen: Pen) -> MadeFor:
    """Table and mattress were measured; what hangs down was chosen."""
    hangs = "runner_hangs" if made_for.covers is Covers.RUNNER else "cloth_hangs"
    return made_for.model_copy(
        update={
            "hang": setting(made_for.hang, hangs, pen.before, pen.after),
            "drop": setting(made_for.drop, "bed_drop", pen.before, pen.after),
            "short_of_ends": _plain(made_for.short_of_ends, pen),
            "tuck": _plain(made_for.tuck, pen),
        }
    )


def _squared_up(project: Project, pen: Pen) -> SquaredUp:
    """The size of the whole; a block that is joined is drafted without its seams."""
    wanted = project.squared_up
    update: dict[str, object] = {
        key: setting(getattr(wanted, key), "wish_beyond_points", pen.before, pen.after)
        for key in ("wish_beyond_points", "beyond_points")
    }
    if wanted.beyond_points is not None and update["beyond_points"] is None:
        update["beyond_points"] = pen.plain(wanted.beyond_points, 1.0)
    for key in ("wide", "long", "across_flats", "across", "corner_radius"):
        size = getattr(wanted, key)
        is_block = project.joined is not None and wanted.shape is Outline.RECTANGLE and key in {"wide", "long"}
        if is_block and size is not None:
            update[key] = pen.cut(size, 1.0, key)
        else:
            update[key] = _plain(size, pen)
    return wanted.model_copy(update=update)


def _my_numbers(project: Project, unit: Unit) -> object:
    mine = project.my_numbers
    spare = "spare_runner_{}" if is_runner(project) else "spare_mat"
    update = {name: setting(getattr(mine, name), name, project.units, unit) for name in _MY_SETTINGS}
    update["spare_across"] = setting(mine.spare_across, spare.format("across"), project.units, unit)
    update["spare_at_ends"] = setting(mine.spare_at_ends, spare.format("ends"), project.units, unit)
    return mine.model_copy(update=update)


def _spares(project: Project, unit: Unit) -> dict[str, object]:
    spare = "spare_runner_{}" if is_runner(project) else "spare_mat"
    base = project.base
    return {
        "spare_across": setting(base.spare_across, spare.format("across"), project.units, unit),
        "spare_at_ends": setting(base.spare_at_ends, spare.format("ends"), project.units, unit),
    }


def _binding(project: Project, unit: Unit) -> dict[str, object]:
    binding = project.binding
    by = "machine" if binding.finish is Finish.MACHINE else "hand"
    return {
        "cut": setting(binding.cut, f"binding_cut_{by}", project.units, unit),
        "seam": setting(binding.seam, "binding_seam", project.units, unit),
        "shows": setting(binding.shows, "self_binding_shows", project.units, unit),
    }


def _joined(joined: Joined, pen: Pen) -> Joined:
    return joined.model_copy(
        update={
            "flat_cut": joined.flat_cut and _flat(joined.flat_cut, pen),
            "folded_cut": setting(joined.folded_cut, "join_folded_cut", pen.before, pen.after),
            "shows": _plain(joined.shows, pen),
        }
    )


def _flat(cut: Length, pen: Pen) -> Length | None:
    """The flat joining strip: the house's own of the other system, or what shows of it drafted anew."""
    return setting(cut, "join_flat_cut", pen.before, pen.after) and pen.cut(cut, 1.0, "the flat joining strip")


def _fabric(fabric: Fabric, unit: Unit) -> Fabric:
    """A fabric is as wide as it is; only its price is by the yard or by the meter."""
    if fabric.price is None:
        return fabric
    factor = 1 / _METERS_PER_YARD if unit is Unit.CM else _METERS_PER_YARD
    return fabric.model_copy(update={"price": round(fabric.price * factor, 2)})
