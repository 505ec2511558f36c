"""The independent checker: it passes true plans and rejects each of many tampered ones."""

from __future__ import annotations

import ast
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from stitchflip.cutting import FabricPlan, Piece, Status, claims, plan_fabric, verify
from stitchflip.cutting.model import JoinedLength, OneStrip, Row, RowStack, StackPiece, StripPlan
from stitchflip.cutting.verify import verify_fabric_plan
from stitchflip.lengths import Unit
from stitchflip.project.model import Working
from tests.cutting.lists import binding, fabric, strips
from tests.twins.table import house

ON_HAND = [
    {"name": "fat quarter", "wide": "17 1/2", "long": "20 1/2"},
    {"name": "precut strip", "wide": "2 1/2", "long": "40"},
]
ASKED = fabric("Fog", on_hand=ON_HAND)
PIECES = (
    Piece("Center", 9, 6, 6, kind="rectangle", can_turn=False),
    *strips(4, *[16] * 8),
    *(Piece(str(s), 2.5, 15.5, shortest=15, step=s, cut_first=False) for s in range(11, 17)),
    binding(2.5, 40, 2),
)


def plan() -> FabricPlan:
    """Rows and strips from a quarter and from new fabric, a precut strip, a binding, and steps to sew along."""
    return plan_fabric(ASKED, PIECES, house(), Working.TRIM_AS_YOU_GO, Unit.INCH)


def faults(tampered: FabricPlan) -> tuple[str, ...]:
    """What the checker says."""
    return verify_fabric_plan(tampered, ASKED, PIECES, house(), Working.TRIM_AS_YOU_GO)


def strip_plan(of: FabricPlan, number: int, **changes: object) -> FabricPlan:
    """The plan with one of its strip plans changed."""
    changed = list(of.strip_plans)
    changed[number] = replace(changed[number], **changes)  # type: ignore[arg-type]
    return replace(of, strip_plans=tuple(changed))


def first_new(of: FabricPlan) -> tuple[int, int]:
    """Place of the first strip cut from new fabric: (strip plan, strip)."""
    return next(
        (number, place)
        for number, one in enumerate(of.strip_plans)
        for place, strip in enumerate(one.strips)
        if strip.stock == "width of fabric"
    )


def one_strip(of: FabricPlan, change: Callable[[OneStrip], OneStrip]) -> FabricPlan:
    """The plan with its first new strip changed."""
    number, place = first_new(of)
    own = list(of.strip_plans[number].strips)
    own[place] = change(own[place])
    return strip_plan(of, number, strips=tuple(own))


def one_row(of: FabricPlan, change: Callable[[Row], Row]) -> FabricPlan:
    """The plan with its first row of new fabric (or of the quarter) changed."""
    if of.rows:
        return replace(of, rows=(change(of.rows[0]), *of.rows[1:]))
    sheet = of.hand_sheets[0]
    return replace(of, hand_sheets=(replace(sheet, rows=(change(sheet.rows[0]), *sheet.rows[1:])),))


def sewn(of: FabricPlan) -> int:
    """Place of the strip plan with steps."""
    return next(number for number, one in enumerate(of.strip_plans) if one.as_you_go)


def drop_piece(strip: OneStrip) -> OneStrip:
    """The strip without its first piece, its rest longer by it."""
    return replace(strip, pieces=strip.pieces[1:], rest=strip.rest + strip.pieces[0][1])


def double_piece(strip: OneStrip) -> OneStrip:
    """The strip with its first piece cut once more."""
    return replace(strip, pieces=(*strip.pieces, strip.pieces[0]))


def swap_hands(one: StripPlan) -> StripPlan:
    """The first and the last step changed over."""
    steps = list(one.hand_steps)
    steps[0], steps[-1] = steps[-1], steps[0]
    return replace(one, hand_steps=tuple(steps))


TAMPERED: dict[str, Callable[[FabricPlan], FabricPlan]] = {
    "a piece dropped from its strip": lambda of: one_strip(of, drop_piece),
    "a piece cut twice from a full strip": lambda of: one_strip(of, double_piece),
    "a piece renamed": lambda of: one_strip(
        of, lambda strip: replace(strip, pieces=(("stranger", strip.pieces[0][1]), *strip.pieces[1:]))
    ),
    "a piece cut shorter": lambda of: one_strip(
        of,
        lambda strip: replace(
            strip,
            pieces=((strip.pieces[0][0], strip.pieces[0][1] - 0.5), *strip.pieces[1:]),
            rest=strip.rest + 0.5,
        ),
    ),
    "a strip cut narrower": lambda of: one_strip(of, lambda strip: replace(strip, width=strip.width - 0.25)),
    "a strip longer than the fabric is wide": lambda of: one_strip(
        of, lambda strip: replace(strip, length=strip.length + 5, rest=strip.rest + 5)
    ),
    "a rest made longer": lambda of: one_strip(of, lambda strip: replace(strip, rest=strip.rest + 1)),
    "a strip taken from a precut one that is not there": lambda of: one_strip(
        of, lambda strip: replace(strip, stock="precut strip")
    ),
    "a strip taken from the quarter": lambda of: one_strip(of, lambda strip: replace(strip, stock="fat quarter")),
    "a strip forgotten": lambda of: strip_plan(
        of, first_new(of)[0], strips=of.strip_plans[first_new(of)[0]].strips[:-1]
    ),
    "a bound above the plan": lambda of: strip_plan(of, 0, bound=99),
    "a bound of bought strips above the plan": lambda of: strip_plan(of, 0, new_bound=99),
    "a proof without its bound": lambda of: strip_plan(of, 0, new_bound=of.strip_plans[0].new_bound - 1),
    "a smallest rest made up": lambda of: strip_plan(of, 0, spare_in=7.0),
    "a step told twice": lambda of: strip_plan(
        of, sewn(of), hand_steps=(*of.strip_plans[sewn(of)].hand_steps, of.strip_plans[sewn(of)].hand_steps[-1])
    ),
    "steps in another order": lambda of: strip_plan(
        of, sewn(of), hand_steps=swap_hands(of.strip_plans[sewn(of)]).hand_steps
    ),
    "a step with a longer rest": lambda of: strip_plan(
        of,
        sewn(of),
        hand_steps=tuple(
            replace(step, rest_before=step.rest_before + 2) for step in of.strip_plans[sewn(of)].hand_steps
        ),
    ),
    "a step from a strip that is not there": lambda of: strip_plan(
        of,
        sewn(of),
        hand_steps=tuple(replace(step, strip_number=9) for step in of.strip_plans[sewn(of)].hand_steps),
    ),
    "a one-way piece turned": lambda of: one_row(
        of, lambda row: replace(row, height=9.0, pieces=tuple((label, 6.0) for label, _ in row.pieces))
    ),
    "a row too low for its pieces": lambda of: one_row(of, lambda row: replace(row, height=row.height - 1)),
    "a row with a piece too many": lambda of: one_row(of, lambda row: replace(row, pieces=(*row.pieces, *row.pieces))),
    "a quarter larger than measured": lambda of: replace(
        of, hand_sheets=(replace(of.hand_sheets[0], usable_stack=18.5), *of.hand_sheets[1:])
    ),
    "a quarter not straightened": lambda of: replace(
        of, hand_sheets=(replace(of.hand_sheets[0], usable_stack=17.5), *of.hand_sheets[1:])
    ),
    "a quarter used up less than it is": lambda of: replace(
        of, hand_sheets=(replace(of.hand_sheets[0], used_in=1.0), *of.hand_sheets[1:])
    ),
    "a second quarter from nowhere": lambda of: replace(
        of, hand_sheets=(*of.hand_sheets, replace(of.hand_sheets[0], name="other", strips=(), rows=(), used_in=0.0))
    ),
    "cuts that take less": lambda of: replace(of, used_in=of.used_in - 2, need_in=of.need_in - 2),
    "straightening forgotten": lambda of: replace(of, need_in=of.need_in - 1, spare_in=of.spare_in + 1),
    "less bought than needed": lambda of: replace(of, buy_in=of.buy_in - 9, spare_in=of.spare_in - 9),
    "a purchase between the shop's steps": lambda of: replace(of, buy_in=of.buy_in + 1, spare_in=of.spare_in + 1),
    "a step too much": lambda of: replace(of, buy_in=of.buy_in + 4.5, spare_in=of.spare_in + 4.5),
    "a spare made up": lambda of: replace(of, spare_in=of.spare_in + 3),
    "more mistakes than it survives": lambda of: replace(of, miscuts=of.miscuts + 5),
    "a bound above the need": lambda of: replace(of, bound_in=of.need_in + 1),
    "a proof with a gap": lambda of: replace(of, bound_in=of.need_in - 2, status=Status.PROVED),
    "a piece left out and cut": lambda of: replace(of, left_out=("1",), because="no room", status=Status.IMPOSSIBLE),
    "impossible although everything is cut": lambda of: replace(of, status=Status.IMPOSSIBLE),
    "short although everything is cut": lambda of: replace(of, short_in=3.0),
}


def test_true_plan_passes() -> None:
    """The plan the tampered ones are made from adds up, and uses all that can be tampered with."""
    true = plan()
    stocks = {strip.stock for one in true.strip_plans for strip in one.strips}

    assert () == faults(true)
    assert {"width of fabric", "precut strip"} <= stocks
    assert true.hand_sheets
    assert true.strip_plans[sewn(true)].hand_steps


@pytest.mark.parametrize("how", TAMPERED)
def test_tampered_plan_is_rejected(how: str) -> None:
    """Each change makes a plan that does not add up, and the checker says so."""
    tampered = TAMPERED[how](plan())

    assert tampered != plan()
    assert faults(tampered)


def test_fabric_that_cannot_be_bought_is_not_bought() -> None:
    """The same plan for a fabric of which nothing more can be had."""
    only = fabric("Fog", on_hand=ON_HAND, only_on_hand=True)

    assert any("bought" in fault for fault in verify_fabric_plan(plan(), only, PIECES, house(), Working.TRIM_AS_YOU_GO))


def test_one_way_print_is_not_turned() -> None:
    """A plan that turns pieces is rejected when the print turns out to be one-way."""
    mats = (Piece("Mat", 53, 20, 4, kind="rectangle"),)
    plain = fabric("Clover")
    turned = plan_fabric(plain, mats, house(), Working.CUT_FIRST, Unit.INCH)

    assert () == verify_fabric_plan(turned, plain, mats, house(), Working.CUT_FIRST)
    assert verify_fabric_plan(turned, fabric("Clover", one_way=True), mats, house(), Working.CUT_FIRST)


def test_checker_shares_no_code_with_what_makes_plans() -> None:
    """It reads the shared values and the project, and imports no solver."""
    used: set[str] = set()
    for file in (verify.__file__, claims.__file__):
        tree = ast.parse(Path(file).read_text(encoding="utf-8"))
        used |= {node.module for node in ast.walk(tree) if isinstance(node, ast.ImportFrom) and node.module}

    assert {"stitchflip.cutting.model", "stitchflip.cutting.claims"} == {
        name for name in used if name.startswith("stitchflip.cutting")
    }


# --- what a plan claims beside its cuts --------------------------------------------------------------------


@pytest.mark.parametrize(
    ("claim", "fault"),
    [
        ({"spare_strip_buy_in": 4.5}, "4.5 in are named for one strip more"),
        ({"left_out": ("1",), "because": "it is late", "status": Status.IMPOSSIBLE}, "1 is left out although it fits"),
    ],
)
def test_a_false_claim_is_told(claim: dict[str, object], fault: str) -> None:
    """A purchase that gives no further strip, and a piece left out that fits the fabric."""
    assert any(fault in told for told in faults(replace(plan(), **claim)))  # type: ignore[arg-type]


def test_a_column_wider_than_what_lies_beside_the_cuts_is_told() -> None:
    """The quarter keeps what is beside its longest strip, not more."""
    true = plan()
    sheet = true.hand_sheets[0]
    wider = replace(sheet, column_left_in=sheet.column_left_in + 0.5)

    told = faults(replace(true, hand_sheets=(wider, *true.hand_sheets[1:])))

    assert any("keeps a column of" in fault for fault in told)


def test_sizes_that_share_a_name_are_counted_apart() -> None:
    """Two logs 12 in and one 9 in long, all called 1, are not three of either."""
    asked = (Piece("1", 2.5, 12, 2, step=1), Piece("1", 2.5, 9, 1, step=1))
    other = (Piece("1", 2.5, 12, 1, step=1), Piece("1", 2.5, 9, 2, step=1))
    true = plan_fabric(fabric("Oat"), asked, house(), Working.CUT_FIRST, Unit.INCH)

    assert () == verify_fabric_plan(true, fabric("Oat"), asked, house(), Working.CUT_FIRST)
    told = verify_fabric_plan(true, fabric("Oat"), other, house(), Working.CUT_FIRST)
    assert {"1, 2.5 × 12 in, is not made 1 times", "1, 2.5 × 9 in, is not made 2 times"} == set(told)


def test_bindings_of_several_pieces_do_not_share_their_joins() -> None:
    """Two bindings of 77½ in take two strips of 40 in each; one of 155 in takes five, four give but 152½.

    155 + 4 joins × 2½ = 165 in of strips, 2 × (77½ + 2½) = 160.
    """
    asked = (binding(2.5, 40, 4),)
    true = plan_fabric(fabric("Inkwell"), asked, house(), Working.CUT_FIRST, Unit.INCH)

    def told(need: float, count: int) -> tuple[str, ...]:
        lengths = (JoinedLength("Binding", need, 2.5, count),)
        return verify_fabric_plan(true, fabric("Inkwell"), asked, house(), Working.CUT_FIRST, lengths)

    assert () == told(77.5, 2)
    assert ("Binding: 4 strips are 160 in together, and 1 lengths with their joins take 165 in",) == told(155, 1)


def test_a_closer_plan_is_proved_in_the_steps_of_the_shop() -> None:
    """Rows with pieces over one another need 10 in; no plan needs less than 9½, and both buy 13½."""
    asked = (Piece("Mat", 9, 20, 1, kind="rectangle"),)
    upright = plan_fabric(fabric("Oat"), asked, house(), Working.CUT_FIRST, Unit.INCH)
    row = Row(9, (("Mat", 20),), turned=True, stacks=(RowStack(20, (StackPiece("Mat", 20, 9),)),))
    closer = replace(
        upright, rows=(row,), used_in=9.0, need_in=10.0, buy_in=13.5, spare_in=3.5, miscuts=0, status=Status.PROVED
    )

    def told(bound: float) -> tuple[str, ...]:
        return verify_fabric_plan(replace(closer, bound_in=bound), fabric("Oat"), asked, house(), Working.CUT_FIRST)

    assert () == told(9.5)
    assert ("10 in are called proved with a bound of 9 in",) == told(9.0)
