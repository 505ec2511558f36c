"""A new project file: the starter text of a way of building, with the maker's name in it."""

from __future__ import annotations

import json
import re
import unicodedata
from typing import TYPE_CHECKING

from stitchflip.cli.starter_texts import BATTING_NOTE, FABRIC, HEAD, NUMBERS, STARTERS, TAIL, UNITS_NOTE
from stitchflip.cli.status import UsageError
from stitchflip.lengths import Unit
from stitchflip.project.model import Way

if TYPE_CHECKING:
    from collections.abc import Mapping


def way_named(text: str) -> Way:
    """The way of building a maker means: its name, with spaces or hyphens, or enough of it to be the only one.

    Args:
        text: such as "log cabin", "log-cabin" or "courthouse".

    Raises:
        StitchflipError: If no way, or more than one, is meant.
    """
    wanted = " ".join(re.sub(r"[-_]+", " ", text).casefold().split())
    plain = {way.value.replace("-", " "): way for way in Way}
    if wanted in plain:
        return plain[wanted]
    meant = [way for name, way in plain.items() if wanted and wanted in name]
    if len(meant) == 1:
        return meant[0]
    raise UsageError(
        what=f'"{text}" {"could be several ways" if meant else "is no way"} of building known here',
        fix=f"Use one of: {', '.join(way.value for way in (meant or Way))}.",
        code="usage.which-way",
    )


def file_stem(name: str) -> str:
    """The name of a project as a file name: small letters and digits, hyphens between the words.

    Args:
        name: the project's name, any language.

    Raises:
        StitchflipError: If nothing of it can stand in a file name.

    Example:
        >>> file_stem("Aunt Ida's Runner, 2nd try")
        'aunt-idas-runner-2nd-try'
    """
    composed = unicodedata.normalize("NFC", name).lower().replace("'", "").replace("’", "")
    stem = re.sub(r"[\W_]+", "-", composed).strip("-")
    if not stem:
        raise UsageError(
            what=f'The name "{name}" has no letter or digit to make a file name of',
            fix='Give a name such as "Table runner".',
            code="usage.no-name",
        )
    return stem


def starter_text(name: str, way: Way, unit: Unit) -> str:
    """A starter project file.

    Args:
        name: the project's name.
        way: way of building.
        unit: inches or centimeters.
    """
    starter = STARTERS[way]
    sizes = starter.inches if unit is Unit.INCH else starter.centimeters
    values = {
        **sizes,
        "name": name,
        "piece": starter.piece,
        "quoted": json.dumps(name, ensure_ascii=False),
        "unit": unit.value,
        "units_note": UNITS_NOTE[unit],
        "batting_note": BATTING_NOTE[unit],
        "numbers": NUMBERS[unit],
    }
    fabrics = "".join(_filled(FABRIC, {"name": fabric, "color": color}) for fabric, color in starter.fabrics)
    parts = (HEAD, starter.strips, "\n", starter.shape, "\n", starter.building, "\n")
    return _filled("".join(parts), values) + fabrics + _filled(TAIL, values)


def _filled(text: str, values: Mapping[str, str]) -> str:
    """The text with its sizes; other braces stay as they are."""
    return re.sub(r"\{(\w+)\}", lambda found: values[found.group(1)], text)
