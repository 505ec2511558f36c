"""What a plan says of wonky strips and braids: why a strip lies straighter, what may stay, where batting shows."""

from __future__ import annotations

from typing import Any

import pytest

from stitchflip.planning import Finding, Severity, plan
from tests.planning.conftest import Draft

WIDE_ENOUGH: dict[str, Any] = {
    "squared_up": {"wide": "14", "long": "18"},
    "base": {},
    "center": {"cut_wide": "6", "cut_long": "8", "fabric": "Plain"},
    "building": {"way": "wonky strips", "seed": 7, "until_covered": True},
    "rounds": [{"cut": "2 1/2", "fabric": "Stripe"}, {"cut": "3", "fabric": "Dot"}],
}
PLAITED: dict[str, Any] = {
    "squared_up": {"wide": "14", "long": "40"},
    "base": {},
    "center": {"shape": "half square", "cut": "6", "fabric": "Plain"},
    "building": {"way": "braid"},
}


def found(draft: Draft, **tables: Any) -> dict[str, Finding]:
    """Findings of a plan by their code."""
    return {finding.code: finding for finding in plan(draft(**tables)).findings}


def test_seams_under_a_slanted_strip_are_good_to_know(draft: Draft) -> None:
    """They are told as what may stay, and not as a fault."""
    findings = found(draft, **WIDE_ENOUGH)

    assert Severity.NOTE == findings["strip.hides-seam"].severity
    assert "Leave what is stitched down" in findings["strip.hides-seam"].what
    assert not {"strip.cuts-seam", "strip.scant-allowance"} & findings.keys()


def test_a_strip_that_may_not_lean_is_told_with_its_reason(draft: Draft) -> None:
    """A center that shows 3/4 leaves nothing to cut off, so both strips on its long sides lie level, at 0 degrees.

    The rounds go top, right, bottom, left: those on the long sides are strips 2 and 4.
    """
    center = {"cut_wide": "1 1/4", "cut_long": "6", "fabric": "Plain"}
    building = {"way": "wonky strips", "smallest_angle": 5}
    told = found(draft, **{**WIDE_ENOUGH, "center": center, "building": building})["wonky.straighter"]

    assert (Severity.NOTE, 0.0) == (told.severity, told.numbers["degrees"])
    assert told.what.startswith("Strips 2 and 4 lie")
    assert "straighter than 5°, at 0° or more" in told.what
    assert "¾" in told.what
    assert told.cures


@pytest.mark.parametrize("cuts", [4, 10])
def test_a_braid_that_runs_out_says_where_and_how_many_strips_would_do(draft: Draft, cuts: int) -> None:
    """Batting shows on the side of the last strips; 16 rounds cover 14 x 40 with a reach of 1/2 in all.

    A side's raw edge starts at -20 1/2 / sqrt 2 + 3 = -11.496 and gains 2 a strip; the corner of the cover lies
    (7 1/2 + 20 1/2) / sqrt 2 = 19.799 out: 31.295 in to go, 16 strips a side, 32 in all.
    """
    rounds = [{"cut": "2 1/2", "fabric": "Stripe"}] * cuts
    bare = found(draft, **PLAITED, rounds=rounds)["coverage.batting-shows"]

    assert (Severity.STOP, "upper right") == (bare.severity, bare.where)
    assert bare.step in {2 * cuts - 1, 2 * cuts}
    assert any(f"Add {32 - 2 * cuts} more strips" in cure.text for cure in bare.cures)
