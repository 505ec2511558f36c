"""Words on a screen, a pipe or a file: plain where nobody looks, never wider than the window, never broken.

Fractions are printed with their own signs; where the output cannot carry them ("½" in an old code page) they
are written out ("1/2"), because a question mark in place of a fraction costs fabric.
"""

from __future__ import annotations

import codecs
import os
import re
import sys
import unicodedata
from contextlib import suppress
from typing import TYPE_CHECKING, TextIO

from stitchflip.lengths import THIN_SPACE, UNIT_SPACE

if TYPE_CHECKING:
    from collections.abc import Iterable

    from rich.console import Console, RenderableType

WIDEST = 110
"""Longer lines are hard to read, however wide the window."""

_GLUE = "\ue000"
"""Stands for a space that no line may break at, while the page is laid out."""
_BEFORE_LAYOUT = str.maketrans({THIN_SPACE: _GLUE, UNIT_SPACE: _GLUE, "\u00a0": _GLUE})
_CONTROL = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028\u2029]")
_TRAILING = re.compile(r"[ \t]+$", re.MULTILINE)
_SPELLED = {"×": "x", "·": "-", "−": "-", "–": "-", "—": "-", "─": "-", "━": "-", "°": " deg", "…": "...", "→": "->"}
_ERRORS_NAME = "stitchflip-spelled"


def glued(text: str) -> str:
    """Text ready for layout: no control characters, numbers tied to their units.

    Args:
        text: any text, such as a fabric's name from a file.
    """
    return _CONTROL.sub("", text).translate(_BEFORE_LAYOUT)


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


def _write(stream: TextIO, text: str) -> None:
    """Write everything, or nothing more once the reader has gone."""
    reconfigure = getattr(stream, "reconfigure", None)
    if reconfigure is not None:
        reconfigure(errors=_ERRORS_NAME)
    try:
        stream.write(text)
        stream.flush()
    except BrokenPipeError:
        with suppress(OSError, ValueError):
            os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())


def write_out(text: str) -> None:
    """Write to standard output; a closed pipe is no error."""
    _write(sys.stdout, text)


def complain(text: str) -> None:
    """Write a message to standard error."""
    plain = "\n".join(_CONTROL.sub("", line) for line in text.splitlines())
    _write(sys.stderr, plain.translate({ord(THIN_SPACE): " ", ord(UNIT_SPACE): " "}) + "\n")


def show(parts: Iterable[RenderableType]) -> None:
    """Lay parts out one below the other, as wide as the window allows, and write them.

    Args:
        parts: texts and tables.
    """
    console = _console()
    with console.capture() as captured:
        for part in parts:
            console.print(part)
    text = captured.get().replace(_GLUE, " ")
    write_out(text if console.is_terminal else _TRAILING.sub("", text))


def _console() -> Console:
    from rich.console import Console

    console = Console(file=sys.stdout, markup=False, highlight=False, emoji=False)
    console.width = min(console.width, WIDEST)
    return console
