"""Ctrl-C during a long search ends the search, not the command: what is found so far is told.

A quilter who has seen enough of the waiting has not asked for nothing. The first Ctrl-C is a wish to end the search,
the second one ends the command as everywhere else.
"""

from __future__ import annotations

import signal
import threading
from contextlib import contextmanager
from typing import TYPE_CHECKING

from stitchflip.cli.screen import complain

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

ENDING = "Ended early: what follows is the best found so far. Press Ctrl-C again to end without it."


@contextmanager
def ending_early() -> Iterator[Callable[[], bool]]:
    """Gives a question, "is it to end?", that is answered with yes once Ctrl-C was pressed.

    Where the interrupt is not the usual one (another thread, a program that handles it itself) nothing is changed.
    """
    if threading.current_thread() is not threading.main_thread():
        yield bool
        return
    before = signal.getsignal(signal.SIGINT)
    if before is not signal.default_int_handler:
        yield bool
        return
    pressed = threading.Event()

    def end(_signal: int, _frame: object) -> None:
        signal.signal(signal.SIGINT, before)
        pressed.set()

    signal.signal(signal.SIGINT, end)
    try:
        yield pressed.is_set
    finally:
        signal.signal(signal.SIGINT, before)
        if pressed.is_set():
            complain(ENDING)
