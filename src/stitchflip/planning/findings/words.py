"""Small turns of phrase that findings share."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence


def listed(words: Sequence[str]) -> str:
    """Words in a row: "a", "a and b", "a, b and c".

    Example:
        >>> listed(["3", "4", "7"])
        '3, 4 and 7'
    """
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} and {words[-1]}"


def strips(steps: Sequence[int], most: int = 8) -> str:
    """Steps as words: "strip 4", "strips 4, 5 and 9", with the rest counted when there are many.

    Example:
        >>> strips([4]), strips([4, 5])
        ('strip 4', 'strips 4 and 5')
    """
    if len(steps) == 1:
        return f"strip {steps[0]}" if steps[0] else "the first strip"
    if len(steps) > most:
        return f"strips {', '.join(str(step) for step in steps[:most])} and {len(steps) - most} more"
    return f"strips {listed([str(step) for step in steps])}"


def capital(sentence: str) -> str:
    """The sentence with its first letter large."""
    return sentence[:1].upper() + sentence[1:]
