"""What the shell is told at the end, and how every error is said: once, plainly, without a traceback.

The numbers are promises: scripts may rely on them.
"""

from __future__ import annotations

import json
import os
import sys
from contextlib import suppress
from enum import IntEnum
from typing import TYPE_CHECKING, TypeVar

from stitchflip import __version__
from stitchflip.cli.screen import complain, write_out
from stitchflip.errors import OurFault, ProjectFileError, PublishError, StitchflipError

if TYPE_CHECKING:
    from collections.abc import Callable

DEBUG_SWITCH = "STITCHFLIP_DEBUG"
"""Set it to anything to see where in the program a fault of ours happened."""

_Answer = TypeVar("_Answer")


class Status(IntEnum):
    """Exit statuses."""

    DONE = 0
    """Done."""
    STOP_FOUND = 1
    """Done, and something was found that stops the piece as planned."""
    USAGE = 2
    """The command cannot do what was asked: a word, a file name or a folder is wrong."""
    UNREADABLE = 3
    """The project file cannot be read or planned; the message says where and what would do."""
    OUR_FAULT = 70
    """A fault of this program."""


class Refused(Exception):  # noqa: N818  it ends a command with a status, it is no error of its own
    """A command that ends early, already explained."""

    def __init__(self, status: Status) -> None:
        """Keep the status for the shell."""
        self.status = status
        super().__init__(status)


class UsageError(StitchflipError, ValueError):
    """A command that cannot do what was asked, whatever stands in the project file."""

    area = "usage"


def status_of(error: StitchflipError) -> Status:
    """The exit status an error stands for."""
    if isinstance(error, OurFault | PublishError):
        return Status.OUR_FAULT
    return Status.USAGE if isinstance(error, UsageError) else Status.UNREADABLE


def saying_errors(work: Callable[[], _Answer], *, as_json: bool = False) -> _Answer:
    """Do something and turn every error into words and an exit status.

    Args:
        work: what to do.
        as_json: also print the error as the one document on standard output.

    Raises:
        Refused: If an error was said.
    """
    try:
        return work()
    except StitchflipError as error:
        status = status_of(error)
        document = _as_json(error, status)
        words = _fault_words(error) if status is Status.OUR_FAULT else _words(error)
    except OSError as error:
        full = UsageError(
            what=f"The answer could not be written ({error.strerror or error})",
            fix="Make room where it should go, or send it somewhere else.",
            code="usage.cannot-write",
        )
        status, document, words = Status.USAGE, _as_json(full, Status.USAGE), _words(full)
    except Exception as error:  # noqa: BLE001  the last line of defense: no traceback reaches the maker
        status = Status.OUR_FAULT
        document = {"errors": [{"code": "fault", "what": str(error), "fix": "", "where": ""}], "exit_status": 70}
        words = _fault_words(error)
    complain(words)
    if as_json:
        with suppress(OSError):
            write_out(json.dumps(document, ensure_ascii=False, indent=2) + "\n")
    raise Refused(status)


def _words(error: StitchflipError) -> str:
    where = f"{error.where}: " if error.where and error.where not in error.what else ""
    lines = [f"{where}{error.what.rstrip('.')}."]
    if isinstance(error, ProjectFileError):
        lines += [f"  {mistake}" for mistake in error.mistakes]
    return "\n".join([*lines, error.fix]).rstrip()


def _fault_words(error: Exception) -> str:
    import platform
    import traceback

    said = str(error).strip() or "no further words"
    lines = [
        f"This is our fault, not yours: {type(error).__name__}: {said}",
        "Your files are as they were. Please send us:",
        "  - the command as you typed it,",
        "  - the project file,",
        f"  - what the same command prints with {DEBUG_SWITCH}=1 in front of it,",
        f"  - this line: stitchflip {__version__}, Python {platform.python_version()}, {platform.system()}.",
    ]
    if os.environ.get(DEBUG_SWITCH):
        lines = ["".join(traceback.format_exception(error)).rstrip(), *lines]
    return "\n".join(lines)


def _as_json(error: StitchflipError, status: Status) -> dict[str, object]:
    if isinstance(error, ProjectFileError) and error.mistakes:
        errors = [
            {
                "code": error.code,
                "what": f"{mistake.key}: found {mistake.found}",
                "fix": f"{mistake.would_do} would do",
                "where": error.where,
                "line": mistake.line,
                "key": mistake.key,
            }
            for mistake in error.mistakes
        ]
    else:
        errors = [{"code": error.code, "what": error.what, "fix": error.fix, "where": error.where}]
    return {"errors": errors, "exit_status": int(status)}


def leave(status: Status | int) -> None:
    """End the program with a status; whatever can still be written is written first.

    Args:
        status: the exit status.
    """
    sys.exit(int(status))
