"""Arithmetic for pieces made by quilt-as-you-go: from a project file to a plan, cuts and a printed pattern.

This face names what other programs may rely on. Each name is fetched from its room when it is first used,
so that `import stitchflip` costs next to nothing and the command line starts at once.

Example:
    >>> import stitchflip
    >>> stitchflip.parse_length("2½ in").inches
    2.5
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from stitchflip.errors import BuildError as BuildError
    from stitchflip.errors import CuttingError as CuttingError
    from stitchflip.errors import LengthError as LengthError
    from stitchflip.errors import Mistake as Mistake
    from stitchflip.errors import OurFault as OurFault
    from stitchflip.errors import ProjectFileError as ProjectFileError
    from stitchflip.errors import PublishError as PublishError
    from stitchflip.errors import StitchflipError as StitchflipError
    from stitchflip.lengths import Length as Length
    from stitchflip.lengths import Rounding as Rounding
    from stitchflip.lengths import Speaker as Speaker
    from stitchflip.lengths import Unit as Unit
    from stitchflip.lengths import format_length as format_length
    from stitchflip.lengths import parse_length as parse_length
    from stitchflip.planning import Plan as Plan
    from stitchflip.planning import plan as plan
    from stitchflip.project import Project as Project
    from stitchflip.project import read_project as read_project

__version__ = "0.1.0"

_ROOM_OF = {
    "BuildError": "errors",
    "CuttingError": "errors",
    "LengthError": "errors",
    "Mistake": "errors",
    "OurFault": "errors",
    "ProjectFileError": "errors",
    "PublishError": "errors",
    "StitchflipError": "errors",
    "Length": "lengths",
    "Rounding": "lengths",
    "Speaker": "lengths",
    "Unit": "lengths",
    "format_length": "lengths",
    "parse_length": "lengths",
    "Project": "project",
    "read_project": "project",
    "Plan": "planning",
    "plan": "planning",
}
"""Public name -> the room it comes from."""

__all__ = ["__version__", *sorted(_ROOM_OF)]  # noqa: PLE0604  the table is the list


def __getattr__(name: str) -> object:
    """Fetch a public name from its room on first use."""
    if name not in _ROOM_OF:
        msg = f"module {__name__!r} has no attribute {name!r}"
        raise AttributeError(msg)
    value = getattr(import_module(f"{__name__}.{_ROOM_OF[name]}"), name)
    globals()[name] = value
    return value


def __dir__() -> list[str]:
    """The public names."""
    return sorted(__all__)
