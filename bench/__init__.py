"""Speed and memory, measured beside the plain way of doing the same, in one run.

`make bench` prints a table. The machine may be noisy, so ratios of medians come first; where only a time can be
asked for, the median of several runs is compared with its limit. The run fails when a target is missed.

- Planning a runner (kernel, needed lengths, findings without cures; no solver, no pictures) against a plain
  painter's loop over shapely polygons that gives the same answers, after checking that both agree.
- Growth from 250 to 1,000 strips.
- The pattern as PDF for the largest example, beyond imports.
- Peak memory of writing everything for the largest example.
- `stitchflip plan` from the shell, imports included.
- Cutting beside other solvers (`bench.cutting`): lengths, proofs, memory, and `stitchflip cut` from the shell. The
  whole comparison, twenty minutes of it, is `make compare`.
"""
