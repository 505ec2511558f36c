"""Writing a pattern's files: everything or nothing, and nothing of the maker's is lost."""

from pathlib import Path

import pytest

from stitchflip.cli import pattern_files
from stitchflip.cli.pattern_files import write_all
from stitchflip.errors import StitchflipError

NEW = {"pattern.pdf": b"new pattern", "pictures/order.svg": b"new order", "pictures/step-1.svg": b"new step"}


def everything_in(folder: Path) -> dict[str, bytes]:
    """Every file of a folder by its path in it, hidden ones too."""
    return {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_all_files_stand_in_a_new_folder(tmp_path: Path) -> None:
    """A folder that was not there is made, with all files and nothing else in it."""
    assert [] == write_all(tmp_path / "gifts" / "runner", NEW)
    assert everything_in(tmp_path / "gifts" / "runner") == NEW


def test_files_of_other_names_stay_as_they_are(tmp_path: Path) -> None:
    """What the maker keeps in the folder is not touched; files of the pattern are made new."""
    (tmp_path / "notes.txt").write_bytes(b"hers")
    (tmp_path / "pattern.pdf").write_bytes(b"old")
    write_all(tmp_path, NEW)
    assert {**NEW, "notes.txt": b"hers"} == everything_in(tmp_path)


def test_pictures_of_an_earlier_plan_are_named_and_kept(tmp_path: Path) -> None:
    """A picture that is not of this plan stays, and is told."""
    (tmp_path / "pictures").mkdir()
    (tmp_path / "pictures" / "step-9.svg").write_bytes(b"old step")
    assert [tmp_path / "pictures" / "step-9.svg"] == write_all(tmp_path, NEW)
    assert b"old step" == (tmp_path / "pictures" / "step-9.svg").read_bytes()


def test_a_failure_half_way_leaves_everything_as_it_was(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """When the second file cannot be moved, the first is taken back and the old ones return."""
    old = {"pattern.pdf": b"old pattern", "pictures/step-1.svg": b"old step", "notes.txt": b"hers"}
    write_all(tmp_path, old)
    moves = iter([None, OSError(28, "No space left on device")])
    real = Path.replace

    def failing(self: Path, target: Path) -> Path:
        problem = next(moves, None)
        if problem is not None:
            raise problem
        return real(self, target)

    monkeypatch.setattr(Path, "replace", failing)
    with pytest.raises(StitchflipError) as caught:
        write_all(tmp_path, NEW)
    assert "usage.cannot-write" == caught.value.code
    assert old == everything_in(tmp_path)


def test_a_failure_in_a_new_folder_leaves_no_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """When nothing can be written, the folder that was made for it goes again."""

    def full(self: Path, _content: bytes) -> int:
        raise OSError(28, "No space left on device", str(self))

    monkeypatch.setattr(Path, "write_bytes", full)
    with pytest.raises(StitchflipError):
        write_all(tmp_path / "gifts" / "runner", NEW)
    assert [] == list(tmp_path.iterdir())


def test_an_interruption_leaves_everything_as_it_was(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Ctrl-C between two moves is taken back like any failure."""
    old = {"pattern.pdf": b"old pattern"}
    write_all(tmp_path, old)
    real = Path.replace

    def interrupted(self: Path, target: Path) -> Path:
        if self.name == "order.svg":
            raise KeyboardInterrupt
        return real(self, target)

    monkeypatch.setattr(Path, "replace", interrupted)
    with pytest.raises(KeyboardInterrupt):
        write_all(tmp_path, NEW)
    assert old == everything_in(tmp_path)
    assert not (tmp_path / "pictures").exists()


def test_a_file_where_the_folder_should_be_is_refused(tmp_path: Path) -> None:
    """--out that names a file is explained and the file stays."""
    (tmp_path / "out").write_bytes(b"hers")
    with pytest.raises(StitchflipError, match="is a file"):
        write_all(tmp_path / "out", NEW)
    assert {"out": b"hers"} == everything_in(tmp_path)


def test_a_folder_where_a_file_should_be_is_refused(tmp_path: Path) -> None:
    """A folder named like a file of the pattern is never moved away."""
    (tmp_path / "pattern.pdf").mkdir()
    (tmp_path / "pattern.pdf" / "hers.txt").write_bytes(b"hers")
    with pytest.raises(StitchflipError, match="is a folder"):
        write_all(tmp_path, NEW)
    assert {"pattern.pdf/hers.txt": b"hers"} == everything_in(tmp_path)


def test_a_file_where_the_pictures_should_go_is_refused(tmp_path: Path) -> None:
    """A file called pictures stays, and nothing else is written."""
    (tmp_path / "pictures").write_bytes(b"hers")
    with pytest.raises(StitchflipError):
        write_all(tmp_path, NEW)
    assert {"pictures": b"hers"} == everything_in(tmp_path)


def test_the_number_of_a_step_has_as_many_digits_as_the_last() -> None:
    """Pictures of steps stand in sewing order in a listing."""
    assert "step-07" == pattern_files.step_name(7, 28)
    assert "step-7" == pattern_files.step_name(7, 9)
