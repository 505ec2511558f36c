"""Our own commands in processes of their own: seconds as typed, and the memory they take."""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from statistics import median

from bench.clock import Measured

_RUNS = 7
_PEAK = """
print(next(line for line in open("/proc/self/status") if line.startswith("VmHWM")).split()[1])
"""
"""The peak is the process's own: getrusage would count what the bench itself held when it was started."""


def typed(command: str, most_seconds: float) -> Measured:
    """Seconds of `stitchflip command` on the example of the README, imports included."""
    times = []
    for run in range(_RUNS + 1):
        start = time.perf_counter()
        _run([str(Path(sys.executable).parent / "stitchflip"), command, "examples/lantern-walk.toml"])
        if run:
            times.append(time.perf_counter() - start)
    seconds = median(times)
    return Measured(
        f"stitchflip {command} from the shell, imports included",
        f"{seconds:.2f} s",
        f"under {most_seconds} s",
        seconds < most_seconds,
        f"from {min(times):.2f} to {max(times):.2f} s",
    )


def peak_megabytes(program: str, *arguments: str) -> float:
    """Peak memory of a process that runs a program given as text."""
    return int(_run([sys.executable, "-c", program + _PEAK, *arguments])) / 1024


def _run(command: list[str]) -> str:
    """What a command prints, with compiled modules kept in a cache as on anybody's machine."""
    cache = os.environ.get("PYTHONPYCACHEPREFIX", str(Path(tempfile.gettempdir()) / "stitchflip-bench-cache"))
    own = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
    settings = {**own, "PYTHONPYCACHEPREFIX": cache}
    done = subprocess.run(command, check=True, capture_output=True, text=True, env=settings)  # noqa: S603  our own
    return done.stdout
