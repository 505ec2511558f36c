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
    """

    def __init__(self, ground: Ground, watch: Watch) -> None:
        self._ground = ground
        self.watch = watch
        self.strips: tuple[PiledStrip, ...] = ()
        self.value = 0
        """Length of the plan; 0 while there is none."""
        self.bound = 0

    @property
    def goal(self) -> int:
        """A plan no longer than this would be better, in steps of purchase; the plan's own length when proved."""
        return self._ground.below(self.value)

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
        self.watch.tell(self.value, min(self.bound, self.value))
        return True

    def raise_bound(self, bound: int) -> None:
        """Keep a bound if it is higher; no higher than the plan."""
        bound = min(bound, self.value) if self.strips else bound
        if bound > self.bound:
            self.bound = bound
            self.watch.tell(self.value if self.strips else None, bound)
