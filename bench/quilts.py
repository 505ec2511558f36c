"""A king-size quilt of a hundred joined blocks: equal blocks are built once."""

from __future__ import annotations

from typing import Any

from bench.clock import Measured, medians
from stitchflip.finishing import plan_quilt
from stitchflip.lengths import Unit
from stitchflip.piecing import build_project
from stitchflip.planning import plan
from stitchflip.planning.findings import geometry_findings
from stitchflip.planning.findings.seen import Seen, see
from stitchflip.planning.kinds import block_kinds
from stitchflip.project.model import Project

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


def _blocks(project: Project) -> None:
    """The blocks of a quilt as the plan makes and looks at them."""
    first = see(project)
    quilt = plan_quilt(project, first.numbers, first.build.trim_taped)
    for kind in block_kinds(project, first.numbers, quilt, (first.base.wide / 2, first.base.high / 2)):
        geometry_findings(Seen(kind.project, first.numbers, first.base, kind.build))


def _every_block(project: Project) -> None:
    """The same the plain way: every block built and looked at, like its neighbor or not."""
    first = see(project)
    for _ in range(_BLOCKS_IN_A_ROW**2):
        built = build_project(project, first.numbers, (first.base.wide / 2, first.base.high / 2))
        geometry_findings(Seen(project, first.numbers, first.base, built))


def quilts() -> list[Measured]:
    """What building equal blocks once saves, and growth with different blocks."""
    one, quarter, every = king_size(1), king_size(25), king_size(100)
    equal, plain = medians(5, lambda: _blocks(one), lambda: _every_block(one))
    some, different = medians(3, lambda: plan(quarter, with_cures=False), lambda: plan(every, with_cures=False))
    growth, ratio = different / some, plain / equal
    return [
        Measured(
            "the 100 equal blocks of 25 strips of a king-size quilt against building every block",
            f"{ratio:.0f} times faster",
            f"{RATIO} times",
            ratio >= RATIO,
            f"{1000 * equal:.1f} ms against {1000 * plain:.0f} ms",
        ),
        Measured(
            "planning a king-size quilt of 100 different blocks against 25 kinds of block",
            f"{growth:.1f} times as long",
            f"under {GROWTH} times",
            growth < GROWTH,
            f"whole plans, cutting of 2,500 strips included: {some:.1f} s and {different:.1f} s",
        ),
    ]
