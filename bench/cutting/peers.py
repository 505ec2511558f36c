"""Start the other solvers, ask them, stop them."""

from __future__ import annotations

import json
import queue
import subprocess
import threading
from pathlib import Path
from types import TracebackType
from typing import Final, Self

from bench.cutting.jobs import Job, Reply
from bench.peers.protocol import told, understood

ENVIRONMENT = Path("build/peers")
"""Made by `make peers`: a virtual environment, or a note that says why there is none."""
PACKING_SOLVER, LEVEL_MODEL, CP_SAT, RECT_PACK = (
    "PackingSolver",
    "level model, HiGHS",
    "level model, CP-SAT",
    "rectpack",
)
MODULES: Final = {
    PACKING_SOLVER: "packing_solver",
    LEVEL_MODEL: "level_model",
    CP_SAT: "cp_sat",
    RECT_PACK: "rect_pack",
}
_PATIENCE = 20.0
"""Seconds beyond its limit before a peer is stopped and started anew."""


def python() -> Path | None:
    """The interpreter of the peers; None when there is none."""
    found = ENVIRONMENT / "bin" / "python"
    return found if found.exists() else None


class Peer:
    """One solver in its own process."""

    def __init__(self, name: str, interpreter: Path) -> None:
        self.name = name
        self._command = [str(interpreter), "-m", f"bench.peers.{MODULES[name]}"]
        self._start()

    def _start(self) -> None:
        self._process = subprocess.Popen(  # noqa: S603  our own interpreter and our own module
            self._command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True
        )
        self._lines: queue.Queue[str] = queue.Queue()
        threading.Thread(target=self._listen, args=(self._process, self._lines), daemon=True).start()
        hello = self._lines.get(timeout=60)
        self.version: str = json.loads(hello)["version"] if hello else f"{self.name} does not start"

    @staticmethod
    def _listen(process: subprocess.Popen[str], lines: queue.Queue[str]) -> None:
        assert process.stdout is not None
        for line in process.stdout:
            lines.put(line)
        lines.put("")

    def ask(self, job: Job, seconds: float) -> Reply:
        """Its reply; one that dies or does not come back is started anew.

        Args:
            job: what is asked.
            seconds: its time limit.
        """
        assert self._process.stdin is not None
        try:
            print(told(job, seconds), file=self._process.stdin, flush=True)
            line = self._lines.get(timeout=seconds + _PATIENCE)
        except (queue.Empty, BrokenPipeError):
            line = ""
        if line:
            return understood(line)
        self.stop()
        self._start()
        return Reply(note=f"stopped after {seconds + _PATIENCE:.0f} s, or died")

    def stop(self) -> None:
        """End the process."""
        self._process.kill()
        self._process.wait()


class Peers:
    """Those that are there, started once and kept."""

    def __init__(self, names: tuple[str, ...] = tuple(MODULES)) -> None:
        interpreter = python()
        self.there = {name: Peer(name, interpreter) for name in names} if interpreter else {}

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        for peer in self.there.values():
            peer.stop()
