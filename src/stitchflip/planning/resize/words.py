"""What was done to get a piece to its new size, in the maker's words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.lengths import Speaker
from stitchflip.project.house import HOUSE
from stitchflip.project.model import Way

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from stitchflip.planning.resize.pen import Awkward
    from stitchflip.planning.resize.rounds import Fitted
    from stitchflip.project.model import Project


def redraft_words(project: Project) -> str:
    """That the piece was drafted anew, with which seam."""
    seam = project.my_numbers.seam or HOUSE["seam"].length(project.units)
    return f"Drafted anew with seams of {Speaker(project.units).width(seam.inches)}; nothing is converted cut by cut."


def fitted_words(done: Fitted, begin: str) -> Iterator[str]:
    """Rounds more or fewer, the last strips wider, or that nothing helps.

    Args:
        done: what was done.
        begin: the name of the block it was done to, or nothing.
    """
    say = Speaker(done.project.units)
    if done.added:
        count = abs(done.added)
        what = f"{count} {'strip' if done.project.building.way is Way.SIDES else 'round'}{'' if count == 1 else 's'}"
        yield _said(begin, f"{what} more." if done.added > 0 else f"{what} fewer; the others cover it.")
    if done.widened is not None:
        yield _said(begin, f"the last strips are cut {say.width(done.widened.inches)} wide, to cover.")
    if not done.is_covered:
        yield _said(begin, "more strips would not cover this size; see what the plan says.")


def _said(begin: str, text: str) -> str:
    return f"{begin}: {text}" if begin else f"{text[:1].upper()}{text[1:]}"


def awkward_words(awkward: Iterable[Awkward], say: Speaker) -> Iterator[str]:
    """Each cut that left the ruler, once.

    Args:
        awkward: the cuts.
        say: the maker's voice.
    """
    same: dict[tuple[str, str], dict[str, None]] = {}
    for one in awkward:
        same.setdefault((say.near(one.exact_in), say.width(one.cut_in)), {})[one.what] = None
    for (exact, cut), what in same.items():
        yield _said("", f"{_listed(list(what))}: {exact} would keep the proportion and is off the ruler; cut {cut}.")


def _listed(names: list[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
