"""Any piece at another size, in another strip width, in the other system: drawn anew and planned anew.

Nothing scales by one factor. Finished sizes are scaled or redrafted and seams added after; rounds are added, not
stretched; and the base, the binding and every purchase come out of a whole new plan, because twice the size takes
four times one fabric and twice another.
"""

from stitchflip.planning.quilt_sizes import BlocksFor, blocks_for, quilt_size
from stitchflip.planning.resize.as_json import resized_as_json
from stitchflip.planning.resize.pen import Awkward, Keep
from stitchflip.planning.resize.resizing import Resized, resized
from stitchflip.planning.resize.what_changed import PurchaseChange, WhatChanged, what_changed
from stitchflip.project.differences import differences

__all__ = [
    "Awkward",
    "BlocksFor",
    "Keep",
    "PurchaseChange",
    "Resized",
    "WhatChanged",
    "blocks_for",
    "differences",
    "quilt_size",
    "resized",
    "resized_as_json",
    "what_changed",
]
