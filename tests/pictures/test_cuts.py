"""Cutting diagrams: rows with pieces over one another, folds, precut strips, strips trimmed while sewing."""

from __future__ import annotations

from dataclasses import replace

import pytest

from stitchflip import pictures
from stitchflip.cutting.hand import order_of_hand
from stitchflip.cutting.model import FabricPlan, OneStrip, Piece, Row, RowStack, StackPiece, Status, StripPlan
from stitchflip.pictures.cut_bands import bands_of
from stitchflip.pictures.model import Area, Badge, Figure, Label, Line, Text
from stitchflip.planning.model import Plan

STACKED = Row(
    12.0,
    (("Tall", 8.0), ("Low", 6.0), ("Low", 6.0), ("Small", 5.0)),
    turned=False,
    stacks=(
        RowStack(8.0, (StackPiece("Tall", 8.0, 12.0),)),
        RowStack(6.0, (StackPiece("Low", 6.0, 4.0), StackPiece("Low", 6.0, 4.0), StackPiece("Small", 5.0, 3.5))),
    ),
)
"""A row 12 in high: a piece 8 × 12, and beside it two of 6 × 4 and one of 5 × 3½ over one another."""
PIECES = (
    Piece("Tall", 8, 12, kind="rectangle"),
    Piece("Low", 6, 4, 2, kind="rectangle"),
    Piece("Small", 5, 3.5, kind="rectangle"),
)


def only(plan: FabricPlan, *, width: float = 40.0, rows: tuple[Row, ...] = (), **parts: object) -> FabricPlan:
    """The fabric with nothing cut from it but these rows, from 1/2 yd."""
    used = sum(row.height for row in rows)
    plain = replace(
        plan,
        usable_width=width,
        strip_plans=(),
        rows=rows,
        used_in=used,
        need_in=used + 1,
        buy_in=18,
        spare_in=17 - used,
    )
    return replace(plain, **parts)  # type: ignore[arg-type]


def area_of(polygon: tuple[tuple[float, float], ...]) -> float:
    """Shoelace area."""
    pairs = zip(polygon, polygon[1:] + polygon[:1], strict=True)
    return sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairs) / 2


def drawn(figure: Figure, what: str) -> list[float]:
    """Areas of what is drawn as that."""
    return sorted(area_of(item.points) for item in figure.items if isinstance(item, Area) and item.what == what)


def plan_with(plan: Plan, pieces: tuple[Piece, ...]) -> Plan:
    """The plan with other pieces of its first fabric."""
    return replace(plan, pieces_by_fabric={"Sand": pieces})


def test_pieces_over_one_another_fill_their_part_of_the_row(hand_plan: Plan, sand_cuts: FabricPlan) -> None:
    """8 × 12, 6 × 4 twice, 5 × 3½; falls off: 1 × 3½ beside the small one, 6 × ½ below it, 26 × 12 at the end."""
    figure = pictures.cuts(plan_with(hand_plan, PIECES), only(sand_cuts, rows=(STACKED,)))

    assert [17.5, 24.0, 24.0, 96.0] == pytest.approx(drawn(figure, "piece"))
    assert [3.0, 3.5, 26 * 12.0] == pytest.approx(
        [one for one in drawn(figure, "leftover") if abs(one - 20 * 5) > 1e-9]
    )


def test_cells_of_a_row_lie_beside_one_another(hand_plan: Plan, sand_cuts: FabricPlan) -> None:
    """No two overlap, and together they are the whole row, 40 × 12."""
    order = order_of_hand(only(sand_cuts, rows=(STACKED,)), PIECES, hand_plan.numbers, hand_plan.project.units)
    ((cells),) = bands_of(order.steps[-1], {})

    assert 480 == pytest.approx(sum(cell.wide * cell.high for cell in cells))
    for place, one in enumerate(cells):
        for other in cells[place + 1 :]:
            across = min(one.x + one.wide, other.x + other.wide) - max(one.x, other.x)
            along = min(one.y + one.high, other.y + other.high) - max(one.y, other.y)
            assert min(across, along) <= 1e-9


@pytest.mark.parametrize(
    ("width", "wide", "words"),
    [(20.0, 20.0, "one layer"), (40.0, 20.0, "folded"), (60.0, 15.0, "folded twice")],
)
def test_fabric_is_drawn_as_it_lies(
    hand_plan: Plan, sand_cuts: FabricPlan, width: float, wide: float, words: str
) -> None:
    """A ruler of 23½ in cuts 20 in as it is, 40 in folded once to 20, 60 in folded twice to 15."""
    row = Row(4.0, (("Low", 6.0),), turned=False)
    figure = pictures.cuts(plan_with(hand_plan, PIECES), only(sand_cuts, width=width, rows=(row,)))
    (band,) = [item for item in figure.items if isinstance(item, Area) and item.what == "band"]

    assert wide == max(x for x, _ in band.points) - min(x for x, _ in band.points)
    assert any(words in text for item in figure.items if hasattr(item, "texts") for text in item.texts)
    folds = [item for item in figure.items if isinstance(item, Line) and item.what == "fold"]
    assert (words != "one layer") == bool(folds)


def test_precut_strips_are_drawn_without_anything_to_cut_across(hand_plan: Plan, sand_cuts: FabricPlan) -> None:
    """Two strips of 20 in from a bundle, each gives a piece of 12 in; nothing is bought."""
    strips = tuple(OneStrip(2.5, 20.0, ((label, 12.0),), "bundle", 8.0) for label in ("1", "2"))
    own = StripPlan(2.5, strips, 2, Status.PROVED, as_you_go=False, spare_in=8.0)
    plan = only(sand_cuts, strip_plans=(own,), need_in=0.0, buy_in=0.0, spare_in=0.0)
    pieces = (Piece("1", 2.5, 12, step=1), Piece("2", 2.5, 12, step=2))
    figure = pictures.cuts(plan_with(hand_plan, pieces), plan)

    assert [30.0, 30.0] == drawn(figure, "piece")
    assert [] == drawn(figure, "band")
    assert "bundle" in [item.text for item in figure.items if isinstance(item, Text)]


def test_strips_trimmed_while_sewing_show_what_they_are_planned_for(hand_plan: Plan, sand_cuts: FabricPlan) -> None:
    """10 and 12 in from one strip of 40: 18 in are left of it."""
    strips = (OneStrip(2.5, 40.0, (("1", 10.0), ("2", 12.0)), "width of fabric", 18.0),)
    own = StripPlan(2.5, strips, 1, Status.PROVED, as_you_go=True, spare_in=18.0)
    plan = only(sand_cuts, strip_plans=(own,), used_in=2.5, need_in=3.5, buy_in=9.0, spare_in=5.5)
    pieces = (
        Piece("1", 2.5, 10.5, step=1, shortest=10, cut_first=False),
        Piece("2", 2.5, 12.5, step=2, shortest=12, cut_first=False),
    )
    figure = pictures.cuts(plan_with(hand_plan, pieces), plan)

    assert [25.0, 30.0] == pytest.approx(drawn(figure, "piece"))
    assert {"1", "2"} <= {item.text for item in figure.items if isinstance(item, Label)}
    assert "3" in [item.text for item in figure.items if isinstance(item, Badge)]


def test_no_words_in_a_cutting_diagram_are_smaller_than_six_points(hand_plan: Plan, sand_cuts: FabricPlan) -> None:
    """Smaller print is not read at arm's length (common practice, no source)."""
    many = tuple(Piece(str(step), 2, 3.25, step=step) for step in range(1, 13))
    row = Row(2.0, tuple((piece.name, 3.25) for piece in many), turned=False)
    figure = pictures.cuts(plan_with(hand_plan, (*PIECES, *many)), only(sand_cuts, rows=(STACKED, row)))
    sizes = [
        item.least if isinstance(item, Label) else item.size for item in figure.items if isinstance(item, Label | Text)
    ]

    assert 6 <= min(sizes)


def test_words_beside_alike_strips_keep_clear_of_the_grain_arrow(hand_plan: Plan, sand_cuts: FabricPlan) -> None:
    """The arrow stands nearer to the fabric than to the opened rows: the words need the rest."""
    rows = (Row(4.0, (("Low", 6.0),), turned=False),) * 2
    figure = pictures.cuts(plan_with(hand_plan, PIECES), only(sand_cuts, rows=rows))
    grain = next(item for item in figure.items if isinstance(item, Line) and item.what == "grain")
    opened = min(x for item in figure.items if isinstance(item, Area) and item.what == "piece" for x, _ in item.points)
    fabric = max(
        x for item in figure.items if isinstance(item, Area) and item.what == "selvage" for x, _ in item.points
    )

    assert 7 < opened - grain.points[0][0]
    assert grain.points[0][0] - fabric < 1
