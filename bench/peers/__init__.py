"""The other solvers, each a process of its own that reads jobs as lines of JSON and answers with lines of JSON.

They run in an environment of their own (`requirements/peers.txt`, Python 3.12: one of them has no wheel for 3.11).
Nothing in the package or its tests imports them.
"""
