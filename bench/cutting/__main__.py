"""Run every family and write the page; fail when a proof of ours is false or a plan of ours cannot be cut."""

from __future__ import annotations

import sys
import time
from pathlib import Path

from bench.cutting.families import families
from bench.cutting.ours import ask
from bench.cutting.peers import Peers
from bench.cutting.standing import Standing, stand
from bench.cutting.table import page

PAGE = Path("docs/reference/cutting-bench.md")


def main(words: list[str]) -> int:
    """Measure and write.

    Args:
        words: parts of titles; only families with one of them are run, and nothing is written.

    Returns:
        0 when every plan and bound of ours stands, else 1.
    """
    start = time.perf_counter()
    standings: list[Standing] = []
    with Peers() as peers:
        for family in families():
            if words and not any(word.lower() in family.title.lower() for word in words):
                continue
            standing = stand(family, peers, ask)
            standings.append(standing)
            scores = ", ".join(f"{name} {dict(standing.score(name))}" for name in family.peers)
            print(f"{family.title}: {standing.proved} of {len(standing.rows)} proved; {scores}", flush=True)
            for fault in standing.our_faults:
                print(f"  FAULT {fault}")
        text = page(standings, peers, (time.perf_counter() - start) / 60)
    if words:
        print(text)
    else:
        PAGE.write_text(text, encoding="utf-8")
    return 1 if any(standing.our_faults for standing in standings) else 0


sys.exit(main(sys.argv[1:]))
