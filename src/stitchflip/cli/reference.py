"""The reference pages, made from what the program says of itself, so that they cannot grow stale.

Run `python -m stitchflip.cli.reference .` in the project's folder to write them, and the picture of the README, again;
tests compare.
"""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

from stitchflip.cli.project_page import project_page
from stitchflip.cli.status import DEBUG_SWITCH, Status

if TYPE_CHECKING:
    from collections.abc import Iterator

_WIDE = 90

_STATUS_WORDS = {
    Status.DONE: "done",
    Status.STOP_FOUND: "done, and something was found that stops the piece as planned",
    Status.USAGE: "the command cannot do what was asked: a word, a file name or a folder is wrong",
    Status.UNREADABLE: "the project file cannot be read or planned; the message says where, and what would do",
    Status.OUR_FAULT: "our own fault; the message says what to send us",
}


def cli_page() -> str:
    """Every command with its help text, and the exit statuses."""
    lines = [
        "# The command line",
        "",
        "Made from the program's own help texts.",
        "",
        *_helps(),
        "## Exit status",
        "",
        "| status | meaning |",
        "|---|---|",
        *(f"| {int(status)} | {_STATUS_WORDS[status]} |" for status in Status),
        "",
        "Answers go to standard output, everything else to standard error. With `--json` standard output holds one",
        "JSON document and nothing else; when something is wrong it is",
        '`{"errors": [{"code", "what", "fix", "where"}], "exit_status"}`.',
        f"With `{DEBUG_SWITCH}` set in the environment, status 70 also says where in the program it happened.",
        "`NO_COLOR` and `COLUMNS` are respected.",
    ]
    return "\n".join(lines) + "\n"


def _helps() -> Iterator[str]:
    from typer.main import get_group

    from stitchflip.cli.app import app

    group = get_group(app)
    for path, command in (
        ("stitchflip", group),
        *((f"stitchflip {name}", one) for name, one in group.commands.items()),
    ):
        context = command.context_class(command, info_name=path, terminal_width=_WIDE, max_content_width=_WIDE)
        yield from (f"## {path}", "", "```text", command.get_help(context).rstrip(), "```", "")


def findings_page() -> str:
    """Every code of a finding with the sentence that explains it."""
    from stitchflip.planning.findings import CODES

    lines = [
        "# Things to look at",
        "",
        "What a plan may notice. A finding never keeps the plan from being drawn; each says how much it matters",
        "(stop, fix, good to know), where it is, and with which numbers it would be gone. Codes never change.",
        "",
        "| code | what it means |",
        "|---|---|",
        *(f"| `{code}` | {CODES[code]} |" for code in sorted(CODES)),
    ]
    return "\n".join(lines) + "\n"


def errors_page() -> str:
    """The error tree with the first line of each class."""
    from stitchflip import errors

    every: list[type[errors.StitchflipError]] = [errors.StitchflipError, *errors.StitchflipError.__subclasses__()]
    own = [one for one in every if one.__module__ == errors.__name__]
    lines = [
        "# Errors",
        "",
        "What the package raises when a call cannot go on. Every error keeps four things apart: `what`, `fix`, `where`",
        "and a `code` that never changes.",
        "",
        "| error | is also a | codes begin with | when |",
        "|---|---|---|---|",
    ]
    for one in own:
        other = ", ".join(f"`{base.__name__}`" for base in one.__bases__ if base is not errors.StitchflipError)
        first = (one.__doc__ or "").strip().splitlines()[0]
        lines.append(f"| `{one.__name__}` | {other} | `{one.area}` | {first} |")
    return "\n".join(lines) + "\n"


PAGES = {"cli.md": cli_page, "findings.md": findings_page, "errors.md": errors_page, "project-file.md": project_page}
"""File name -> what makes its text."""

PICTURE_WIDE_IN = 7.5
"""Width of the README's picture."""


def readme_picture(project_text: str) -> str:
    """The picture of the README: an example as it will look.

    Args:
        project_text: the example's project file.
    """
    from stitchflip import plan, read_project
    from stitchflip.pictures import finished, to_svg

    made = plan(read_project(project_text), with_cures=False)
    return to_svg(finished(made, letters=False), PICTURE_WIDE_IN, made.project.units)


def write_pages(root: Path) -> None:
    """Write every reference page and the README's picture.

    Args:
        root: the project's folder, with docs and examples.
    """
    for name, page in PAGES.items():
        (root / "docs" / "reference" / name).write_text(page(), encoding="utf-8", newline="\n")
    example = root / "examples" / "lantern-walk.toml"
    picture = root / "docs" / "pictures" / "lantern-walk.svg"
    picture.write_text(readme_picture(example.read_text(encoding="utf-8")), encoding="utf-8", newline="\n")


if __name__ == "__main__":
    write_pages(Path(sys.argv[1]))
