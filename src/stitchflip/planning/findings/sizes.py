"""What a table or a bed asks for, beside what the piece comes to."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.lengths import TOLERANCE_IN, Speaker
from stitchflip.planning.model import Cure, Finding, Severity
from stitchflip.planning.quilt_sizes import blocks_for, laid, quilt_size
from stitchflip.project.differences import differences
from stitchflip.project.model import Change
from stitchflip.project.sizes import made_for_size
from stitchflip.project.words import Covers, Outline

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.planning.model import Plan
    from stitchflip.project.model import MadeFor


def blocks_for_the_bed(plan: Plan) -> Iterator[Finding]:
    """A quilt of joined blocks that has fewer blocks, or more, than what it is made for asks for."""
    project = plan.project
    if project.made_for is None or project.joined is None:
        return
    wide, long = made_for_size(project.made_for, project.units)
    now = quilt_size(project)
    found = None if wide is None or long is None else blocks_for(project, wide, long)
    if wide is None or long is None or now is None or found is None:
        return
    if (found.across, found.down) == (project.joined.across, project.joined.down):
        return
    say = Speaker(project.units)
    yield Finding(
        "size.blocks-for",
        Severity.NOTE,
        f"The {_what(project.made_for)} asks for {say.size(wide, long)} (wide × long): {found.across} × {found.down} "
        f"blocks reach it and come to {say.size(found.wide, found.long)}; yours are {project.joined.across} × "
        f"{project.joined.down}, {say.size(*now)}.",
        where="joined",
        numbers={"asked_wide_in": wide, "asked_long_in": long, "wide_in": found.wide, "long_in": found.long},
        cures=(
            Cure(
                f"Join {found.across} × {found.down} blocks.",
                differences(project, laid(project, found.across, found.down)),
            ),
        ),
    )


def other_than_made_for(plan: Plan) -> Iterator[Finding]:
    """A size written down that is not what the table or bed asks for; a runner's width is free."""
    project, wanted = plan.project, plan.project.squared_up
    made_for = project.made_for
    is_one_piece = project.joined is None and project.cut_apart is None
    if made_for is None or not is_one_piece or wanted.shape in {Outline.POLYGON, Outline.ROUND}:
        return
    say = Speaker(project.units)
    is_runner = _what(made_for) == "table" and made_for.covers is Covers.RUNNER
    for key, asked in zip(("wide", "long"), made_for_size(made_for, project.units), strict=True):
        written = getattr(wanted, key)
        if written is None or asked is None or (is_runner and key == "wide"):
            continue
        if abs(written.inches - asked) > TOLERANCE_IN:
            yield Finding(
                "size.other-than-made-for",
                Severity.NOTE,
                f"The {_what(made_for)} asks for {say.near(asked)} {key}; the piece is to be squared up at "
                f"{say.width(written.inches)} {key}.",
                where=f"squared_up.{key}",
                numbers={"asked_in": asked, "written_in": written.inches},
                cures=(Cure(f"Square up at {say.near(asked)} {key}.", (Change(("squared_up", key), None),)),),
            )


def _what(made_for: MadeFor) -> str:
    on_bed = made_for.mattress or made_for.mattress_wide is not None or made_for.mattress_long is not None
    return "bed" if on_bed else "table"
