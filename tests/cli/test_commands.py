"""The commands with sensible and odd input."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from stitchflip import OurFault, __version__
from stitchflip.cli import app as commands
from tests.cli.conftest import Ask


def test_the_version_is_said(ask: Ask) -> None:
    """--version prints name and version."""
    said = ask("--version")
    assert (0, f"stitchflip {__version__}\n", "") == (said.status, said.out, said.err)


def test_help_names_every_command(ask: Ask) -> None:
    """Somebody who knows nothing finds the four commands."""
    said = ask("--help")
    assert 0 == said.status
    assert [] == [name for name in ("new", "plan", "squareup", "pattern") if name not in said.out]


@pytest.mark.parametrize(
    "words", [("plna",), ("plan", "--jsno"), ("plan", "a.toml", "b.toml"), ("new",), ("pattern", "--out")]
)
def test_wrong_usage_ends_with_two(words: tuple[str, ...], ask: Ask) -> None:
    """A word that is not known, one too many or one too few."""
    said = ask(*words)
    assert (2, "") == (said.status, said.out)
    assert said.err


def test_the_answers_come_first(ask: Ask, porch: Path) -> None:
    """Fit, what to have, where to start, then what to look at, then cutting, places, locks, squaring up, binding."""
    said = ask("plan", porch)
    assert (0, "") == (said.status, said.err)
    heads = [
        "Porch square",
        "Does it fit?",
        "What to have",
        "Start with",
        "Things to look at",
        "Cut, in this order",
        "Where you should be",
        "Ends to lock",
        "Square up",
        "Bind",
        "Backing",
    ]
    lines = said.out.splitlines()
    places = [next(place for place, line in enumerate(lines) if line.startswith(head)) for head in heads]
    assert sorted(places) == places


def test_cost_hours_and_thread_stay_behind_a_door(ask: Ask, porch: Path) -> None:
    """They are shown with --more only."""
    short, long = ask("plan", porch).out, ask("plan", porch, "--more").out
    for word in ("hours", "Thread", "Cost", "no way of cutting"):
        assert word not in short
        assert word in long


def test_the_only_project_of_a_folder_needs_no_name(ask: Ask, porch: Path) -> None:
    """With one project file in the folder, and other files, FILE may be left out."""
    (porch.parent / "pyproject.toml").write_text("[tool.ruff]\n", encoding="utf-8")
    assert ask("plan", porch).out == ask("plan").out


def test_an_empty_folder_says_how_to_start(ask: Ask) -> None:
    """Status 2 and the command that makes a project."""
    said = ask("plan")
    assert (2, "") == (said.status, said.out)
    assert "stitchflip new" in said.err


def test_several_projects_are_listed(ask: Ask, porch: Path) -> None:
    """With two files and no name both are named."""
    (porch.parent / "attic.toml").write_text(porch.read_text(encoding="utf-8"), encoding="utf-8")
    said = ask("squareup")
    assert (2, "") == (said.status, said.out)
    assert "attic.toml, porch.toml" in said.err


@pytest.mark.parametrize("command", ["plan", "squareup"])
def test_json_is_one_document_and_nothing_else(command: str, ask: Ask, porch: Path) -> None:
    """Standard output parses as one JSON document, and is the same each time."""
    said = ask(command, porch, "--json")
    assert (0, "") == (said.status, said.err)
    assert "Porch square" == json.loads(said.out)["project"]["name"]
    assert said.out == ask(command, porch, "--json").out


def test_the_screen_is_plain_when_nobody_looks(ask: Ask, porch: Path) -> None:
    """In a pipe there are no color codes, no blanks at the ends of lines, and ordinary spaces."""
    out = ask("plan", porch).out
    assert "\x1b" not in out
    assert [] == [line for line in out.splitlines() if line != line.rstrip()]
    assert not set("\u2009\u202f\u00a0\ue000") & set(out)


@pytest.mark.parametrize("columns", [40, 60, 80, 200])
def test_no_line_is_wider_than_the_window(columns: int, ask: Ask, porch: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The page is laid out for the window it is in."""
    monkeypatch.setenv("COLUMNS", str(columns))
    out = ask("plan", porch, "--more").out
    assert [] == [line for line in out.splitlines() if len(line) > min(columns, 110)]


def test_pattern_writes_the_papers_beside_the_project(ask: Ask, porch: Path) -> None:
    """Sheets, pattern, page for the phone and pictures stand in a folder with the project's name."""
    said = ask("pattern", porch)
    assert (0, "") == (said.status, said.err)
    folder = porch.with_name("porch-pattern")
    papers = {path.name: path.read_bytes()[:5] for path in folder.iterdir() if path.is_file()}
    assert {"table-sheet.pdf", "shop-sheet.pdf", "pattern.pdf", "pattern.html"} == set(papers)
    assert {b"%PDF-"} == {head for name, head in papers.items() if name.endswith(".pdf")}
    pictures = {path.name for path in (folder / "pictures").iterdir()}
    steps = {f"step-{step:02}.svg" for step in range(1, 13)}
    assert steps <= pictures
    assert {"finished.svg", "order.svg", "back.svg", "base.svg", "squaring.svg", "coloring.svg"} <= pictures
    assert [] == [name for name in papers if name not in said.out]


def test_pattern_writes_where_it_is_told(ask: Ask, porch: Path) -> None:
    """--out names the folder; A4 is another paper than letter."""
    assert 0 == ask("pattern", porch, "--out", "gifts/porch").status
    assert 0 == ask("pattern", porch, "--out", "gifts/a4", "--paper", "A4").status
    letter = (porch.parent / "gifts/porch/table-sheet.pdf").read_bytes()
    assert letter != (porch.parent / "gifts/a4/table-sheet.pdf").read_bytes()


def test_pattern_refuses_a_paper_it_does_not_know(ask: Ask, porch: Path) -> None:
    """Status 2, both papers named, nothing written."""
    said = ask("pattern", porch, "--paper", "a5")
    assert (2, "") == (said.status, said.out)
    assert "--paper letter or --paper a4" in said.err
    assert [porch] == list(porch.parent.iterdir())


def test_a_fault_of_ours_is_said_without_a_traceback(ask: Ask, porch: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Status 70, what to send, and the place in the program only when it is asked for."""

    def broken(_file: object) -> None:
        raise OurFault(what="the patches add up to 9 in² of 10", fix="Send us the file.", code="fault.patches")

    monkeypatch.setattr(commands, "_planned", broken)
    said = ask("plan", porch)
    assert (70, "") == (said.status, said.out)
    assert "our fault" in said.err
    assert "Please send us" in said.err
    assert "Traceback" not in said.err
    monkeypatch.setenv("STITCHFLIP_DEBUG", "1")
    assert "Traceback" in ask("plan", porch).err


def test_any_other_exception_is_our_fault_too(ask: Ask, porch: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Nothing reaches the maker as a traceback, whatever it is."""

    def broken(_file: object) -> None:
        raise ZeroDivisionError

    monkeypatch.setattr(commands, "_planned", broken)
    said = ask("plan", porch, "--json")
    assert 70 == said.status
    assert 70 == json.loads(said.out)["exit_status"]
    assert "ZeroDivisionError" in said.err


def started(*words: str, folder: Path) -> subprocess.Popen[bytes]:
    """The command in a process of its own."""
    environment = {**os.environ, "PYTHONWARNINGS": "error"}
    return subprocess.Popen(
        [sys.executable, "-c", "from stitchflip.cli import run; run()", *words],
        cwd=folder,
        env=environment,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    )


def test_a_reader_that_goes_away_is_no_error(porch: Path) -> None:
    """`stitchflip plan | head -1` ends without a word on standard error, with the plan's own status."""
    process = started("plan", "--json", folder=porch.parent)
    assert process.stdout is not None
    assert process.stderr is not None
    process.stdout.close()
    assert b"" == process.stderr.read()
    process.stderr.close()
    assert 0 == process.wait()


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="this system has no device that is always full")
@pytest.mark.parametrize("more", [(), ("--json",)])
def test_an_answer_that_finds_no_room_is_explained(more: tuple[str, ...], porch: Path) -> None:
    """A full disk behind `>` is said in words, with status 2."""
    with Path("/dev/full").open("wb") as full:
        done = subprocess.run(
            [sys.executable, "-c", "from stitchflip.cli import run; run()", "plan", porch.name, *more],
            cwd=porch.parent,
            stdout=full,
            stderr=subprocess.PIPE,
            check=False,
        )
    assert 2 == done.returncode
    assert b"could not be written" in done.stderr
    assert b"Traceback" not in done.stderr


def test_no_standard_output_at_all_is_no_error(porch: Path) -> None:
    """A program started without standard output (`>&-`) still ends with its status."""
    code = "import sys; sys.stdout = None; from stitchflip.cli import run; run()"
    done = subprocess.run(
        [sys.executable, "-c", code, "plan", porch.name], cwd=porch.parent, capture_output=True, check=False
    )
    assert (0, b"") == (done.returncode, done.stderr)


def test_a_small_thing_is_planned_without_the_heavy_libraries(porch: Path) -> None:
    """Polygon, solver, typesetting, numeric and terminal libraries stay out of `stitchflip plan` in a pipe."""
    heavy = ("numpy", "shapely", "typst", "highspy", "rich")
    code = (
        "import sys\nfrom stitchflip.cli import run\n"
        "try:\n    run()\nexcept SystemExit as end:\n"
        f"    print([name for name in {heavy!r} if name in sys.modules], end.code, file=sys.stderr)"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, "plan", porch.name], cwd=porch.parent, capture_output=True, text=True, check=False
    )
    assert "[] 0" == done.stderr.strip()
