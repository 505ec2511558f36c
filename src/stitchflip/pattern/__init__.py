"""Papers and pages: the document as a tree, builders that make it from a plan, writers that know nothing of quilts."""

from stitchflip.pattern.cutting_sheet import cutting_sheet
from stitchflip.pattern.model import Document, Fit, Paper
from stitchflip.pattern.paper import to_page_pictures, to_pdf
from stitchflip.pattern.pattern_document import pattern_document
from stitchflip.pattern.proof import proof
from stitchflip.pattern.screen import to_html
from stitchflip.pattern.shop_sheet import shop_sheet
from stitchflip.pattern.table_sheet import table_sheet

__all__ = [
    "Document",
    "Fit",
    "Paper",
    "cutting_sheet",
    "pattern_document",
    "proof",
    "shop_sheet",
    "table_sheet",
    "to_html",
    "to_page_pictures",
    "to_pdf",
]
