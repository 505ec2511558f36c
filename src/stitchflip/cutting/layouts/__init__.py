"""Edge-to-edge cutting with proof, in whole units: the search engine below the fabric plans.

It knows rectangles only, no fabric, no project. `solve` is the one door; `check_layouts` looks at any answer again
with nothing of the search in it.
"""
