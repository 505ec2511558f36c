"""Taking out of a load what nobody wants, and closing it up."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.loads.filling import Load
from stitchflip.cutting.layouts.model import LaidStrip, Stack

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.model import Want


def clipped(load: Load, left: Sequence[int], wants: Sequence[Want], *, along: bool, trims: bool) -> Load:
    """The load without pieces beyond what is left of each want; strips and stacks become as small as they can be.

    Args:
        load: any.
        left: pieces still wanted.
        wants: their sizes.
        along: the first cuts go along the sheet.
        trims: False: stacks keep their width.
    """
    free = {bit.want: left[bit.want] for strip in load.strips for stack in strip.stacks for bit in stack.bits}
    strips = []
    for strip in load.strips:
        stacks, high = [], 0
        for stack in strip.stacks:
            bits, tall, wide = [], 0, 0
            for bit in stack.bits:
                if free[bit.want] > 0:
                    free[bit.want] -= 1
                    bits.append(bit)
                    want = wants[bit.want]
                    across, up = (want.long, want.wide) if bit.turned != along else (want.wide, want.long)
                    tall, wide = tall + up, max(wide, across)
            if bits:
                stacks.append(Stack(wide if trims else stack.wide, tuple(bits)))
                high = max(high, tall)
        if stacks:
            strips.append(LaidStrip(high, tuple(stacks)))
    return Load(load.kind, tuple(strips))
