"""What a way of building is given and what it asks for.

A way knows sides and rounds, not pictures, files or prices: it is handed a `Job` and asks for `Wanted` strips
one after another. Each becomes one flip of the kernel, on a side or along a line of its own.
"""

from __future__ import annotations

from itertools import count
from typing import TYPE_CHECKING, TypeVar

from stitchflip.errors import BuildError
from stitchflip.project.model import Widths
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

    from stitchflip.piecing.flips import Flip, Sewn, State
    from stitchflip.piecing.frame import Frame
    from stitchflip.piecing.model import Build, Point, Polygon
    from stitchflip.project.model import Project, Round
    from stitchflip.project.numbers import Numbers

_T = TypeVar("_T")


@dataclass(frozen=True, slots=True)
class Job:
    """What a way of building is asked to do."""

    project: Project
    numbers: Numbers
    frame: Frame
    """What the build is measured against: trim, reach, seam."""
    names: tuple[str, ...]
    """Names of the sides that strips go on, counter-clockwise from the bottom."""
    normals: tuple[Point, ...]
    """Their outward unit normals."""


@dataclass(frozen=True, slots=True)
class Part:
    """A stretch of a strip that was pieced beforehand."""

    fabric: str
    """"" for the strip's own fabric."""
    low: float
    """Its two ends along the seam, at the seam lines that join it; from the foot of the center mark, inches."""
    high: float
    cut_length: float
    """Length it is cut, inches."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """A strip that a way of building asks for."""

    round: int
    """1 for the first round."""
    visit: int
    """Place within its round, 0 for the first strip sewn."""
    side: int
    """Index of the side it goes on; -1 for one that is sewn along a line of its own."""
    width: float
    """Cut width, inches; 0 where it is drawn from what is on hand."""
    fabric: str | None
    """None where the fabric rule decides."""
    cut_long: float | None = None
    """Cut length the maker asked for, inches; None to compute it."""
    lay: Callable[[State], Flip | None] | None = None
    """How it is laid when it follows a line of its own, from what is sewn so far; gives None to leave it out."""
    place: str = ""
    """What such a place is called, as "upper right corner"."""
    square_cut: float = 0.0
    """Side of the square it is cut as, sewn from corner to corner; 0 for a strip."""
    parts: Callable[[State, Sewn], tuple[Part, ...]] | None = None
    """What it is pieced from beforehand, given the state before it and itself as sewn; None for one fabric."""
    like_last: bool = False
    """Where the fabric rule decides: of the same fabric as the strip before it in its round."""


@dataclass(frozen=True, slots=True)
class WayOfBuilding:
    """One way of building: how it begins and which strips it asks for."""

    strips: Callable[[Job], Iterator[Wanted]]
    first: Callable[[Project, Numbers], Polygon]
    """Raw edges of the first piece as laid on the base, flat."""
    growing: Callable[[Project, Numbers], tuple[Point, ...]] | None = None
    """Normals of the sides that strips go on, the others being free; None for all sides of the first piece."""
    can_begin_with_strip: bool = False
    """Without a center the first piece is a strip that runs right across: the first of the rounds."""
    as_cut: Callable[[Project, Numbers], Polygon] | None = None
    """Outline of the first piece as it is cut and laid, where strips are sewn to something larger than that."""
    finish: Callable[[Job, Build], Build] | None = None
    """What is settled when all is sewn, such as the size of each patch."""
    called: tuple[str, ...] = ()
    """Names of the growing sides, counter-clockwise from the bottom; left out, they are called by where they face."""


def round_after_round(
    job: Job, visits: Callable[[int], Sequence[int]], rounds: Sequence[Round] | None = None
) -> Iterator[Wanted]:
    """The strips of the project's rounds, each round on the sides it visits; endless when it builds until covered.

    Args:
        job: The job.
        visits: Indices of the sides of a round (1 for the first), in the order sewn.
        rounds: The rounds; left out, those of the project.

    Raises:
        BuildError: If a round names no width, or the wrong number of widths.
    """
    listed = job.project.rounds if rounds is None else rounds
    if not listed:
        return
    for number in count(1):
        if number > len(listed) and not job.project.building.until_covered:
            return
        for strip in strips_of_round(listed[(number - 1) % len(listed)], number, visits(number)):
            if strip.width <= 0 and job.project.building.widths is Widths.LISTED:
                raise BuildError(
                    what=f"round {number} has no cut width",
                    fix="Give the round a cut width, or one for each of its strips under cuts.",
                    where=f"round {number}",
                    code="build.no-width",
                )
            yield strip


def strips_of_round(entry: Round, number: int, visits: Sequence[int]) -> Iterator[Wanted]:
    """The strips of one round on the sides it visits."""
    widths = spread(entry.cuts, entry.cut, len(visits), number, "cuts")
    fabrics = spread(entry.fabrics, entry.fabric, len(visits), number, "fabrics")
    cut_long = entry.cut_long.inches if entry.cut_long is not None else None
    for visit, side in enumerate(visits):
        width = widths[visit]
        yield Wanted(number, visit, side, 0.0 if width is None else width.inches, fabrics[visit], cut_long)


def spread(several: tuple[_T, ...] | None, one: _T | None, strips: int, number: int, key: str) -> list[_T | None]:
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
