"""Words on a screen, a pipe or a file: plain where nobody looks, never wider than the window, never broken.

Fractions are printed with their own signs; where the output cannot carry them ("½" in an old code page) they
are written out ("1/2"), because a question mark in place of a fraction costs fabric.
"""

from __future__ import annotations

import codecs
import os
import shutil
import sys
import unicodedata
from contextlib import suppress
from typing import TYPE_CHECKING, TextIO

from stitchflip.cli.page import glued, laid_out, loose

if TYPE_CHECKING:
    from collections.abc import Iterable

    from stitchflip.cli.page import Laid, Part

WIDEST = 110
"""Longer lines are hard to read, however wide the window."""

_SPELLED = {"×": "x", "·": "-", "−": "-", "–": "-", "—": "-", "─": "-", "━": "-", "°": " deg", "…": "...", "→": "->"}
_ERRORS_NAME = "stitchflip-spelled"


def _spelled(error: UnicodeError) -> tuple[str, int]:
    """What to write for signs the output cannot carry."""
    if not isinstance(error, UnicodeEncodeError):
        raise error
    before = error.object[error.start - 1] if error.start else ""
    written = []
    for sign in error.object[error.start : error.end]:
        folded = "".join(part for part in unicodedata.normalize("NFKD", sign) if not unicodedata.combining(part))
        folded = folded.replace("\u2044", "/")
        if "/" in folded and before.isdigit():
            folded = f" {folded}"
        plain = _SPELLED.get(sign, folded)
        written.append(plain.encode("ascii", "replace").decode("ascii"))
        before = sign
    return "".join(written), error.end


codecs.register_error(_ERRORS_NAME, _spelled)


def _write(stream: TextIO | None, text: str) -> None:
    """Write everything, or nothing more once the reader has gone.

    Raises:
        OSError: If there is no room for it.
    """
    if stream is None:
        return
    reconfigure = getattr(stream, "reconfigure", None)
    if reconfigure is not None:
        reconfigure(errors=_ERRORS_NAME)
    try:
        stream.write(text)
        stream.flush()
    except OSError as error:
        with suppress(OSError, ValueError):
            os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())
        if not isinstance(error, BrokenPipeError):
            raise


def write_out(text: str) -> None:
    """Write to standard output; a closed pipe is no error."""
    _write(sys.stdout, text)


def complain(text: str) -> None:
    """Write a message to standard error, if it can be written."""
    with suppress(OSError):
        _write(sys.stderr, "".join(f"{loose(glued(line))}\n" for line in text.splitlines()))


def show(parts: Iterable[Part]) -> None:
    """Lay parts out one below the other, as wide as the window allows, and write them.

    Args:
        parts: paragraphs and tables.
    """
    lines = laid_out(parts, min(shutil.get_terminal_size().columns, WIDEST))
    if sys.stdout is not None and sys.stdout.isatty():
        write_out(_colored(lines))
    else:
        write_out("".join(f"{loose(''.join(cell.text for cell in line)).rstrip()}\n" for line in lines))


def _colored(lines: Iterable[Laid]) -> str:
    """The lines with the terminal's codes for colors; `NO_COLOR` and what the terminal can do are respected."""
    from rich.console import Console
    from rich.text import Text

    console = Console(markup=False, highlight=False, emoji=False)
    with console.capture() as captured:
        for line in lines:
            text = Text.assemble(*((loose(cell.text), cell.style) for cell in line))
            text.rstrip()
            console.print(text, no_wrap=True, overflow="ignore", crop=False)
    return captured.get()
