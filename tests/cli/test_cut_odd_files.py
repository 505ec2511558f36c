"""Odd but readable project files at the command that cuts: a finding or a plan, and the status that goes with it."""

from __future__ import annotations

from pathlib import Path

import pytest

from stitchflip.cutting.verify import verify_fabric_plan
from stitchflip.planning import plan as plan_project
from stitchflip.project import read_project_bytes
from tests.cli.conftest import Ask

LANTERN = (Path(__file__).parents[2] / "examples" / "lantern-walk.toml").read_text(encoding="utf-8")


def with_brass(told: str) -> str:
    """The runner, its first fabric told more of."""
    assert 1 == LANTERN.count('name = "Brass"\n')
    return LANTERN.replace('name = "Brass"\n', f'name = "Brass"\n{told}\n')


def test_fabric_narrower_than_its_strips_stops_the_piece(ask: Ask, tmp_path: Path) -> None:
    """Strips are cut 1½ wide; fabric ⅛ wide gives none, which is no plan to go shopping with: status 1."""
    (tmp_path / "narrow.toml").write_text(with_brass('usable_width = "1/8"'), encoding="utf-8")
    said = ask("cut", "narrow.toml", "--look", "0")

    assert (1, "") == (said.status, said.err)
    assert "too narrow for 1, 2, 3, 4, 17, 18, 19, 20" in " ".join(said.out.split())
    assert "Things to look at" in said.out
    assert 1 == ask("plan", "narrow.toml").status


@pytest.mark.parametrize(
    "told",
    [
        'usable_width = "3"',
        'usable_width = "4"',
        'usable_width = "120"',
        'usable_width = "400"',
        'on_hand = [{ wide = "1/4", long = "1/4" }]',
        'on_hand = [{ wide = "18", long = "21", count = 3 }]',
        'on_hand = [{ wide = "18", long = "21", count = 1000 }]\nonly_on_hand = true',
        'on_hand = [{ wide = "1 1/2", long = "42", count = 10 }]',
        'on_hand = [{ wide = "2 1/2", long = "42", count = 10 }]\nonly_on_hand = true',
        'on_hand = [{ wide = "1 1/2", long = "42", count = 10 }]\nprecut = true\nonly_on_hand = true',
        'on_hand = [{ wide = "300", long = "390", count = 10 }]',
        'washed = "washed"',
    ],
)
def test_odd_fabric_is_cut_and_every_plan_holds(ask: Ask, tmp_path: Path, told: str) -> None:
    """Every fabric's plan is looked at by the check that shares nothing with the search."""
    text = with_brass(told)
    (tmp_path / "odd.toml").write_text(text, encoding="utf-8")
    plan = plan_project(read_project_bytes(text.encode(), "odd.toml"), with_cures=False)
    own = {fabric.name: fabric for fabric in plan.project.fabrics}

    said = ask("cut", "odd.toml", "--fabric", "Brass", "--look", "0")

    assert (0, "") == (said.status, said.err)
    for cut in plan.fabrics:
        pieces = plan.pieces_by_fabric[cut.fabric]
        assert () == tuple(verify_fabric_plan(cut, own[cut.fabric], pieces, plan.numbers, plan.project.working))


@pytest.mark.parametrize(
    "told",
    [
        'usable_width = "0"',
        'usable_width = "-4"',
        "usable_width = nan",
        "usable_width = inf",
        'on_hand = [{ wide = "18", long = "0" }]',
        'on_hand = [{ wide = "18", long = "21", count = 0 }]',
        'on_hand = [{ wide = "18", long = "21", count = 1000000000 }]',
        "only_on_hand = true",
        "half_drop = true",
        'cut_along = "along"',
    ],
)
def test_fabric_that_makes_no_sense_is_a_mistake_in_its_line(ask: Ask, tmp_path: Path, told: str) -> None:
    """Status 3, the line named, nothing planned and nothing changed."""
    path = tmp_path / "wrong.toml"
    path.write_text(with_brass(told), encoding="utf-8")
    said = ask("cut", "wrong.toml", "--out", "mat")

    assert (3, "") == (said.status, said.out)
    assert "line 4" in said.err
    assert with_brass(told) == path.read_text(encoding="utf-8")
    assert not (tmp_path / "mat").exists()
