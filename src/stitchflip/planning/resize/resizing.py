"""One call: a project and a size in, the project at that size out, with what was done to get there."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.lengths import Rounding, Speaker, round_to
from stitchflip.planning.kinds import as_block
from stitchflip.planning.quilt_sizes import quilt_size
from stitchflip.planning.resize.clean import clean_sizes
from stitchflip.planning.resize.pen import FINISHED_STEP, Awkward, Keep, exactly
from stitchflip.planning.resize.piece import at_size, forgotten, in_proportion, trim_extents, with_strips
from stitchflip.planning.resize.quilts import quilt_at
from stitchflip.planning.resize.rounds import fitted, grows
from stitchflip.planning.resize.stops import codes_of, stopping, without_new_stops
from stitchflip.planning.resize.units import in_unit
from stitchflip.planning.resize.words import awkward_words, fitted_words, redraft_words
from stitchflip.project.differences import differences
from stitchflip.project.model import Outline, Runs, Way
from stitchflip.project.sizes import stated_size
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from stitchflip.lengths import Length, Unit
    from stitchflip.planning.resize.pen import Pen
    from stitchflip.project.model import Change, Project


@dataclass(frozen=True, slots=True)
class Resized:
    """A project at another size."""

    project: Project
    changes: tuple[Change, ...]
    """What makes the old project the new one; when the unit changes, the whole file is written anew instead."""
    messages: tuple[str, ...]
    """What was done and what could not be, one sentence each."""
    awkward: tuple[Awkward, ...] = ()
    """Cut sizes that left the ruler and were rounded."""
    clean_sizes: tuple[tuple[float, float], ...] = ()
    """Sizes near the one wanted at which every cut is on the ruler, wide × long, inches."""


def resized(
    project: Project,
    wide: Length | None = None,
    long: Length | None = None,
    *,
    strip: Length | None = None,
    unit: Unit | None = None,
    keep: Keep = Keep.STRIPS,
    may_widen: bool = True,
) -> Resized:
    """The project at another squared-up size, strip width or unit.

    Args:
        project: The project.
        wide: Squared-up width wanted; of a quilt of joined blocks, the whole quilt's; of a polygon, across its flats.
            Wanted after washing where the project wants its size after washing.
        long: Length wanted; left out with a width, it stays (keeping strips) or follows (keeping proportions).
        strip: Cut width for every strip.
        unit: The system to draft the piece anew in; sizes left out are those a maker of that system would choose.
        keep: What stays as it is.
        may_widen: False where the last strips cannot be cut wider to cover, being precut.

    Returns:
        The project; itself, unchanged, when it has this size, width and unit already.

    Raises:
        BuildError: If no piece of this size can be drawn.
    """
    in_other = unit is not None and unit is not project.units
    if strip is None and not in_other and _has_size(project, wide, long):
        return Resized(project, (), ())
    if project.joined is not None and keep is Keep.STRIPS and strip is None and not in_other:
        said_of_quilt: list[str] = []
        more, _ = quilt_at(project, wide, long, keep, said_of_quilt)
        return Resized(more, differences(project, more), tuple(said_of_quilt))
    before, said = forgotten(project)
    messages = list(said)
    if in_other and unit is not None:
        before = in_unit(before, unit)
        messages.append(redraft_words(before))
    if strip is not None:
        before = with_strips(before, strip)
    is_sized = wide is not None or long is not None
    made, pen = _at(before, wide, long, keep, messages)
    made = _covering(made, messages, may_drop=strip is not None or (pen is None and is_sized), may_widen=may_widen)
    made, stops = without_new_stops(project, made, messages)
    if stops and keep is Keep.STRIPS and is_sized and strip is None and grows(made):
        other = resized(project, wide, long, unit=unit, keep=Keep.PROPORTIONS, may_widen=may_widen)
        if not stopping(project, other.project):
            messages.append("Kept in proportion instead, with everything scaled, nothing stops it.")
    awkward = tuple(pen.awkward) if pen is not None else ()
    messages += awkward_words(awkward, Speaker(made.units))
    near = clean_sizes(before, made) if awkward else ()
    return Resized(made, () if in_other else differences(project, made), tuple(messages), awkward, near)


def _has_size(project: Project, wide: Length | None, long: Length | None) -> bool:
    """True when nothing about the size is to change."""
    if wide is None and long is None:
        return True
    wanted = project.squared_up
    if wanted.shape in {Outline.POLYGON, Outline.ROUND}:
        now = wanted.across_flats or wanted.across
        return now is not None and now in {wide, long}
    size = stated_size(project) if project.joined is None else quilt_size(project)
    return size is not None and all(
        asked is None or abs(asked.inches - own) < 1e-6 for asked, own in zip((wide, long), size, strict=True)
    )


def _at(
    project: Project, wide: Length | None, long: Length | None, keep: Keep, messages: list[str]
) -> tuple[Project, Pen | None]:
    """The project at the size, and the pen where it was drawn anew in proportion."""
    if wide is None and long is None:
        return project, None
    if project.joined is not None:
        return quilt_at(project, wide, long, keep, messages)
    is_kept = keep is Keep.PROPORTIONS
    if is_kept and long is None and project.squared_up.shape in {Outline.RECTANGLE, Outline.OVAL}:
        long = _following(project, wide)
    made = at_size(project, wide, long)
    if is_kept or not grows(project):
        if not is_kept:
            way = project.building.way.value
            messages.append(f"With {way} there are no rounds to add: the piece is scaled.")
        if project.center is not None and project.center.sewn_already:
            messages.append("The half-done piece in the middle stays as you measured it.")
        return in_proportion(project, made)
    return made, None


def _following(project: Project, wide: Length | None) -> Length | None:
    """The length that keeps the proportion."""
    if wide is None:
        return None
    x, y = trim_extents(project)
    now = (x, y) if project.squared_up.length_runs is Runs.UP else (y, x)
    step = FINISHED_STEP.of(project.units)
    return exactly(round_to(now[1] * wide.inches / now[0], step, Rounding.NEAREST), project.units)


def _covering(project: Project, messages: list[str], *, may_drop: bool, may_widen: bool) -> Project:
    """Every kind of block with as many strips as its size takes."""
    done = fitted(project, may_drop=may_drop, may_widen=may_widen)
    made = _skipping(project, done.project)
    if made.building.until_covered is done.project.building.until_covered:
        messages += fitted_words(done, "")
    else:
        messages.append("The rounds are repeated until covered: strips that would cover nothing bare are left out.")
    blocks = []
    for block in made.blocks:
        own = as_block(made, block)
        if block.rounds is None and block.steps is None and block.center is None:
            blocks.append(block)
            continue
        done = fitted(own, may_drop=may_drop, may_widen=may_widen)
        messages += fitted_words(done, block.name)
        key = "steps" if own.building.way is Way.SIDES else "rounds"
        changed = getattr(done.project, key) != getattr(own, key)
        blocks.append(block.model_copy(update={key: getattr(done.project, key)}) if changed else block)
    return made.model_copy(update={"blocks": tuple(blocks)}) if made.blocks else made


def _skipping(before: Project, after: Project) -> Project:
    """Where whole rounds put strips where nothing is bare, the rounds are repeated until covered instead.

    Args:
        before: with the rounds as they were.
        after: with as many rounds as it takes.
    """
    if after.building.until_covered or not after.rounds or not grows(after):
        return after
    codes = codes_of(after)
    if "strip.unnecessary" not in codes:
        return after
    repeated = before.model_copy(update={"building": before.building.model_copy(update={"until_covered": True})})
    new = codes_of(repeated) - (codes - {"strip.unnecessary"})
    return after if any(code.startswith(("coverage.", "strip.unnecessary", "build")) for code in new) else repeated
