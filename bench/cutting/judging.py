"""Hold every value against every bound, ours and theirs, and against what is published."""

from __future__ import annotations

from dataclasses import replace

from bench.cutting.jobs import Job, Reply
from bench.cutting.laid_out import faults, tallest_strip


def checked(job: Job, reply: Reply) -> Reply:
    """A reply with what is wrong in itself: its plan, and its bound and proof against its own plan."""
    found = list(reply.faults)
    is_deeper = False
    if reply.value is not None:
        wrong = faults(job, reply.sheets, reply.value)
        is_deeper = bool(wrong) and job.stages > 0 and not faults(job.but(stages=0), reply.sheets, reply.value)
        found += [] if is_deeper else wrong
        is_deeper = is_deeper or (not wrong and not _is_low(job, reply))
        if reply.bound is not None and job.better(reply.value, reply.bound):
            found.append(f"plan {reply.value} passes its own bound {reply.bound}")
        if reply.proved and reply.value != reply.bound:
            found.append(f"says proved with plan {reply.value} and bound {reply.bound}")
    elif reply.proved:
        found.append("says proved without a plan")
    return replace(reply, is_deeper=is_deeper, faults=tuple(found))


def judged(job: Job, replies: dict[str, Reply]) -> dict[str, Reply]:
    """All replies to one job, each checked, then held against the plans of the others and what is known."""
    replies = {name: checked(job, reply) for name, reply in replies.items()}
    plans = {name: reply.value for name, reply in replies.items() if _counts(reply)}
    reached = [("a known plan", job.known.reached), *plans.items()]
    return {
        name: replace(reply, faults=reply.faults + _against(job, reply, reached)) for name, reply in replies.items()
    }


def _counts(reply: Reply) -> bool:
    """Whether a plan is one for just this job: right, and of no other kind."""
    return reply.value is not None and not reply.faults and not reply.is_deeper


def _is_low(job: Job, reply: Reply) -> bool:
    """Whether no strip is taller than is asked for."""
    return job.tallest_strip is None or tallest_strip(job, reply.sheets) <= job.tallest_strip


def _against(job: Job, reply: Reply, reached: list[tuple[str, int | None]]) -> tuple[str, ...]:
    found = []
    for whose, value in reached:
        if reply.bound is not None and value is not None and job.better(value, reply.bound):
            found.append(f"FALSE BOUND {reply.bound}: {whose} is worth {value}")
    limit = job.known.limit
    if limit is not None and _counts(reply) and reply.value is not None and job.better(reply.value, limit):
        found.append(f"plan {reply.value} passes the known bound {limit}: one of them is wrong")
    return tuple(found)
