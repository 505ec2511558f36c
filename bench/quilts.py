"""A king-size quilt of a hundred joined blocks: equal blocks are built once."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from bench.clock import Measured, medians
from stitchflip.lengths import Unit
from stitchflip.piecing import build_project
from stitchflip.planning import plan
from stitchflip.planning.findings import geometry_findings
from stitchflip.planning.findings.seen import Seen, see
from stitchflip.project.model import Project

if TYPE_CHECKING:
    from collections.abc import Callable

_BLOCKS_IN_A_ROW = 10
_STRIPS = 25
GROWTH = 5
"""Four times as many different blocks may take no more than this many times as long."""
RATIO = 10
"""A quilt of equal blocks must be planned this many times faster than by building every block."""


def king_size(kinds: int) -> Project:
    """A hundred blocks of 25 strips, 10 in squared up, of so many different kinds.

    Kinds differ by the width of their first strip, so that none can be taken for another.
    """
    blocks = [
        {"name": f"Kind {kind + 1}", "count": _share(kinds, kind), "steps": _steps(kind)} for kind in range(kinds)
    ]
    tables: dict[str, Any] = {
        "name": "King size",
        "squared_up": {"wide": "10", "long": "10"},
        "center": {"cut": "1 1/2", "fabric": "Light"},
        "building": {"way": "sides in my order"},
        "steps": _steps(0),
        "blocks": blocks,
        "joined": {"across": _BLOCKS_IN_A_ROW, "down": _BLOCKS_IN_A_ROW, "fabric": "Dark"},
        "fabrics": [{"name": "Light", "color": "#e9dcc0"}, {"name": "Dark", "color": "#2e4a62"}],
        "binding": {"fabric": "Dark"},
        "my_numbers": {"reach": "1/4", "fold_loss": "0"},
    }
    return Project.model_validate(tables, context={"unit": Unit.INCH})


def _share(kinds: int, kind: int) -> int:
    """How many of a kind, so that all add up to a hundred."""
    total = _BLOCKS_IN_A_ROW**2
    return total // kinds + (kind < total % kinds)


def _steps(kind: int) -> list[dict[str, str]]:
    """Twenty-five strips round and round; 64ths of an inch tell one kind from another."""
    sides = ("top", "right", "bottom", "left")
    widths = [f"1 {16 + kind}/128", *["1 1/4"] * (_STRIPS - 1)]
    return [
        {"side": sides[place % 4], "cut": width, "fabric": ("Light", "Dark")[place // 4 % 2]}
        for place, width in enumerate(widths)
    ]


def _every_block(project: Project) -> Callable[[], object]:
    """The geometry of a quilt the plain way: every block built and looked at, like its neighbor or not."""
    first = see(project)

    def build() -> None:
        for _ in range(_BLOCKS_IN_A_ROW**2):
            built = build_project(project, first.numbers, (first.base.wide / 2, first.base.high / 2))
            geometry_findings(Seen(project, first.numbers, first.base, built))

    return build


def quilts() -> list[Measured]:
    """Growth with different blocks, and what building equal ones once saves."""
    one, quarter, every = king_size(1), king_size(25), king_size(100)
    equal, some, different, plain = medians(
        3,
        lambda: plan(one, with_cures=False),
        lambda: plan(quarter, with_cures=False),
        lambda: plan(every, with_cures=False),
        _every_block(one),
    )
    growth, ratio = different / some, plain / equal
    return [
        Measured(
            "planning a king-size quilt of 100 different blocks against 25 kinds of block",
            f"{growth:.1f} times as long",
            f"under {GROWTH} times",
            growth < GROWTH,
            f"whole plans, cutting included: {1000 * some:.0f} ms and {1000 * different:.0f} ms; all blocks alike "
            f"{1000 * equal:.0f} ms",
        ),
        Measured(
            "planning a king-size quilt of 100 equal blocks of 25 strips against building every block",
            f"{ratio:.0f} times faster",
            f"{RATIO} times",
            ratio >= RATIO,
            f"the whole plan {1000 * equal:.0f} ms against {1000 * plain:.0f} ms for the blocks alone",
        ),
    ]
