"""The printed pattern, and the memory a plan with all its papers takes."""

from __future__ import annotations

from pathlib import Path

from bench.clock import Measured, medians
from bench.shell import peak_megabytes
from stitchflip.pattern import pattern_document, to_pdf
from stitchflip.planning import plan
from stitchflip.project import read_project

PDF_SECONDS = 1.0
MEGABYTES = 300
_EXAMPLES = Path("examples")

_EVERYTHING = """
import sys
from pathlib import Path
from stitchflip.pattern import pattern_document, shop_sheet, table_sheet, to_html, to_pdf
from stitchflip.planning import plan
from stitchflip.project import read_project
made = plan(read_project(Path(sys.argv[1]).read_text(encoding="utf-8")))
for document in (table_sheet(made), shop_sheet(made), pattern_document(made)):
    to_pdf(document, "letter")
to_html(pattern_document(made))
"""


def largest_example() -> Path:
    """The example with the most strips."""

    def strips(path: Path) -> int:
        made = plan(read_project(path.read_text(encoding="utf-8")), with_cures=False)
        return len(made.build.pieces)

    return max(sorted(_EXAMPLES.glob("*.toml")), key=strips)


def pattern_pdf() -> Measured:
    """Seconds from a plan to the bytes of its pattern."""
    path = largest_example()
    made = plan(read_project(path.read_text(encoding="utf-8")))
    (seconds,) = medians(5, lambda: to_pdf(pattern_document(made), "letter"))
    what = f"pattern of {path.stem} as PDF, beyond imports"
    return Measured(what, f"{seconds:.2f} s", f"under {PDF_SECONDS} s", seconds < PDF_SECONDS)


def peak_memory() -> Measured:
    """Peak memory of a process that plans the largest example and makes every paper."""
    path = largest_example()
    megabytes = peak_megabytes(_EVERYTHING, str(path))
    what = f"peak memory: plan and all papers of {path.stem}"
    return Measured(what, f"{megabytes:.0f} MB", f"under {MEGABYTES} MB", megabytes < MEGABYTES)
