"""What one sewing step says about its strip: where it lies, where sewing starts, which end to lock, what to trim.

Everything is read off the strip as built; only the words are made here. A step says these things once, so
that a reader with one hand on the machine finds each always in the same place.
"""

from __future__ import annotations

from enum import Enum
from math import acos, degrees, hypot

from stitchflip.pattern.model import Mention, Words, strong, words
from stitchflip.pattern.telling import Teller, listed
from stitchflip.pictures import FREE_LINES
from stitchflip.piecing.angled import angled_strip
from stitchflip.piecing.model import EndClass, Point, SeamEnd, SewnPiece
from stitchflip.project.model import StripEnds, Way
from stitchflip.values import dataclass

_LEVEL = 0.2
"""An end counts as upper or lower when the seam climbs by more than this part of its length."""
_ANGLE_STEP = 0.05
_ON_THE_SLANT = 1e-6
"""A strip whose normal leans by more than this lies on the slant: no line square to it is marked on the base."""
_ON_THE_MARK = 1 / 32
"""An edge nearer to the center mark than this lies on it, inches."""


class EndPlace(Enum):
    """How an end of a strip lies."""

    LEVEL = "level"
    """It meets the raw edge of a neighbor and is trimmed level with it."""
    PAST = "past"
    """No neighbor, or one whose raw edge ends beyond the base: the strip only has to run past the trim line."""
    SHORT = "short"
    """It stops short of the neighbor's raw edge; what is missing would be cut off later."""
    FREE = "free"
    """No neighbor at either end: it reaches so far from the center line."""


@dataclass(frozen=True, slots=True)
class StripEnd:
    """One end of a strip in words."""

    name: str
    """"upper", "lower", "left" or "right", as in the picture."""
    place: EndPlace
    measure: float
    """SHORT: how far it may stop short, inches; FREE: how far it reaches from the center line, flat."""


def end_names(strip: SewnPiece) -> tuple[str, str]:
    """Names of the start and the end of a strip's seam, as seen in the picture.

    Args:
        strip: a sewn strip.

    Returns:
        Such as ("upper", "lower").
    """
    seam = strip.seam
    if seam is None:
        return "", ""
    (x0, y0), (x1, y1) = seam.start.at, seam.end.at
    long = hypot(x1 - x0, y1 - y0) or 1.0
    if abs(y1 - y0) > _LEVEL * long:
        return ("lower", "upper") if y1 > y0 else ("upper", "lower")
    return ("left", "right") if x1 > x0 else ("right", "left")


def strip_ends(strip: SewnPiece, base: tuple[float, float] | None = None) -> tuple[StripEnd, StripEnd]:
    """Both ends of a strip, start first.

    Args:
        strip: a sewn strip with its cut, full and needed lengths.
        base: x and y extents of the base as cut, inches, flat; None where it does not matter.

    Returns:
        Where each end lies when the strip is laid with its extra length shared by both ends.
    """
    first, last = end_names(strip)
    extra = max(0.0, strip.cut_length - strip.needed_length)
    free = strip.free_ends
    reaches = (strip.reach_start, strip.reach_end)
    insets = (strip.inset_start, strip.inset_end)
    ends = []
    for place, name in enumerate((first, last)):
        if free == 2:
            ends.append(StripEnd(name, EndPlace.FREE, abs(reaches[place])))
        elif free == 1 and strip.is_start_free == (place == 0):
            ends.append(StripEnd(name, EndPlace.PAST, 0.0))
        elif insets[place] <= extra + 1e-6:
            ends.append(StripEnd(name, EndPlace.LEVEL, 0.0))
        elif base is not None and not _is_on(base, _full_end(strip, place)):
            ends.append(StripEnd(name, EndPlace.PAST, 0.0))
        else:
            ends.append(StripEnd(name, EndPlace.SHORT, insets[place]))
    return ends[0], ends[1]


def _full_end(strip: SewnPiece, place: int) -> Point:
    """Where the seam would end (0 start, 1 end) if the strip ran on to the neighbor's raw edge, flat."""
    nx, ny = strip.normal
    along = strip.reach_end + strip.inset_end if place else strip.reach_start - strip.inset_start
    return (nx * strip.seam_at - ny * along, ny * strip.seam_at + nx * along)


def _is_on(base: tuple[float, float], point: Point) -> bool:
    """True for a place on the base, which lies with its middle on the center mark."""
    return all(abs(place) <= size / 2 + 1e-6 for place, size in zip(point, base, strict=True))


def lay_words(teller: Teller, strip: SewnPiece) -> Words:
    """Where the strip lies along its edge; empty when it simply runs from raw edge to raw edge."""
    one, other = strip_ends(strip, (teller.plan.base.wide, teller.plan.base.high))
    if one.place is other.place is EndPlace.FREE:
        say = teller.say
        is_slanted = min(abs(one_way) for one_way in strip.normal) > _ON_THE_SLANT
        line = "place opposite the center mark" if is_slanted else "center line"
        if abs(one.measure - other.measure) < 1e-3:
            return words(f"both ends {say.cut(one.measure)} or more from the {line}")
        return words(
            f"the {one.name} end {say.cut(one.measure)}, the {other.name} end {say.cut(other.measure)} "
            f"or more from the {line}"
        )
    short = [end for end in (one, other) if end.place is EndPlace.SHORT]
    level = [end for end in (one, other) if end.place is EndPlace.LEVEL]
    past = [end for end in (one, other) if end.place is EndPlace.PAST]
    parts = [f"the {end.name} end level with the raw edge there" for end in level] if short or past else []
    parts += [f"the {end.name} end runs past the trim line" for end in past]
    parts += [
        f"the {end.name} end may stop {teller.say.margin(end.measure)} short of the raw edge there" for end in short
    ]
    return words("; ".join(parts))


def length_words(teller: Teller) -> str:
    """Whether cut lengths have something in them to trim, where everything is cut first."""
    building = teller.project.building
    if building.way is Way.FOLDED_CORNERS:
        return "Squares are cut exactly: their edges lie on the raw edges of the corner."
    if building.way is Way.CORNER_SQUARES:
        return "Cut lengths are exact, so that the corner squares meet: cut them full."
    if teller.plan.numbers.extra_raw_edges > 0:
        return "Cut lengths carry a little extra already; trim after opening."
    return "Cut lengths are exact where both ends meet raw edges: cut them full."


def is_trimmed(strip: SewnPiece) -> bool:
    """True when an end of the strip is trimmed as soon as it is opened."""
    return any(end.place is EndPlace.LEVEL for end in strip_ends(strip))


def trim_words(strip: SewnPiece) -> Words:
    """Which ends are trimmed after opening, and at which angle."""
    ends = strip_ends(strip)
    level = [end.name for end in ends if end.place is EndPlace.LEVEL]
    if not level:
        return words("nothing now; squaring up does it")
    which = "both ends" if len(level) == 2 else f"the {level[0]} end"
    angle = end_angle(strip)
    slant = "" if angle is None else f", at {angle:.0f}°"
    return words(f"{which} level with the {'edges' if len(level) == 2 else 'edge'} beside{slant}")


def end_angle(strip: SewnPiece) -> float | None:
    """Angle between the strip's long edge and its ends, degrees; None when square or not the same at both ends."""
    angles = {round(angle, 1) for angle in _end_angles(strip)}
    if len(angles) != 1:
        return None
    (angle,) = angles
    return None if abs(angle - 90) < _ANGLE_STEP else angle


def _end_angles(strip: SewnPiece) -> list[float]:
    """Acute angles between the seam and every edge of the opened strip that does not run along it."""
    nx, ny = strip.normal
    corners = strip.opened
    found = []
    for (x0, y0), (x1, y1) in zip(corners, (*corners[1:], *corners[:1]), strict=True):
        long = hypot(x1 - x0, y1 - y0)
        along = abs((x1 - x0) * -ny + (y1 - y0) * nx) / long if long > 1e-6 else 1.0
        if along < 1 - 1e-6:
            found.append(degrees(acos(min(1.0, along))))
    return found


def loose_ends(strip: SewnPiece) -> tuple[tuple[str, SeamEnd], ...]:
    """Ends of the strip's seam that nothing holds: name and end."""
    if strip.seam is None:
        return ()
    both = zip(end_names(strip), (strip.seam.start, strip.seam.end), strict=True)
    return tuple((name, end) for name, end in both if end.kind is EndClass.LOOSE)


def lock_words(strip: SewnPiece) -> Words:
    """The ends to lock at this step, or "none": silence leaves doubt."""
    loose = loose_ends(strip)
    if not loose:
        return words("none")
    names = listed([name for name, _ in loose])
    hidden = " (later fabric hides it)" if all(end.is_hidden for _, end in loose) else ""
    return words(strong(f"the {names} {'end' if len(loose) == 1 else 'ends'}"), hidden)


def edge_words(teller: Teller, strip: SewnPiece) -> Words:
    """Where the raw edge should be when the strip is opened."""
    if strip.raw_edge_taped < -_ON_THE_MARK:
        return words(strong(f"{teller.say.near(-strip.raw_edge_taped)} short of the center mark"))
    return words(strong(teller.say.near(abs(strip.raw_edge_taped))), " from the center mark")


def has_own_line(teller: Teller) -> bool:
    """True for a way whose seams follow lines of their own, so that both ends of each are told."""
    return teller.project.building.way in FREE_LINES


def line_words(teller: Teller, strip: SewnPiece) -> Words:
    """Both ends of the seam of a strip that follows a line of its own, counted from the center mark; () without."""
    if strip.seam is None:
        return ()
    one, other = strip.seam.start.at, strip.seam.end.at
    drawn = words(", as drawn in ", Mention("foundation")) if teller.is_foundation else ()
    return words("from ", strong(place_words(teller, one)), " to ", strong(place_words(teller, other)), drawn)


def place_words(teller: Teller, place: Point) -> str:
    """A place as it is marked: how far right or left of the center mark, and how far up or down."""
    x, y = teller.mirror * place[0], place[1]
    say = teller.say
    across = f"{say.near(abs(x))} {'right' if x >= 0 else 'left'}"
    return f"{across}, {say.near(abs(y))} {'up' if y >= 0 else 'down'}"


def angled_words(teller: Teller, strip: SewnPiece) -> Words:
    """Both long edges of a strip whose ends are cut parallel to its neighbors; () where its ends are cut straight."""
    if teller.project.building.strip_ends is not StripEnds.PARALLEL:
        return ()
    cut = angled_strip(teller.plan.build, strip)
    if cut is None:
        return ()
    say = teller.say
    return words(
        "cut on the slant: the edge that is sewn ",
        strong(say.cut(cut.sewn_edge)),
        " long, the outer edge ",
        strong(say.cut(cut.outer_edge)),
        f" long; ends at {_degrees(cut.start_angle)} and {_degrees(cut.end_angle)} to the sewn edge, the first where "
        "sewing starts",
    )


def _degrees(angle: float) -> str:
    return f"{angle:.0f}°"


def section_words(teller: Teller, strip: SewnPiece) -> Words:
    """What a strip is pieced from beforehand, from its start; () for a strip of one fabric."""
    if not strip.sections:
        return ()
    said: list[Words] = []
    for place, section in enumerate(strip.sections):
        after = "" if place == len(strip.sections) - 1 else ", "
        size = teller.say.cut_size(strip.cut_width, section.cut_length)
        said.append(words(teller.named(section.fabric), f" cut {size}{after}"))
    return words("end to end, from its start: ", *said, "; press the joins away from the squares")
