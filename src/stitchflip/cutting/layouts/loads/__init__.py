"""Filling whole sheets: which sheets there are and how they may be looked at, what a strip and a sheet can give."""
