"""Somebody who has nothing but the printed cutting order: reads it, cuts, and lays out what she got.

Sentences are taken apart here with patterns of their own; nothing is asked of the code that wrote them. Fabric is a
rectangle across × along; a cut takes a strip off it, or it is not there to be taken.
"""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass, field
from fractions import Fraction
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

VULGAR = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅓": "1/3", "⅔": "2/3"}
TIMES = {"once": 1, "twice": 2}
NUMBER = r"(?:\d+ \d+/\d+|\d+/\d+|\d+\.\d+|\d*[½¼¾⅛⅜⅝⅞⅓⅔]|\d+)"
OFTEN = r"(once|twice|\d+ times|\d+ strips)"
SLACK = Fraction(1, 500)
PRINTED = Fraction(1, 10) + SLACK
"""What is left is printed down to 1/16 in or 1 mm; a tenth in either unit is more than that."""


def number(text: str) -> Fraction:
    """2½, 3 5/16 or 6.5 as a fraction."""
    total = Fraction(0)
    for sign, plain in VULGAR.items():
        text = text.replace(sign, f" {plain}")
    for part in text.split():
        total += Fraction(part)
    return total


def times(text: str) -> int:
    """Once, twice, 3 times."""
    return TIMES.get(text) or int(text.split(maxsplit=1)[0])


def runs(text: str) -> list[int]:
    """1 to 3, 5 and 6."""
    out: list[int] = []
    for part in re.split(r", | and ", text):
        first, _, last = part.partition(" to ")
        out += range(int(first), int(last or first) + 1)
    return out


@dataclass
class Table:
    """What lies on the table."""

    names: set[str]
    """Every piece's name, as the cutting list has it."""
    across: Fraction
    along: Fraction
    bands: dict[tuple[str, Fraction, int], tuple[Fraction, Fraction]] = field(default_factory=dict)
    """Rows and strips by kind, width and number: how wide and long each is."""
    made: Counter[tuple[str, Fraction, Fraction]] = field(default_factory=Counter)
    """Pieces by name, with the sides they were cut to, the shorter first."""
    width: Fraction = Fraction(0)
    """Width of the strips or rows cut last."""
    printed: Fraction = PRINTED
    """What a printed rest may be off; more when only the print tells how large the fabric is."""

    def follow(self, does: str, left: str) -> None:
        """Do what a sentence says and compare what is left."""
        text = does.replace("\u202f", " ").replace("\u2009", " ")
        for act in (self._wash, self._straighten, self._column, self._across, self._take, self._subcut, self._whole):
            if act(text, left.replace("\u202f", " ").replace("\u2009", " ")):
                return
        raise AssertionError(does)

    # --- the fabric ----------------------------------------------------------------------------------------

    def _compare(self, left: str) -> None:
        assert self.across >= 0
        assert self.along >= -SLACK
        if left == "nothing":
            assert min(self.across, self.along) < self.printed
            return
        wide, long = (number(one) for one in re.match(rf"({NUMBER}) × ({NUMBER})", left).groups())  # type: ignore[union-attr]
        assert 0 <= self.across - wide + SLACK <= self.printed
        assert 0 <= self.along - long + SLACK <= self.printed

    def _wash(self, text: str, left: str) -> bool:
        if not text.startswith("Wash"):
            return False
        self.across, self.along = (
            number(one) + PRINTED
            for one in re.match(rf"({NUMBER}) × ({NUMBER})", left).groups()  # type: ignore[union-attr]
        )
        self.printed = 2 * PRINTED
        return True

    def _straighten(self, text: str, left: str) -> bool:
        found = re.search(
            rf"traighten (one cut end|two neighboring sides): ({NUMBER}) \w+(?: and ({NUMBER}) \w+)? off", text
        )
        if not found:
            return False
        laid = re.search(rf"\(({NUMBER}) × ({NUMBER}) \w+\)", text)
        if laid:
            self.across, self.along = number(laid[1]), number(laid[2])
        self.along -= number(found[3] or found[2])
        if found[1] != "one cut end":
            self.across -= number(found[2])
        self._compare(left)
        return True

    def _column(self, text: str, left: str) -> bool:
        found = re.match(rf"\D* at ({NUMBER}) .*cut once from side to side; the part beyond", text)
        if not found:
            return False
        assert number(found[1]) <= self.across
        self.across = number(found[1])
        self._compare(left)
        return True

    def _across(self, text: str, left: str) -> bool:
        found = re.match(
            rf"\D* at ({NUMBER}) .*cut across {OFTEN}.*, (\d+) (strip|row)s? ({NUMBER}) \w+ (?:wide|high) "
            r"\(no\. (.*)\)\.$",
            text,
        )
        if not found:
            return False
        self.width, count, kind = number(found[1]), times(found[2]), found[4]
        assert count == int(found[3]) == len(runs(found[6]))
        assert self.width == number(found[5])
        for one in runs(found[6]):
            assert (kind, self.width, one) not in self.bands
            self.bands[kind, self.width, one] = (self.across, self.width)
        self.along -= count * self.width
        self._compare(left)
        return True

    def _take(self, text: str, _left: str) -> bool:
        found = re.match(
            rf"From the shelf take (\d+) strips? ({NUMBER}) × ({NUMBER}) \w+(?: of .*)? \(no\. (.*)\)\.$", text
        )
        if not found:
            return False
        self.width = number(found[2])
        for one in runs(found[4]):
            self.bands["strip", self.width, one] = (number(found[3]), self.width)
        return True

    # --- rows and strips -----------------------------------------------------------------------------------

    def _subcut(self, text: str, left: str) -> bool:
        found = re.match(
            r"(Strip|Row)s? no\. ([\d ,toand]+?)(?:, (?:selvages off|up to|folded|opened).*?)?: "
            r"((?:subcut|find) .*)\.$",
            text,
        )
        if not found:
            return False
        which = runs(found[2])
        own = [self.bands.pop((found[1].lower(), self.width, one)) for one in which]
        assert len(set(own)) == 1
        room, high = own[0]
        for part in found[3].split("; "):
            if part.startswith("find the motif"):
                self._windows(part, room, high, len(which))
            else:
                room -= self._part(part.removeprefix("subcut "), high, len(which))
        assert room >= -SLACK
        if left == "what lies round the windows":
            return True
        if left == "nothing":
            assert min(room, high) < self.printed
            return True
        sides = [number(one) for one in re.match(rf"({NUMBER}) × ({NUMBER})", left).groups()]  # type: ignore[union-attr]
        assert any(
            abs(high - one) <= self.printed and abs(room - other) <= self.printed for one, other in (sides, sides[::-1])
        )
        return True

    def _windows(self, text: str, room: Fraction, high: Fraction, bands: int) -> None:
        """Windows round motifs, which lie in the row at least close together."""
        found = re.match(rf".* (\d+) windows? ({NUMBER}) × ({NUMBER}) \w+: (.*)$", text)
        assert found, text
        count, wide, long = int(found[1]), number(found[2]), number(found[3])
        assert count <= bands * ((room + SLACK) // wide) * ((high + SLACK) // long)
        self._note(found[4], (wide, long), count)

    def _part(self, text: str, high: Fraction, bands: int) -> Fraction:
        """One setting: what it takes from each band."""
        found = re.match(
            rf"({NUMBER}) \w+(?: by the mat's lines| by tape)? {OFTEN}(?: each)?(: |, trim to |, off it )(.*)$", text
        )
        assert found, text
        measure, count = number(found[1]), times(found[2])
        parts = count * bands
        if found[3] == ": ":
            self._note(found[4], (measure, high), parts)
        elif found[3] == ", trim to ":
            trimmed = re.match(rf"({NUMBER}) \w+: (.*)$", found[4])
            assert trimmed, text
            assert number(trimmed[1]) <= high
            self._note(trimmed[2], (measure, number(trimmed[1])), parts)
        else:
            self._stack(found[4], (measure, high), parts)
        return measure * count

    def _stack(self, text: str, size: tuple[Fraction, Fraction], parts: int) -> None:
        """Pieces over one another: each cut off the part, some trimmed."""
        across, room = size
        pattern = rf"({NUMBER}) \w+ {OFTEN}(?: and trim to ({NUMBER}) \w+)? \(((?:[^()]|\([^()]*\))*)\)(?:, |$)"
        assert re.fullmatch(f"(?:{pattern})+", text), text
        for found in re.finditer(pattern, text):
            along, count = number(found[1]), times(found[2])
            room -= along * count
            wide = number(found[3]) if found[3] else across
            assert wide <= across
            self._note(found[4], (wide, along), parts * count)
        assert room >= -SLACK

    def _whole(self, text: str, _left: str) -> bool:
        found = re.match(
            r"(Strip|Row)s? no\. ([\d ,toand]+?) (?:stays? whole|needs? no further cut)"
            r"(?:; trim as you sew|, selvages off)?: (.*)\.$",
            text,
        )
        if not found:
            return False
        own = [self.bands.pop((found[1].lower(), self.width, one)) for one in runs(found[2])]
        if "trim as you sew" in text:
            for name, count in self._read(found[3]):
                self.made[name, Fraction(0), self.width] += count
        else:
            self._note(found[3], own[0], len(own))
        return True

    # --- pieces --------------------------------------------------------------------------------------------

    def _note(self, text: str, size: tuple[Fraction, Fraction], parts: int) -> None:
        """Pieces of one size, as many as were cut."""
        slanted = re.match(rf"(.*), cut ({NUMBER}) × ({NUMBER}) \w+ on the slant out of it$", text)
        if slanted:
            text, turned = slanted[1], (number(slanted[2]), number(slanted[3]))
            assert sum(turned) ** 2 <= 2 * min(size) ** 2 + 1
            size = turned
        named = list(self._read(text))
        assert sum(count for _, count in named) == parts, text
        for name, count in named:
            self.made[name, min(size), max(size)] += count

    def _read(self, text: str) -> Iterator[tuple[str, int]]:
        """Names with their counts, the longest name first where one begins like another."""
        rest = re.sub(r"^pieces? ", "", text)
        while rest:
            name = max((name for name in self.names if rest.lower().startswith(name.lower())), key=len, default="")
            assert name, rest
            rest = rest[len(name) :]
            often = re.match(rf" \({OFTEN}\)", rest)
            yield name, times(often[1]) if often else 1
            rest = rest[often.end() :] if often else rest
            assert not rest or rest.startswith(", "), rest
            rest = rest.removeprefix(", ")


def pieces_of(made: Counter[tuple[str, Fraction, Fraction]]) -> Counter[str]:
    """How many of each name."""
    out: Counter[str] = Counter()
    for (name, _, _), count in made.items():
        out[name] += count
    return out


def sizes_of(made: Iterable[tuple[str, Fraction, Fraction]], name: str) -> set[tuple[float, float]]:
    """The sizes a piece of that name was cut to, the shorter side first."""
    return {(float(low), float(high)) for own, low, high in made if own == name}
