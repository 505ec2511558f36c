"""The plan on the screen: the three answers first, then what to look at, then what the hands need in their order."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cli import cutting_words, quilt_words
from stitchflip.cli import plan_words as words
from stitchflip.cli.page import Cell, Grid, Line
from stitchflip.lengths import Unit
from stitchflip.planning.model import Severity
from stitchflip.planning.washed import washed_words
from stitchflip.project.model import Way, Working

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from stitchflip.cli.page import Part
    from stitchflip.cutting.model import FabricPlan, Piece
    from stitchflip.planning.model import BlockKind, Finding, Plan

_STYLE = {Severity.STOP: "bold red", Severity.FIX: "bold yellow", Severity.NOTE: "bold cyan"}
_INDENT = 2
_PALE = 140
"""Of 255: a color lighter than this takes black letters."""


def plan_screen(plan: Plan, *, with_more: bool = False) -> Iterator[Part]:
    """Everything on the screen of a plan, top to bottom.

    Args:
        plan: the plan.
        with_more: also time, thread, cost, other ways and how sure the cutting plan is.
    """
    yield Line(words.headline(plan), "bold")
    yield from _answers(plan)
    yield from findings(plan.findings)
    yield from _cutting(plan)
    for kind in plan.kinds:
        yield from _angled_ends(plan, kind)
        yield from _places(plan, kind)
    rows = (
        ("Blocks", quilt_words.kinds_of_block(plan)),
        ("Ends to lock", words.ends_to_lock(plan)),
        ("Stitching", words.unstitched(plan)),
        ("Square up", "\n".join([*words.square_up_lines(plan), *words.point_lines(plan)])),
        ("Join", "\n".join(quilt_words.join_lines(plan))),
        ("Around it", "\n".join(quilt_words.around_lines(plan))),
        ("Cut apart", "\n".join(quilt_words.panel_lines(plan))),
        ("On the back", "\n".join(plan.extras.words)),
        (quilt_words.edge_heading(plan), words.binding_words(plan)),
        ("Backing", words.backing_words(plan)),
        ("Batting", words.batting_words(plan)),
        ("First wash", washed_words(plan)),
    )
    yield from facts((name, said) for name, said in rows if said)
    if with_more:
        from stitchflip.cli.more_words import more_facts

        yield from facts(more_facts(plan))


def heading(text: str) -> Iterator[Part]:
    """A blank line and a heading."""
    yield Line()
    yield Line(text, "bold")


def facts(rows: Iterable[tuple[str, str]]) -> Iterator[Part]:
    """Short headings on the left, sentences on the right.

    Args:
        rows: heading and sentence; several lines stay several lines.
    """
    yield Line()
    yield Grid([(Cell(name, "bold"), Cell(said)) for name, said in rows])


def _answers(plan: Plan) -> Iterator[Part]:
    yield from facts((("Does it fit?", words.does_it_fit(plan)),))
    yield from heading("What to have")
    colors = {letter.letter: letter.color for letter in plan.letters}
    yield Grid(
        [
            (Cell(f" {letter} ", chip(colors.get(letter))), Cell(name), Cell(amount), Cell(what_for))
            for letter, name, amount, what_for in words.what_to_have(plan)
        ],
        indent=1,
    )
    yield from facts((("Start with", words.start_with(plan)),))


def chip(color: str | None) -> str:
    """The style of a letter on its fabric's color; bold where the color is not known.

    Args:
        color: such as "#a0b1c2".
    """
    if color is None or len(color) != len("#rrggbb"):
        return "bold"
    red, green, blue = (int(color[place : place + 2], 16) for place in (1, 3, 5))
    is_pale = 0.299 * red + 0.587 * green + 0.114 * blue > _PALE
    return f"bold {'black' if is_pale else 'white'} on {color}"


def findings(found: Iterable[Finding]) -> Iterator[Part]:
    """Things to look at, the gravest first, each with its cures.

    Args:
        found: in the order to show them.
    """
    yield from heading("Things to look at")
    rows: list[tuple[Cell, Cell]] = []
    for finding in found:
        rows.append((Cell(words.SEVERITY_WORDS[finding.severity], _STYLE[finding.severity]), Cell(finding.what)))
        rows += [(Cell(""), Cell(f"- {cure.text}", "italic")) for cure in finding.cures]
    yield Grid(rows or [(Cell("nothing"),)], indent=_INDENT)


def _cutting(plan: Plan) -> Iterator[Part]:
    """Pieces by fabric in cutting order, and which strip each comes from."""
    is_first = plan.project.working is Working.CUT_FIRST
    yield from heading(
        "Cut, in this order" if is_first else "Cut the strips; trim each piece after it is sewn and opened"
    )
    by_name = {fabric.fabric: fabric for fabric in plan.fabrics}
    for name in sorted(plan.pieces_by_fabric, key=cutting_words.by_letter(plan)):
        yield Line()
        yield Line(f"{plan.letter_of(name)}  {name}", "bold", _INDENT)
        yield _piece_table(plan, plan.pieces_by_fabric[name])
        if name in by_name:
            yield from _strip_lines(plan, by_name[name])


def _piece_table(plan: Plan, pieces: Iterable[Piece]) -> Grid:
    unit = plan.project.units.value
    rows = [
        tuple(
            map(
                Cell,
                (
                    str(sum(piece.count for piece in group)),
                    size,
                    cutting_words.finished(group),
                    cutting_words.becomes(group),
                ),
            )
        )
        for size, group in cutting_words.alike(plan, pieces)
    ]
    is_first = plan.project.working is Working.CUT_FIRST
    size = f"cut wide × long, {unit}" if is_first else f"cut wide × shortest that reaches, {unit}"
    return Grid(rows, ("how many", size, "finished", "becomes"), frozenset({0}), _INDENT)


def _strip_lines(plan: Plan, fabric: FabricPlan) -> Iterator[Part]:
    """What comes from the shelf, which strip gives which pieces, and what is left of it."""
    for said in fabric.from_hand:
        yield Line(said, "dim", 2 * _INDENT)
    for strips in fabric.strip_plans:
        if not strips.is_whole:
            for said in cutting_words.strips_in_hand(plan, strips) or cutting_words.strips_cut(plan, strips):
                yield Line(said.lstrip(), "dim", (3 if said.startswith(" ") else 2) * _INDENT)
    if fabric.because:
        yield Line(f"Left out: {', '.join(fabric.left_out)}. {fabric.because}", "bold red", _INDENT)


def _angled_ends(plan: Plan, kind: BlockKind) -> Iterator[Part]:
    rows = [tuple(map(Cell, row)) for row in quilt_words.angled_rows(plan, kind)]
    if rows:
        yield from heading("Ends cut parallel to the neighbor: shortest that reaches, right side up, sewn edge below")
        head = ("strip", "sewn edge", "outer edge", "angles at start and end")
        yield Grid(rows, head, frozenset({0, 1, 2}), _INDENT)


def _places(plan: Plan, kind: BlockKind) -> Iterator[Part]:
    unit = "inches" if plan.project.units is Unit.INCH else "centimeters"
    block = f"{kind.name}: " if kind.name else ""
    if kind.project.building.way in quilt_words.FREE_LINES:
        is_patched = quilt_words.is_foundation(kind)
        where = "draw on the side you sew from, the front in a mirror" if is_patched else "mark on the base"
        yield from heading(f"{block}The seam lines to {where}: {unit} from the center mark")
        ends = [tuple(map(Cell, row)) for row in quilt_words.line_rows(plan, kind)]
        word = "patch" if is_patched else "square" if kind.project.building.way is Way.FOLDED_CORNERS else "strip"
        yield Grid(ends, (word, "from", "to"), frozenset({0}), _INDENT)
        return
    yield from heading(f"{block}Where you should be: {unit} from the center mark, square to the strip")
    head = ("after", "seam line, marked", "raw edge, by tape")
    rows = [tuple(map(Cell, row)) for row in words.places_by_round(plan, kind)]
    yield Grid(rows, head, frozenset({1, 2}), _INDENT)
