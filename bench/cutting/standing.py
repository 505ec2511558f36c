"""Run a family, and say how ours stands against each peer."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass
from statistics import median

from bench.cutting.families import Family
from bench.cutting.jobs import Job, Reply
from bench.cutting.judging import judged
from bench.cutting.peers import Peers

OURS = "stitchflip"


@dataclass(frozen=True, slots=True)
class Row:
    """One instance and all replies to it."""

    job: Job
    replies: dict[str, Reply]

    @property
    def ours(self) -> Reply:
        """Our reply."""
        return self.replies[OURS]

    def against(self, peer: str) -> str:
        """How ours compares: "won", "tied", "lost" (a plan that does not stand is none), or "" where not measured.

        "deeper": theirs is better only by cutting in more stages or taller strips than asked for.
        """
        if peer not in self.replies:
            return ""
        ours, theirs = (_stands(reply) for reply in (self.ours, self.replies[peer]))
        if ours == theirs:
            return "tied"
        if theirs is None or (ours is not None and self.job.better(ours, theirs)):
            return "won"
        return "deeper" if self.replies[peer].is_deeper else "lost"

    @property
    def is_at_the_known_value(self) -> bool:
        """Whether ours is as good as what anybody is known to have, or better."""
        known, value = self.job.known.reached, _stands(self.ours)
        return known is not None and value is not None and not self.job.better(known, value)

    @property
    def gap(self) -> float | None:
        """Between our plan and our bound, as part of the bound."""
        ours = self.ours
        if ours.value is None or not ours.bound:
            return None
        return abs(ours.value - ours.bound) / ours.bound


def _stands(reply: Reply) -> int | None:
    return None if reply.faults else reply.value


@dataclass(frozen=True, slots=True)
class Standing:
    """A family and its rows."""

    family: Family
    rows: tuple[Row, ...]

    def score(self, peer: str) -> Counter[str]:
        """How often ours won, tied and lost, and was passed by a plan in more stages only."""
        return Counter(filter(None, (row.against(peer) for row in self.rows)))

    @property
    def proved(self) -> int:
        """How many of ours are proved."""
        return sum(row.ours.proved and not row.ours.faults for row in self.rows)

    @property
    def median_seconds(self) -> float:
        """Of ours."""
        return median(row.ours.seconds for row in self.rows)

    @property
    def our_faults(self) -> list[str]:
        """What must never be: as sentences."""
        return [f"{self.family.title}, {row.job.name}: {fault}" for row in self.rows for fault in row.ours.faults]

    @property
    def their_faults(self) -> list[str]:
        """Replies of others that do not stand."""
        return [
            f"{row.job.name}, {name}: {fault}"
            for row in self.rows
            for name, reply in row.replies.items()
            if name != OURS
            for fault in reply.faults
        ]


def _asked(ask: Callable[[Job, float], Reply], job: Job, seconds: float) -> Reply:
    """Our reply; an error is a fault of ours like a plan that cannot be cut, and the run goes on."""
    try:
        return ask(job, seconds)
    except Exception as error:  # noqa: BLE001  whatever it is, it stands on the page and fails the run
        return Reply(faults=(f"{type(error).__name__}: {error}",))


def stand(family: Family, peers: Peers, ask: Callable[[Job, float], Reply]) -> Standing:
    """Give every instance to ours and to the peers, one after the other, each alone on the machine.

    Args:
        family: what to run.
        peers: those that are there.
        ask: ours.
    """
    rows = []
    for job in family.jobs:
        replies = {OURS: _asked(ask, job, family.seconds)}
        for name in family.peers:
            if name in peers.there:
                replies[name] = peers.there[name].ask(job, family.seconds)
        rows.append(Row(job, judged(job, replies)))
    return Standing(family, tuple(rows))
