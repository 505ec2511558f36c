"""Published numbers for repeats and fussy cutting."""

from __future__ import annotations

import pytest

from stitchflip.cutting.motifs import Counting, Repeat, Window
from stitchflip.cutting.motifs.buying import identical, length_for, repeats_by_rule


def test_six_identical_layers_of_a_21_in_repeat_are_three_yards_and_a_half() -> None:
    """6 x 21 = 126 in = 3 1/2 yd; the answer advises to buy 4.

    Repeat yardage answer, Quiltingboard, https://www.quiltingboard.com/2385823-post8.html
    """
    layers = identical(Repeat(21), Window(8, 8), 6)
    assert (6, 126, 3.5) == (layers.repeats, layers.whole_in, layers.whole_in / 36)
    assert layers.whole_in < 4 * 36 < layers.whole_in + 21


def test_needed_96_in_of_a_27_in_repeat_are_four_repeats() -> None:
    """96 / 27 = 3.56, so 4 repeats = 108 in.

    Figuring Pattern Repeats, DIY Ideas magazine, http://www.diyideas.com/howto/sewing-fabric/fabricrepeats_3.html
    """
    length = identical(Repeat(27), Window(8, 96), 1)
    assert (108, 4) == (length.whole_in, length.whole_in / 27)


def test_a_window_is_the_motif_and_a_quarter_inch_on_every_side() -> None:
    """Cut 1/4 in outside the finished window; 3 1/2 cut shows 3 (derived).

    An Excuse to Be Fussy, https://janeslessonlearned.com/2010/09/27/an-excuse-to-be-fussy/ and
    Fussy Cutting 101, https://nomadicquilter.com/blogs/blog/fussing-cutting-101
    """
    assert (3, 3) == Window(3.5, 3.5).shows


@pytest.mark.parametrize(("pieces", "motifs", "repeats"), [(12, 3, 4), (13, 3, 5), (4, 1, 4)])
def test_repeats_needed_are_pieces_divided_by_motifs(pieces: int, motifs: int, repeats: int) -> None:
    """Pieces divided by the motifs of a repeat, rounded up; four identical pieces take four repeats at least.

    Why you should fussy cut, http://featheryournestquiltstore.com/why-you-should-fussy-cut/ (situation); the rule is
    common practice, no source.
    """
    assert repeats == repeats_by_rule(pieces, motifs)


def test_the_rule_of_repeats_may_fall_short_of_what_is_sure() -> None:
    """Twelve 4 1/2 in windows, three columns, 9 in repeats: four by the rule, 36 in, which surely hold nine.

    36 in hold (36 - 4 1/2) / 9 = 3 levels surely (derived); a fifth repeat less 4 1/2 in makes it sure: 40 1/2.
    """
    counting = Counting(Repeat(9, 12), Window(4.5, 4.5), 40.5)
    assert 4 * 9 == 9 * repeats_by_rule(12, 3)
    assert 9 == counting.count(36).surely
    assert 40.5 == length_for(counting, 12).surely_in
