"""Cover and "at a glance": what it is, how large, how long it takes, and how to read the pages."""

from __future__ import annotations

from stitchflip.pattern.model import (
    Block,
    Box,
    BoxKind,
    CheckMarks,
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
from stitchflip.pictures import finished
from stitchflip.planning.model import Severity
from stitchflip.project.model import Finish, Through, Way, Working

_WAYS = {
    Way.LOG_CABIN: "log cabin, sewn straight onto the base",
    Way.TWO_SIDED: "two-sided log cabin, sewn straight onto the base",
    Way.COURTHOUSE: "courthouse steps, sewn straight onto the base",
    Way.POINTS: "pairs round the point, sewn straight onto the base",
    Way.AROUND: "round after round, sewn straight onto the base",
    Way.ROWS: "rows of strips, sewn straight onto the base",
    Way.SIDES: "strips side by side, sewn straight onto the base",
}


def cover(teller: Teller) -> tuple[Block, ...]:
    """The first page."""
    several = f"{sentence(number_word(teller.how_many))} alike, each " if teller.is_several else ""
    facts = Facts(
        (
            ("Squared up", words(several, strong(teller.squared_up_size()))),
            ("Technique", words("quilt-as-you-go: ", _WAYS[teller.project.building.way])),
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
    slants = sorted({round(slant, 1) for strip in teller.strips if (slant := end_angle(strip)) is not None})
    if slants:
        found.append(f"trim ends at {listed([angle(one) for one in slants])}")
    corners = [degrees for degrees, _ in angle_counts(teller) if abs(degrees - 90) > 0.05]
    folded = (
        f"fold a binding round {listed([angle(one) for one in corners])} corners"
        if corners
        else "fold a binding round corners"
    )
    return [*found, folded]


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
    made = f"{counted(len(teller.strips), 'strip')}{each}, one {teller.first_name}{each}"
    total = ""
    if teller.is_several:
        total = (
            f" ({len(teller.strips) * teller.how_many} strips in all, sewn in rounds across all "
            f"{number_word(teller.how_many)})"
        )
    return [
        ("Squared up", words(strong(teller.squared_up_size()), f"{each}; when bound it keeps this size")),
        ("Made of", words(f"{made}{total}; letters as in ", Mention("letters"))),
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


def _lessons(teller: Teller) -> list[str]:
    """What this piece teaches, read off its plan."""
    found = ["quilting while you piece"]
    center = teller.project.center
    if center is not None and center.turned % 90 == 45:
        found.append("placing a center on point")
    loose = any(loose_ends(strip) for strip in teller.strips)
    found.append("locking seam ends that nothing crosses" if loose else "letting each seam lock the one before")
    if teller.is_pointed:
        found.append("squaring up to pointed ends")
    elif teller.shape_word:
        found.append(f"squaring up a {teller.shape_word}")
    else:
        found.append("squaring up from the center")
    found.append("binding by hand" if teller.project.binding.finish is Finish.HAND else "binding by machine")
    return found


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
        else length_words(plan.numbers)
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
    items = Items(tuple(finding_words(one) for one in stops[:4]))
    note = Paragraph(words("Mend this before you cut or share the pattern."), Voice.SMALL)
    return (Box(BoxKind.LOOK, "Not ready to be sewn", (items, note)),)
