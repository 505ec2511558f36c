"""Published conversions, fractions and roundings against ours; slips in print are shown as slips."""

from __future__ import annotations

import pytest

from stitchflip.cutting.purchase import up_to_shop_step
from stitchflip.lengths import Length, Rounding, Unit, format_inches, parse_length, round_to
from stitchflip.project import effective
from stitchflip.project.model import Project
from tests.twins.table import house

MILLIMETER = 0.1 / 2.54


def inches(text: str) -> float:
    """A length typed by hand, in inches."""
    return parse_length(text).inches


def centimeters(text: str) -> float:
    """A length typed by hand, in centimeters."""
    return parse_length(text).inches * 2.54


def test_yard_and_inch_are_exact() -> None:
    """1 yd = 0.9144 m, 1 in = 2.54 cm.

    Tilkkunen, Fabric size calculations: metres, yards, inches,
    https://tilkkunen.com/en/blogs/news/fabric-size-calculations-meter-yard-inch-and-fat-quarter
    """
    assert parse_length("1 yd") == parse_length("91.44 cm")
    assert parse_length("1 in") == parse_length("2.54 cm")


def test_quarter_inch_is_exactly_6_35_mm() -> None:
    """Taken as 6 mm in print; 0.35 less than it is.

    BellaOnline, Imperial vs Metric Measurements in Quilting, http://www.bellaonline.com/articles/art172906.asp
    """
    assert parse_length("1/4 in") == Length.of_cm(0.635)
    assert parse_length("1/4 in") != parse_length("6 mm")


def test_metric_seam_is_three_quarters_of_a_centimeter() -> None:
    """Metric patchwork in Germany uses 0.75 cm.

    Patchwork & Quilting magazine forum, Inches or centimetres?, 2008, https://www.pandqmagazine.com/forums/postings.asp?th=13
    """
    mat = Project.model_validate(
        {
            "name": "Mat",
            "units": "cm",
            "squared_up": {"wide": "47", "long": "35"},
            "fabrics": [{"name": "Flax"}],
            "binding": {"fabric": "Flax"},
        },
        context={"unit": Unit.CM},
    )

    assert pytest.approx(0.75 / 2.54) == effective(mat).seam


@pytest.mark.parametrize(("seam", "millimeters"), [("1/4", 6), ("3/8", 10), ("5/8", 16), ("3/4", 19)])
def test_seams_to_the_nearest_millimeter(seam: str, millimeters: int) -> None:
    """1/4 = 6, 3/8 = 10, 5/8 = 16, 3/4 = 19.

    Echidna Sewing, Imperial to Metric Conversion Guide,
    https://www.echidnasewing.com.au/article/inspiring-and-educating/imperial-to-metric-conversion-guide/
    """
    assert pytest.approx(millimeters * MILLIMETER) == round_to(inches(seam), MILLIMETER, Rounding.NEAREST)


def test_slip_half_an_inch_is_nearer_to_13_mm_than_to_12() -> None:
    """The same list prints 12; 12.7 rounds to 13."""
    assert pytest.approx(13 * MILLIMETER) == round_to(0.5, MILLIMETER, Rounding.NEAREST)


YARD_PARTS = [
    ("1/8", 4.5),
    ("1/4", 9),
    ("1/3", 12),
    ("3/8", 13.5),
    ("1/2", 18),
    ("5/8", 22.5),
    ("2/3", 24),
    ("3/4", 27),
    ("7/8", 31.5),
]


@pytest.mark.parametrize(("part", "length"), YARD_PARTS)
def test_parts_of_a_yard(part: str, length: float) -> None:
    """Scissortail Quilting, Convert Fabric Measurements.

    https://scissortailquilting.com/convert-fabric-measurements/?amp=1
    """
    assert Length.of_inches(length) == parse_length(f"{part} yd")


def test_slip_an_eighth_of_a_yard_is_not_four_fifths_of_an_inch() -> None:
    """Slip in print: 4/5 in; 4 1/2 is right.

    Quilters Resources, Measurements, https://quiltersresources.com/measurements.html
    """
    assert 4.5 == inches("1/8 yd")
    assert inches("1/8 yd") != inches("4/5")


YARDS_IN_CM = [
    ("1/8", 11.4),
    ("1/4", 22.9),
    ("3/8", 34.3),
    ("1/2", 45.7),
    ("5/8", 57.2),
    ("3/4", 68.6),
    ("1", 91.4),
    ("2", 182.9),
]


@pytest.mark.parametrize(("yards", "cm"), YARDS_IN_CM)
def test_yards_in_centimeters(yards: str, cm: float) -> None:
    """Echidna Sewing, Imperial to Metric Conversion Guide.

    https://www.echidnasewing.com.au/article/inspiring-and-educating/imperial-to-metric-conversion-guide/
    """
    shown = round_to(inches(f"{yards} yd"), MILLIMETER, Rounding.NEAREST)

    assert pytest.approx(cm) == shown * 2.54


def test_slip_three_yards_are_less_than_three_meters() -> None:
    """Slip in print: yards x 1.1 = meters (3.3 for 3 yd) and meters x 0.91 = yards: the factors are swapped.

    BellaOnline, Imperial vs Metric Measurements in Quilting, http://www.bellaonline.com/articles/art172906.asp
    """
    assert pytest.approx(274.32) == centimeters("3 yd")
    assert pytest.approx(3.28, abs=0.005) == inches("300 cm") / 36


SIXTEENTHS = [
    ("1/16", 0.0625),
    ("⅛", 0.125),
    ("3/16", 0.1875),
    ("¼", 0.25),
    ("5/16", 0.3125),
    ("⅜", 0.375),
    ("7/16", 0.4375),
    ("½", 0.5),
    ("9/16", 0.5625),
    ("⅝", 0.625),
    ("11/16", 0.6875),
    ("¾", 0.75),
    ("13/16", 0.8125),
    ("⅞", 0.875),
    ("15/16", 0.9375),
]


@pytest.mark.parametrize(("text", "decimal"), SIXTEENTHS)
def test_sixteenths(text: str, decimal: float) -> None:
    """Both ways: as typed and as printed.

    Catbird Quilts, Fraction Conversions, 2014, https://catbirdquilts.wordpress.com/2014/02/07/fraction-conversions/
    """
    assert decimal == inches(text)
    assert text == format_inches(decimal)


@pytest.mark.parametrize(("text", "printed"), [("1/8", "0.12"), ("3/8", "0.37"), ("5/8", "0.62")])
def test_slip_eighths_cut_off_to_two_places(text: str, printed: str) -> None:
    """Slip in print: .12, .37, .62. Phoebe Moon, Piecing a Quilt on Point, http://phoebemoon.com/tutorials/on-point.htm."""
    assert pytest.approx(0.005, abs=0.0001) == inches(text) - inches(printed)


@pytest.mark.parametrize(("exact", "cut"), [(12 / 1.414, 8.5), (8.5, 8.5), (9.74, 9.75), (8.484, 8.5)])
def test_setting_squares_go_up_to_the_next_eighth(exact: float, cut: float) -> None:
    """12 / 1.414 = 8.49 becomes 8 1/2.

    Pine Meadows Designs, Setting a Block On Point, http://www.pinemeadowsdesigns.com/SewingHints-BlockOnPoint.htm
    """
    assert cut == round_to(exact, 1 / 8, Rounding.UP)


@pytest.mark.parametrize(("need", "buy"), [(27.5, 36), (27, 27), (15, 18), (9.5, 18), (3, 9)])
def test_fabric_goes_up_to_the_next_quarter_yard(need: float, buy: float) -> None:
    """A shop that cuts by quarter yards.

    Pieceful Kwilter, Binding yardage, 2009, http://piecefulkwilter.blogspot.com/2009/11/binding-yardage.html
    """
    assert buy == up_to_shop_step(need, house(buy_in_steps_of=9.0, buy_at_least=9.0))
