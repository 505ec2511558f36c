"""Filling whole sheets: which sheets there are and how each may be looked at, what a strip can give, what a sheet can."""
