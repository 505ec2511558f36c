"""Widths drawn from what is on hand: each strip is as wide as the piece it is cut from.

A piece on hand is a strip as wide as its shorter side. Each place takes the first listed kind of its fabric of which
enough is left in one length, and uses it up; a strip is never joined from two pieces. When no piece is long enough
the sewing stops there, and the rest of the piece is sewn on paper only, to tell how much more it takes.
"""

from __future__ import annotations

from collections import defaultdict
from dataclasses import replace
from typing import TYPE_CHECKING

from stitchflip.errors import BuildError
from stitchflip.piecing.geometry import TOLERANCE
from stitchflip.piecing.model import KernelNote
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from stitchflip.piecing.ways.wanted import Wanted
    from stitchflip.project.model import Fabric, Project

RUNS_OUT = "build.runs-out"
"""Code of the note on the first place no piece is long enough for; its value is what the longest one lacks, inches."""
MORE = "build.more-needed"
"""Code of the note on a fabric of which more is needed; its value is how long a strip in all, inches."""


@dataclass(slots=True)
class Kind:
    """Pieces on hand of one fabric and one size, as they are used up."""

    fabric: str
    width: float
    rests: list[float]
    """What is left of each piece, inches."""

    def after(self, length: float, copies: int) -> list[float] | None:
        """The rests after cutting so many strips of a length; None when they cannot be cut."""
        rests = list(self.rests)
        for _ in range(copies):
            place = next((k for k, rest in enumerate(rests) if rest >= length - TOLERANCE), None)
            if place is None:
                return None
            rests[place] -= length
        return rests


@dataclass(frozen=True, slots=True)
class Choice:
    """A strip with the width it takes from a piece on hand."""

    strip: Wanted
    kind: Kind
    length: float
    """Cut length, inches."""
    short: float
    """What the longest piece of its kind lacks, inches; 0 when there is enough."""


class StripsOnHand:
    """All pieces on hand of a project, used up strip by strip."""

    def __init__(self, project: Project, seams: float) -> None:
        """Lay out the pieces in the order listed, those that two seams leave nothing of apart.

        Args:
            project: The project.
            seams: What the two seams of a strip take of its width, inches.
        """
        self._copies = project.bases
        self._rule = project.fabric_rule
        self._kinds: defaultdict[str, list[Kind]] = defaultdict(list)
        for fabric in project.fabrics:
            self._kinds[fabric.name] += [kind for kind in kinds_of(fabric) if kind.width > seams + TOLERANCE]
        named = self._rule.fabrics or tuple(fabric.name for fabric in project.fabrics)
        self._pool = [name for name in named if self._kinds[name]]
        self._turn = 0
        self._last: Wanted | None = None
        self._missing: dict[tuple[str, float], float] = {}
        self._first_missing: tuple[Choice, int] | None = None

    def choose(self, strip: Wanted, length_of: Callable[[Wanted], float]) -> Choice:
        """The piece for the next strip; nothing is used up yet.

        Args:
            strip: A strip without a width.
            length_of: How long it must be cut for its place once it has a width, inches.

        Raises:
            BuildError: If nothing is on hand of its fabric, or it is sewn along a line that needs a width.
        """
        if strip.lay is not None:
            raise BuildError(
                what=f"round {strip.round} has no cut width, and its strips are laid by theirs",
                fix="Give the round a cut width.",
                where=f"round {strip.round}",
                code="build.no-width",
            )
        nearest: Choice | None = None
        lengths: dict[float, float] = {}
        for kind in self._candidates(strip):
            asked = replace(strip, width=kind.width, fabric=kind.fabric)
            if kind.width not in lengths:
                lengths[kind.width] = length_of(asked)
            length = lengths[kind.width]
            if kind.after(length, self._copies) is not None:
                return Choice(asked, kind, length, 0.0)
            short = max(length - max(kind.rests), TOLERANCE)
            if nearest is None or short < nearest.short - TOLERANCE:
                nearest = Choice(asked, kind, length, short)
        if nearest is None:
            raise BuildError(
                what=f"nothing is on hand of {strip.fabric or 'any fabric'} to take the strips of round "
                f"{strip.round} from",
                fix="List the pieces as on_hand under the fabric, or give the round a cut width.",
                where=f"round {strip.round}",
                code="build.nothing-on-hand",
            )
        return nearest

    def take(self, choice: Choice, step: int) -> bool:
        """Use a piece up; False when it is not there and the sewing has stopped.

        Args:
            choice: What was chosen.
            step: The strip's number.
        """
        self._last = choice.strip
        self._turn += 1
        rests = choice.kind.after(choice.length, self._copies)
        if rests is not None:
            choice.kind.rests = rests
        if rests is None and self._first_missing is None:
            self._first_missing = (choice, step)
        if self._first_missing is None:
            return True
        if rests is None:
            like = (choice.kind.fabric, choice.kind.width)
            self._missing[like] = self._missing.get(like, 0.0) + choice.length * self._copies
        return False

    def notes(self, place_of: Callable[[Wanted], str]) -> Iterator[KernelNote]:
        """Where the strips ran out, and of what how much more is needed; none when they did not.

        Args:
            place_of: What the place of a strip is called.
        """
        if self._first_missing is None:
            return
        choice, step = self._first_missing
        yield KernelNote(RUNS_OUT, step, choice.short, place_of(choice.strip), choice.kind.fabric, choice.kind.width)
        for (fabric, width), length in self._missing.items():
            yield KernelNote(MORE, step, length, "", fabric, width)

    def _candidates(self, strip: Wanted) -> Iterator[Kind]:
        """Kinds to look at, in turn: of the strip's fabric, or of each of the rule's."""
        last = self._last
        if strip.fabric is not None:
            names = [strip.fabric]
        elif strip.like_last and last is not None and last.round == strip.round and last.fabric is not None:
            names = [last.fabric]
        else:
            first = self._turn % max(len(self._pool), 1)
            names = [*self._pool[first:], *self._pool[:first]]
            if self._rule.none_next_to_itself and last is not None:
                names.sort(key=lambda name: name == last.fabric)
        for name in names:
            yield from self._kinds[name]


def kinds_of(fabric: Fabric) -> list[Kind]:
    """What is on hand of a fabric, in the order listed, each as a strip as wide as its shorter side."""
    kinds = []
    for piece in fabric.on_hand:
        width, length = sorted((piece.wide.inches, piece.long.inches))
        kinds.append(Kind(fabric.name, width, [length] * piece.count))
    return kinds
