"""Cover and "at a glance": what it is, how large, how long it takes, and how to read the pages."""

from __future__ import annotations

from stitchflip.pattern.how_to_sew import block_key, tellers_of
from stitchflip.pattern.model import (
    Block,
    Box,
    BoxKind,
    CheckMarks,
    Columns,
    CoverPage,
    Facts,
    FigureBox,
    Heading,
    Items,
    Mention,
    Paragraph,
    Together,
    Voice,
    Words,
    strong,
    words,
)
from stitchflip.pattern.square_words import angle, angle_counts
from stitchflip.pattern.strip_facts import end_angle, length_words, loose_ends
from stitchflip.pattern.table_sheet import finding_words
from stitchflip.pattern.telling import Teller, counted, listed, number_word, sentence
from stitchflip.pattern.way_words import technique
from stitchflip.pictures import block, finished
from stitchflip.planning.model import Severity
from stitchflip.project.model import Edge, Finish, Through, Working

_MOST_SLANTS = 3
"""More angles than these are not listed one by one."""
_KINDS_IN_A_ROW = 3


def cover(teller: Teller) -> tuple[Block, ...]:
    """The first page."""
    several = f"{sentence(number_word(teller.how_many))} alike, each " if teller.is_several else ""
    facts = Facts(
        (
            ("Squared up", words(several, strong(teller.squared_up_size()))),
            ("Technique", words(technique(teller.project))),
            ("Level", words(f"you can {listed(skills(teller))}")),
            ("Edition", words(teller.edition.removeprefix("edition "))),
        )
    )
    picture = FigureBox(finished(teller.plan, letters=False), 7.3, 5.3)
    return (CoverPage(picture, teller.project.name, teller.project.about, facts, "Made by"),)


def skills(teller: Teller) -> list[str]:
    """What the reader must be able to do; no stars."""
    seam = teller.say.width(teller.plan.numbers.seam)
    found = ["cut strips with ruler and rotary cutter", f"sew a straight {seam} seam"]
    if teller.is_foundation:
        found.append("sew along a drawn line")
    else:
        slants = sorted({round(slant, 1) for strip in teller.strips if (slant := end_angle(strip)) is not None})
        if 0 < len(slants) <= _MOST_SLANTS:
            found.append(f"trim ends at {listed([angle(one) for one in slants])}")
        elif slants:
            found.append("trim ends at the slant of their neighbors")
    if teller.is_quilt:
        found.append("join quilted blocks")
    return [*found, _edge_skill(teller)]


def _edge_skill(teller: Teller) -> str:
    """What the edge asks for."""
    match teller.project.binding.edge:
        case Edge.SELF_BINDING:
            return "fold a backing round an edge and miter its corners"
        case Edge.FACING:
            return "face an edge"
        case Edge.TURNED_THROUGH:
            return "turn a piece through an opening"
        case Edge.BINDING:
            pass
    corners = [degrees for degrees, _ in angle_counts(teller) if abs(degrees - 90) > 0.05]
    if not teller.plan.binding.corners:
        return "lay a bias binding round a curve"
    return (
        f"fold a binding round {listed([angle(one) for one in corners])} corners"
        if corners
        else "fold a binding round corners"
    )


def at_a_glance(teller: Teller) -> tuple[Block, ...]:
    """Letters, size, counts, time, and the reading rules said once."""
    return (
        Heading(2, "At a glance"),
        FigureBox(
            finished(teller.plan, letters=True),
            6.0,
            2.3,
            key="letters",
            caption=words("Letters are the fabrics; they are the same on all pages."),
        ),
        Facts(tuple(_facts(teller))),
        *_unready(teller),
        *_kinds(teller),
        _reading_rules(teller),
        Together((Heading(3, "Check the print"), Paragraph(_print_words()), CheckMarks(teller.unit))),
    )


def _print_words() -> Words:
    return words(
        "Lay a ruler on these marks. If they do not measure true, print again at 100 %, without fitting to the page. "
        "Pictures are drawings, not templates: measure with a ruler, never from the paper."
    )


def _facts(teller: Teller) -> list[tuple[str, Words]]:
    plan, say = teller.plan, teller.say
    work = plan.work
    each = " each" if teller.is_several else ""
    keeps = "; when bound it keeps this size" if teller.project.binding.edge is Edge.BINDING else ""
    return [
        ("Squared up", words(strong(teller.squared_up_size()), f"{each}{keeps}")),
        ("Made of", words(f"{_made_of(teller)}; letters as in ", Mention("letters"))),
        (
            "Time",
            words(
                f"about {teller.hours(work.hours_low)} to {teller.hours(work.hours_high)} hours of cutting and sewing"
            ),
        ),
        ("You learn", words(sentence(listed(_lessons(teller))), ".")),
        ("You need to know", words(f"How to {listed(skills(teller))}.")),
        ("Stitching", words(f"widest unstitched place {say.near(plan.build.widest_gap.diameter)} across")),
    ]


def _made_of(teller: Teller) -> str:
    """Strips and first pieces, of each piece and in all."""
    each = " each" if teller.is_several or teller.is_quilt else ""
    counts = sorted({len(own.strips) for own in tellers_of(teller)})
    strips = (
        f"{counts[0]} to {counts[-1]} {teller.strips_word}" if len(counts) > 1 else teller.counted_strips(counts[0])
    )
    made = f"{strips}{each}, one {teller.first_name}{each}"
    if teller.is_foundation and len(counts) == 1:
        made = f"{teller.counted_strips(counts[0] + 1)}{each}, {number_word(counts[0])} of them sewn along lines"
    if teller.is_quilt:
        blocks = counted(teller.bases // teller.how_many, "block")
        made = f"{blocks} of {strips} and one {teller.first_name} each"
    if teller.bases == 1:
        return made
    total = f"{made} ({teller.counted_strips(teller.strips_in_all)} in all"
    if teller.is_quilt:
        return f"{total})"
    return f"{total}, sewn in rounds across all {number_word(teller.how_many)})"


def _kinds(teller: Teller) -> tuple[Block, ...]:
    """One picture of each kind of block, with how many there are, two and two side by side."""
    if not teller.is_quilt:
        return ()
    boxes = [
        FigureBox(block(teller.plan, place), 2.3, 2.3, key=block_key(place), caption=_kind_words(teller, place))
        for place in teller.used_kinds
    ]
    said = words(
        f"Every block is squared up {teller.block_size()} before it is joined: ",
        *(words(", " if number else "", Mention(box.key)) for number, box in enumerate(boxes)),
        ".",
    )
    rows = [tuple(boxes[place : place + _KINDS_IN_A_ROW]) for place in range(0, len(boxes), _KINDS_IN_A_ROW)]
    pictures = [
        Columns(tuple((box,) for box in row) + ((),) * (_KINDS_IN_A_ROW - len(row)), (1,) * _KINDS_IN_A_ROW)
        for row in rows
    ]
    return (Together((Heading(3, "The blocks"), Paragraph(said), pictures[0])), *pictures[1:])


def _kind_words(teller: Teller, place: int) -> Words:
    kind = teller.kinds[place]
    count = kind.count * teller.how_many
    return words(f"“{kind.name}”: {counted(count, 'block')}" if kind.name else counted(count, "block"))


def _lessons(teller: Teller) -> list[str]:
    """What this piece teaches, read off its plan."""
    found = ["quilting while you piece"]
    center = teller.project.center
    if center is not None and center.turned % 90 == 45:
        found.append("placing a center on point")
    loose = any(loose_ends(strip) for own in tellers_of(teller) for strip in own.strips)
    found.append("locking seam ends that nothing crosses" if loose else "letting each seam lock the one before")
    if teller.is_pointed:
        found.append("squaring up to pointed ends")
    elif teller.shape_word:
        found.append(f"squaring up a {teller.shape_word}")
    else:
        found.append("squaring up from the center")
    if teller.is_quilt:
        found.append("joining blocks that are quilted already")
    if teller.project.binding.edge is Edge.BINDING:
        found.append("binding by hand" if teller.project.binding.finish is Finish.HAND else "binding by machine")
    else:
        found.append(_EDGE_LESSONS[teller.project.binding.edge])
    return found


_EDGE_LESSONS = {
    Edge.SELF_BINDING: "binding a piece with its own backing",
    Edge.FACING: "facing an edge",
    Edge.TURNED_THROUGH: "turning a piece through",
}


def _reading_rules(teller: Teller) -> Box:
    plan, say = teller.plan, teller.say
    base = {
        Through.BACKING_AND_BATTING: "Base means backing and batting, layered.",
        Through.BATTING_ONLY: "Base means the batting alone; the backing comes later.",
        Through.BATTING_ON_FOUNDATION: "Base means batting on a thin foundation; the backing comes later.",
    }[teller.project.base.through]
    lengths = (
        "Strips are sewn long, trimmed after opening, and the rest is used next."
        if teller.project.working is Working.TRIM_AS_YOU_GO
        else length_words(teller)
    )
    rules = (
        words("Read all steps once before you cut."),
        words("Sizes are wide × long, always. “Cut” has the seams in it, “shows” has not."),
        words(
            f"Seam allowance {say.width(plan.numbers.seam)}, included in every cut size. Usable width of fabric "
            f"reckoned as {say.near(teller.usable_width)} where nothing else is said."
        ),
        words(f"{base} The center mark is its middle; distances are measured from there, square to the edge."),
        words(lengths),
        words("Corrections to this edition: none known when it was printed."),
    )
    return Box(BoxKind.TIP, "How to read these pages", (Items(rules),))


def _unready(teller: Teller) -> tuple[Block, ...]:
    """A plan with a stop in it says so on its first page."""
    stops = [one for one in teller.plan.findings if one.severity is Severity.STOP]
    if not stops:
        return ()
    items = Items(tuple(words(finding_words(one), " (", Mention("letters"), ")") for one in stops[:4]))
    note = Paragraph(words("Correct this before you cut or share the pattern."), Voice.SMALL)
    return (Box(BoxKind.LOOK, "Not ready to be sewn", (items, note)),)
