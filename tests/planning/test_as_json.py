"""The plan as one document: its keys, its numbers, and that it is the same each time."""

from __future__ import annotations

import json
import re
from math import hypot, sqrt
from pathlib import Path
from typing import Any

import pytest

from stitchflip import plan, read_project
from stitchflip.planning.as_json import plan_as_json, square_up_as_json
from stitchflip.planning.json_values import number

EXAMPLES = Path(__file__).parents[2] / "examples"
PLAIN = '\ndraw_up = 0\nfold_loss = "0"\n'
"""Nothing drawn in, nothing lost in folds: the settings of the sums below."""


def document(name: str, more: str = "") -> dict[str, Any]:
    """The document of an example, with more lines at the end of its file (its own numbers)."""
    text = (EXAMPLES / f"{name}.toml").read_text(encoding="utf-8").rstrip() + "\n" + more
    return plan_as_json(plan(read_project(text)))


@pytest.fixture(scope="module")
def lantern() -> dict[str, Any]:
    """The runner on point, at the plain settings."""
    return document("lantern-walk", PLAIN)


KEYS = {
    "pieces": "step name fabric cut_width_in full_length_in needed_length_in inset_start_in inset_end_in cut_length_in "
    "visible_area_in2 shown_area_in2 square_cut_in sections angled text",
    "seams": "step piece start ends length_in seam_flat_in seam_taped_in raw_edge_flat_in raw_edge_taped_in text",
    "fabrics": "name need_in buy_in lower_bound_in gap_in text",
}


def test_the_document_has_its_parts(lantern: dict[str, Any]) -> None:
    """Every part a program may rely on is there, and nothing at the top that is not promised."""
    assert {
        "project", "pieces", "seams", "trim", "base", "backing", "batting", "binding", "edge", "panels", "extras",
        "quilt", "after_wash",
        "fabrics", "findings",
    } == set(lantern)  # fmt: skip  # one line of names


@pytest.mark.parametrize("part", sorted(KEYS))
def test_every_entry_of_a_part_has_its_keys(part: str, lantern: dict[str, Any]) -> None:
    """No entry lacks a key of the promise."""
    assert lantern[part]
    assert [] == [key for entry in lantern[part] for key in KEYS[part].split() if key not in entry]


@pytest.mark.parametrize("part", ["trim", "base", "backing", "batting"])
def test_sizes_are_wide_and_long(part: str, lantern: dict[str, Any]) -> None:
    """A size has its wide and its long measure in inches, and says it in words."""
    assert [] == [key for key in ("wide_in", "long_in") if key not in lantern[part]]
    assert lantern[part]["text"]


def test_every_finding_says_code_severity_place_and_cures() -> None:
    """A center too large for its wish: found with its numbers, and cures that name paths of the file."""
    text = (EXAMPLES / "lantern-walk.toml").read_text(encoding="utf-8").replace('cut = "8 1/4"', 'cut = "9"')
    findings: Any = plan_as_json(plan(read_project(text)))["findings"]
    for key in ("code", "severity", "where", "what", "cures", "step", "numbers"):
        assert [] == [finding for finding in findings if key not in finding]
    points = next(finding for finding in findings if finding["code"].startswith("points."))
    changes = [change for cure in points["cures"] for change in cure["changes"]]
    assert ["center", "cut"] in [change["path"] for change in changes]


def numbers_in(entry: object) -> list[tuple[str, object]]:
    """Every key of the document with its value, at any depth."""
    match entry:
        case dict():
            return [(key, value) for key, value in entry.items()] + [
                pair for value in entry.values() for pair in numbers_in(value)
            ]
        case list():
            return [pair for value in entry for pair in numbers_in(value)]
        case _:
            return []


@pytest.mark.parametrize("name", sorted(path.stem for path in EXAMPLES.glob("*.toml")))
def test_every_length_is_a_number_of_inches_under_its_own_ending(name: str) -> None:
    """Keys that end in _in or _in2 hold numbers (or null, or lists of numbers) with at most six decimals."""
    found = [(key, value) for key, value in numbers_in(document(name)) if re.search(r"_in2?$", key)]
    assert len(found) > 100
    for key, value in found:
        for one in value if isinstance(value, list) else [value]:
            assert one is None or (isinstance(one, int | float) and one == round(one, 6)), key


@pytest.mark.parametrize("name", ["lantern-walk", "morning-tray"])
def test_the_same_project_gives_the_same_document(name: str) -> None:
    """Byte for byte, so that it can be compared and kept."""
    first, second = (json.dumps(document(name), allow_nan=False) for _ in range(2))
    assert first == second


def test_the_numbers_of_the_runner(lantern: dict[str, Any]) -> None:
    """Sums by hand for strips 1, 5 and 28 and for points, base, trim and binding.

    Seam 1/4: round 1 (cut 1 1/2) lies from 8 1/4 / 2 - 1/4 = 3 7/8 to 5 1/8; strip 5 from 4 7/8, and 1/2 in past
    the trimmed edge 6 1/2 its upper end is needed to 7 sqrt 2 - 4 7/8, its lower to the raw edge at 5 1/8.
    """
    pieces = {piece["step"]: piece for piece in lantern["pieces"]}
    seams = {seam["step"]: seam for seam in lantern["seams"]}
    assert ("Center", "Paper Lantern", "cut 8¼ × 8¼ in") == tuple(pieces[0][key] for key in ("name", "fabric", "text"))
    assert (1.5, 8.25, 8.25, 9) == tuple(
        pieces[1][key] for key in ("cut_width_in", "full_length_in", "needed_length_in", "cut_length_in")
    )
    needed = 7 * sqrt(2) - 4.875 + 5.125
    assert (10.25, round(needed, 6), 11) == tuple(
        pieces[5][key] for key in ("full_length_in", "needed_length_in", "cut_length_in")
    )
    assert round(10.25 - needed, 6) == pytest.approx(pieces[5]["inset_start_in"] + pieces[5]["inset_end_in"])
    assert (3.875, 5.125) == (seams[1]["seam_flat_in"], seams[1]["raw_edge_flat_in"])
    assert [("crossed", 2), ("crossed", 3)] == [(end["class"], end["crossed_by"]) for end in seams[1]["ends"]]
    half_diagonal = 7.75 / sqrt(2)
    upper = lantern["trim"]["points"][0]
    assert (6.5 - half_diagonal, 6.25 - half_diagonal) == pytest.approx((upper["to_trim_edge_in"], upper["shown_in"]))
    assert (13, 44, 15.5, 48) == (
        lantern["trim"]["wide_in"], lantern["trim"]["long_in"], lantern["base"]["wide_in"], lantern["base"]["long_in"],
    )  # fmt: skip  # sizes in pairs
    perimeter = 4 * hypot(6.5, 6.5) + 2 * (44 - 13)
    assert (perimeter, perimeter + 10 + 6 * 0.5, 3, 3 * 40 - 2 * 2.5) == pytest.approx(
        tuple(lantern["binding"][key] for key in ("perimeter_in", "need_in", "strips", "made_in"))
    )


def test_purchases_of_the_runner(lantern: dict[str, Any]) -> None:
    """Strips by width plus 1 in for straightening, up to the next 1/8 yd, never under 1/4 yd."""
    said = {fabric["name"]: (fabric["need_in"], fabric["buy_in"]) for fabric in lantern["fabrics"]}
    by_hand = {
        "Brass": (3 * 1.5 + 1, 9),
        "Inkwell": (3 * 2.5 + 1, 9),
        "Oat": (2 * 2 + 1, 9),
        "Ember": (2 * 2.5 + 1, 9),
        "Midnight": (2 * 3.25 + 3 * 2.5 + 1, 18),
    }
    assert by_hand == {name: said[name] for name in by_hand}
    assert "buy ½ yd" == next(fabric["text"] for fabric in lantern["fabrics"] if fabric["name"] == "Midnight")


def test_a_metric_project_has_inches_in_its_numbers_and_centimeters_in_its_words() -> None:
    """47 × 35 cm is 18.503937 × 13.779528 in."""
    trim = document("morning-tray")["trim"]
    assert (round(47 / 2.54, 6), round(35 / 2.54, 6)) == (trim["wide_in"], trim["long_in"])
    assert "squared up 47 × 35 cm, wide × long" == trim["text"]


def test_squaring_up_has_the_same_trim(lantern: dict[str, Any]) -> None:
    """The smaller document says the same numbers."""
    text = (EXAMPLES / "lantern-walk.toml").read_text(encoding="utf-8").rstrip() + "\n" + PLAIN
    small = square_up_as_json(plan(read_project(text)))
    assert lantern["trim"] == small["trim"]
    assert {"project", "trim", "findings"} == set(small)


@pytest.mark.parametrize(("value", "written"), [(2.50000004, 2.5), (-0.0, 0.0), (float("inf"), None), (None, None)])
def test_a_number_is_rounded_to_a_millionth(value: float | None, written: float | None) -> None:
    """No noise of floating point, no minus zero, no endless number in the document."""
    assert (str(written), written) == (str(number(value)), number(value))
