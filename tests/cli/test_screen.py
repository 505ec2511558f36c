"""Words on screens that cannot show everything."""

import io
import sys

import pytest
from typing_extensions import override

from stitchflip.cli.page import Cell, Grid, Line, cells_of, glued, laid_out, wrapped
from stitchflip.cli.screen import complain, show, write_out


class Narrow(io.TextIOWrapper):
    """Standard output in an old code page."""

    def __init__(self, encoding: str) -> None:
        super().__init__(io.BytesIO(), encoding=encoding, write_through=True)

    def written(self) -> str:
        """What has arrived."""
        assert isinstance(self.buffer, io.BytesIO)
        return self.buffer.getvalue().decode(self.encoding)


@pytest.mark.parametrize(
    ("encoding", "said", "written"),
    [
        ("utf-8", "2½ × 11⅛ in", "2½ × 11⅛ in"),
        ("latin-1", "2½ × 11⅛ in", "2½ × 11 1/8 in"),
        ("ascii", "2½ × 11⅛ in", "2 1/2 x 11 1/8 in"),
        ("ascii", "⅞ in, 60°", "7/8 in, 60 deg"),
        ("ascii", "Blüte", "Blute"),
        ("ascii", "花", "?"),
    ],
)
def test_a_fraction_is_spelled_where_its_sign_cannot_be_shown(
    encoding: str, said: str, written: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """No length ever turns into a question mark."""
    out = Narrow(encoding)
    monkeypatch.setattr(sys, "stdout", out)
    write_out(said)
    assert written == out.written()


class Closed(io.StringIO):
    """A pipe whose reader has gone."""

    @override
    def write(self, _text: str) -> int:
        """Nobody is there to read."""
        raise BrokenPipeError


def test_a_closed_pipe_is_no_error(monkeypatch: pytest.MonkeyPatch) -> None:
    """Writing to a reader that has gone ends quietly."""
    monkeypatch.setattr(sys, "stdout", Closed())
    write_out("a long plan")


def test_names_from_a_file_cannot_command_the_terminal() -> None:
    """Control characters are dropped; the rest stays."""
    assert "red[31m fabric" == glued("red\x1b[31m fabric\x07")


def test_a_number_and_its_unit_stay_on_one_line(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """A narrow window breaks between words, never inside "2½ in"."""
    monkeypatch.setenv("COLUMNS", "20")
    show([Line("cut the strips wide 2½\u202fin and sew")])
    assert ["cut the strips wide", "2½ in and sew"] == capsys.readouterr().out.splitlines()


def test_a_message_goes_to_standard_error(capsys: pytest.CaptureFixture[str]) -> None:
    """Errors never stand among answers."""
    complain("there is no file x.toml")
    assert ("", "there is no file x.toml\n") == tuple(capsys.readouterr())


def test_a_table_is_as_wide_as_its_cells() -> None:
    """With room enough every cell stands on one line, numbers at the right, two blanks between columns."""
    grid = Grid(
        [(Cell("1"), Cell("2½ × 9"), Cell("strip 1")), (Cell("12"), Cell("2 × 11"), Cell("strip 2"))],
        right=frozenset({0}),
    )
    lines = ["".join(cell.text for cell in line) for line in laid_out([grid], 80)]
    assert [" 1  2½ × 9  strip 1", "12  2 × 11  strip 2"] == lines


def test_the_widest_column_gives_way_first() -> None:
    """In a narrow window long sentences are broken, short cells stay whole."""
    grid = Grid([(Cell("Bind"), Cell("three strips joined on the diagonal"))], indent=2)
    lines = ["".join(cell.text for cell in line).rstrip() for line in laid_out([grid], 24)]
    assert ["  Bind  three strips", "        joined on the", "        diagonal"] == lines


def test_a_word_longer_than_the_window_is_broken() -> None:
    """Nothing is lost and nothing stands out."""
    assert ["Gatepost", "Gatepost", "s and", "Larch"] == wrapped("GatepostGateposts and Larch", 8)


def test_wide_signs_take_two_cells() -> None:
    """Names in any script keep the columns straight."""
    assert (4, 5, 1) == (cells_of("花道"), cells_of("Larch"), cells_of("e\u0301"))


class Terminal(io.StringIO):
    """A window somebody looks at."""

    @override
    def isatty(self) -> bool:
        """Yes."""
        return True


@pytest.mark.parametrize(("no_color", "colored"), [(None, True), ("1", False)])
def test_colors_are_for_terminals_that_want_them(
    no_color: str | None, *, colored: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A terminal gets the same words as a pipe, with colors unless NO_COLOR is set."""
    window = Terminal()
    monkeypatch.setattr(sys, "stdout", window)
    monkeypatch.setenv("TERM", "xterm-256color")
    monkeypatch.delenv("NO_COLOR", raising=False)
    if no_color:
        monkeypatch.setenv("NO_COLOR", no_color)
    show([Grid([(Cell("stop", "bold red"), Cell("batting shows"))])])
    assert colored == ("\x1b[1;31m" in window.getvalue())
    assert "batting shows" in window.getvalue()
