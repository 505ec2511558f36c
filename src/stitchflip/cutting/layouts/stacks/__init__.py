"""Strips whose stacks hold several bits over one another: the searches behind plans of three stages.

`Ground` is the task as they see it, `Beam` lays pieces one by one and keeps the most promising beginnings,
`StackKnapsack` prices strips of every height for a bound, `Varied` lays pieces beside some of the priced strips, taken
by chance, and `Mending` packs some strips of a plan again.
"""
