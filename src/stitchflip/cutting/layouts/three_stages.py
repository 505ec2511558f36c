"""The shortest length for strips whose stacks hold several pieces over one another.

Two searches work for each other. Strips are priced as columns, which gives a bound and, where pieces repeat, most of
a plan; pieces are laid one by one, which gives good plans where they differ. What is found is mended as long as there
is time.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.model import Answer
from stitchflip.cutting.layouts.stacks.beam import Beam, Guide
from stitchflip.cutting.layouts.stacks.ground import ground_of
from stitchflip.cutting.model import Status

if TYPE_CHECKING:
    from stitchflip.cutting.layouts.model import LayoutTask
    from stitchflip.cutting.layouts.stacks.ground import Ground, PiledStrip
    from stitchflip.cutting.layouts.watch import Watch


def shortest(task: LayoutTask, watch: Watch) -> Answer:
    """Find the shortest plan of three stages.

    Args:
        task: already small: every count at least 1, every piece fits; `Aim.LENGTH` on one sheet of open length.
        watch: how long it may take.

    Returns:
        The plan and a bound; with stages 0 the bound holds for any number of stages.
    """
    ground = ground_of(task)
    search = _Search(ground, watch)
    search.run()
    return search.answer()


class _Search:
    """The best plan and the best bound so far."""

    def __init__(self, ground: Ground, watch: Watch) -> None:
        self._ground = ground
        self._watch = watch
        self._strips: tuple[PiledStrip, ...] = ()
        self._value = 0
        self._bound = max(
            -(-ground.area(ground.counts) // ground.wide),
            max(min(lay.long for lay in ground.lays if lay.want == want) for want in range(len(ground.counts))),
        )

    def run(self) -> None:
        """Search until the plan is proved or time is over."""
        ground = self._ground
        beam, breadth = Beam(ground, ground.counts), 4
        goal = sum(
            count * max(lay.long for lay in ground.lays if lay.want == w) for w, count in enumerate(ground.counts)
        )
        while not self._watch.over() and not self._is_proved():
            found = beam.search(goal, min(breadth, beam.broadest()), Guide(), self._watch)
            if found.strips is not None:
                self._strips, self._value = found.strips, found.length
                goal = ground.below(self._value)
                self._watch.tell(self._value, self._bound)
            elif found.is_whole:
                self._bound = self._value
            breadth *= 2

    def _is_proved(self) -> bool:
        """Plan and bound fall into the same step."""
        return bool(self._strips) and self._bound > self._ground.below(self._value)

    def answer(self) -> Answer:
        """What there is at the end."""
        if not self._strips:
            return Answer(status=Status.BEST_FOUND, layouts=(), value=0, bound=self._bound, because="time was over")
        return Answer(
            status=Status.PROVED if self._is_proved() else Status.BEST_FOUND,
            layouts=(self._ground.layout(self._strips),),
            value=self._value,
            bound=min(self._bound, self._value),
            because="" if self._is_proved() else "time was over",
        )
