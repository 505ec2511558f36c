"""Kits for a class, and making do with what there is of a fabric: another plan of the same piece."""

from __future__ import annotations

from collections import Counter
from functools import lru_cache
from pathlib import Path

import pytest

from stitchflip.cutting.hand_model import Act
from stitchflip.cutting.verify import verify_fabric_plan
from stitchflip.errors import CuttingError
from stitchflip.planning import plan as plan_project
from stitchflip.planning.cutting_answers import cutting_answers
from stitchflip.planning.cutting_wishes import kits_of, slip_heading, with_only_so_much
from stitchflip.planning.model import Plan
from stitchflip.project import read_project_bytes
from stitchflip.project.model import Working

EXAMPLES = Path(__file__).parents[2] / "examples"


@lru_cache(maxsize=4)
def planned(name: str) -> Plan:
    """The plan of an example."""
    path = EXAMPLES / f"{name}.toml"
    return plan_project(read_project_bytes(path.read_bytes(), path.name), with_cures=False)


def plain(text: str) -> str:
    """A sentence with ordinary spaces."""
    return text.replace("\u202f", " ").replace("\u2009", " ")


def test_kits_are_cut_together_and_every_bag_has_everything() -> None:
    """Six runners and a spare one: seven times every piece; a binding of 3 whole strips each, so 21 strips."""
    lantern = planned("lantern-walk")
    kits = kits_of(lantern, 6, 1)

    for fabric in kits.plan.fabrics:
        own = {piece.name: piece.count for piece in lantern.pieces_by_fabric[fabric.fabric]}
        assert {name: 7 * count for name, count in own.items()} == {
            piece.name: piece.count for piece in kits.plan.pieces_by_fabric[fabric.fabric]
        }
    assert ["In each of the 7 bags"] == [slip_heading(slip, kits.bags) for slip in kits.slips]
    assert "6 kits and one spare, cut together:" == kits.teacher[0]
    midnight = next(answer for answer in cutting_answers(kits.plan) if answer.fabric.fabric == "Midnight")
    assert 21 == sum(len(step.numbers) for step in midnight.order.steps if step.act is Act.KEEP)


def test_kits_of_mats_have_four_bindings_each() -> None:
    """Morning Tray is four mats alike: three kits have twelve bindings, four in each bag."""
    kits = kits_of(planned("morning-tray"), 3, 0)
    (slip,) = kits.slips

    assert (1, 2, 3) == slip.kits
    assert 4 == sum(line.startswith("Binding ") for line in slip.lines)


def test_windows_round_motifs_of_all_kits_share_one_length() -> None:
    """The lantern stands once in the width, every 12 in: 4 windows want 48 in, and 12 for the unknown start."""
    kits = kits_of(planned("lantern-walk"), 4, 0)
    lantern = next(fabric for fabric in kits.plan.fabrics if fabric.fabric == "Paper Lantern")

    assert 60 == lantern.used_in
    assert any("Paper Lantern 2⅛ yd" in plain(line) for line in kits.teacher)


def test_no_kit_and_too_many_are_refused() -> None:
    """None, and a hundred thousand."""
    for how_many in (0, 100_000):
        with pytest.raises(CuttingError):
            kits_of(planned("lantern-walk"), how_many, 0)


def test_enough_is_cut_from_what_there_is() -> None:
    """Brass needs 5½ in: from 6 in the order begins with 6, keeps ½ in to spare."""
    lantern = planned("lantern-walk")
    brass = next(fabric for fabric in lantern.fabrics if fabric.fabric == "Brass")
    made, (only,) = with_only_so_much(lantern, [(brass, 6.0)])
    (answer,) = cutting_answers(made, made.fabrics[:1])

    assert only.is_enough
    assert (6.0, 0.5) == (answer.fabric.buy_in, answer.fabric.spare_in)
    assert 5.5 == answer.order.steps[0].left[1]
    assert plain(answer.buy).startswith("6 in, 40 in usable width")


def test_what_is_missing_comes_from_a_fabric_that_stands_in() -> None:
    """From 4 in of Brass come two strips 1½ in wide, three are needed: a piece goes to a fabric with room for it."""
    lantern = planned("lantern-walk")
    brass = next(fabric for fabric in lantern.fabrics if fabric.fabric == "Brass")
    made, (only,) = with_only_so_much(lantern, [(brass, 4.0)])

    assert only.is_enough
    assert only.stands_in in {"Inkwell", "Oat", "Ember", "Midnight"}
    own = {fabric.name: fabric for fabric in made.project.fabrics}
    for fabric in made.fabrics:
        pieces = made.pieces_by_fabric[fabric.fabric]
        if fabric.fabric == only.stands_in:
            assert () == verify_fabric_plan(fabric, own[fabric.fabric], pieces, made.numbers, Working.CUT_FIRST)
    names = Counter(
        piece.name for pieces in made.pieces_by_fabric.values() for piece in pieces for _ in range(piece.count)
    )
    before = Counter(
        piece.name for pieces in lantern.pieces_by_fabric.values() for piece in pieces for _ in range(piece.count)
    )
    assert before == names


@pytest.mark.parametrize(
    ("have_in", "said"),
    [
        (4.0, "None: what there is does not give one more strip 1½ in wide."),
        (6.0, "None: what there is does not give one more strip 1½ in wide."),
        (7.0, "One: what there is gives one more strip 1½ in wide."),
        (8.5, "Two: what there is gives 2 more strips 1½ in wide."),
    ],
)
def test_mistakes_are_made_good_from_what_there_is(have_in: float, said: str) -> None:
    """Two strips of Brass and straightening take 4 in, three 5½: nothing, ½, 1½ and 3 in are left; a strip takes 1½."""
    lantern = planned("lantern-walk")
    brass = next(fabric for fabric in lantern.fabrics if fabric.fabric == "Brass")
    made, _ = with_only_so_much(lantern, [(brass, have_in)])
    (answer,) = cutting_answers(made, made.fabrics[:1], there={"Brass"})

    assert said == plain(answer.mistakes)
    assert "There is" == answer.amount_heading


def test_nothing_is_there_of_a_fabric_that_the_shelf_gives() -> None:
    """Midnight of the tin roof comes from a fat quarter, whatever length there is beside it."""
    roof = planned("tin-roof")
    midnight = next(fabric for fabric in roof.fabrics if fabric.fabric == "Midnight")
    made, _ = with_only_so_much(roof, [(midnight, 10.0)])
    answers = cutting_answers(made, there={"Midnight"})
    answer = next(one for one in answers if one.fabric.fabric == "Midnight")

    assert "Buy" == answer.amount_heading
    assert plain(answer.buy).startswith("Nothing to buy.")


def test_the_shortest_amounts_are_told_without_changing_anything() -> None:
    """Brass: 5½ in as planned, then what gives something up."""
    lantern = planned("lantern-walk")
    brass = next(fabric for fabric in lantern.fabrics if fabric.fabric == "Brass")
    made, (only,) = with_only_so_much(lantern, [(brass, None)])

    assert made is lantern
    assert plain(only.says[0]).startswith("5½ in are enough, cut as planned")
