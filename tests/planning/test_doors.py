"""From the shelf to a size: the largest piece that strips or batting on hand give."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from stitchflip.errors import BuildError
from stitchflip.lengths import Length
from stitchflip.planning import plan
from stitchflip.planning.doors import from_batting, from_strips
from stitchflip.project import Project, project_from, read_project

EXAMPLES = Path(__file__).parents[2] / "examples"


def inches(value: float) -> Length:
    """A length, typed."""
    return Length.of_inches(value)


def rows(strips: int, **tables: Any) -> Project:
    """Rows across a piece 12 × 15½, from one end, all of one fabric of which there are so many precut strips."""
    return project_from(
        {
            "name": "From a roll",
            "squared_up": {"wide": "12", "long": "15 1/2"},
            "building": {"way": "rows of strips", "rows_from": "one end"},
            "rounds": [{"cut": "2 1/2", "fabric": "Roll"}] * 8,
            "fabrics": [
                {"name": "Roll", "on_hand": [{"wide": "2 1/2", "long": "40", "count": strips}]},
                {"name": "Bound"},
            ],
            "binding": {"fabric": "Bound"},
            "my_numbers": {"draw_up": 0.0, "fold_loss": "0"},
            **tables,
        }
    )


def test_four_precut_strips_give_eight_rows() -> None:
    """A row is 12 + 2 × ½ reach + ½ extra = 13½ long: two of a strip of 40. Eight rows cover 8 × 2 + ½ = 16½.

    Less ½ in of reach at both ends that is 15½, and 12 wide in the same proportion; half an inch more takes a ninth.
    """
    found = from_strips(rows(4))
    assert (12.0, 15.5) == (found.wide, found.long)
    assert ("Roll",) == found.runs_out


def test_one_strip_less_gives_a_smaller_piece() -> None:
    """At 12 × 15½ three strips give six rows and eight are needed. At 15 long it is 15 × 12 ÷ 15½ = 11.61 wide, 11½.

    A row of 11½ + 1 + ½ = 13 comes three from a strip of 40: nine rows, and (15 + 1 - ½) ÷ 2 = 7¾, so eight, do.
    Anything longer than 15 is wider than 11¾, where a row is over 13¼ and comes only twice from a strip.
    """
    found = from_strips(rows(3))
    assert (11.5, 15.0) == (found.wide, found.long)


def test_a_box_of_fat_quarters_goes_a_little_further() -> None:
    """The kitchen runner of 12 × 56 out of seven quarters: Fog has 7 of 17 in used and gives one more row each side.

    That row shows 1½: the last raw edge goes from 29¼ to 30¾, less 18 folds of 1/32, 30 3/16. The trim line of 58 lies
    at 29 ÷ 0.985 = 29.44 and ½ in of reach at 29.94: covered; of 58½ at 29.70 and 30.20: not quite. The row after it
    is Marigold, 15 of whose 17 in are cut, and two more of 1½ do not come out of it.
    """
    found = from_strips(read_project((EXAMPLES / "tin-roof.toml").read_text(encoding="utf-8")))
    assert (58.0, ("Marigold",)) == (found.long, found.runs_out)


def test_the_size_found_is_planned_with_nothing_short() -> None:
    """Planned by itself with nothing to be bought, every fabric on hand is enough."""
    found = from_strips(rows(5))
    made = plan(found.resized.project, with_cures=False)
    assert [] == [fabric.fabric for fabric in made.fabrics if fabric.short_in > 0 or fabric.left_out]
    assert [] == [one.what for one in made.findings if one.code.startswith("coverage")]


def test_nothing_on_hand_is_no_start() -> None:
    """The error says where to list what there is."""
    bare = rows(4, fabrics=[{"name": "Roll"}, {"name": "Bound"}])
    with pytest.raises(BuildError, match="on_hand"):
        from_strips(bare)


def test_too_little_for_any_size_is_said() -> None:
    """One snippet covers nothing."""
    fabrics = [{"name": "Roll", "on_hand": [{"wide": "2 1/2", "long": "2"}]}, {"name": "Bound"}]
    with pytest.raises(BuildError, match="does not cover"):
        from_strips(rows(4, fabrics=fabrics))


def test_the_base_of_the_lantern_gives_its_size_back() -> None:
    """15½ - 2 × 1 = 13½, drawn in by 1.5 % 13.30: down to 13¼. 48 - 2 × 1½ = 45, drawn in 44.33: down to 44."""
    lantern = read_project((EXAMPLES / "lantern-walk.toml").read_text(encoding="utf-8"))
    found = from_batting(lantern, inches(15.5), inches(48))
    assert ((13.25, 44.0), (1.0, 1.5)) == ((found.wide, found.long), found.spare)


def test_half_a_bat_gives_a_mat() -> None:
    """34 - 2 = 32, drawn in 31.52: 31½. 45 - 2 = 43, drawn in 42.36: 42 (over a yard in half inches).

    In the proportion of a runner of 12 × 72 it is 7 × 42, where the length is the limit.
    """
    runner = rows(4, squared_up={"wide": "12", "long": "72"}, my_numbers={})
    found = from_batting(runner, inches(34), inches(45))
    assert ((31.5, 42.0), (7.0, 42.0)) == ((found.wide, found.long), found.in_proportion)


def test_a_bat_cut_to_a_tenth_is_used_to_the_half_inch() -> None:
    """Bases stand on half inches: of 33.8 only 33½ can be used: 31½ × 0.985 = 31.03, down to 31."""
    found = from_batting(rows(4, my_numbers={}), inches(33.8), inches(45))
    assert 31.0 == found.wide


def test_a_scrap_of_batting_is_refused() -> None:
    """2 in of batting is all spare."""
    with pytest.raises(BuildError, match="nothing beside the spare"):
        from_batting(rows(4), inches(2), inches(45))


def test_a_metric_base_gives_its_size_back() -> None:
    """52 - 4 = 48, drawn in 47.28: 47 cm. 40 - 4 = 36, drawn in 35.46: 35 cm (in steps of half a centimeter)."""
    tray = read_project((EXAMPLES / "morning-tray.toml").read_text(encoding="utf-8"))
    found = from_batting(tray, Length.of_cm(52), Length.of_cm(40))
    assert pytest.approx((47.0, 35.0)) == (found.wide * 2.54, found.long * 2.54)
