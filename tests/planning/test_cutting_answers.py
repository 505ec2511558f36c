"""What is said about cutting a fabric: purchase, proof, mistakes, the other way, and the same as a document."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import pytest

from stitchflip.cutting.model import Status
from stitchflip.planning import plan as plan_project
from stitchflip.planning.closer_cuts import closer_cuts
from stitchflip.planning.cutting_answers import CuttingAnswer, cutting_answers, percent_above
from stitchflip.planning.cutting_as_json import cutting_as_json
from stitchflip.planning.model import Plan
from stitchflip.project import read_project_bytes

EXAMPLES = Path(__file__).parents[2] / "examples"


def planned(name: str) -> Plan:
    """The plan of an example."""
    path = EXAMPLES / f"{name}.toml"
    return plan_project(read_project_bytes(path.read_bytes(), path.name), with_cures=False)


@pytest.fixture(scope="module")
def lantern() -> Plan:
    """A runner from new fabric."""
    return planned("lantern-walk")


def of(plan: Plan, name: str) -> CuttingAnswer:
    """What is said about one fabric."""
    return next(answer for answer in cutting_answers(plan) if answer.fabric.fabric == name)


def test_fabrics_are_told_by_their_letters(lantern: Plan) -> None:
    """A to F."""
    assert list("ABCDEF") == [answer.letter for answer in cutting_answers(lantern)]


def test_mistakes_are_counted_in_strips_of_the_widest_width(lantern: Plan) -> None:
    """Brass keeps 3½ in of 9: two further strips 1½ in wide. Inkwell keeps ½: a further 2½ needs 11, so ⅜ yd."""
    said = of(lantern, "Brass").mistakes.replace("\u202f", " ")
    assert "Two: what is bought gives 2 more strips 1½ in wide." == said
    assert "buy ⅜ yd instead of ¼ yd" in of(lantern, "Inkwell").mistakes.replace("\u202f", " ")


def test_the_losing_way_is_told_and_why_it_is_refused() -> None:
    """Clover stands upright, 15 cm rows: two of them are 30 cm; turned 27 cm, refused because of the print."""
    said = of(planned("morning-tray"), "Clover").other_way.replace("\u202f", " ")

    assert "Turned a quarter the rectangles take 27 cm of rows instead of 30 cm" in said
    assert "not done" in said


def test_what_comes_from_the_shelf_needs_no_purchase() -> None:
    """Fog is cut from a fat quarter."""
    fog = of(planned("tin-roof"), "Fog")

    assert fog.buy.startswith("Nothing to buy. From the shelf: fat quarter")
    assert "Everything comes from the shelf." == fog.sure
    assert "" == fog.mistakes


def test_a_plan_without_proof_says_how_far_it_may_be_off(lantern: Plan) -> None:
    """8½ in found and 8 in proved: 6.25 % above, told as at most 6.3 %."""
    brass = next(fabric for fabric in lantern.fabrics if fabric.fabric == "Inkwell")
    loose = replace(brass, bound_in=8.0, status=Status.BEST_FOUND)

    assert 6.3 == percent_above(loose)
    (answer,) = cutting_answers(lantern, [loose])
    assert "at most 6.3 % above what any plan in strips of one width" in answer.sure
    assert "less than 8 in" in answer.sure.replace("\u202f", " ")


def test_a_plan_without_a_bound_claims_no_distance_from_it(lantern: Plan) -> None:
    """Nothing is known of how much less could do, so no percentage is told."""
    inkwell = next(fabric for fabric in lantern.fabrics if fabric.fabric == "Inkwell")
    loose = replace(inkwell, bound_in=0.0, status=Status.BEST_FOUND)
    (answer,) = cutting_answers(lantern, [loose])

    assert percent_above(loose) is None
    assert "%" not in answer.sure
    assert "was not decided" in answer.sure


def test_the_document_is_ready_for_other_programs(lantern: Plan) -> None:
    """Only plain values, the same for the same plan, numbers of lengths under keys ending in _in."""
    first, again = (json.dumps(cutting_as_json(lantern, cutting_answers(lantern)), allow_nan=False) for _ in "ab")
    assert first == again
    midnight = next(one for one in json.loads(first)["fabrics"] if one["name"] == "Midnight")

    assert (15.0, 18.0) == (midnight["need_in"], midnight["buy_in"])
    assert ["straighten", "across", "subcut", "subcut", "across", "keep"] == [one["act"] for one in midnight["order"]]
    assert [("Midnight leftover 1", 40.0, 3.0), ("Midnight leftover 2", 3.25, 29.0)] == [
        (one["name"], one["wide_in"], one["long_in"]) for one in midnight["leftovers"]
    ]


def test_a_closer_way_is_offered_and_told_when_it_is_wanted() -> None:
    """Tar Roof: ⅜ yd in strips of one width, ¼ yd when pieces of different widths share rows."""
    plan = planned("ticket-booth")
    tar = [fabric for fabric in plan.fabrics if fabric.fabric == "Tar Roof"]
    cuts = closer_cuts(plan, tar)
    (offered,) = cutting_answers(plan, tar, cuts)
    (told,) = cutting_answers(plan, tar, cuts, closer=True)

    assert "¼ yd instead of ⅜ yd" in offered.closer.replace("\u202f", " ")
    assert offered.closer.endswith("stitchflip cut --closer.")
    assert (13.5, 9.0) == (offered.fabric.buy_in, told.fabric.buy_in)
    document = cutting_as_json(plan, [told])["fabrics"]
    assert isinstance(document, list)
    assert (True, 9.0) == (document[0]["closer"]["is_told"], document[0]["closer"]["buy_in"])


def test_windows_round_motifs_are_told_and_drawn(lantern: Plan) -> None:
    """The lantern's window is 12 in and so is its repeat: 24 in hold one whole window wherever the print begins."""
    answer = of(lantern, "Paper Lantern")

    assert answer.motifs is not None
    assert (1, 1) == (answer.motifs.plan.count.surely, len(answer.motifs.plan.windows))
    assert "1 window round a motif from 24 in of length: 1 surely" in answer.motifs.says.replace("\u202f", " ")
    assert None is of(lantern, "Brass").motifs


def test_trimming_while_sewing_says_which_strip_each_piece_comes_from() -> None:
    """The half-done piece is trimmed as it is sewn: its first strip is opened for 1, its rest taken for 2."""
    rose = of(planned("found-in-a-box"), "Faded Rose")

    assert (
        rose.while_sewing[0].replace("\u202f", " ").startswith("2½ in wide: for 1 open strip 1 (27 in); for 2 take the")
    )
