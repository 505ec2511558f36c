"""Another size at the command line, and new projects that begin with a table, a bed or a piece of batting."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from stitchflip import read_project
from stitchflip.cli.status import UsageError
from stitchflip.cli.typed_sizes import length_typed, size_typed
from stitchflip.lengths import Length, Unit
from tests.cli.conftest import Ask

EXAMPLES = Path(__file__).parents[2] / "examples"


def project_in(path: Path) -> object:
    """The project in a file."""
    return read_project(path.read_text(encoding="utf-8"))


def test_the_size_is_said_and_nothing_is_written(ask: Ask, porch: Path) -> None:
    """The new size beside the old, what was done, what changes; the file stays as it was."""
    before = porch.read_bytes()
    said = ask("resize", porch, "--to", "18 × 18")
    assert (0, "") == (said.status, said.err)
    assert said.out.splitlines()[0].startswith("Porch square · squared up 18 × 18 in (wide × long) · was 12 × 12 in")
    for head in ("Does it fit?", "What was done", "What changes", "binding strips"):
        assert head in said.out
    assert before == porch.read_bytes()
    assert [porch.name] == [path.name for path in porch.parent.iterdir()]


def test_the_new_file_keeps_the_notes_of_the_old(ask: Ask, porch: Path) -> None:
    """Written only to the name given, with the comments in it, and it can be planned."""
    porch.write_text("# for the porch\n" + porch.read_text(encoding="utf-8"), encoding="utf-8")
    said = ask("resize", porch, "--to", "18x18", "-o", "large")
    assert (0, "") == (said.status, said.err)
    large = porch.parent / "large.toml"
    assert large.read_text(encoding="utf-8").startswith("# for the porch\n")
    assert "stitchflip plan large.toml" in said.out
    assert ask("plan", large).out.startswith("Porch square · squared up 18 × 18 in")


def test_a_file_that_is_there_is_never_written_over_without_force(ask: Ask, porch: Path) -> None:
    """Not even the one it comes from."""
    before = porch.read_bytes()
    said = ask("resize", porch, "--to", "18 x 18", "--out", porch)
    assert (2, "") == (said.status, said.out)
    assert "there already" in said.err
    assert before == porch.read_bytes()
    assert 0 == ask("resize", porch, "--to", "18 x 18", "--out", porch, "--force").status
    assert before != porch.read_bytes()
    assert [porch.name] == [path.name for path in porch.parent.iterdir()]


def test_a_folder_that_is_not_there_is_said(ask: Ask, porch: Path) -> None:
    """No file is half written."""
    said = ask("resize", porch, "--to", "18 x 18", "--out", porch.parent / "none" / "large.toml")
    assert (2, "") == (said.status, said.out)
    assert "cannot be written" in said.err


def test_the_other_unit_is_a_redraft(ask: Ask, porch: Path) -> None:
    """12 in becomes 30 cm, strips of 2 in (1½ shows, 3.8 cm, to 4) are cut 5.5 cm, and the loss of notes is said."""
    said = ask("resize", porch, "--unit", "cm", "-o", "metric.toml")
    assert (0, "") == (said.status, said.err)
    assert "Drafted anew with seams of 0.75 cm" in said.out
    assert "notes of the old file are not in it" in said.out
    metric = read_project((porch.parent / "metric.toml").read_text(encoding="utf-8"))
    assert (Unit.CM, Length.of_cm(30)) == (metric.units, metric.squared_up.wide)
    assert Length.of_cm(5.5) == metric.rounds[0].cut


def test_sizes_behind_another_unit_are_in_that_unit(ask: Ask, porch: Path) -> None:
    """--unit cm --to "40 x 40" is 40 cm."""
    ask("resize", porch, "--unit", "cm", "--to", "40 x 40", "-o", "metric.toml")
    metric = read_project((porch.parent / "metric.toml").read_text(encoding="utf-8"))
    assert Length.of_cm(40) == metric.squared_up.long


def test_in_proportion_and_by_strip_width(ask: Ask, porch: Path) -> None:
    """--keep takes the beginning of a word; strips of 2½ make fewer rounds do."""
    said = ask("resize", porch, "--to", "24 x 24", "--keep", "prop", "--out", "double.toml")
    assert 0 == said.status
    double = read_project((porch.parent / "double.toml").read_text(encoding="utf-8"))
    assert double.center is not None
    assert Length.of_inches(9.5) == double.center.cut
    assert 0 == ask("resize", porch, "--strip", "3").status


def test_one_document_and_nothing_else(ask: Ask, porch: Path) -> None:
    """--json names sizes, changes, purchases, findings and the file."""
    said = ask("resize", porch, "--to", "18 x 18", "--json", "-o", "large.toml")
    document = json.loads(said.out)
    assert 18 == document["squared_up"]["after"]["wide_in"]
    assert "large.toml" == document["written"]
    assert {"path": ["squared_up", "wide"], "to": "18"} in document["changes"]
    assert {"gone", "come"} == set(document["findings"])
    assert {"Print", "Light", "Dark"} == {one["fabric"] for one in document["purchases"]}


def test_a_wrong_size_in_json_is_still_one_document(ask: Ask, porch: Path) -> None:
    """The error, with its exit status in it."""
    said = ask("resize", porch, "--to", "ten", "--json")
    assert 2 == said.status
    assert 2 == json.loads(said.out)["exit_status"]


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ((), "No new size"),
        (("--to", "0 x 4"), "too small"),
        (("--to", "16 x 6000"), "larger than any piece"),
        (("--to", "1 x 2 x 3"), "more than two"),
        (("--to", "wide"), "not a length"),
        (("--strip", "-2"), "below zero"),
        (("--unit", "ell", "--to", "4 x 4"), "no unit"),
        (("--keep", "", "--to", "4 x 4"), "can be kept"),
        (("--largest-from", "thread"), "nothing to start from"),
        (("--largest-from", "batting"), "No batting is on hand"),
        (("--largest-from", "strips", "--to", "4 x 4"), "by itself"),
    ],
)
def test_wrong_words_are_wrong_usage(words: tuple[str, ...], says: str, ask: Ask, porch: Path) -> None:
    """One sentence that says what is wrong and one that says what would do; status 2, nothing on standard output."""
    said = ask("resize", porch, *words)
    assert (2, "") == (said.status, said.out)
    assert says in said.err
    assert "Traceback" not in said.err


@pytest.mark.parametrize(
    ("words", "says"), [(("--strip", "1/2", "--to", "20 x 20"), "seams"), (("--largest-from", "strips"), "on_hand")]
)
def test_what_no_piece_can_be_made_of_is_status_three(words: tuple[str, ...], says: str, ask: Ask, porch: Path) -> None:
    """Strips that are all seam, and a shelf with nothing on it."""
    said = ask("resize", porch, *words)
    assert (3, "") == (said.status, said.out)
    assert says in said.err


def test_a_stop_in_the_new_plan_ends_with_one(ask: Ask) -> None:
    """The runner from fat quarters does not reach twice its length with what is on hand."""
    said = ask("resize", EXAMPLES / "tin-roof.toml", "--to", "12 x 112")
    assert 1 == said.status
    assert "stop" in said.out


def test_as_far_as_the_shelf_goes(ask: Ask) -> None:
    """The quarters of the kitchen runner give 58 in."""
    said = ask("resize", EXAMPLES / "tin-roof.toml", "--largest-from", "strips")
    assert "× 58 in" in said.out.splitlines()[0]


def test_as_far_as_the_batting_goes(ask: Ask, porch: Path) -> None:
    """20 × 30 - 2 × 1, drawn in by 1.5 %: 17.73 × 27.58, of which a square is 17½ in steps of ¼: 17¾ is too much."""
    text = porch.read_text(encoding="utf-8") + '\n[batting]\non_hand = [{ wide = "20", long = "30" }]\n'
    porch.write_text(text, encoding="utf-8")
    said = ask("resize", porch, "--largest-from", "batting")
    assert "squared up 17½ × 17½ in" in said.out.splitlines()[0]


@pytest.mark.parametrize(
    ("text", "unit", "expected"),
    [
        ("16 x 60", Unit.INCH, (16, 60)),
        ("16½×60", Unit.INCH, (16.5, 60)),
        ("16 1/2 in × 60 in", Unit.CM, (16.5, 60)),
        ("40 x 120 cm", Unit.INCH, (40 / 2.54, 120 / 2.54)),
        ("1 yd by 2 yd", Unit.INCH, (36, 72)),
        ('16" x 60"', Unit.CM, (16, 60)),
        ("40X120", Unit.CM, (40 / 2.54, 120 / 2.54)),
    ],
)
def test_sizes_are_read_as_they_are_typed(text: str, unit: Unit, expected: tuple[float, float]) -> None:
    """With any sign between, with built-in fractions, with one unit for both or one for each."""
    wide, long = size_typed(text, unit, "--to")
    assert long is not None
    assert pytest.approx(expected, abs=1e-3) == (wide.inches, long.inches)


def test_a_least_length_is_named() -> None:
    """Nothing may hang over by less than nothing."""
    assert Length(0) == length_typed("0", Unit.INCH, "--hang", least=Length(0))
    with pytest.raises(UsageError, match="below zero"):
        length_typed("-1", Unit.INCH, "--hang", least=Length(0))


# --- new projects ------------------------------------------------------------------------------------------


def test_a_new_runner_for_a_table(ask: Ask, tmp_path: Path) -> None:
    """36 × 60 and 6 at both ends: 12 × 72, written as the table's and not as a size; its notes stay."""
    said = ask("new", "Kitchen", "--way", "rows of strips", "--table", "36 x 60", "--hang", "6")
    assert (0, "") == (said.status, said.err)
    assert "12 × 72 in" in said.out
    text = (tmp_path / "kitchen.toml").read_text(encoding="utf-8")
    runner = read_project(text)
    assert (None, None) == (runner.squared_up.wide, runner.squared_up.long)
    assert "# Your own numbers" in text
    planned = ask("plan", "kitchen.toml")
    assert 0 == planned.status
    assert planned.out.startswith("Kitchen · squared up 12 × 72 in")


def test_a_new_quilt_for_a_bed(ask: Ask, tmp_path: Path) -> None:
    """Queen 60 × 80, drop 12, tuck 14: 84 × 106. Blocks of 12½ finish 12 and join with ⅝: 12⅝ n - ⅝ + ½.

    7 are 88¼ and 6 are 75⅝; 9 are 113½ and 8 are 100⅞.
    """
    said = ask("new", "Bed", "--bed", "queen", "--drop", "12", "--tuck", "14")
    assert (0, "") == (said.status, said.err)
    assert "84 × 106 in: 7 × 9 blocks of 12½ in come to 88¼ × 113½ in" in said.out
    quilt = read_project((tmp_path / "bed.toml").read_text(encoding="utf-8"))
    assert quilt.joined is not None
    assert (7, 9) == (quilt.joined.across, quilt.joined.down)
    assert 0 == ask("plan", "bed.toml").status


def test_a_new_quilt_for_a_metric_bed_by_its_measures(ask: Ask) -> None:
    """90 × 200 with the usual drop of 30: 150 × 230 cm."""
    said = ask("new", "Bett", "--bed", "90 x 200", "--units", "cm")
    assert (0, "") == (said.status, said.err)
    assert "150 × 230 cm" in said.out


def test_a_new_piece_from_batting(ask: Ask) -> None:
    """34 × 45: 31½ × 42, and the batting on hand is enough for its base."""
    said = ask("new", "Bat", "--batting", "45 x 34")
    assert (0, "") == (said.status, said.err)
    assert "31½ × 42 in" in said.out
    planned = ask("plan", "bat.toml")
    assert 0 == planned.status
    assert "The batting" not in planned.out


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("--hang", "6"), "--hang goes with --table"),
        (("--drop", "6"), "--drop goes with --bed"),
        (("--table", "60"), "one length"),
        (("--table", "36 x 60", "--bed", "queen"), "both give the size"),
        (("--bed", "hammock"), "no mattress"),
        (("--bed", "queen", "--way", "pairs round the point"), "another shape"),
        (("--table", "36 x 60", "--way", "round after round"), "another shape"),
    ],
)
def test_new_with_words_that_do_not_go_together(words: tuple[str, ...], says: str, ask: Ask, tmp_path: Path) -> None:
    """Status 2, one clear sentence, and no file."""
    said = ask("new", "Odd", *words)
    assert (2, "") == (said.status, said.out)
    assert says in said.err
    assert [] == list(tmp_path.iterdir())
