"""The best plan and the best bound of a search, and whether it is done."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.stacks.ground import Ground, PiledStrip
    from stitchflip.cutting.layouts.watch import Watch


class Record:
    """Kept by all searches of one task together.

    Args:
        ground: the task.
        watch: told whenever something gets better.
        most_told: no higher bound is told: the bounds of the searches hold for three stages only.
    """

    def __init__(self, ground: Ground, watch: Watch, most_told: int | None = None) -> None:
        self._ground = ground
        self._most_told = most_told
        self.watch = watch
        self.strips: tuple[PiledStrip, ...] = ()
        self.value = 0
        """Length of the plan; 0 while there is none."""
        self.bound = 0
        """No plan of three stages is shorter."""

    @property
    def goal(self) -> int:
        """A plan no longer than this would be better, in steps of purchase; the plan's own length when proved."""
        return self._ground.below(self.value)

    @property
    def sure_bound(self) -> int:
        """The bound that is told."""
        return self.bound if self._most_told is None else min(self.bound, self._most_told)

    def is_proved(self) -> bool:
        """Whether plan and bound fall into the same step."""
        return bool(self.strips) and self.bound > self.goal

    def is_over(self) -> bool:
        """Whether the search has to end, or may."""
        return self.is_proved() or self.watch.over()

    def offer(self, strips: Sequence[PiledStrip]) -> bool:
        """Keep a plan if it is shorter.

        Returns:
            Whether it was.
        """
        value = sum(strip.high for strip in strips)
        if self.strips and value >= self.value:
            return False
        self.strips, self.value = tuple(strips), value
        self._tell()
        return True

    def raise_bound(self, bound: int) -> None:
        """Keep a bound if it is higher; no higher than the plan."""
        bound = min(bound, self.value) if self.strips else bound
        if bound > self.bound:
            self.bound = bound
            self._tell()

    def _tell(self) -> None:
        """Say what there is."""
        self.watch.tell(self.value if self.strips else None, self.sure_bound)
