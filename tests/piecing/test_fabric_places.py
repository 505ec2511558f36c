"""Where each fabric goes: the rules a maker uses with her eyes."""

from typing import Any

import pytest

from stitchflip.lengths import Unit
from stitchflip.piecing.fabric_places import fabrics_for, lightness
from stitchflip.piecing.ways import Wanted
from stitchflip.project.model import Project

NAMES = ("bottom", "right", "top", "left")
ROUNDS = [Wanted(number, visit, side, 2.0, None) for number in (1, 2, 3) for visit, side in enumerate((2, 1, 0, 3))]
COLORS = {"Snow": "#ffffff", "Mist": "#c0c0c0", "Slate": "#606060", "Night": "#101010", "Spark": "#ff8800"}


def placed(rule: dict[str, Any], wanted: list[Wanted] | None = None) -> tuple[str, ...]:
    """Fabrics of three log-cabin rounds under a rule."""
    project = Project.model_validate(
        {
            "name": "Hall mat",
            "squared_up": {"wide": "12", "long": "12"},
            "center": {"cut": "4", "fabric": "Snow"},
            "fabrics": [{"name": name, "color": color} for name, color in COLORS.items()],
            "binding": {"fabric": "Night"},
            "fabric_rule": rule,
        },
        context={"unit": Unit.INCH},
    )
    return fabrics_for(project, ROUNDS if wanted is None else wanted, NAMES)


def test_fabrics_in_turn_repeat_from_the_first() -> None:
    """Three fabrics over twelve strips: each four times, in order."""
    assert ("Snow", "Mist", "Slate") * 4 == placed({"fabrics": ["Snow", "Mist", "Slate"]})


def test_a_shuffle_is_the_same_for_the_same_seed() -> None:
    """Seven gives what seven gave; another seed gives another order."""
    rule = {"order": "shuffled", "fabrics": list(COLORS), "seed": 7}

    assert placed(rule) == placed(rule)
    assert placed(rule) != placed({**rule, "seed": 8})


def test_no_fabric_lies_beside_itself() -> None:
    """Neither the strip before nor the last one on the same side has the same fabric."""
    chosen = placed({"order": "shuffled", "fabrics": ["Snow", "Mist", "Slate", "Night"], "none_next_to_itself": True})

    for place in range(1, len(chosen)):
        assert chosen[place] != chosen[place - 1]
        if place >= 4:
            assert chosen[place] != chosen[place - 4]


def test_light_to_dark_never_turns_lighter() -> None:
    """From the middle outward each strip is as dark as the one before or darker."""
    chosen = placed({"order": "light to dark from the middle", "fabrics": ["Night", "Snow", "Slate", "Mist"]})
    seen = [lightness(COLORS[name]) for name in chosen]

    assert sorted(seen, reverse=True) == seen
    assert {"Snow", "Mist", "Slate", "Night"} == set(chosen)


def test_halves_keep_light_and_dark_apart() -> None:
    """Top and right take the two lightest, bottom and left the two darkest."""
    rule = {
        "order": "light and dark halves",
        "fabrics": ["Night", "Snow", "Slate", "Mist"],
        "light_sides": ["top", "right"],
    }
    by_side = list(zip([NAMES[strip.side] for strip in ROUNDS], placed(rule), strict=True))

    assert {"Snow", "Mist"} == {fabric for side, fabric in by_side if side in ("top", "right")}
    assert {"Slate", "Night"} == {fabric for side, fabric in by_side if side in ("bottom", "left")}


def test_every_third_strip_is_the_accent() -> None:
    """One accent every three; it takes no turn from the others."""
    chosen = placed({"fabrics": ["Snow", "Mist"], "accent": "Spark", "accent_every": 3})

    assert [2, 5, 8, 11] == [place for place, name in enumerate(chosen) if name == "Spark"]


def test_a_fabric_named_in_its_round_stays() -> None:
    """Rules fill only what the maker left open."""
    wanted = [Wanted(1, 0, 2, 2.0, "Spark"), Wanted(1, 1, 1, 2.0, None)]

    assert ("Spark", "Snow") == placed({"fabrics": ["Snow"]}, wanted)


@pytest.mark.parametrize(
    ("color", "expected"),
    [
        ("#ff0000", 0.2126),
        ("#00ff00", 0.7152),
        ("#0000ff", 0.0722),
        ("#777777", 0.184475),
    ],
)
def test_lightness_is_relative_luminance(color: str, expected: float) -> None:
    """Primaries give the coefficients of WCAG 2 (W3C, definition of relative luminance).

    Gray 0x77 is ((119/255 + 0.055) / 1.055) ^ 2.4.
    """
    assert pytest.approx(expected, abs=1e-5) == lightness(color)
