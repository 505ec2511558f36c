"""Print the table; fail when a target is missed."""

from __future__ import annotations

import sys
from itertools import chain

from bench.cutting.targets import cutting
from bench.papers import pattern_pdf, peak_memory
from bench.planning import runners
from bench.quilts import quilts
from bench.shell import typed

PLAN_SECONDS = 0.6


def main() -> int:
    """Measure everything.

    Returns:
        0 when every target is met, else 1.
    """
    quick = (*runners(), *quilts(), pattern_pdf(), peak_memory(), typed("plan", PLAN_SECONDS))
    lines = []
    for line in chain(quick, cutting()):
        lines.append(line)
        verdict = "met   " if line.is_met else "MISSED"
        print(f"{verdict} {line.what}: {line.value} (target: {line.target})", flush=True)
        if line.remark:
            print(f"       {line.remark}")
    return 0 if all(line.is_met for line in lines) else 1


sys.exit(main())
