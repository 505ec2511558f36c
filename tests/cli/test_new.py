"""Starting a project."""

from pathlib import Path

import pytest

from stitchflip import read_project
from stitchflip.cli.starter_texts import STARTERS
from stitchflip.cli.starters import file_stem, starter_text, way_named
from stitchflip.errors import StitchflipError
from stitchflip.lengths import Unit
from stitchflip.planning import Severity, plan
from stitchflip.project.model import Way
from tests.cli.conftest import Ask


@pytest.mark.parametrize("unit", Unit)
@pytest.mark.parametrize("way", Way)
def test_a_starter_has_nothing_to_mend(way: Way, unit: Unit) -> None:
    """Every starter can be planned at once: nothing to stop and nothing to fix in it."""
    project = read_project(starter_text("Porch runner", way, unit))
    assert (way, unit) == (project.building.way, project.units)
    found = [finding.what for finding in plan(project).findings if finding.severity is not Severity.NOTE]
    assert [] == found


@pytest.mark.parametrize("unit", Unit)
@pytest.mark.parametrize("way", Way)
def test_the_values_noted_in_a_starter_are_the_ones_used(way: Way, unit: Unit) -> None:
    """Taking the # away from "my numbers" changes nothing: they are what is used when they are left out."""
    text = starter_text("Porch runner", way, unit)
    head, numbers = text.split("# [my_numbers]")
    used = read_project(head + "[my_numbers]" + numbers.replace("\n# ", "\n"))
    assert used.my_numbers != read_project(text).my_numbers
    as_is, said = plan(read_project(text), with_cures=False), plan(used, with_cures=False)
    assert as_is.numbers == said.numbers


def test_every_way_has_a_starter() -> None:
    """No way of building is left out."""
    assert set(Way) == set(STARTERS)


@pytest.mark.parametrize("unit", Unit)
def test_the_lines_that_join_blocks_can_be_used(unit: Unit) -> None:
    """Taking the # away from them makes a quilt of 4 x 4 string blocks: finished sizes and two seams."""
    text = starter_text("Porch quilt", Way.STRINGS, unit)
    assert "\n# [joined]\n" in text
    start = text.index("# [joined]")
    head, lines, rest = text[:start], text[start:].split("\n\n")[0], text[start:].split("\n\n", 1)[1]
    made = plan(read_project(head + lines.replace("# ", "", 1).replace("\n# ", "\n") + "\n\n" + rest))
    assert [] == [finding.what for finding in made.findings if finding.severity is Severity.STOP]
    assert 16 == made.project.blocks_in_one
    # four blocks of 8 (20.5) finished and the two outer seam allowances
    side = 4 * 8 + 0.5 if unit is Unit.INCH else (4 * 20.5 + 1.5) / 2.54
    assert made.quilt is not None
    assert (side, side) == pytest.approx((made.quilt.wide, made.quilt.high))


def test_new_writes_a_file_that_plan_reads(ask: Ask, tmp_path: Path) -> None:
    """The name becomes the file's name, and the next command is printed."""
    said = ask("new", "Aunt Ida's Runner", "--way", "pairs round the point")
    assert (0, "") == (said.status, said.err)
    path = tmp_path / "aunt-idas-runner.toml"
    assert "Aunt Ida's Runner" == read_project(path.read_text(encoding="utf-8")).name
    assert "stitchflip plan aunt-idas-runner.toml" in said.out
    assert 0 == ask("plan").status


def test_new_never_writes_over_a_file(ask: Ask, porch: Path) -> None:
    """The file that is there stays as it is, and the message says what to do."""
    before = porch.read_bytes()
    said = ask("new", "Porch")
    assert (2, "") == (said.status, said.out)
    assert "another name" in said.err
    assert before == porch.read_bytes()


@pytest.mark.parametrize(
    ("typed", "file"),
    [
        ("porch", "porch.toml"),
        ("porch.toml", "porch.toml"),
        ("Porch  Runner, 2", "porch-runner-2.toml"),
        ("Größe 10", "größe-10.toml"),
        ("花の道", "花の道.toml"),
        ('say "hi" \\ {wide}', "say-hi-wide.toml"),
    ],
)
def test_any_name_makes_a_plain_file_name(typed: str, file: str, ask: Ask, tmp_path: Path) -> None:
    """Letters of any language stay, what a shell would stumble over does not; the name itself is kept."""
    assert 0 == ask("new", typed).status
    text = (tmp_path / file).read_text(encoding="utf-8")
    assert " ".join(typed.removesuffix(".toml").split()) == read_project(text).name


@pytest.mark.parametrize("typed", ["", "   ", "!!!", ".toml", "x" * 121, "two\nlines", "no-such-folder/porch"])
def test_a_name_that_will_not_do_is_refused(typed: str, ask: Ask, tmp_path: Path) -> None:
    """Status 2, and nothing is written."""
    said = ask("new", typed)
    assert (2, "") == (said.status, said.out)
    assert said.err
    assert [] == list(tmp_path.iterdir())


def test_a_folder_that_is_there_may_stand_before_the_name(ask: Ask, tmp_path: Path) -> None:
    """`new gifts/porch` starts the project in that folder."""
    (tmp_path / "gifts").mkdir()
    assert 0 == ask("new", "gifts/porch").status
    assert (tmp_path / "gifts" / "porch.toml").is_file()


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("log cabin", Way.LOG_CABIN),
        ("Log-Cabin", Way.LOG_CABIN),
        ("courthouse", Way.COURTHOUSE),
        ("two-sided log cabin", Way.TWO_SIDED),
        ("rows", Way.ROWS),
        ("point", Way.POINTS),
        ("wonky", Way.WONKY),
        ("stitch and flip", Way.FOLDED_CORNERS),
        ("foundation", Way.FOUNDATION),
    ],
)
def test_a_way_is_known_by_its_name_or_enough_of_it(typed: str, meant: Way) -> None:
    """Spaces or hyphens, any case, and a part that only one way has."""
    assert meant is way_named(typed)


@pytest.mark.parametrize("typed", ["", "r", "spiral"])
def test_a_way_that_is_not_clear_lists_those_that_may_be_meant(typed: str) -> None:
    """The message names ways that would do."""
    with pytest.raises(StitchflipError, match=r"log cabin|round") as caught:
        way_named(typed)
    assert "usage.which-way" == caught.value.code


def test_an_unknown_unit_is_refused(ask: Ask, tmp_path: Path) -> None:
    """Status 2, both units named, nothing written."""
    said = ask("new", "Porch", "--units", "ells")
    assert 2 == said.status
    assert "--units cm" in said.err
    assert [] == list(tmp_path.iterdir())


def test_a_file_name_has_no_hyphens_at_its_ends() -> None:
    """Blanks and signs round the words do not show."""
    assert "porch" == file_stem("  ~Porch~ ")
