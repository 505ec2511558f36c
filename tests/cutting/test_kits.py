"""Kits: one purchase and one cutting for all, dealt out so that every bag has everything; values worked out by hand."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stitchflip.cutting import Piece
from stitchflip.cutting.kit_words import packing_lines, packing_slip, teacher_words
from stitchflip.cutting.kits import KitBinding, KitFabric, KitOrder, KitPlan, most_kits, plan_kits
from stitchflip.cutting.verify import verify_fabric_plan
from stitchflip.errors import CuttingError
from stitchflip.lengths import Unit
from stitchflip.project.model import Working
from stitchflip.project.numbers import Numbers
from tests.cutting.lists import CM, METRIC, YARD, counts, fabric, plain
from tests.twins.table import house


def strip(name: str, wide_cm: float, long_cm: float, count: int) -> Piece:
    """A strip of a mat in centimeters."""
    return Piece(name, wide_cm * CM, long_cm * CM, count, step=int(name))


# A breakfast mat 47 × 35 cm, courthouse steps in three fabrics round a clover that must stand upright. Bound with
# 6.5 cm: 164 round, 25 for tails, 4 × 1.5 for corners.
CLOVER = fabric("Clover", Unit.CM, one_way=True, price=14.0)
BUTTERMILK = fabric("Buttermilk", Unit.CM, price=12.0)
SLATE = fabric("Slate", Unit.CM, price=12.0)
POPPY = fabric("Poppy", Unit.CM)
MAT = KitOrder(
    how_many=4,
    fabrics=(
        KitFabric(CLOVER, (Piece("Center", 27 * CM, 15 * CM, kind="rectangle", can_turn=False),)),
        KitFabric(BUTTERMILK, (strip("1", 5, 27, 2), strip("3", 5, 22, 2))),
        KitFabric(SLATE, (strip("5", 5, 34, 2), strip("7", 5, 29, 2))),
        KitFabric(POPPY, (strip("9", 6, 41, 2), strip("11", 6, 38, 2))),
    ),
    binding=KitBinding("Poppy", 6.5 * CM, 195 * CM, 6.5 * CM),
    extra_in=0.0,
)


def checked(order: KitOrder, numbers: Numbers, unit: Unit) -> KitPlan:
    """The plan, after everything in it has been added up again."""
    plan = plan_kits(order, numbers, unit)
    for one, fabric_plan, pieces in zip(order.fabrics, plan.fabrics, plan.pieces, strict=True):
        binds = order.binding is not None and order.binding.fabric == one.fabric.name
        told = verify_fabric_plan(
            fabric_plan, one.fabric, pieces, numbers, Working.CUT_FIRST, plan.joined if binds else ()
        )
        assert () == told
        dealt = Counter[str]()
        for kit in plan.kits:
            for packed in kit.pieces:
                dealt[packed.piece.name] += packed.piece.count * (packed.fabric == one.fabric.name)
        cut = Counter({piece.name: piece.count for piece in pieces if piece.kind != "binding"})
        assert cut == Counter({name: count for name, count in dealt.items() if count})
    if plan.pool is not None:
        assert list(plan.pool.chains) == [chain for kit in plan.kits for chain in kit.bindings]
    return plan


def test_four_mats_are_one_purchase() -> None:
    """Strips of 105 cm: 4, 6, 8 and 8 for the binding; 40, 30, 40 and 110 cm to buy."""
    plan = checked(MAT, METRIC, Unit.CM)

    assert {5: 4} == {round(wide / CM): count for wide, count in counts(plan.fabrics[1]).items()}
    assert {5: 6} == {round(wide / CM): count for wide, count in counts(plan.fabrics[2]).items()}
    assert {6.0: 8, 6.5: 8} == {round(wide / CM, 1): count for wide, count in counts(plan.fabrics[3]).items()}
    assert [40, 30, 40, 110] == [round(one.buy_in / CM) for one in plan.fabrics]
    assert [1, 2, 3, 4] == [kit.number for kit in plan.kits]


def test_twelve_kits_and_a_spare_one_are_thirteen() -> None:
    """Thirteen mats: centers three to a row, so five rows 15 high; 13, 18 and 26 strips, and 26 for the binding.

    Centers 5 × 15 + 3 = 78 cm; Buttermilk 98 of 105 cm a mat, 13 × 5 + 3 = 68; Slate three to a strip at most,
    52 ÷ 3 = 18 × 5 + 3 = 93; Poppy two to a strip, 26 × 6 + 26 × 6.5 + 3 = 328.
    """
    plan = checked(replace(MAT, how_many=12, spare_kits=1), METRIC, Unit.CM)

    assert [80, 70, 100, 330] == [round(one.buy_in / CM) for one in plan.fabrics]
    assert [False] * 12 + [True] == [kit.is_spare for kit in plan.kits]
    assert plan.pool is not None
    assert (26, 26) == (plan.pool.strips, plan.pool.bound)


def test_one_kit_costs_its_share_of_what_is_bought() -> None:
    """40 cm at 14, 30 and 40 cm at 12 a meter: 5.60 + 3.60 + 4.80 = 14.00 for four; Poppy has no price."""
    cost = checked(MAT, METRIC, Unit.CM).cost

    assert 14.0 == pytest.approx(cost.total)
    assert (3.5, ("Poppy",)) == (cost.of_one, cost.unpriced)


def test_kits_given_out_pay_for_the_spare_one() -> None:
    """½ yd at 10 a yard is 5; shared by three kits 1.67, the fourth is spare."""
    order = KitOrder(3, (KitFabric(fabric("Moss", price=10.0), (Piece("A", 8, 20, 1, "rectangle"),)),), None, 1, 0.0)
    plan = checked(order, house(), Unit.INCH)

    assert 18 == plan.fabrics[0].buy_in
    assert (5.0, 1.67) == (plan.cost.total, plan.cost.of_one)


def test_strips_of_a_kit_are_cut_half_an_inch_longer() -> None:
    """11 and 13 in become 11½ and 13½; the center keeps its size; a strip that fills the width is not made longer."""
    pieces = (Piece("Center", 8.25, 8.25, kind="rectangle"), Piece("1", 2.5, 11, 2, step=1), Piece("2", 2.5, 39.75))
    plan = checked(KitOrder(2, (KitFabric(fabric("Oat"), pieces),)), house(), Unit.INCH)

    assert [8.25, 11.5, 40] == [packed.piece.long for packed in plan.kits[0].pieces]
    assert [0, 0.5, 0.25] == [packed.extra_in for packed in plan.kits[0].pieces]


def test_strips_of_a_metric_kit_are_cut_a_centimeter_and_a_half_longer() -> None:
    """27 cm becomes 28½; the strips of the mats are still 4, 6 and 8."""
    plan = checked(replace(MAT, extra_in=None), METRIC, Unit.CM)

    wide = round(6 * CM, 6)

    assert 28.5 * CM == pytest.approx(plan.kits[0].pieces[1].piece.long)
    assert [4, 6, 8] == [*(sum(counts(one).values()) for one in plan.fabrics[1:3]), counts(plan.fabrics[3])[wide]]


def test_one_kit_more_names_what_has_to_be_bought() -> None:
    """A fifth mat takes more Poppy than is bought, and nothing else.

    Five: centers 2 rows; Buttermilk 5 × 5 + 3 = 28; Slate 7 × 5 + 3 = 38; Poppy 10 × 6 + 10 × 6.5 + 3 = 128.
    """
    plan = checked(MAT, METRIC, Unit.CM)

    assert [("Poppy", 130)] == [(name, round(buy / CM)) for name, buy in plan.one_more]


def test_the_slip_of_a_bag_lists_everything_in_it() -> None:
    """One line a size, with names and counts; the binding with its strips, made and needed."""
    plan = checked(MAT, METRIC, Unit.CM)

    assert (
        "Kit 2 of 4: 15 pieces",
        "Clover: 1 cut 27 × 15 cm (center)",
        "Buttermilk: 2 cut 5 × 27 cm (strip 1)",
        "Buttermilk: 2 cut 5 × 22 cm (strip 3)",
        "Slate: 2 cut 5 × 34 cm (strip 5)",
        "Slate: 2 cut 5 × 29 cm (strip 7)",
        "Poppy: 2 cut 6 × 41 cm (strip 9)",
        "Poppy: 2 cut 6 × 38 cm (strip 11)",
        "Binding, Poppy 6.5 cm wide: 2 whole strips joined to 203.5 cm (195 cm are needed)",
    ) == tuple(plain(line) for line in packing_slip(plan.kits[1], plan, Unit.CM))


def test_a_part_strip_and_longer_strips_are_told_on_the_slip() -> None:
    """A binding of 56 in takes a strip of 40 and half a one; strips cut longer are to be trimmed."""
    order = KitOrder(
        2,
        (KitFabric(fabric("Oat"), (Piece("1", 2.5, 11, 4, step=1),)),),
        KitBinding("Oat", 2.5, 56, 2.5),
        spare_kits=1,
    )
    plan = checked(order, house(), Unit.INCH)
    slip = tuple(plain(line) for line in packing_slip(plan.kits[2], plan, Unit.INCH))

    assert "Spare kit: 6 pieces" == slip[0]
    assert "Oat: 4 cut 2½ × 11½ in (strip 1)" == slip[1]
    assert "Strips are cut up to ½ in longer than they are sewn: trim each after opening it." == slip[-1]
    first = tuple(plain(line) for line in packing_slip(plan.kits[0], plan, Unit.INCH))
    assert "Binding, Oat 2½ in wide: 1 whole strip and one of 20 in joined to 57½ in (56 in are needed)" == first[2]


def test_shared_binding_strips_are_cut_as_the_bags_ask() -> None:
    """Three bindings of 56 in come from five strips of 40: one strip is shared, and the teacher is told to cut it."""
    order = KitOrder(2, (KitFabric(fabric("Oat"), ()),), KitBinding("Oat", 2.5, 56, 2.5), spare_kits=1)
    words = [plain(line) for line in teacher_words(checked(order, house(), Unit.INCH), Unit.INCH)]
    binding = next(line for line in words if line.startswith("Binding"))

    assert binding.endswith("Cut the shorter lengths as the bags ask for them")


def test_the_teacher_is_told_what_to_buy_and_what_one_kit_costs() -> None:
    """Purchases, the binding's strips, the share of one kit, and what one kit more takes."""
    plan = checked(MAT, METRIC, Unit.CM)

    assert (
        "4 kits, cut together:",
        "Clover: 40 cm, 105 cm usable width, 7 cm to spare",
        "Buttermilk: 30 cm, 105 cm usable width, 7 cm to spare",
        "Slate: 40 cm, 105 cm usable width, 7 cm to spare",
        "Poppy: 1.1 m, 105 cm usable width, 7 cm to spare",
        (
            "Binding: 8 strips for 4 pieces, 195 cm for each piece, its own joins charged; "
            "no way of joining does with fewer"
        ),
        "Fabric for one kit: 3.50, all that is bought shared by 4; no price is known for Poppy",
        "One kit more: buy Poppy 1.3 m instead",
    ) == tuple(plain(line) for line in teacher_words(plan, Unit.CM))


def test_equal_sizes_share_a_line_and_names_are_told_once() -> None:
    """Two strips of one size and two names, and one of the first name again."""
    pieces = (Piece("1", 2.5, 11, 2, step=1), Piece("2", 2.5, 11, 1, step=2))
    plan = checked(KitOrder(1, (KitFabric(fabric("Oat"), pieces),), extra_in=0.0), house(), Unit.INCH)
    (line,) = packing_lines(plan.kits[0], Unit.INCH)

    assert ("Oat", "strips 1, 2", 3, "2½ × 11 in") == (line.fabric, line.what, line.count, plain(line.size))


def test_most_kits_from_what_is_on_hand() -> None:
    """Half a yard of Larch, 17 in after straightening, gives eight strips 2 in wide; a kit takes one and a half."""
    larch = fabric("Larch", on_hand=[{"name": "length", "wide": "40", "long": "18"}], only_on_hand=True)
    order = KitOrder(1, (KitFabric(larch, (Piece("1", 2, 20, 3, step=1),)),), extra_in=0.0)

    assert 5 == most_kits(order, house(), Unit.INCH)
    assert 4 == most_kits(replace(order, spare_kits=1), house(), Unit.INCH)
    long_ones = KitOrder(1, (KitFabric(larch, (Piece("1", 2, 50, 1, step=1),)),), extra_in=0.0)
    assert 0 == most_kits(long_ones, house(), Unit.INCH)


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"how_many": 0}, "cutting.no-kit"),
        ({"spare_kits": -1}, "cutting.no-kit"),
        ({"how_many": 10**9}, "cutting.too-many-kits"),
        ({"binding": KitBinding("Moss", 1, 60, 1)}, "cutting.no-binding-fabric"),
    ],
)
def test_orders_that_cannot_be_meant_are_refused(changes: dict[str, Any], code: str) -> None:
    """No kit, a thousand million, a binding of a fabric that is not there: said at once, with what would do."""
    with pytest.raises(CuttingError) as caught:
        plan_kits(replace(MAT, **changes), METRIC, Unit.CM)

    assert code == caught.value.code
    assert caught.value.fix.endswith(".")


def test_there_is_no_most_of_what_can_be_bought() -> None:
    """Every fabric of the mats can be bought."""
    with pytest.raises(CuttingError, match="more can be bought of every fabric"):
        most_kits(MAT, METRIC, Unit.CM)


@given(
    st.integers(1, 9),
    st.integers(0, 1),
    st.lists(st.tuples(st.integers(4, 12), st.integers(16, 120), st.integers(1, 4)), min_size=1, max_size=3),
    st.integers(80, 900),
)
@settings(max_examples=25, deadline=None)
def test_every_order_of_kits_adds_up(how_many: int, spare: int, sizes: list[tuple[int, int, int]], need: int) -> None:
    """Whatever is in a kit, all kits together are what is cut, and every binding is long enough."""
    pieces = tuple(
        Piece(str(step), wide / 4, long / 4, count, step=step) for step, (wide, long, count) in enumerate(sizes, 1)
    )
    order = KitOrder(
        how_many, (KitFabric(fabric("Fog"), pieces),), KitBinding("Fog", 2.5, need / 4, 2.5), spare_kits=spare
    )
    plan = checked(order, house(), Unit.INCH)

    assert all(chain.made >= need / 4 - 1e-6 for kit in plan.kits for chain in kit.bindings)
    assert plan.fabrics[0].buy_in >= plan.fabrics[0].need_in
    assert YARD / 8 == plan.fabrics[0].buy_in / round(plan.fabrics[0].buy_in / (YARD / 8))
