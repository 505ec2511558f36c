"""Words on screens that cannot show everything."""

import io
import sys

import pytest
from rich.text import Text

from stitchflip.cli.screen import complain, glued, show, write_out


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

    def write(self, _text: str) -> int:
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
    show([Text(glued("cut the strips wide 2½\u202fin and sew"))])
    assert ["cut the strips wide", "2½ in and sew"] == capsys.readouterr().out.splitlines()


def test_a_message_goes_to_standard_error(capsys: pytest.CaptureFixture[str]) -> None:
    """Errors never stand among answers."""
    complain("there is no file x.toml")
    assert ("", "there is no file x.toml\n") == tuple(capsys.readouterr())
