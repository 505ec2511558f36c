"""Where each value of a project file stands: its line, and the text of it as written.

The TOML reader of the standard library gives values without places, so the text is walked a second time, only
for places. The walk relies on the text being TOML that was read already: it has no errors of its own to tell,
and anything it does not follow has no place, which costs a message its line and nothing else.
"""

from __future__ import annotations

import re
from dataclasses import field

from stitchflip.values import dataclass

Path = tuple[str | int, ...]
"""Keys and places in lists, counted from 0."""

_BLANK = re.compile(r"[ \t]*")
_BETWEEN = re.compile(r"(?:[ \t\r\n]|\#[^\n]*)*")
_BARE_KEY = re.compile(r"[A-Za-z0-9_-]+")
_STRING = re.compile(
    r'''"""(?:[^"\\]|\\.|"{1,2}(?!"))*"{3,5}|\'\'\'(?:[^']|'{1,2}(?!'))*'{3,5}|"(?:[^"\\\n]|\\.)*"|'[^'\n]*' ''',
    re.VERBOSE | re.DOTALL,
)
_OTHER = re.compile(r"[^,\]}\#\n\r]+")
_ESCAPE = re.compile(r'\\(u[0-9A-Fa-f]{4}|U[0-9A-Fa-f]{8}|["\\bfnrt])')
_ESCAPED = {'"': '"', "\\": "\\", "b": "\b", "f": "\f", "n": "\n", "r": "\r", "t": "\t"}
_DEEPEST = 60
"""Lists in lists in lists; deeper ones have no place."""
_MOST = 20_000
"""Places kept; no project file has as many values."""


@dataclass(slots=True)
class Places:
    """Line and text of every key and value of a file."""

    line_of: dict[Path, int] = field(default_factory=dict)
    """Line of a key, a list element or a table's head, counted from 1."""
    text_of: dict[Path, str] = field(default_factory=dict)
    """A value that is no list and no table, as written."""

    def near(self, path: Path) -> int | None:
        """The line of a value, or of the table that lacks it; None when that is the whole file."""
        return self.line_of.get(path) or self.line_of.get(path[:-1])


def places_in(text: str) -> Places:
    r"""The places of everything in a TOML text.

    Args:
        text: TOML that can be read.

    Example:
        >>> found = places_in('name = "Porch"\n[[rounds]]\ncut = "2 1/2"\n')
        >>> found.line_of["rounds", 0, "cut"], found.text_of["rounds", 0, "cut"]
        (3, '"2 1/2"')
    """
    walk = _Walk(text)
    walk.file()
    return walk.found


class _Walk:
    """One pass over a text."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.at = 0
        self.found = Places()
        self._line = 1
        self._counted_to = 0
        self._counts: dict[Path, int] = {}
        """Arrays of tables -> elements so far."""

    @property
    def line(self) -> int:
        """Line of the current place."""
        self._line += self.text.count("\n", self._counted_to, self.at)
        self._counted_to = self.at
        return self._line

    def skip(self, pattern: re.Pattern[str]) -> str:
        """Pass over what matches here; the text passed, "" when nothing does."""
        match = pattern.match(self.text, self.at)
        if match is None:
            return ""
        self.at = match.end()
        return match.group()

    def sees(self, mark: str) -> bool:
        """True when the text goes on with these characters."""
        return self.text.startswith(mark, self.at)

    def file(self) -> None:
        """The whole text, one head or one line with a key at a time."""
        table: Path = ()
        while True:
            self.skip(_BETWEEN)
            before = self.at
            if self.at >= len(self.text):
                return
            table = self.head() if self.sees("[") else self.pair(table, table, 0)
            if self.at == before or len(self.found.line_of) > _MOST:
                return

    def head(self) -> Path:
        """A table's head, [a.b] or [[a.b]]; the path of its table."""
        line = self.line
        is_array = self.sees("[[")
        self.at += 2 if is_array else 1
        self.skip(_BLANK)
        path: Path = ()
        keys = self.keys()
        for place, key in enumerate(keys):
            path = (*path, key)
            if place < len(keys) - 1 or not is_array:
                if path in self._counts:
                    path = (*path, self._counts[path] - 1)
            else:
                self.found.line_of.setdefault(path, line)
                self._counts[path] = self._counts.get(path, 0) + 1
                path = (*path, self._counts[path] - 1)
            self.found.line_of.setdefault(path, line)
        self.skip(_BLANK)
        self.at += 2 if is_array else 1
        return path

    def keys(self) -> list[str]:
        """A dotted key."""
        keys = []
        while True:
            self.skip(_BLANK)
            quoted = self.sees('"') or self.sees("'")
            key = self.skip(_STRING if quoted else _BARE_KEY)
            keys.append(_unquoted(key) if quoted else key)
            self.skip(_BLANK)
            if not self.sees("."):
                return keys
            self.at += 1

    def pair(self, table: Path, then: Path, depth: int) -> Path:
        """A key and its value; gives back what is asked for."""
        line = self.line
        path = table
        for key in self.keys():
            path = (*path, key)
            self.found.line_of.setdefault(path, line)
        self.skip(_BLANK)
        if self.sees("="):
            self.at += 1
            self.skip(_BLANK)
            self.value(path, depth)
        return then

    def value(self, path: Path, depth: int) -> None:
        """A value, with what is in it."""
        if depth > _DEEPEST:
            self.at = len(self.text)
        elif self.sees("["):
            self.listed(path, depth + 1)
        elif self.sees("{"):
            self.inline(path, depth + 1)
        else:
            quoted = self.sees('"') or self.sees("'")
            self.found.text_of[path] = self.skip(_STRING if quoted else _OTHER).rstrip()

    def listed(self, path: Path, depth: int) -> None:
        """A list in brackets, over any number of lines."""
        self.at += 1
        element = 0
        while True:
            self.skip(_BETWEEN)
            if self.sees("]") or self.at >= len(self.text):
                self.at += 1
                return
            before = self.at
            if self.sees(","):
                self.at += 1
                element += 1
                continue
            self.found.line_of[*path, element] = self.line
            self.value((*path, element), depth)
            if self.at == before or len(self.found.line_of) > _MOST:
                self.at = len(self.text)

    def inline(self, path: Path, depth: int) -> None:
        """A table in braces."""
        self.at += 1
        while True:
            self.skip(_BETWEEN)
            if self.sees("}") or self.at >= len(self.text):
                self.at += 1
                return
            before = self.at
            if self.sees(","):
                self.at += 1
                continue
            self.pair(path, path, depth)
            if self.at == before:
                self.at = len(self.text)


def _unquoted(key: str) -> str:
    """The name inside a quoted key."""
    if key.startswith("'"):
        return key[1:-1]
    return _ESCAPE.sub(_unescaped, key[1:-1])


def _unescaped(match: re.Match[str]) -> str:
    mark = match[1]
    return _ESCAPED.get(mark) or chr(int(mark[1:], 16))
