"""What the parts of a project must agree on: shapes and their sizes, names and what they name.

One part alone cannot tell that a round names a fabric nobody listed. These checks look at a project as
written, before any of its values are judged, so that a file's mistakes can all be told at once; they look at
a model the same way, through its plain values.
"""

from __future__ import annotations

from collections.abc import Iterator

from stitchflip.project.agreements.fabrics import binding, fabrics, named_fabrics, rule
from stitchflip.project.agreements.made_for import made_for
from stitchflip.project.agreements.piece import center, extras, squared_up
from stitchflip.project.agreements.strips import patches, readings, rounds, strips
from stitchflip.project.agreements.tables import Disagreement, Table

__all__ = ["MOST_MISTAKES", "Disagreement", "disagreements"]

MOST_MISTAKES = 60
"""So many are listed; who has more will read again."""
_OF_QUILTS = ("joined", "blocks", "borders", "cut_apart")
"""Tables whose checks are loaded only for a project that has one."""


def disagreements(data: Table) -> Iterator[Disagreement]:
    """What in a project does not agree, in the order of the file format.

    Args:
        data: the project's tables as in its file, any of them missing or of any type.

    Example:
        >>> [one.path for one in disagreements({"rounds": [{"cut": "2", "cuts": ["2", "3"], "fabric": "Oat"}]})]
        [('center',), ('rounds', 0, 'cuts')]
    """
    yield from squared_up(data)
    yield from made_for(data)
    yield from center(data)
    yield from strips(data)
    yield from rounds(data)
    yield from patches(data)
    if any(data.get(key) is not None and data.get(key) != () for key in _OF_QUILTS):
        from stitchflip.project.agreements.joined import quilts

        yield from quilts(data)
    yield from extras(data)
    yield from readings(data)
    yield from fabrics(data)
    yield from named_fabrics(data)
    yield from rule(data)
    yield from binding(data)
