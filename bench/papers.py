"""The printed pattern, memory, and the command line from the shell."""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from statistics import median

from bench.clock import Measured, medians
from stitchflip.pattern import pattern_document, to_pdf
from stitchflip.planning import plan
from stitchflip.project import read_project

PDF_SECONDS = 1.0
MEGABYTES = 300
SHELL_SECONDS = 0.6
_RUNS = 7
_EXAMPLES = Path("examples")

_EVERYTHING = """
import sys
from pathlib import Path
from stitchflip.pattern import pattern_document, shop_sheet, table_sheet, to_html, to_pdf
from stitchflip.planning import plan
from stitchflip.project import read_project
made = plan(read_project(Path(sys.argv[1]).read_text(encoding="utf-8")))
for document in (table_sheet(made), shop_sheet(made), pattern_document(made)):
    to_pdf(document, "letter")
to_html(pattern_document(made))
print(next(line for line in open("/proc/self/status") if line.startswith("VmHWM")).split()[1])
"""
"""The peak is the process's own: getrusage would count what the bench itself held when it was started."""


def largest_example() -> Path:
    """The example with the most strips."""

    def strips(path: Path) -> int:
        made = plan(read_project(path.read_text(encoding="utf-8")), with_cures=False)
        return len(made.build.pieces)

    return max(sorted(_EXAMPLES.glob("*.toml")), key=strips)


def pattern_pdf() -> Measured:
    """Seconds from a plan to the bytes of its pattern."""
    path = largest_example()
    made = plan(read_project(path.read_text(encoding="utf-8")))
    (seconds,) = medians(5, lambda: to_pdf(pattern_document(made), "letter"))
    what = f"pattern of {path.stem} as PDF, beyond imports"
    return Measured(what, f"{seconds:.2f} s", f"under {PDF_SECONDS} s", seconds < PDF_SECONDS)


def peak_memory() -> Measured:
    """Peak memory of a process that plans the largest example and makes every paper."""
    path = largest_example()
    run = subprocess.run(  # noqa: S603  our own interpreter and our own text
        [sys.executable, "-c", _EVERYTHING, str(path)], check=True, capture_output=True, text=True, env=settings()
    )
    megabytes = int(run.stdout) / 1024
    what = f"peak memory: plan and all papers of {path.stem}"
    return Measured(what, f"{megabytes:.0f} MB", f"under {MEGABYTES} MB", megabytes < MEGABYTES)


def from_the_shell() -> Measured:
    """Seconds of `stitchflip plan` as typed, imports included."""
    command = [str(Path(sys.executable).parent / "stitchflip"), "plan", str(_EXAMPLES / "lantern-walk.toml")]
    times = []
    for run in range(_RUNS + 1):
        start = time.perf_counter()
        subprocess.run(command, check=True, capture_output=True, env=settings())  # noqa: S603  our own command
        if run:
            times.append(time.perf_counter() - start)
    seconds = median(times)
    return Measured(
        "stitchflip plan from the shell, imports included",
        f"{seconds:.2f} s",
        f"under {SHELL_SECONDS} s",
        seconds < SHELL_SECONDS,
        f"from {min(times):.2f} to {max(times):.2f} s",
    )


def settings() -> dict[str, str]:
    """The caller's settings, with compiled modules kept in a cache as on anybody's machine."""
    cache = os.environ.get("PYTHONPYCACHEPREFIX", str(Path(tempfile.gettempdir()) / "stitchflip-bench-cache"))
    own = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
    return {**own, "PYTHONPYCACHEPREFIX": cache}
