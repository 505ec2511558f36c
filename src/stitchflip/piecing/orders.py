"""Which side comes next: every way of building as a list of wanted strips.

Each way turns the project's rounds into the same thing, a run of `Wanted` strips; the kernel knows none of
them. Where the fabrics go is decided in `fabric_places`.
"""

from __future__ import annotations

from itertools import count
from typing import TYPE_CHECKING, TypeVar

from stitchflip.errors import BuildError
from stitchflip.project.model import PairFirst, Project, RowsFrom, Runs, Turning, Way
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from stitchflip.piecing.model import Point
    from stitchflip.project.model import Round

_T = TypeVar("_T")


@dataclass(frozen=True, slots=True)
class Wanted:
    """A strip that the way of building asks for."""

    round: int
    """1 for the first round."""
    visit: int
    """Place within its round, 0 for the first strip sewn."""
    side: int
    """Index of the side it goes on."""
    width: float
    """Cut width, inches."""
    fabric: str | None
    """None where the fabric rule decides."""
    cut_long: float | None = None
    """Cut length the maker asked for, inches; None to compute it."""


def wanted_strips(project: Project, names: Sequence[str], normals: Sequence[Point]) -> Iterator[Wanted]:
    """The strips of a project in the order sewn; endless when it builds until covered.

    Args:
        project: The project.
        names: Names of the sides, counter-clockwise.
        normals: Their outward normals.

    Raises:
        BuildError: If a named side does not exist, or a round names the wrong number of strips.
    """
    if project.building.way is Way.SIDES:
        yield from _listed(project, names)
        return
    rounds = project.rounds
    if project.building.way is Way.ROWS and project.center is None:
        rounds = rounds[1:]
    if not rounds:
        return
    for number in count(1):
        if number > len(rounds) and not project.building.until_covered:
            return
        entry = rounds[(number - 1) % len(rounds)]
        visits = _visits(project, names, normals, number)
        yield from _round(entry, number, visits)


def _round(entry: Round, number: int, visits: Sequence[int]) -> Iterator[Wanted]:
    widths = _spread(entry.cuts, entry.cut, len(visits), number, "cuts")
    fabrics = _spread(entry.fabrics, entry.fabric, len(visits), number, "fabrics")
    cut_long = entry.cut_long.inches if entry.cut_long is not None else None
    for visit, side in enumerate(visits):
        width = widths[visit]
        if width is None:
            raise BuildError(
                what=f"round {number} has no cut width",
                fix="Give the round a cut width, or one for each of its strips under cuts.",
                where=f"round {number}",
                code="build.no-width",
            )
        yield Wanted(number, visit, side, width.inches, fabrics[visit], cut_long)


def _spread(several: tuple[_T, ...] | None, one: _T | None, strips: int, number: int, key: str) -> list[_T | None]:
    """One value for each strip of a round: listed, in turn, or the same for all."""
    if several is None:
        return [one] * strips
    if key == "cuts" and len(several) != strips:
        raise BuildError(
            what=f"round {number} has {strips} strips and names {len(several)} cut widths",
            fix=f"List {strips} cut widths in the order sewn, or give one cut for all.",
            where=f"round {number}",
            code="build.round-mismatch",
        )
    return [several[place % len(several)] for place in range(strips)]


def _visits(project: Project, names: Sequence[str], normals: Sequence[Point], number: int) -> list[int]:
    """Indices of the sides of one round, in the order sewn."""
    building = project.building
    total = len(names)
    turn = -1 if building.turning is Turning.CLOCKWISE else 1
    match building.way:
        case Way.LOG_CABIN | Way.AROUND:
            first = side_index(building.start, names, default="top")
            return [(first + turn * place) % total for place in range(total)]
        case Way.TWO_SIDED:
            first = side_index(building.start, names, default="top")
            return [first, (first + turn) % total]
        case Way.COURTHOUSE:
            return _courthouse(building.first_pair, names, building.strips_per_visit)
        case Way.POINTS:
            return _points(project, normals, number)
        case Way.ROWS:
            upper = 0 if _faces(normals[0]) > _faces(normals[-1]) else total - 1
            return [upper, total - 1 - upper] if building.rows_from is RowsFrom.MIDDLE else [upper]
        case Way.SIDES:  # pragma: no cover - listed above
            return []


def _faces(normal: Point) -> tuple[float, float]:
    """Order of the two sides of a run: the upper one first, of two level ones the right one."""
    return (round(normal[1], 6), normal[0])


def _courthouse(first_pair: tuple[str, str], names: Sequence[str], per_visit: int) -> list[int]:
    first = [side_index(name, names) for name in first_pair]
    second = [index for index in range(len(names)) if index not in first]
    if len(names) != 4 or abs(first[0] - first[1]) != 2:
        raise BuildError(
            what=f"courthouse steps need four sides and an opposite first pair, not {' and '.join(first_pair)}",
            fix=f"Name two opposite sides out of {', '.join(names)}.",
            where="building.first_pair",
            code="build.pair-not-opposite",
        )
    second.reverse()
    return [side for pair in (first, second) for _ in range(per_visit) for side in pair]


def _points(project: Project, normals: Sequence[Point], number: int) -> list[int]:
    """The pair at one end, then the pair at the other; which strip of a pair goes first by the maker's choice.

    A runner drawn lying has its ends at the right and the left; one drawn upright at the top and the bottom,
    and "upper" then means the right strip of a pair.
    """
    lies = project.squared_up.length_runs is Runs.ACROSS
    ends = [(nx, ny) if lies else (ny, nx) for nx, ny in normals]
    first = [index for index, (along, _) in enumerate(ends) if along > 1e-9]
    second = [index for index, (along, _) in enumerate(ends) if along < -1e-9]
    if len(first) != 2 or len(second) != 2:
        raise BuildError(
            what="pairs round the point need a center with a point at each end",
            fix='Turn the center "on point".',
            where="center.turned",
            code="build.not-on-point",
        )
    choice = project.building.pair_first
    upper_first = choice is PairFirst.UPPER or (choice is PairFirst.ALTERNATE and number % 2 == 1)
    pairs = [sorted(pair, key=lambda index: ends[index][1], reverse=upper_first) for pair in (first, second)]
    return pairs[0] if project.building.one_ended else pairs[0] + pairs[1]


def _listed(project: Project, names: Sequence[str]) -> Iterator[Wanted]:
    seen: dict[int, int] = {}
    for step in project.steps:
        side = side_index(step.side, names)
        seen[side] = seen.get(side, 0) + 1
        yield Wanted(seen[side], side, side, step.cut.inches, step.fabric)


def side_index(name: str | None, names: Sequence[str], default: str = "") -> int:
    """Index of a side by its name.

    Raises:
        BuildError: If there is no such side.
    """
    wanted = name or (default if default in names else names[0])
    if wanted in names:
        return names.index(wanted)
    raise BuildError(
        what=f'there is no side called "{wanted}"',
        fix=f"Use one of {', '.join(names)}.",
        where="building",
        code="build.no-such-side",
    )
