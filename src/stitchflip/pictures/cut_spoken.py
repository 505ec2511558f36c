"""What a reader who cannot see the cutting diagram needs to know."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.hand_model import Act
from stitchflip.pictures.cut_bands import bands_of
from stitchflip.pictures.drawing import counted

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from stitchflip.cutting.hand_model import CuttingOrder, OrderStep
    from stitchflip.cutting.model import FabricPlan
    from stitchflip.lengths import Speaker


def described(
    name: str,
    cut: FabricPlan,
    order: CuttingOrder,
    trimmed: Mapping[tuple[float, int], Sequence[tuple[str, float]]],
    say: Speaker,
) -> str:
    """The diagram in sentences, step by step.

    Args:
        name: letter and name of the fabric.
        cut: its plan.
        order: its order of cuts.
        trimmed: of strips that are trimmed while sewing the pieces, by width and number of the strip.
        say: the maker's voice.
    """
    parts = []
    if cut.buy_in > 0:
        parts.append(
            f"buy {say.purchase(cut.buy_in)}, {say.near(cut.usable_width)} usable width, folded with selvages together"
        )
    for step in order.steps:
        parts += _step(step, trimmed, say)
    return f"Cutting {name} to scale: {'. '.join(parts)}."


def _step(
    step: OrderStep, trimmed: Mapping[tuple[float, int], Sequence[tuple[str, float]]], say: Speaker
) -> Iterator[str]:
    if step.act is Act.ACROSS:
        high = "wide" if step.what == "strip" else "high"
        yield f"{step.number}: {counted(step.parts[0].count, step.what)} {say.width(step.wide)} {high}"
    elif step.act is Act.STRAIGHTEN and step.source != "new fabric":
        yield f"from the {step.source}"
    elif step.act in (Act.SUBCUT, Act.LABEL, Act.KEEP):
        wide = round(step.wide, 6)
        own = {number: pieces for (width, number), pieces in trimmed.items() if width == wide}
        told: dict[str, int] = {}
        for cells in bands_of(step, own):
            inside = ", ".join(
                f"{cell.label}{' whole, to be joined' if cell.is_whole else f' {say.cut(cell.wide)}'}"
                if cell.label
                else f"leftover {say.margin(cell.wide)}"
                for cell in cells
                if cell.label or cell.is_end
            )
            told[inside] = told.get(inside, 0) + 1
        inner = "; ".join(f"{count} times {said}" if count > 1 else said for said, count in told.items())
        yield f"{step.number}: {inner}"
