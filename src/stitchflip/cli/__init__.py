"""The command line: the only room that reads and writes files, and the place where errors become words.

It holds no arithmetic. Each command reads a project file, asks one question of the rooms below and shows
the answer; what it imports, it imports when it is needed, so that the first line appears at once.
"""

from __future__ import annotations


def run() -> None:
    """Start the command line (the entry point of the `stitchflip` command)."""
    from stitchflip.cli.app import main

    main()
