"""Slips of the pen in a project file: what TOML cannot read, said in a maker's words.

The reader of the standard library stops at its first error, and a maker who left out ten pairs of quotes would
meet the next nine one by one. So a slip that is plain to see is mended in a copy of the text, only to look
further; the file stays unread and every slip is told.
"""

from __future__ import annotations

import re
import tomllib
from typing import Any

from stitchflip.errors import Mistake
from stitchflip.project.kinds import LISTS_OF_TABLES
from stitchflip.values import dataclass

MOST_SLIPS = 25
"""So many are told; more are told after these are mended."""
_SLOW_TO_REREAD = 30_000
"""A longer text is read once only."""
_LONGEST_LINE = 500
"""A longer line is not mended."""
_SHOWN = 60

_WHERE = re.compile(r"\s*\(at (?:line (\d+), column (\d+)|end of document)\)$")
_KEYED = re.compile(r"\s*([A-Za-z0-9_.-]+)\s*=")
_HEAD = re.compile(r"[ \t]*(\[\[?)[ \t]*([A-Za-z0-9_.-]+)[ \t]*\]")
_LIST = re.compile(r"([A-Za-z0-9_.-]+)\s*=\s*\[")
_VALUE = re.compile(
    r"""(?P<before>(?:^|[{,])\s*[A-Za-z0-9_-]+\s*=\s*)(?P<value>[^\s"'\[{#,}][^#,}"]*?"?)(?=\s*(?:[,}]|\#|$))""",
    re.VERBOSE,
)
_OUTSIDE_BRACES = re.compile(
    r"""(?P<before>^\s*[A-Za-z0-9_-]+\s*=\s*)(?P<value>[^\s"'\[{#][^#"]*?"?)(?=\s*(?:\#|$))""", re.VERBOSE
)
_IN_LIST = re.compile(r"""(?P<before>[\[,]\s*)(?P<value>[0-9][^"'\[\]{}#,=]*?)(?=\s*[,\]])""")
_SCALAR = re.compile(r"true|false|[+-]?(?:inf|nan|[0-9][0-9_]*(?:\.[0-9_]+)?(?:[eE][+-]?[0-9]+)?)|[0-9-]{10}.*")
_WORDS_FOR_YES_AND_NO = {"yes": "true", "true": "true", "on": "true", "no": "false", "false": "false", "off": "false"}
_CURLY = str.maketrans(dict.fromkeys("“”„«»", '"'))
_MARKS = re.compile(
    r'''"""(?:[^\\]|\\.)*?"""|\'\'\'.*?\'\'\'|"(?:[^"\\\n]|\\.)*"|'[^'\n]*'|\#[^\n]*|[\[\]{}\n]''', re.DOTALL
)


@dataclass(frozen=True, slots=True)
class Read:
    """What could be read of a text."""

    data: dict[str, Any] | None
    """The values; None when it could not be read to its end."""
    text: str
    """The text they were read from: the one given, or the mended copy."""
    slips: tuple[Mistake, ...]


@dataclass(frozen=True, slots=True)
class _Mended:
    text: str
    slip: Mistake


def read_toml(text: str) -> Read:
    """The values of a TOML text, with every slip of the pen in it.

    Args:
        text: the whole file, lines ending in a line feed.
    """
    slips: list[Mistake] = []
    while True:
        try:
            return Read(tomllib.loads(text), text, tuple(slips))
        except RecursionError:
            too_deep = Mistake(
                None, "the file", "lists within lists without end", "one list in brackets, such as fabrics = [...],"
            )
            return Read(None, text, (*slips, too_deep))
        except ValueError as error:
            mended = _mended(text, error) if len(text) <= _SLOW_TO_REREAD else None
            if mended is None or len(slips) >= MOST_SLIPS:
                return Read(None, text, (*slips, _told(text, error)))
            text = mended.text
            slips.append(mended.slip)


def _place(error: ValueError) -> tuple[str, int | None, int | None]:
    """What the reader says, its line and its column."""
    said = str(error)
    found = _WHERE.search(said)
    if found is None or found[1] is None:
        return _WHERE.sub("", said), None, None
    return said[: found.start()], int(found[1]), int(found[2])


def _mended(text: str, error: ValueError) -> _Mended | None:
    """The text without a slip that is plain to see, and the slip."""
    said, number, _ = _place(error)
    if number is None:
        return None
    lines = text.split("\n")
    line = lines[number - 1]
    if len(line) > _LONGEST_LINE:
        return None
    key = _key(lines, number)
    twice = re.match(r"Cannot (?:declare|mutate immutable namespace) \('(\w+)',\)", said)
    if twice and twice[1] in LISTS_OF_TABLES and line.strip().startswith(f"[{twice[1]}]"):
        name = twice[1]
        text = re.sub(rf"^([ \t]*)\[({name})\]", r"\1[[\2]]", text, flags=re.MULTILINE)
        return _Mended(text, Mistake(number, name, f"[{name}] in single brackets", f"[[{name}]] each time"))
    for mend in (_straight_quotes, _equals, _quotes, _quotes_in_list, _joined_key, _once):
        done = mend(line, said)
        if done is not None and done[0] != line:
            lines[number - 1] = done[0]
            return _Mended("\n".join(lines), Mistake(number, key, _shown(line), done[1]))
    return None


def _straight_quotes(line: str, _said: str) -> tuple[str, str] | None:
    """Quotes as a word processor bends them."""
    mended = line.translate(_CURLY)
    return (mended, f"straight quotes: {_without_note(mended)}") if mended != line else None


def _without_note(line: str) -> str:
    """A line without the note behind it."""
    return re.sub(r"\s+#[^\"]*$", "", line).strip()


def _equals(line: str, said: str) -> tuple[str, str] | None:
    """A colon for the sign that stands between a key and its value."""
    found = re.match(r"(\s*[A-Za-z0-9_-]+\s*):(\s*\S.*)$", line)
    if found is None or "Expected '='" not in said:
        return None
    mended = f"{found[1].rstrip()} ={found[2]}"
    return mended, f"an equals sign: {_without_note(mended)}"


def _quotes(line: str, _said: str) -> tuple[str, str] | None:
    """A fraction, a length with its unit, a word: texts that lack their quotes."""
    pattern = _VALUE if "{" in line else _OUTSIDE_BRACES
    mended = pattern.sub(_quoted, line)
    return (mended, f"{_keyed(mended, line)}") if mended != line else None


def _quotes_in_list(line: str, _said: str) -> tuple[str, str] | None:
    """Lengths in a list that lack their quotes."""
    mended = _IN_LIST.sub(_quoted, line)
    return (mended, f"texts in quotes: {_without_note(mended)}") if mended != line else None


def _quoted(match: re.Match[str]) -> str:
    value = match["value"].rstrip()
    if _SCALAR.fullmatch(value):
        return match.group()
    yes_or_no = _WORDS_FOR_YES_AND_NO.get(value.casefold())
    return match["before"] + (yes_or_no or '"{}"'.format(value.replace("\\", "\\\\").replace('"', "")))


def _keyed(mended: str, line: str) -> str:
    """The part of a mended line that differs, with its key."""
    was = dict(_pairs(line))
    parts = [f"{key} = {value}" for key, value in _pairs(mended) if was.get(key) != value]
    return ", ".join(parts) or mended.strip()


def _pairs(line: str) -> list[tuple[str, str]]:
    return re.findall(r"""([A-Za-z0-9_-]+)\s*=\s*("[^"]*"|[^\s,}#][^,}#]*?)(?=\s*(?:[,}#]|$))""", line)


def _joined_key(line: str, said: str) -> tuple[str, str] | None:
    """A key of several words."""
    found = re.match(r"(\s*)([A-Za-z]+(?:[ ]+[A-Za-z]+)+)(\s*=.*)$", line)
    if found is None or "Expected '='" not in said:
        return None
    mended = f"{found[1]}{'_'.join(found[2].split()).lower()}{found[3]}"
    return mended, f"underscores in the key: {_without_note(mended)}"


def _once(line: str, said: str) -> tuple[str, str] | None:
    """A key that stands there a second time; the second one is left out to look further."""
    if "Cannot overwrite" not in said:
        return None
    try:
        tomllib.loads(line)
    except ValueError:
        return None
    return "", "each key once (take one of the two away)"


def _told(text: str, error: ValueError) -> Mistake:
    """A slip that is not plain to see, as exactly as it can be told."""
    said, number, column = _place(error)
    lines = text.split("\n")
    opened = _never_closed(text) if "Unclosed" in said or "Invalid value" in said or number is None else None
    if opened is not None:
        bracket, at_line = opened
        closing = "]" if bracket == "[" else "}"
        found = f"a {bracket} that is never closed: {_shown(lines[at_line - 1])}"
        return Mistake(at_line, _key(lines, at_line), found, f"a {closing} where the list ends")
    if number is None:
        return Mistake(None, "the file", _shown(said), _advice(said))
    line = lines[number - 1] if number <= len(lines) else ""
    if line.rstrip().endswith("="):
        said = "Invalid value (nothing)"
    return Mistake(number, _key(lines, number), f"{_shown(line)} (column {column})", _advice(said))


def _advice(said: str) -> str:
    """What would do, for the reader's own words."""
    twice = re.match(r"Cannot (?:declare|mutate immutable namespace) \('([^)]*?)',?\)", said)
    if twice:
        name = twice[1].replace("', '", ".")
        return f"one [{name}] (put the lines of both under it)"
    for begin, advice in _ADVICE.items():
        if said.startswith(begin):
            return advice
    return 'a line such as: cut = "2 1/2"'


_ADVICE = {
    "Invalid value (nothing)": 'a value after the equals sign, such as: cut = "2 1/2"',
    "Invalid initial character": 'everything between { and } on one line, such as: { cut = "2", fabric = "Oat" }',
    "Cannot overwrite": "each key once (take one of the two away)",
    "Expected '='": 'a key, an equals sign and a value, such as: cut = "2 1/2"',
    "Expected newline": 'one value, texts in quotes, such as: cut = "2 1/2"',
    "Expected ']'": "a table's name in closed brackets, such as: [center]",
    "Illegal character": 'a text between two quotes on one line, such as: name = "Porch runner"',
    "Unterminated string": 'a text between two quotes on one line, such as: name = "Porch runner"',
    "Unescaped '\\'": "a text without backslashes",
    "Unclosed inline table": 'commas between the parts, such as: { cut = "2 1/2", fabric = "Oat" }',
    "Unclosed array": 'commas between the parts, such as: ["Oat", "Brass"]',
    "Exceeds the limit": "a number a person can read",
}


def _key(lines: list[str], number: int) -> str:
    """Dotted key of a line, as far as it can be told."""
    keyed = _KEYED.match(lines[number - 1]) if number <= len(lines) else None
    key = keyed[1] if keyed else ""
    for place in range(min(number, len(lines)) - 1, -1, -1):
        head, list_above = _HEAD.match(lines[place]), _LIST.match(lines[place])
        if head is not None:
            table = _numbered(lines[: place + 1], head[2].split("."), is_list=head[1] == "[[")
            return f"{table}.{key}" if key else table
        if not key and list_above is not None:
            key = list_above[1]
    return key or "the file"


def _numbered(lines: list[str], keys: list[str], *, is_list: bool) -> str:
    """A table's name with the places of those of its parts that are in a list, counted from 1, as of the last line."""
    named = ""
    heads = [(head[1], head[2]) for head in map(_HEAD.match, lines) if head is not None]
    for deep, key in enumerate(keys, start=1):
        path = ".".join(keys[:deep])
        named += f".{key}" if named else key
        above = ".".join(keys[: deep - 1])
        if deep < len(keys) or is_list:
            last = max((place for place, head in enumerate(heads) if head == ("[[", above)), default=0)
            count = heads[last:].count(("[[", path))
            named += f"[{count}]" if count else ""
    return named


def _never_closed(text: str) -> tuple[str, int] | None:
    """The first bracket that is opened and never closed, and its line."""
    opened: list[tuple[str, int]] = []
    line = 1
    for mark in _MARKS.findall(text):
        line_here = line
        line += mark.count("\n")
        if mark in "[{":
            opened.append((mark, line_here))
        elif mark in "]}" and opened:
            opened.pop()
    return opened[0] if opened else None


def _shown(text: str) -> str:
    """A line as it stands there, cut short when it is endless."""
    plain = "".join(mark if mark.isprintable() else "�" for mark in text.strip())
    return plain if len(plain) <= _SHOWN else plain[:_SHOWN] + "…"
