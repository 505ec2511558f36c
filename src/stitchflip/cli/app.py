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
from stitchflip.project.words import Way

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
_Fabrics = Annotated[
    list[str] | None,
    typer.Option(metavar="NAME", help="Only this fabric, by name or letter; may be given several times."),
]
_CutOut = Annotated[
    str | None,
    typer.Option(metavar="DIR", help="Also write the sheet to print and the diagrams into this folder."),
]
_Kits = Annotated[
    int | None,
    typer.Option(metavar="N", min=1, help="Cut so many kits together and say what is in each."),
]
_SpareKits = Annotated[
    int,
    typer.Option("--spare-kits", metavar="N", min=0, help="With --kits: so many more, for what goes wrong."),
]
_IfOnly = Annotated[
    list[str] | None,
    typer.Option(
        "--if-only",
        metavar="NAME=LENGTH",
        help='If there is only so much of a fabric: "Brass=1/4 yd". NAME alone: the shortest amounts that do.',
    ),
]
_Closer = Annotated[
    bool,
    typer.Option(
        "--closer", help="Where that buys less, cut pieces of different widths from one row: the ruler moves more."
    ),
]
_Look = Annotated[
    float | None,
    typer.Option(
        metavar="SECONDS",
        min=0,
        max=3600,
        help="How long to look for closer ways, for each fabric; 0 for not at all, left out a set number of looks.",
    ),
]
_Paper = Annotated[
    str | None,
    typer.Option(metavar="letter|a4", help="Paper of the sheet; left out, letter for inches, a4 for cm."),
]


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
            help=f"Way of building: {', '.join(Way)} (a part that only one way has is enough).",
        ),
    ] = "log cabin",
    units: Annotated[str, typer.Option(metavar="in|cm", help="Inches or centimeters.")] = "in",
    table: Annotated[
        str | None,
        typer.Option(metavar="SIZE", help='A runner for a table of this size, wide x long, such as "36 x 60".'),
    ] = None,
    hang: Annotated[
        str | None,
        typer.Option(metavar="LENGTH", help="With --table: how far it hangs over at each end; 6 in or 15 cm."),
    ] = None,
    bed: Annotated[
        str | None,
        typer.Option(
            metavar="MATTRESS", help='A quilt of joined blocks for a bed: "queen", "UK double" ..., or "60 x 80".'
        ),
    ] = None,
    drop: Annotated[
        str | None,
        typer.Option(metavar="LENGTH", help="With --bed: how far it hangs down at sides and foot; 12 in or 30 cm."),
    ] = None,
    tuck: Annotated[
        str | None, typer.Option(metavar="LENGTH", help="With --bed: extra length round the pillows; none.")
    ] = None,
    batting: Annotated[
        str | None,
        typer.Option(metavar="SIZE", help='As large as a piece of batting allows, wide x long, such as "34 x 45".'),
    ] = None,
) -> Status:
    """Start a project: a small file with notes, ready to be planned."""
    from stitchflip.cli.new_files import start_project
    from stitchflip.cli.new_sizes import Wishes

    start_project(name, way, units, Wishes(table, hang, bed, drop, tuck, batting))
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
def cut(
    file: _File = None,
    *,
    fabric: _Fabrics = None,
    out: _CutOut = None,
    kits: _Kits = None,
    spare_kits: _SpareKits = 0,
    if_only: _IfOnly = None,
    closer: _Closer = False,
    look: _Look = None,
    paper: _Paper = None,
    as_json: _Json = False,
) -> Status:
    """Say how to cut each fabric, cut by cut, what to buy, and how sure that is.

    With --out the order and the diagrams to scale are written too: cutting-sheet.pdf and pictures (SVG).
    """
    from stitchflip.cli.cutting import CutAsked, told_cutting, write_cutting, written_words
    from stitchflip.cli.screen import show, write_out

    asked = CutAsked(tuple(fabric or ()), kits, spare_kits, tuple(if_only or ()), closer, look)
    made = _planned(file)
    told = told_cutting(made, asked)
    files = None if out is None else write_cutting(told, Path(out), paper)
    if as_json:
        from stitchflip.planning.cutting_as_json import cutting_as_json

        document = cutting_as_json(told.plan, told.answers, told.kits, told.only)
        write_out(_json_text(document | {"written": None if files is None else files.names}))
    else:
        from stitchflip.cli.cut_screen import cut_screen

        show(cut_screen(told))
        if files is not None:
            write_out(written_words(files))
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
def resize(
    file: _File = None,
    *,
    to: Annotated[
        str | None,
        typer.Option(
            metavar="SIZE", help='Squared-up size wanted, wide x long, such as "16 x 60"; of a polygon one length.'
        ),
    ] = None,
    strip: Annotated[
        str | None, typer.Option(metavar="WIDTH", help="Cut every strip this wide; there are as many as it takes.")
    ] = None,
    unit: Annotated[
        str | None,
        typer.Option(metavar="in|cm", help="Draft the piece anew in inches or centimeters, sizes in that unit."),
    ] = None,
    keep: Annotated[
        str,
        typer.Option(
            metavar="strips|proportions",
            help="What stays: the widths of the strips (there are more or fewer), or the look (everything is scaled).",
        ),
    ] = "strips",
    largest_from: Annotated[
        str | None,
        typer.Option(
            metavar="strips|batting", help="Instead of --to: as large as the fabric or the batting on hand allows."
        ),
    ] = None,
    out: Annotated[
        str | None,
        typer.Option("--out", "-o", metavar="NEW", help="Write the project at this size to a file of its own."),
    ] = None,
    force: Annotated[bool, typer.Option("--force", help="Let --out write over a file that is there.")] = False,
    as_json: _Json = False,
) -> Status:
    """Say what the piece is at another size, strip width or unit, and what that changes.

    Sizes are scaled on what shows and seams are added after; base, binding and purchases come out of a new plan.
    Nothing is written unless --out names a file.
    """
    from stitchflip.cli.project_files import project_path
    from stitchflip.cli.resizing import Asked, answer, write_resized, written_words
    from stitchflip.cli.screen import show, write_out

    path = project_path(file)
    found = answer(path, Asked(to, strip, unit, keep, largest_from))
    target = None if out is None else write_resized(path, out, found.made, force=force)
    if as_json:
        from stitchflip.planning.resize import resized_as_json

        document = resized_as_json(found.before.project, found.made, found.changed)
        write_out(_json_text(document | {"written": None if target is None else str(target)}))
        return _status_of(found.after)
    from stitchflip.cli.resize_screen import resize_screen

    show(resize_screen(found.before, found.after, found.made, found.changed))
    if target is not None:
        write_out(written_words(target, found))
    return _status_of(found.after)


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
