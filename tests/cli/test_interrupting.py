"""Ctrl-C while a search goes on: the search ends, what is found is told."""

from __future__ import annotations

import signal
from pathlib import Path
from typing import Any

import pytest

from stitchflip.cli.interrupting import ENDING, ending_early
from tests.cli.conftest import Ask

LOCK_KEEPER = Path(__file__).parents[2] / "examples" / "lock-keeper.toml"


def test_first_interrupt_is_a_wish_to_end_and_is_said(capsys: pytest.CaptureFixture[str]) -> None:
    """The question is answered with yes, the command goes on, and a sentence says what follows."""
    with ending_early() as is_to_end:
        assert not is_to_end()
        signal.raise_signal(signal.SIGINT)
        assert is_to_end()

    assert ENDING in capsys.readouterr().err


def test_second_interrupt_ends_the_command() -> None:
    """As everywhere else."""
    with ending_early() as is_to_end:
        signal.raise_signal(signal.SIGINT)
        assert is_to_end()
        with pytest.raises(KeyboardInterrupt):
            signal.raise_signal(signal.SIGINT)


def test_afterwards_an_interrupt_is_the_usual_one(capsys: pytest.CaptureFixture[str]) -> None:
    """Nothing is said when nothing was pressed, and the handler is the one that was there before."""
    with ending_early() as is_to_end:
        pass

    assert ("", signal.default_int_handler) == (capsys.readouterr().err, signal.getsignal(signal.SIGINT))
    assert not is_to_end()


def test_own_handler_of_a_program_is_left_alone() -> None:
    """A program that handles the interrupt itself goes on doing so."""
    caught: list[int] = []
    before = signal.signal(signal.SIGINT, lambda number, _frame: caught.append(number))
    try:
        with ending_early() as is_to_end:
            signal.raise_signal(signal.SIGINT)
            assert not is_to_end()
    finally:
        signal.signal(signal.SIGINT, before)

    assert [signal.SIGINT] == caught


def test_interrupted_cut_tells_everything(ask: Ask, monkeypatch: pytest.MonkeyPatch) -> None:
    """Ctrl-C as the search for closer ways begins: the order of every cut all the same, status 0, a hint beside it."""
    from stitchflip.cutting.closer import cut_closer
    from stitchflip.planning import closer_cuts

    def pressed(*given: Any, **named: Any) -> Any:
        signal.raise_signal(signal.SIGINT)
        return cut_closer(*given, **named)

    monkeypatch.setattr(closer_cuts, "cut_closer", pressed)
    said = ask("cut", LOCK_KEEPER, "--look", "600", "--fabric", "Towpath")

    assert (0, f"{ENDING}") == (said.status, " ".join(said.err.split()))
    assert "Cut, in this order" in said.out
