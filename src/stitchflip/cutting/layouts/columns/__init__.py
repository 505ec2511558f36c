"""Cutting plans as a choice among whole strips or whole sheets: a column is one of them and what it gives.

`Master` holds the columns known so far as a linear program, `StripKnapsack` finds better ones for its prices,
`promised` turns any prices into a bound no plan can beat, `all_strips` lists every strip a better plan could use, and
`chosen` picks the plan among columns.
"""
