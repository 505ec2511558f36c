"""Why a call could not go on, said so that the maker knows what to do next.

Every error keeps four things apart: what is wrong (with the offending value), what to do about it, where it
is, and a code that never changes once released. Front ends decide how to show them. A plan that is legal
but poor is no error: that is a finding, and the plan is still drawn.

The tree:

    StitchflipError (Exception)
    ├── LengthError (ValueError)
    ├── ProjectFileError (ValueError)
    ├── BuildError (ValueError)
    ├── CuttingError (ValueError)
    ├── PublishError (RuntimeError)
    └── OurFault (AssertionError)
"""

from __future__ import annotations

from typing import TYPE_CHECKING, ClassVar

from typing_extensions import override

from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterable


@dataclass(frozen=True, slots=True)
class Mistake:
    """One thing to mend in a project file."""

    line: int | None
    """Line of the file, counted from 1; None when the mistake is something left out."""
    key: str
    """Dotted key, such as "rounds[2].cut"."""
    found: str
    """What stands there, as written; "nothing" for something left out."""
    would_do: str
    """What would be read without complaint, such as "a length like 2 1/2"."""

    @override
    def __str__(self) -> str:
        """One line for a list of mistakes.

        Example:
            >>> print(Mistake(line=7, key="center.cut", found='"-3"', would_do="a length like 8 1/4"))
            line 7, center.cut: found "-3"; a length like 8 1/4 would do
        """
        place = self.key if self.line is None else f"line {self.line}, {self.key}"
        return f"{place}: found {self.found}; {self.would_do} would do"


class StitchflipError(Exception):
    """Something this package was asked for cannot be done as asked.

    Example:
        >>> print(StitchflipError(what="strip 3 is cut 0 in wide", fix="Cut it 1 in or wider.", where="rounds[3].cut"))
        strip 3 is cut 0 in wide (rounds[3].cut). Cut it 1 in or wider.
    """

    area: ClassVar[str] = "stitchflip"
    """First word of the codes of this kind of error."""

    def __init__(self, *, what: str, fix: str, where: str = "", code: str = "") -> None:
        """Keep the four parts apart.

        Args:
            what: one clause with the offending value and its unit, no full stop needed.
            fix: one sentence in the imperative that says what would do.
            where: step, line, field or file; "" when there is only one place it can be.
            code: stable, `area.problem-in-words`; the area alone when left out.
        """
        self.what = what
        self.fix = fix
        self.where = where
        self.code = code or self.area
        super().__init__(what, fix, where, self.code)

    @override
    def __str__(self) -> str:
        """What, where and what to do, in one line."""
        where = f" ({self.where})" if self.where else ""
        return f"{self.what.rstrip('.')}{where}. {self.fix}".rstrip()


class LengthError(StitchflipError, ValueError):
    """A length that cannot be read, or that no ruler could show."""

    area = "length"


class ProjectFileError(StitchflipError, ValueError):
    """A project file that cannot be used, with every mistake in it.

    Example:
        >>> mistake = Mistake(line=2, key="center.cut", found='"two"', would_do="a length like 8 1/4")
        >>> error = ProjectFileError(what="1 mistake", fix="Correct it.", where="porch.toml", mistakes=[mistake])
        >>> print(error)
        1 mistake (porch.toml). Correct it.
          line 2, center.cut: found "two"; a length like 8 1/4 would do
    """

    area = "project"

    def __init__(
        self, *, what: str, fix: str, where: str = "", code: str = "", mistakes: Iterable[Mistake] = ()
    ) -> None:
        """Keep the four parts and the list of mistakes.

        Args:
            what: one clause about the whole file.
            fix: one sentence in the imperative.
            where: the file as the maker named it.
            code: stable, `project.problem-in-words`.
            mistakes: all of them, in the order of the file.
        """
        super().__init__(what=what, fix=fix, where=where, code=code)
        self.mistakes = tuple(mistakes)

    @override
    def __str__(self) -> str:
        """The sentence of every error, then one line for each mistake."""
        return "\n".join([super().__str__(), *(f"  {mistake}" for mistake in self.mistakes)])


class BuildError(StitchflipError, ValueError):
    """A piece that cannot be sewn from what is given, so that there is no build to draw."""

    area = "build"


class CuttingError(StitchflipError, ValueError):
    """Pieces and fabric that no cutting plan can be asked for."""

    area = "cutting"


class PublishError(StitchflipError, RuntimeError):
    """A picture, page or pattern that could not be written."""

    area = "publish"


class OurFault(StitchflipError, AssertionError):  # noqa: N818  the maker reads the name: it is not her error
    """Something that must always hold did not: a fault of this package, not of the maker."""

    area = "fault"
