"""More rounds or fewer, until the new size is covered: the pattern of the strips goes on as it began.

The strips are a cycle (Oat, Slate, Oat, Slate ...) and often a last one that is different: wider, or of the fabric
of the binding. Rounds are put in and taken out before it, so that it stays the last.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Any

from stitchflip.errors import StitchflipError
from stitchflip.lengths import CM_PER_INCH, Unit
from stitchflip.piecing.geometry import extent
from stitchflip.piecing.project_build import bare_of, outer_edge_of
from stitchflip.piecing.ways import begins_with_strip
from stitchflip.planning.resize.pen import PLACE_STEP, as_number, exactly
from stitchflip.project.house import House
from stitchflip.project.model import Way
from stitchflip.project.numbers import effective
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.lengths import Length
    from stitchflip.project.model import Project

MOST_ADDED = 240
"""So many rounds or strips are added at most."""
WIDER_BY = House(1, 2.5, "the last strip may be cut wider by")
"""So much the last strip is widened before another round is added."""
WIDEN_STEP = House(1 / 4, 0.5, "the last strip is widened in steps of")
_GROWING = frozenset(set(Way) - {Way.FOUNDATION, Way.FOLDED_CORNERS})
"""Ways whose base is covered by strips from the center outward; the others have their center's size."""


@dataclass(frozen=True, slots=True)
class Fitted:
    """A project whose strips were made to cover, and what was done to them."""

    project: Project
    added: int
    """Rounds (or single strips, where they go on in the maker's order) more; below zero they were dropped."""
    widened: Length | None = None
    """New cut width of the last strip; None where it stays."""
    is_covered: bool = True


def grows(project: Project) -> bool:
    """True for a way of building that reaches a larger size by more strips."""
    return project.building.way in _GROWING


def fitted(project: Project, *, may_drop: bool, may_widen: bool = True) -> Fitted:
    """The project with as many strips as its size takes.

    Args:
        project: with its new size; its readings are not looked at.
        may_drop: False to keep all strips that there are, even where fewer would do.
        may_widen: False where strips are as wide as they are, such as precut ones.
    """
    if not grows(project) or project.building.until_covered:
        return Fitted(project, 0, is_covered=_is_covered(project))
    cycle = Cycle(_entries(project), fixed=1 if begins_with_strip(project) and project.rounds else 0)
    lay = _central if _is_off_but_central(project) else _with
    project = lay(project, _entries(project))
    if _is_covered(project):
        return Fitted(*_fewer(project, cycle, lay)) if may_drop else Fitted(project, 0)
    return _more(project, cycle, lay, may_widen=may_widen)


_Lay = Callable[["Project", Sequence[Any]], "Project"]
"""Puts rounds into a project."""


def _fewer(project: Project, cycle: Cycle, lay: _Lay) -> tuple[Project, int]:
    """Rounds dropped as long as the rest still covers."""
    dropped = 0
    while cycle.count - dropped > 1:
        tried = lay(project, cycle.first(cycle.count - dropped - 1))
        if not _is_covered(tried):
            break
        project, dropped = tried, dropped + 1
    return project, -dropped


def _more(project: Project, cycle: Cycle, lay: _Lay, *, may_widen: bool) -> Fitted:
    """The last strip widened where little is missing, else another round, and so on."""
    best = _missing(project)
    idle = 0
    for added in range(MOST_ADDED):
        tried = lay(project, cycle.first(cycle.count + added)) if added else project
        if added and _is_covered(tried):
            return Fitted(tried, added)
        for wider, width in _widened(tried) if may_widen else ():
            if _is_covered(wider):
                return Fitted(wider, added, width)
        left = _missing(tried)
        idle = idle + 1 if added and left >= best - 1e-6 else 0
        best = min(best, left)
        if idle > max(2, len(cycle.entries)):
            break
    return Fitted(project, 0, is_covered=False)


def _widened(project: Project) -> Iterator[tuple[Project, Length]]:
    """The project with its last strips wider, step by step; not where nothing but the widest would do."""
    entries = _entries(project)
    step, most = WIDEN_STEP.of(project.units), WIDER_BY.of(project.units)
    last = entries[-1] if entries else None
    if last is None:
        return

    def wider(by: float) -> tuple[Project, Length]:
        cuts = tuple(exactly(cut.inches + by, project.units) for cut in getattr(last, "cuts", None) or ())
        cut = last.cut and exactly(last.cut.inches + by, project.units)
        update = {"cut": cut, "cuts": cuts} if cuts else {"cut": cut}
        return _with(project, [*entries[:-1], last.model_copy(update=update)]), cut or max(cuts)

    steps = round(most / step)
    if (last.cut or getattr(last, "cuts", None)) and _is_covered(wider(step * steps)[0]):
        yield from (wider(step * count) for count in range(1, steps + 1))


@dataclass(frozen=True, slots=True)
class Cycle:
    """How a list of rounds, or of single strips, goes on."""

    entries: Sequence[Any]
    fixed: int
    """Entries at the beginning that are no part of it: the strip that rows begin with."""

    @property
    def count(self) -> int:
        """Entries without the fixed ones."""
        return len(self.entries) - self.fixed

    def first(self, count: int) -> list[Any]:
        """So many entries of the pattern, the last one staying the last."""
        head, rest = list(self.entries[: self.fixed]), list(self.entries[self.fixed :])
        if not rest or count <= 0:
            return [*head, *rest[:0]]
        body, last = rest[:-1], rest[-1]
        period = next((step for step in range(1, len(body)) if body[step:] == body[:-step]), 0)
        if not period and body and all(_widest(last) > _widest(entry) for entry in body):
            period = len(body)
        if not period or last == body[-period]:
            pattern = rest[: period or len(rest)]
            return [*head, *(pattern[place % len(pattern)] for place in range(count))]
        made = [body[place % period] for place in range(count)]
        expected = body[len(body) % period]
        widths = {key: getattr(last, key) for key in ("cut", "cuts") if hasattr(last, key)}
        is_only_wider = expected.model_copy(update=widths) == last
        made[-1] = made[-1].model_copy(update=widths) if is_only_wider else last
        return [*head, *made]


def _widest(entry: Any) -> int:  # noqa: ANN401  a round or a single strip
    """The widest cut of a round or a single strip, in ticks."""
    return max((cut.ticks for cut in (entry.cut, *(getattr(entry, "cuts", None) or ())) if cut is not None), default=0)


def _entries(project: Project) -> Sequence[Any]:
    return project.steps if project.building.way is Way.SIDES else project.rounds


def _with(project: Project, entries: Sequence[Any]) -> Project:
    """The project with these rounds or steps."""
    key = "steps" if project.building.way is Way.SIDES else "rounds"
    return project.model_copy(update={key: tuple(entries)})


def _is_off_but_central(project: Project) -> bool:
    """True where the center lies off the middle so that the outer edge comes out central."""
    center = project.center
    if center is None or center.off_center == (0.0, 0.0) or project.building.way is Way.TWO_SIDED:
        return False
    return max(abs(place) for place in _off_the_middle(project)) <= PLACE_STEP.of(project.units) * 2


def _central(project: Project, entries: Sequence[Any]) -> Project:
    """The project with these rounds or steps, its center moved so that the outer edge stays central."""
    project = _with(project, entries)
    center = project.center
    if center is None:
        return project
    scale = 1.0 if project.units is Unit.INCH else 1 / CM_PER_INCH
    places = zip(center.off_center, _off_the_middle(project), strict=True)
    off = tuple(as_number(place * scale - by, project.units) for place, by in places)
    return project.model_copy(update={"center": center.model_copy(update={"off_center": off})})


def _off_the_middle(project: Project) -> tuple[float, float]:
    """How far the middle of all fabric lies from the center mark, across and up."""
    try:
        outline = outer_edge_of(project, effective(project))
    except StitchflipError:
        return (0.0, 0.0)
    return sum(extent(outline, 1, 0)) / 2, sum(extent(outline, 0, 1)) / 2


def _is_covered(project: Project) -> bool:
    try:
        return not bare_of(project, effective(project))
    except StitchflipError:
        return False


def _missing(project: Project) -> float:
    """By how much the strips fall short of all bare places together, inches; endless where nothing can be built."""
    try:
        return sum(spot.by for spot in bare_of(project, effective(project)))
    except StitchflipError:
        return float("inf")
