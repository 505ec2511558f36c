"""Cutting with proof, measured beside other solvers in one run.

Every published or invented instance is given to our engine and to its peers with the same time limit. Answers are
not believed: each plan, ours and theirs, is laid out as rectangles and checked here by code that shares nothing with
any solver, and every bound is held against every plan and every published value. A bound above a plan of the same
kind, a "proved" that is not, or a plan that cannot be cut fails the run.

- `instances` reads what is asked, `families` says which instances are measured and how;
- `ours` asks the engine, `peers` asks the others, each in its own process and its own environment;
- `laid_out` checks plans, `judging` checks values and bounds;
- `standing` runs a family, `table` writes the page, `targets` the lines of `make bench`.
"""
