"""The page of the comparison: how it was measured, a summary, and every instance."""

from __future__ import annotations

import os
import platform
from collections.abc import Iterable
from datetime import date
from importlib.metadata import version

from bench.cutting.jobs import Job, Reply
from bench.cutting.peers import MODULES, Peers
from bench.cutting.standing import OURS, Standing

_HEAD = """# Cutting, measured beside other solvers

Written by `make compare`; do not edit. Every instance is given to our engine and to its peers one after the other in
one run, each with the same time limit and the whole machine. All plans, ours and theirs, are laid out as rectangles
and checked by code that shares nothing with any solver; every bound is held against every plan of the same kind and
against every published value. The instances and where they come from: `bench/instances/README.md`.

Read a cell as *value (bound)*: of a length, a cost or a number of sheets the smaller value is the better one, and no
plan of this kind can be below the bound; of a value (knapsack) it is the other way round. **Bold** is proved best.
A dash is no plan in the time; ↡ marks a plan that takes more stages or taller strips than asked for, another kind of
plan: where it is better than ours it is counted apart. Known: the optimum, or bound–best plan, as published or as
computed for this project.
"""

_SCORES = (
    f"Won / tied / lost by {OURS}; ↡: theirs is better only in more stages or taller strips than asked for. At known: "
    "as good as the best plan anybody is known to have, or better."
)


def page(standings: list[Standing], peers: Peers, minutes: float) -> str:
    """The page as Markdown.

    Args:
        standings: of every family.
        peers: for their versions.
        minutes: the run took.
    """
    parts = [_HEAD, _measured(peers, minutes), _summary(standings), *(_family(standing) for standing in standings)]
    return "\n".join(parts)


def _measured(peers: Peers, minutes: float) -> str:
    here = {name: peer.version for name, peer in peers.there.items()}
    lines = [
        f"- Date: {date.today().isoformat()}",  # noqa: DTZ011  the day on the maker's wall
        f"- Machine: {os.cpu_count()} cores, {platform.machine()}, {platform.system()}; the run took {minutes:.0f} min",
        f"- {OURS} {version('stitchflip')}, Python {platform.python_version()}, one thread, HiGHS {version('highspy')}",
        *(f"- {name}: {here.get(name, 'not measured, no Python 3.12 here')}" for name in MODULES),
    ]
    return "\n".join(lines) + "\n"


def _summary(standings: list[Standing]) -> str:
    lines = [
        "## Summary",
        "",
        _SCORES,
        "",
        _line(["family", "limit", "instances", "proved", "at known", "median s", *MODULES]),
        _line(["---", *["---:"] * 5, *["---"] * len(MODULES)]),
    ]
    for standing in standings:
        known = [row for row in standing.rows if row.job.known.reached is not None]
        scores = []
        for name in MODULES:
            score = standing.score(name)
            deeper = f", {score['deeper']} ↡" if score["deeper"] else ""
            scores.append(f"{score['won']} / {score['tied']} / {score['lost']}{deeper}" if score else "")
        lines.append(
            _line(
                [
                    standing.family.title,
                    f"{standing.family.seconds:g} s",
                    str(len(standing.rows)),
                    str(standing.proved),
                    f"{sum(row.is_at_the_known_value for row in known)} of {len(known)}" if known else "",
                    f"{standing.median_seconds:.2f}",
                    *scores,
                ]
            )
        )
    ours = [fault for standing in standings for fault in standing.our_faults]
    theirs = [fault for standing in standings for fault in standing.their_faults]
    lines += ["", f"False proofs or plans of ours that cannot be cut: {len(ours) or 'none'}.", ""]
    lines += [*(f"- {fault}" for fault in ours), *([""] if ours else [])]
    lines += [f"Replies of others that do not stand and are not counted: {len(theirs) or 'none'}.", ""]
    return "\n".join([*lines, *(f"- {fault}" for fault in theirs)]).rstrip() + "\n"


def _family(standing: Standing) -> str:
    family = standing.family
    there = [name for name in family.peers if any(name in row.replies for row in standing.rows)]
    lines = [
        f"## {family.title}",
        "",
        f"{family.said} {family.seconds:g} s each.",
        "",
        _line(["instance", "pieces", "known", OURS, "s", *there]),
        _line(["---", *["---:"] * (4 + len(there))]),
    ]
    for row in standing.rows:
        replies = [_cell(row.replies.get(name)) for name in there]
        ours = row.ours
        cells = [row.job.name, str(row.job.pieces), _known(row.job), _cell(ours), f"{ours.seconds:.2f}", *replies]
        lines.append(_line(cells))
    return "\n".join(lines) + "\n"


def _known(job: Job) -> str:
    if job.known.optimum is not None:
        return str(job.known.optimum)
    limit, reached = job.known.limit, job.known.reached
    if limit is None and reached is None:
        return ""
    return f"{'' if limit is None else limit}–{'' if reached is None else reached}"


def _cell(reply: Reply | None) -> str:
    if reply is None:
        return ""
    if reply.faults:
        return "does not stand"
    if reply.value is None and reply.bound is None:
        return "too large" if "too large" in reply.note else "–"
    value = "–" if reply.value is None else f"{reply.value}{'↡' if reply.is_deeper else ''}"
    text = value if reply.bound is None else f"{value} ({reply.bound})"
    return f"**{text}**" if reply.proved and reply.value == reply.bound else text


def _line(cells: Iterable[str]) -> str:
    return "| " + " | ".join(cells) + " |"
