"""The SVG text: valid, the same every time, safe with any name, and rendered whole by the typesetter."""

from __future__ import annotations

import re
from dataclasses import replace
from io import BytesIO
from typing import Literal
from xml.etree import ElementTree as ET

import pytest
import typst
from pypdf import PdfReader

from stitchflip import pictures
from stitchflip.cutting.model import FabricPlan
from stitchflip.errors import PublishError
from stitchflip.lengths import Unit
from stitchflip.pictures.fonts import font_folder
from stitchflip.pictures.model import Figure
from stitchflip.planning.model import Plan
from tests.pictures.reader import SVG, far_apart, picture_differences, pixels, read_picture

ELEMENTS = {
    "svg",
    "title",
    "desc",
    "defs",
    "pattern",
    "clipPath",
    "g",
    "path",
    "rect",
    "circle",
    "text",
    "tspan",
}
ATTRIBUTES = {
    "clip-path",
    "cx",
    "cy",
    "d",
    "fill",
    "font-family",
    "font-size",
    "font-weight",
    "height",
    "id",
    "lengthAdjust",
    "textLength",
    "patternTransform",
    "patternUnits",
    "r",
    "stroke",
    "stroke-dasharray",
    "stroke-linecap",
    "stroke-linejoin",
    "stroke-opacity",
    "stroke-width",
    "style",
    "text-anchor",
    "transform",
    "version",
    "viewBox",
    "width",
    "x",
    "y",
}


def _all(plan: Plan, cuts: FabricPlan) -> dict[str, Figure]:
    return {
        "finished": pictures.finished(plan),
        "order": pictures.order(plan),
        **{f"step {number}": pictures.step(plan, number) for number in range(5)},
        "back": pictures.back(plan),
        "base": pictures.base(plan),
        "squaring": pictures.squaring(plan),
        "cuts": pictures.cuts(plan, cuts),
        "coloring": pictures.coloring(plan),
        "corner": pictures.binding_corner(plan, plan.binding.corners[0]),
        "legend": pictures.legend(),
    }


def _typeset(svg: str, kind: Literal["pdf", "png"]) -> bytes:
    """The picture alone on a page of its own size, by the typesetter that prints the pattern."""
    escaped = svg.replace("\\", "\\\\").replace('"', '\\"')
    source = f'#set page(width: auto, height: auto, margin: 0pt)\n#image(bytes("{escaped}"), format: "svg", alt: "x")'
    folder = font_folder()
    fonts = typst.Fonts(include_system_fonts=False, font_paths=[folder] if folder else [])
    return typst.compile(source.encode(), format=kind, ppi=144, font_paths=fonts)


def test_every_picture_is_well_formed_and_uses_nothing_of_later_svg_versions(
    hand_plan: Plan, sand_cuts: FabricPlan
) -> None:
    """Parsed as XML; elements and attributes are of SVG 1.1 (https://www.w3.org/TR/SVG11/attindex.html)."""
    for name, figure in _all(hand_plan, sand_cuts).items():
        root = ET.fromstring(pictures.to_svg(figure))  # noqa: S314  our own text
        assert set() == {node.tag.removeprefix(SVG) for node in root.iter()} - ELEMENTS, name
        assert set() == {key for node in root.iter() for key in node.attrib} - ATTRIBUTES, name


def test_the_same_figure_gives_the_same_text(hand_plan: Plan) -> None:
    """Twice made, byte for byte alike; attributes are in alphabetical order."""
    one, two = (pictures.to_svg(pictures.finished(plan), 3.0) for plan in (hand_plan, replace(hand_plan)))
    assert one == two
    for tag in re.findall(r"<(?:path|text|circle|rect|pattern) [^>]*>", one):
        names = re.findall(r' ([\w:-]+)="', tag)
        assert sorted(names) == names


def test_numbers_have_fixed_digits(hand_plan: Plan) -> None:
    """No number in a path has more than two places, none is written with an exponent."""
    text = pictures.to_svg(pictures.step(hand_plan, 3))
    for path in re.findall(r' d="([^"]*)"', text):
        assert not re.search(r"\.\d{3}|e-?\d", path)


@pytest.mark.parametrize(("unit", "wide"), [(Unit.INCH, "3in"), (Unit.CM, "7.62cm")])
def test_the_width_is_written_in_the_unit_asked_for(hand_plan: Plan, unit: Unit, wide: str) -> None:
    """3 in are 7.62 cm, because an inch is 2.54 cm exactly."""
    assert f' width="{wide}"' in pictures.to_svg(pictures.order(hand_plan), 3.0, unit)


def test_the_picture_is_as_wide_as_asked_and_as_high_as_said(hand_plan: Plan) -> None:
    """The view box is in points, 72 to the inch, and agrees with the height that is told beforehand."""
    figure = pictures.finished(hand_plan)
    picture = read_picture(pictures.to_svg(figure, 2.5))
    assert 180.0 == picture.wide
    assert picture.high == pytest.approx(72 * pictures.paper_height(figure, 2.5), abs=0.01)


def test_names_with_markup_and_odd_signs_stay_text(hand_plan: Plan) -> None:
    """A fabric called after markup is written as text; signs XML cannot hold are left out."""
    name = "<b>\"Plum\" & 'co'</b>\x00\x0b\ufffe"
    project = hand_plan.project.model_copy(update={"name": name})
    svg = pictures.to_svg(pictures.finished(replace(hand_plan, project=project)))
    assert "<b>" not in svg
    assert "<b>\"Plum\" & 'co'</b>, bound" == read_picture(svg).title


def test_words_keep_their_room_in_another_font(hand_plan: Plan) -> None:
    """The length of every longer word is written down: by the metrics file "center C" is 7.5 pt bold and plain."""
    svg = pictures.to_svg(pictures.order(hand_plan), 3.0)
    (length,) = re.findall(r'<text [^>]*textLength="([0-9.]+)"[^>]*>(?:<tspan[^>]*>)?center', svg)
    # Bold c 467, e 518, n 572, t 383, e 518, r 398; plain space 200, C 571: thousandths of the size.
    assert (467 + 518 + 572 + 383 + 518 + 398 + 200 + 571) * 7.5 / 1000 == pytest.approx(float(length), abs=0.01)


def test_pictures_on_one_page_do_not_share_ids(hand_plan: Plan) -> None:
    """Ids of different pictures differ, so that their clip paths and hatches cannot be mixed up."""
    ids = [
        set(re.findall(r' id="([^"]+)"', pictures.to_svg(figure)))
        for figure in (pictures.step(hand_plan, 1), pictures.step(hand_plan, 2), pictures.finished(hand_plan))
    ]
    assert all(ids)
    assert set() == (ids[0] & ids[1]) | (ids[0] & ids[2]) | (ids[1] & ids[2])


@pytest.mark.parametrize("width_in", [0.0, -1.0, 0.01, float("nan")])
def test_a_picture_without_width_is_refused(hand_plan: Plan, width_in: float) -> None:
    """No width, no picture: the error says what would do."""
    with pytest.raises(PublishError, match=r"0\.1 in or more"):
        pictures.to_svg(pictures.order(hand_plan), width_in)


def test_the_typesetter_keeps_every_word_of_every_picture(hand_plan: Plan, sand_cuts: FabricPlan) -> None:
    """Typeset as PDF and read back by another program, each word is there; none has vanished for want of a font."""
    for name, figure in _all(hand_plan, sand_cuts).items():
        svg = pictures.to_svg(figure)
        text = PdfReader(BytesIO(_typeset(svg, "pdf"))).pages[0].extract_text()
        plain = re.sub(r"\s+", "", text)
        missing = [word for word in read_picture(svg).words if re.sub(r"\s+", "", word) not in plain]
        assert [] == missing, name


def test_number_and_letter_are_printed_apart(hand_plan: Plan) -> None:
    """Typeset, the C of "center C" begins an r (398) and a space (200 thousandths) behind the r, but for kerning."""
    svg = pictures.to_svg(pictures.order(hand_plan), 3.0)
    at: list[tuple[str, float]] = []
    page = PdfReader(BytesIO(_typeset(svg, "pdf"))).pages[0]
    page.extract_text(visitor_text=lambda text, place, _tm, _font, _size: at.append((text.strip(), place[4])))
    signs = [(sign, x) for sign, x in at if sign]
    assert list("centerC") == [sign for sign, _ in signs[:7]]
    assert (398 + 200) * 7.5 / 1000 == pytest.approx(signs[6][1] - signs[5][1], abs=0.4)


def test_the_shipped_font_is_installed() -> None:
    """Pictures are measured for one family; its files are a dependency."""
    assert None is not font_folder()


def test_fabrics_hatches_and_places_come_out_right_in_print(hand_plan: Plan) -> None:
    """Rendered and looked at pixel by pixel: each patch has its color, most of it unbroken, some of it hatched."""
    figure = pictures.finished(hand_plan, letters=False)
    rows = pixels(_typeset(pictures.to_svg(figure, 2.0), "png"))
    # 2 in at 144 dots: 288 pixels; 7 pt margins on both sides; 8 in across the rest.
    scale = (288 - 28) / 8

    def seen(x: float, y: float) -> list[tuple[int, int, int]]:
        """The pixels of a half inch square round a place of the piece, y up from the middle."""
        cx, cy = int(144 + x * scale), int(144 - y * scale)
        return [rows[py][px] for py in range(cy - 8, cy + 8) for px in range(cx - 8, cx + 8)]

    fabrics = {(0, 0): (0x8D, 0x4D, 0x6B), (0, 3): (0xE8, 0xDC, 0xC0), (-3, 0): (0x1F, 0x27, 0x40)}
    for (x, y), color in fabrics.items():
        apart = [far_apart(pixel, color) for pixel in seen(x, y)]
        assert sum(one < 12 for one in apart) > 0.4 * len(apart), (x, y)
        assert any(one > 25 for one in apart), (x, y)


def test_what_is_outside_a_cropped_step_is_not_printed(hand_plan: Plan) -> None:
    """The margin under a step is paper: the drawing is cut off by its clip path in print as well."""
    figure = pictures.step(hand_plan, 1)
    rows = pixels(_typeset(pictures.to_svg(figure, 2.6), "png"))
    high = len(rows)
    strip = [rows[high - 4][x] for x in range(150, 250)]
    assert all(far_apart(pixel, (0xFD, 0xFB, 0xF6)) < 6 for pixel in strip)


def test_the_comparer_finds_a_right_picture_right(hand_plan: Plan) -> None:
    """Read back from the text, every patch has its fabric, its area by hand, and its letter."""
    svg = pictures.to_svg(pictures.finished(hand_plan), 3.0)
    assert [] == picture_differences(svg, PATCHES, LETTERS)


PATCHES = [("Plum", 20.25), ("Sand", 6.75), ("Sand", 6.75), ("Night", 11.25), ("Night", 11.25)]
LETTERS = ["C", "A", "A", "B", "B"]


@pytest.mark.parametrize(
    ("what", "find", "put"),
    [
        ("a patch is missing", r"<path [^>]*><title>Plum</title></path>\n", ""),
        ("two fabrics are changed over", r"<title>Sand</title>", "<title>Night</title>"),
        ("a patch has grown", r'(<path d="M)([0-9.]+)( [^>]*><title>Plum)', r"\g<1>1\g<3>"),
        ("a letter is gone", r"<text [^>]*>C</text>\n", ""),
    ],
)
def test_the_comparer_fails_on_a_doctored_picture(hand_plan: Plan, what: str, find: str, put: str) -> None:
    """Whatever is changed in the picture is noticed."""
    svg = pictures.to_svg(pictures.finished(hand_plan), 3.0)
    doctored = re.sub(find, put, svg, count=1)
    assert doctored != svg, what
    assert [] != picture_differences(doctored, PATCHES, LETTERS), what
