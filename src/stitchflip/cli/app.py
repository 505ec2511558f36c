"""The commands: what can be asked, in which words, and with which exit status it ends."""

from __future__ import annotations

import json
import os
import sys
from contextlib import suppress
from functools import wraps
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, ParamSpec

import typer

from stitchflip.cli.status import Refused, Status, saying_errors

if TYPE_CHECKING:
    from collections.abc import Callable

    from stitchflip.planning.model import Plan

_Given = ParamSpec("_Given")

app = typer.Typer(
    name="stitchflip",
    help=(
        "Arithmetic for pieces made by quilt-as-you-go: write a project file, see whether it fits and what to cut, "
        "print the pattern."
    ),
    epilog=(
        "Exit status: 0 done; 1 done, with a finding that stops the piece; 2 wrong usage; 3 a project file that cannot "
        "be read; 70 our own fault."
    ),
    no_args_is_help=True,
    add_completion=False,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    context_settings={"max_content_width": 100},
)

_File = Annotated[
    str | None,
    typer.Argument(metavar="FILE", help="Project file; may be left out when the folder holds exactly one."),
]
_Json = Annotated[bool, typer.Option("--json", help="Print one JSON document and nothing else.")]


def _ending_with_status(command: Callable[_Given, Status]) -> Callable[_Given, None]:
    """A command whose returned status becomes the exit status."""

    @wraps(command)
    def run(*args: _Given.args, **kwargs: _Given.kwargs) -> None:
        try:
            status = saying_errors(lambda: command(*args, **kwargs), as_json=bool(kwargs.get("as_json")))
        except Refused as refused:
            status = refused.status
        raise typer.Exit(int(status))

    return run


def _say_version(wanted: bool) -> None:  # noqa: FBT001  what typer hands to a callback
    """Print name and version, and end."""
    if wanted:
        from stitchflip import __version__
        from stitchflip.cli.screen import write_out

        write_out(f"stitchflip {__version__}\n")
        raise typer.Exit(int(Status.DONE))


@app.callback()
def _stitchflip(
    *,
    version: Annotated[
        bool, typer.Option("--version", help="Say which version this is.", callback=_say_version, is_eager=True)
    ] = False,
) -> None:
    """Nothing of its own; the options that stand before a command."""


@app.command()
@_ending_with_status
def new(
    name: Annotated[str, typer.Argument(help='The project\'s name, such as "Porch runner".')],
    way: Annotated[
        str,
        typer.Option(
            metavar="WAY",
            help=(
                "Way of building: log cabin, two-sided log cabin, courthouse steps, pairs round the point, "
                "round after round, rows of strips, sides in my order (the beginning of a word is enough)."
            ),
        ),
    ] = "log cabin",
    units: Annotated[str, typer.Option(metavar="in|cm", help="Inches or centimeters.")] = "in",
) -> Status:
    """Start a project: a small file with notes, ready to be planned."""
    from stitchflip.cli.new_files import start_project

    start_project(name, way, units)
    return Status.DONE


@app.command()
@_ending_with_status
def plan(
    file: _File = None,
    *,
    as_json: _Json = False,
    more: Annotated[
        bool, typer.Option("--more", help="Also time, thread, cost, and how sure the cutting plan is.")
    ] = False,
) -> Status:
    """Say whether it fits, what to have, what to cut, where to be."""
    from stitchflip.cli.screen import show, write_out

    made = _planned(file)
    if as_json:
        from stitchflip.planning.as_json import plan_as_json

        write_out(_json_text(plan_as_json(made)))
    else:
        from stitchflip.cli.plan_screen import plan_screen

        show(plan_screen(made, with_more=more))
    return _status_of(made)


@app.command()
@_ending_with_status
def squareup(file: _File = None, *, as_json: _Json = False) -> Status:
    """Say the numbers for squaring up, as planned."""
    from stitchflip.cli.screen import show, write_out

    made = _planned(file)
    if as_json:
        from stitchflip.planning.as_json import square_up_as_json

        write_out(_json_text(square_up_as_json(made)))
    else:
        from stitchflip.cli.squareup_screen import squareup_screen

        show(squareup_screen(made))
    return _status_of(made)


@app.command()
@_ending_with_status
def pattern(
    file: _File = None,
    *,
    out: Annotated[
        str | None,
        typer.Option(metavar="DIR", help="Folder to write to; left out, one beside the project file, with its name."),
    ] = None,
    paper: Annotated[
        str | None,
        typer.Option(metavar="letter|a4", help="Paper of the PDF files; left out, letter for inches, a4 for cm."),
    ] = None,
) -> Status:
    """Write the sheets and the pattern to print, and all pictures.

    The table sheet and the shop sheet (one page each) and the pattern are PDF files; the pattern is also one HTML
    file that works on a phone without a network. Everything is written, or nothing.
    """
    from stitchflip.cli.pattern_files import write_pattern
    from stitchflip.cli.project_files import project_path

    path = project_path(file)
    made = _planned(str(path))
    write_pattern(made, Path(out) if out is not None else path.with_name(f"{path.stem}-pattern"), paper)
    return _status_of(made)


def _planned(file: str | None) -> Plan:
    """The plan of the project that is meant."""
    from stitchflip.cli.project_files import open_project

    project = open_project(file)
    from stitchflip.planning import plan as plan_project

    return plan_project(project)


def _status_of(made: Plan) -> Status:
    from stitchflip.planning.model import Severity

    stops = any(finding.severity is Severity.STOP for finding in made.findings)
    return Status.STOP_FOUND if stops else Status.DONE


def _json_text(document: dict[str, object]) -> str:
    return json.dumps(document, ensure_ascii=False, indent=2, allow_nan=False) + "\n"


def main() -> None:
    """Run the command line of this process; Ctrl-C and a closed pipe end it without a word."""
    try:
        app(prog_name="stitchflip")
    except KeyboardInterrupt:
        sys.exit(130)
    except BrokenPipeError:
        with suppress(OSError):
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        sys.exit(int(Status.DONE))
