"""What an editor with a red pencil would mark, as far as a program can see it.

Pages and pictures come from one plan, so most slips cannot happen; this looks for those that still could: a
picture nobody mentions, a count that does not add up, a size used twice or never, a number without its word.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from stitchflip.lengths import Unit
from stitchflip.pattern.how_to_sew import kind_sewn_like
from stitchflip.pattern.model import (
    BlankLines,
    Block,
    Box,
    CoverPage,
    Document,
    Facts,
    Heading,
    Items,
    Mention,
    Numbered,
    Paragraph,
    Steps,
    Table,
    TickList,
    Words,
)
from stitchflip.pattern.reading import figure_numbers, figures, plain, walk
from stitchflip.pattern.telling import Teller
from stitchflip.planning.model import Plan

_SIDES = re.compile(
    r"\b(left|right|clockwise|counter-clockwise|anticlockwise)\b(?! side (?:up|together))", re.IGNORECASE
)
_NOT_A_SIDE = re.compile(
    r"right sides? (?:up|together)|right[- ]angled?|wrong side|left over|(?:is|are) left|left out", re.IGNORECASE
)
_TYPED_FRACTION = re.compile(r"\b(?:1/2|1/3|2/3|[13]/4|[1357]/8)\b|\d-\d+/\d+")
_DECIMAL_INCHES = re.compile(r"\d\.\d+\s*(?:in|yd)\b")
_BARE_FRACTION = re.compile(r"(?:\d*[½⅓⅔¼¾⅛⅜⅝⅞]|\d+/(?:16|32|64))(?!\d)")
_HAS_WORD = re.compile(r"^\s*(?:in|cm|mm|m|yd|hours?|h|×|to\s|and\s|or\s|,|%|°)")
_MARKS_OF_OTHERS = re.compile(r"\d\s*[\"″”]")
_NOT_OUR_WORDS = re.compile(
    r"\b(?:cloths|take-up|trueup|hand-?out|off-?cuts?|WOF|wadding|colour|centre|anti-?clockwise)\b", re.IGNORECASE
)


def proof(document: Document, plan: Plan) -> list[str]:
    """Everything an editor would send back.

    Args:
        document: a table sheet, shop sheet or pattern.
        plan: the plan it was made from.

    Returns:
        One sentence for each complaint, none when there is nothing to mark.
    """
    found = [
        *_pictures(document),
        *_headings(document),
        *_sides_without_picture(document, plan),
        *_spelling(document, plan),
        *_numbers_without_word(document, plan),
    ]
    if any(isinstance(block, Steps) for block in document.blocks):
        found += [
            *_steps(document, plan),
            *_cut_sizes(document, plan),
            *_totals(document, plan),
            *_tested_line(document),
        ]
    return found


# --- reading the document --------------------------------------------------------------------------------


def texts(block: Block) -> Iterator[Words]:
    """The words of one block, without those of the blocks inside it."""
    match block:
        case Paragraph(words=said):
            yield said
        case Table(rows=rows, total=total):
            yield from (cell for row in rows for cell in row if isinstance(cell, tuple))
            yield from total
        case Facts(rows=pairs):
            yield from (said for _, said in pairs)
        case Items(items=items) | Numbered(items=items) | TickList(items=items):
            yield from items
        case Steps(steps=steps):
            for step in steps:
                yield from (step.title, step.do, *(said for _, said in step.notes), *step.after)
        case CoverPage(facts=facts):
            yield from texts(facts)
        case _:
            caption = getattr(block, "caption", ())
            if caption:
                yield caption


def spoken(blocks: tuple[Block, ...]) -> str:
    """Everything the blocks say, as one text."""
    said = [plain(one) for block in walk(blocks) for one in texts(block)]
    titles = [block.title for block in walk(blocks) if isinstance(block, Box)]
    headings = [block.text for block in walk(blocks) if isinstance(block, Heading)]
    heads = [column.title for block in walk(blocks) if isinstance(block, Table) for column in block.columns]
    return "\n".join((*headings, *titles, *heads, *said))


# --- the checks ------------------------------------------------------------------------------------------


def _pictures(document: Document) -> Iterator[str]:
    numbers = figure_numbers(document)
    mentioned = {
        part.key
        for block in walk(document.blocks)
        for said in texts(block)
        for part in said
        if isinstance(part, Mention)
    }
    for key in numbers:
        if key not in mentioned:
            yield f'The figure "{key}" is mentioned nowhere.'
    for key in sorted(mentioned - set(numbers)):
        yield f'The text mentions a figure "{key}" that is not there.'
    for box in figures(document):
        if not box.figure.alt.strip():
            yield f'The picture "{box.key or box.figure.title}" has no words for those who cannot see it.'


def _headings(document: Document) -> Iterator[str]:
    level = 0
    seen: set[str] = set()
    blocks = list(walk(document.blocks))
    for block in blocks:
        if isinstance(block, CoverPage):
            level = 1
        if not isinstance(block, Heading):
            continue
        if block.level > level + 1:
            yield f'The heading "{block.text}" skips a level.'
        level = block.level
        if block.level == 2 and block.text in seen:
            yield f'The heading "{block.text}" stands there twice.'
        seen.add(block.text)
    if blocks and isinstance(blocks[-1], Heading):
        yield f'Nothing follows the heading "{blocks[-1].text}".'


def _sides_without_picture(document: Document, plan: Plan) -> Iterator[str]:
    """Left and right only where a picture shows them: in steps, and beside a figure that is mentioned.

    Names that the maker gave are hers, whatever words are in them.
    """
    names = [name for name in (plan.project.name, *(kind.name for kind in plan.kinds)) if name]
    for block in walk(document.blocks):
        if isinstance(block, (Steps, CoverPage)):
            continue
        for said in texts(block):
            text = plain(said)
            for name in names:
                text = text.replace(name, "").replace(name.lower(), "")
            text = _NOT_A_SIDE.sub("", text)
            if (
                _SIDES.search(text)
                and not any(isinstance(part, Mention) for part in said)
                and document.kind == "Pattern"
            ):
                yield f'Left or right without its picture: "{plain(said)}"'


def _spelling(document: Document, plan: Plan) -> Iterator[str]:
    own = (plan.project.name, plan.project.about, f"edition {plan.project.edition}", plan.project.date)
    for block in walk(document.blocks):
        for said in texts(block):
            text = plain(said)
            for word in own:
                text = text.replace(word, "") if word else text
            for name, pattern in (
                ("a typed fraction", _TYPED_FRACTION),
                ("decimal inches", _DECIMAL_INCHES),
                ("inch marks", _MARKS_OF_OTHERS),
                ("a word that is not ours", _NOT_OUR_WORDS),
            ):
                if pattern.search(text):
                    yield f'{name}: "{plain(said)}"'


def _numbers_without_word(document: Document, plan: Plan) -> Iterator[str]:
    """In sentences every fraction is followed by its unit; in tables the head of the column has it."""
    if plan.project.units is not Unit.INCH:
        return
    for block in walk(document.blocks):
        if isinstance(block, Table):
            continue
        for said in texts(block):
            text = plain(said)
            for match in _BARE_FRACTION.finditer(text):
                if not _HAS_WORD.match(text[match.end() :]):
                    yield f'A number without its word, "{match.group()}": "{text}"'


def _steps(document: Document, plan: Plan) -> Iterator[str]:
    numbers = [[step.number for step in block.steps] for block in document.blocks if isinstance(block, Steps)]
    teller = Teller(plan)
    wanted = [
        [teller.number(strip.step) for strip in kind.build.strips if strip.cut_length > 0]
        for place, kind in enumerate(plan.kinds)
        if place in teller.used_kinds and kind_sewn_like(teller, place) is None
    ]
    if numbers != [steps for steps in wanted if steps]:
        yield f"The steps are {numbers}; sewn are {wanted}."
    for block in document.blocks:
        if isinstance(block, Steps):
            yield from (
                f"Step {step.number} does not begin with what to do." for step in block.steps if not plain(step.do)
            )


def _cut_sizes(document: Document, plan: Plan) -> Iterator[str]:
    """Each cut size stands once in its fabric's table, each piece is used, and the counts add up."""
    teller = Teller(plan)
    cells = [
        [plain(cell) for cell in row if isinstance(cell, tuple)]
        for block in walk(document.blocks)
        if isinstance(block, Table) and block.columns[0].title == "how many"
        for row in block.rows
    ]
    counted = sum(int(row[0]) for row in cells)
    pieces = sum(piece.count for piece in plan.pieces)
    if counted != pieces:
        yield f"The cutting tables count {counted} pieces; the plan has {pieces}."
    rows = {row[1].partition(" (")[0] for row in cells}
    sizes = {teller.cut_numbers(piece.kind, piece.wide, piece.long) for piece in plan.pieces if piece.kind != "binding"}
    yield from (f"The cut size {size} is in no cutting table." for size in sorted(sizes - rows))
    strips = sum(piece.count for piece in plan.pieces if piece.step)
    sewn = plan.project.how_many * sum(
        kind.count * sum(len(strip.sections) or 1 for strip in kind.build.strips if strip.cut_length > 0)
        for kind in plan.kinds
    )
    if strips != sewn:
        yield f"{strips} strips are cut and {sewn} are sewn."


def _totals(document: Document, plan: Plan) -> Iterator[str]:
    """The number of strips at a glance, in the cutting and in the plan is one; so is the number of blocks."""
    teller = Teller(plan)
    said = spoken(document.blocks)
    count = teller.counted_strips(teller.strips_in_all)
    if f"{count} to sew" not in said:
        yield f'The cutting does not say "{count} to sew".'
    if teller.bases > 1 and f"{count} in all" not in said:
        yield f'At a glance does not say "{count} in all".'
    if plan.quilt is not None:
        laid = len(plan.quilt.blocks)
        made = sum(kind.count for kind in plan.kinds)
        if laid != made:
            yield f"{laid} blocks are laid and {made} are made."
        joining = {strip.name for strip in plan.quilt.strips}
        yield from (
            f'The joining strip "{name}" is in no table.' for name in joining if name.lower() not in said.lower()
        )


def _tested_line(document: Document) -> Iterator[str]:
    labels = [label for block in walk(document.blocks) if isinstance(block, BlankLines) for label in block.labels]
    if "Tested by" not in labels:
        yield "The imprint has no empty line for the tester."
