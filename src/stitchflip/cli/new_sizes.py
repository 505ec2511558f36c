"""A new project that begins with the table, the bed or the batting instead of a size."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cli.status import UsageError
from stitchflip.cli.typed_sizes import both_typed, length_typed
from stitchflip.lengths import Length, Speaker, Unit
from stitchflip.project.beds import MATTRESSES, mattress_named
from stitchflip.project.house import House
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from stitchflip.planning.resize import Resized
    from stitchflip.project.model import MadeFor, Project

BLOCK = House(12.5, 31.5, "a block of a bed quilt, squared up: 12 in or 30 cm finished")
_NOTHING = Length(0)


@dataclass(frozen=True, slots=True)
class Wishes:
    """What the new piece is for, as typed; all left out when the starter's own size will do."""

    table: str | None = None
    hang: str | None = None
    bed: str | None = None
    drop: str | None = None
    tuck: str | None = None
    batting: str | None = None

    @property
    def named(self) -> tuple[str, ...]:
        """Options that say where the size comes from."""
        given = {"--table": self.table, "--bed": self.bed, "--batting": self.batting}
        return tuple(option for option, text in given.items() if text is not None)


def sized_text(text: str, unit: Unit, wishes: Wishes) -> tuple[str, str]:
    """The starter's text at the size that is wished for, and a sentence that says it.

    Args:
        text: a starter file.
        unit: its unit.
        wishes: what it is for.

    Returns:
        The text, its notes kept, and the sentence; the same text and nothing to say when nothing is wished.

    Raises:
        UsageError: If an option cannot be read, or two of them do not go together.
    """
    from stitchflip.planning.json_values import plain
    from stitchflip.project import edit_project, read_project
    from stitchflip.project.differences import differences

    _refuse_odd(wishes)
    if not wishes.named:
        return text, ""
    project = read_project(text)
    _refuse_shape(project, wishes)
    if wishes.table is not None:
        made, said = _for_table(project, unit, wishes)
    elif wishes.bed is not None:
        made, said = _for_bed(project, unit, wishes)
    else:
        made, said = _from_batting(project, unit, wishes.batting or "")
    return edit_project(text, differences(project, made)), f"{plain(said)}\n"


def _refuse_odd(wishes: Wishes) -> None:
    """Options that need another, or that exclude each other."""
    if len(wishes.named) > 1:
        raise UsageError(
            what=f"{' and '.join(wishes.named)} both give the size",
            fix="Use one of them.",
            code="usage.which-size",
        )
    needs = {"--hang": (wishes.hang, "--table"), "--drop": (wishes.drop, "--bed"), "--tuck": (wishes.tuck, "--bed")}
    for option, (text, other) in needs.items():
        if text is not None and other not in wishes.named:
            raise UsageError(what=f"{option} goes with {other}", fix=f"Give {other} too.", code="usage.which-size")


def _refuse_shape(project: Project, wishes: Wishes) -> None:
    """A way whose starter has no width and length, or whose pieces cannot be joined."""
    from stitchflip.project.model import Ends, Outline

    wanted = project.squared_up
    is_box = wanted.shape is Outline.RECTANGLE and wanted.beyond_points is None
    if is_box and (wishes.bed is None or wanted.ends is Ends.SQUARE):
        return
    raise UsageError(
        what=f"{project.building.way.value} starts with another shape than {wishes.named[0]} asks for",
        fix='Choose another way, such as --way "log cabin", or start it and change its size.',
        code="usage.which-way",
    )


def _for_table(project: Project, unit: Unit, wishes: Wishes) -> tuple[Project, str]:
    """A runner as long as the table and what hangs over."""
    from stitchflip.project.model import MadeFor

    wide, long = both_typed(wishes.table or "", unit, "--table")
    hang = None if wishes.hang is None else length_typed(wishes.hang, unit, "--hang", least=_NOTHING)
    made, size = _sized(project, MadeFor(table_wide=wide, table_long=long, hang=hang))
    return made, f"Squared up {size} (wide × long): a third of the table's width, and its length with what hangs over."


def _sized(project: Project, made_for: MadeFor) -> tuple[Project, str]:
    """The project at the size that its table asks for, which stays written as the table's."""
    from stitchflip.planning.resize import resized
    from stitchflip.project.sizes import made_for_size

    size = [Length.of_inches(side or 0) for side in made_for_size(made_for, project.units)]
    made = resized(project, *size).project
    free = made.squared_up.model_copy(update={"wide": None, "long": None})
    text = Speaker(project.units).size(*(side.inches for side in size))
    return made.model_copy(update={"squared_up": free, "made_for": made_for}), text


def _for_bed(project: Project, unit: Unit, wishes: Wishes) -> tuple[Project, str]:
    """Blocks of the usual size, as many as cover the bed with its drop and tuck."""
    from stitchflip.planning.resize import blocks_for, resized
    from stitchflip.project.model import Joined, MadeFor
    from stitchflip.project.sizes import made_for_size

    drop = None if wishes.drop is None else length_typed(wishes.drop, unit, "--drop", least=_NOTHING)
    tuck = None if wishes.tuck is None else length_typed(wishes.tuck, unit, "--tuck", least=_NOTHING)
    made_for = MadeFor(**_mattress(wishes.bed or "", unit), drop=drop, tuck=tuck)
    block = BLOCK.length(unit)
    made: Resized = resized(project, block, block)
    joined = Joined(across=1, down=1, fabric=project.binding.fabric)
    one = made.project.model_copy(update={"joined": joined, "made_for": made_for})
    wide, long = made_for_size(made_for, unit)
    found = blocks_for(one, wide or 0, long or 0)
    if found is None:
        raise UsageError(
            what="no quilt of 60 blocks in a row or fewer covers this bed",
            fix="Check --bed, --drop and --tuck.",
            code="usage.which-size",
        )
    say = Speaker(unit)
    laid = joined.model_copy(update={"across": found.across, "down": found.down})
    return one.model_copy(update={"joined": laid}), (
        f"The bed asks for {say.size(wide or 0, long or 0)}: {found.across} × {found.down} blocks of "
        f"{say.width(block.inches)} come to {say.size(found.wide, found.long)} (wide × long)."
    )


def _mattress(text: str, unit: Unit) -> dict[str, object]:
    """A mattress by its name, or by its measures."""
    name = mattress_named(text)
    if name is not None:
        return {"mattress": name}
    if not any(sign.isdigit() for sign in text):
        raise UsageError(
            what=f'"{text}" is no mattress known here',
            fix=f'Use one of {", ".join(MATTRESSES)}, or its measures such as "60 x 80".',
            code="usage.which-bed",
        )
    wide, long = both_typed(text, unit, "--bed")
    return {"mattress_wide": wide, "mattress_long": long}


def _from_batting(project: Project, unit: Unit, text: str) -> tuple[Project, str]:
    """The largest piece that one piece of batting allows, its long side along the piece's."""
    from stitchflip.planning.doors import from_batting
    from stitchflip.planning.resize import resized
    from stitchflip.project.model import OnHand

    wide, long = both_typed(text, unit, "--batting")
    wanted = project.squared_up
    lies_wide = wanted.wide is not None and wanted.long is not None and wanted.wide > wanted.long
    across, along = (max(wide, long), min(wide, long)) if lies_wide else (min(wide, long), max(wide, long))
    found = from_batting(project, across, along)
    made = resized(project, *(Length.of_inches(side) for side in (found.wide, found.long))).project
    batting = made.batting.model_copy(update={"on_hand": (OnHand(wide=wide, long=long),)})
    size = Speaker(unit).size(found.wide, found.long)
    return made.model_copy(update={"batting": batting}), (
        f"Squared up {size} (wide × long): the largest that this batting allows."
    )
