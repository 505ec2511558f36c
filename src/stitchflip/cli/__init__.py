"""The command line: the only room that reads and writes files, and the place where errors become words.

It holds no arithmetic. Each command reads a project file, asks one question of the rooms below and shows
the answer; what it imports, it imports when it is needed, so that the first line appears at once.
"""

from __future__ import annotations

import gc
import os

_SELDOM = 200_000
"""Objects made before the collector looks for rings to free; a command makes little garbage and soon ends."""


def run() -> None:
    """Start the command line (the entry point of the `stitchflip` command)."""
    gc.set_threshold(_SELDOM, 20, 20)
    os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")  # looking for them takes longer than planning
    from stitchflip.cli.app import main

    main()
