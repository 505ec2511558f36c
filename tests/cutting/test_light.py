"""The room costs little to open."""

from __future__ import annotations

import subprocess
import sys


def test_opening_the_room_loads_no_solver() -> None:
    """Neither HiGHS nor numpy nor shapely comes along with the import."""
    script = "import sys, stitchflip.cutting; print(*{'highspy', 'numpy', 'shapely'} & set(sys.modules))"
    told = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)

    assert "" == told.stdout.strip()
