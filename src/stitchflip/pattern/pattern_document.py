"""The pattern: everything another person needs to make the same piece, page by page."""

from __future__ import annotations

from stitchflip.pattern.backing_pages import add_backing
from stitchflip.pattern.base_page import base_page
from stitchflip.pattern.closing_pages import finish, square_up
from stitchflip.pattern.cutting_order import cutting_diagrams
from stitchflip.pattern.cutting_pages import cutting_tables
from stitchflip.pattern.edge_pages import edge, extras
from stitchflip.pattern.front_pages import at_a_glance, cover
from stitchflip.pattern.joined_pages import join_blocks
from stitchflip.pattern.last_pages import closing, coloring_page, the_back
from stitchflip.pattern.model import Block, Document, PageBreak
from stitchflip.pattern.needs_pages import before_you_cut, what_you_need
from stitchflip.pattern.proof import spoken
from stitchflip.pattern.sewing_pages import sewing
from stitchflip.pattern.telling import Teller
from stitchflip.planning.model import Plan


def pattern_document(plan: Plan) -> Document:
    """The pattern of a plan.

    Args:
        plan: the whole plan.

    Returns:
        Cover, at a glance, what you need, before you cut, cutting, diagrams, the base, sewing, squaring up (of each
        block), joining, the backing when it comes later, sleeve and label, the edge, finish, the back, a coloring
        page, and the last page. Parts a piece does not have are left out.
    """
    teller = Teller(plan)
    blocks: tuple[Block, ...] = (
        *cover(teller),
        *at_a_glance(teller),
        PageBreak(),
        *what_you_need(teller),
        PageBreak(),
        *before_you_cut(teller),
        *cutting_tables(teller),
        *cutting_diagrams(teller),
        *base_page(teller),
        *sewing(teller),
        *square_up(teller),
        *(join_blocks(teller) or add_backing(teller)),
        *extras(teller),
        *edge(teller),
        *finish(teller),
        *the_back(teller),
        *coloring_page(teller),
    )
    return Document(
        name=plan.project.name,
        kind="Pattern",
        edition=teller.edition,
        unit=teller.unit,
        blocks=(*blocks, *closing(teller, spoken(blocks))),
    )
