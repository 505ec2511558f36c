"""What the ways of building, the shapes and the edges need, and what they cannot have."""

from __future__ import annotations

import pytest

from stitchflip.errors import Mistake
from stitchflip.project.model import Outline, Way
from stitchflip.project.reading import read_project
from tests.project.drafts import MAT, mat, mistakes

ROUNDS = MAT[MAT.index("rounds") : MAT.index("\n[squared_up]")]
CENTER = MAT[MAT.index("[center]") : MAT.index("[[fabrics]]")]
SIZE = 'wide = "18"     # as it lies\nlong = "13"\n'
PATCHES = 'patches = [{ fabric = "Oat" }, { fabric = "Brass", line = [[-3, 0], [3, "1 1/2"]] }]\n'
SQUARES = ROUNDS.replace(" }", ', corner_fabric = "Oat" }')


def built(way: str, *, strips: str = ROUNDS, center: str = CENTER, more: str = "") -> str:
    """The mat built another way."""
    building = f'[building]\nway = "{way}"\n{more}\n'
    return MAT.replace(ROUNDS, strips).replace(CENTER, center + building)


def only(text: str) -> Mistake:
    """The one mistake of a file."""
    (mistake,) = mistakes(text)
    return mistake


def keys(text: str) -> list[str]:
    """Where the mistakes of a file are."""
    return sorted(mistake.key for mistake in mistakes(text))


@pytest.mark.parametrize("way", [way for way in Way if way not in {Way.STRINGS, Way.FOUNDATION, Way.SIDES}])
def test_a_way_with_rounds_reads_a_center_and_rounds(way: Way) -> None:
    """Every way round a center is written alike; corner squares need their fabric besides."""
    strips = SQUARES if way is Way.CORNER_SQUARES else ROUNDS

    assert way is read_project(built(way.value, strips=strips)).building.way


@pytest.mark.parametrize(
    ("way", "missing"),
    [
        (way, [] if way in {Way.ROWS, Way.STRINGS} else ["center"])
        for way in Way
        if way not in {Way.FOUNDATION, Way.SIDES}
    ],
)
def test_only_rows_and_strings_begin_without_a_center(way: Way, missing: list[str]) -> None:
    """A strip that runs right across is a beginning too."""
    strips = SQUARES if way is Way.CORNER_SQUARES else ROUNDS

    assert missing == keys(built(way.value, strips=strips, center=""))


@pytest.mark.parametrize(
    ("way", "strips", "instead"),
    [
        ("string block", ROUNDS, "no [center], and the middle strip as the first of the rounds"),
        ("numbered foundation", PATCHES, "no [center], and its fabric as that of the first patch"),
    ],
)
def test_string_blocks_and_foundations_have_no_center(way: str, strips: str, instead: str) -> None:
    """They begin with a strip or a patch; a center beside it would be cut and never sewn."""
    mistake = only(built(way, strips=strips))

    assert ("center", instead) == (mistake.key, mistake.would_do)


def test_a_numbered_foundation_has_patches() -> None:
    """Patches instead of rounds; a line may be given in numbers and in lengths."""
    project = read_project(built("numbered foundation", strips=PATCHES, center=""))

    assert (None, ((-3.0, 0.0), (3.0, 1.5))) == tuple(patch.line for patch in project.patches)


@pytest.mark.parametrize(
    ("patches", "wrong"),
    [
        ("", ["patches"]),
        ("patches = []", ["patches"]),
        ('patches = [{ fabric = "Oat", line = [[0, 0], [3, 0]] }]', ["patches[1].line"]),
        ('patches = [{ fabric = "Oat" }, { fabric = "Oat" }]', ["patches[2].line"]),
        (
            'patches = [{ fabric = "Oat", at = [1, 0] }, { fabric = "Oat", line = [[1, 1], [1, 1]] }]',
            ["patches[2].line"],
        ),
        ('patches = [{ fabric = "Oat" }, { fabric = "Oat", line = [["1", 1], [1, "1"]] }]', ["patches[2].line"]),
        ('patches = [{ fabric = "Oat" }, { fabric = "Oat", line = [[0, 1], [1, 1]], at = [1, 2] }]', ["patches[2].at"]),
        ('patches = [{ fabric = "Oat" }, { fabric = "Oat", line = [[0, 1]] }]', ["patches[2].line[2]"]),
        ('patches = [{ fabric = "Oat" }, { fabric = "Oat", line = [[0, 1], [1, "up"]] }]', ["patches[2].line[2][2]"]),
        ('patches = [{ fabric = "Rye" }]', ["patches[1].fabric"]),
        ("patches = [{ at = [0, 0] }]", ["patches[1].fabric"]),
        (PATCHES + ROUNDS, ["rounds"]),
        (PATCHES + 'steps = [{ side = "top", cut = "2" }]', ["steps"]),
    ],
)
def test_a_patch_is_told_by_its_number(patches: str, wrong: list[str]) -> None:
    """The first lies where it lies, each later one is sewn along a line of some length."""
    assert wrong == keys(built("numbered foundation", strips=patches + "\n", center=""))


def test_patches_belong_to_a_numbered_foundation() -> None:
    """Beside rounds they are told, with both ways out."""
    mistake = only(built("log cabin", strips=ROUNDS + PATCHES))

    assert ("patches", 'rounds, or way = "numbered foundation" under [building]') == (mistake.key, mistake.would_do)


def test_rounds_with_corner_squares_name_the_fabric_of_the_squares() -> None:
    """Each round needs it, and only in this way of building."""
    assert ["rounds[1].corner_fabric", "rounds[2].corner_fabric"] == keys(built("rounds with corner squares"))
    assert ["rounds[1].corner_fabric", "rounds[2].corner_fabric"] == keys(built("courthouse steps", strips=SQUARES))
    unknown = SQUARES.replace('corner_fabric = "Oat"', 'corner_fabric = "Rye"', 1)
    assert ["rounds[1].corner_fabric"] == keys(built("rounds with corner squares", strips=unknown))


@pytest.mark.parametrize(
    ("angles", "wrong"),
    [
        ("smallest_angle = 4\nlargest_angle = 14", []),
        ("smallest_angle = 9\nlargest_angle = 9", []),
        # the usual ones are 4 and 14
        ("smallest_angle = 15", ["building.smallest_angle"]),
        ("largest_angle = 3.5", ["building.largest_angle"]),
        ("smallest_angle = 20\nlargest_angle = 10", ["building.smallest_angle"]),
        ("largest_angle = 46", ["building.largest_angle"]),
        ("smallest_angle = -1", ["building.smallest_angle"]),
        ("seed = 1.5", ["building.seed"]),
        ('no_sliver_under = "0"', ["building.no_sliver_under"]),
    ],
)
def test_angles_of_wonky_strips_stand_in_their_order(angles: str, wrong: list[str]) -> None:
    """The least slant is not larger than the most, and neither passes 45 degrees."""
    assert wrong == keys(built("wonky strips", more=angles))


@pytest.mark.parametrize(
    ("corners", "wrong"),
    [
        ('["upper left", "lower right"]', []),
        # a square on point has its corners at the top, the right, the bottom and the left
        ('["top", "bottom"]', []),
        ('["upper left", "Upper-Left"]', ["building.corners[2]"]),
        ('["nose"]', ["building.corners[1]"]),
        ('"upper left"', ["building.corners"]),
    ],
)
def test_corners_are_named_once_each(corners: str, wrong: list[str]) -> None:
    """Names of places round the piece, in the order sewn."""
    assert wrong == keys(built("stitch-and-flip corners", more=f"corners = {corners}"))


def on_hand(*, oat: bool, brass: bool) -> str:
    """The mat with widths from what is on hand, rounds without a cut width."""
    piece = '\non_hand = [{ name = "fat quarter" }]'
    text = built("courthouse steps", more='widths = "from what is on hand"').replace('cut = "2", ', "")
    text = text.replace('name = "Oat"', f'name = "Oat"{piece if oat else ""}')
    return text.replace('name = "Brass"', f'name = "Brass"{piece if brass else ""}')


def test_widths_from_what_is_on_hand_need_something_on_hand() -> None:
    """A round may leave out its cut width when its fabric has pieces to take one from."""
    assert [] == keys(on_hand(oat=False, brass=True))
    assert ["rounds[1].cut"] == keys(on_hand(oat=True, brass=False))
    assert [] == keys(on_hand(oat=True, brass=False).replace('{ fabric = "Brass" }', "{}"))
    assert ["rounds[1].cut"] == keys(on_hand(oat=False, brass=False).replace('{ fabric = "Brass" }', "{}"))
    assert ["rounds[1].cut"] == keys(built("courthouse steps").replace('cut = "2", ', ""))


@pytest.mark.parametrize(
    ("center", "wrong"),
    [
        ('shape = "half square"\ncut = "6"', []),
        ('shape = "half square"', ["center.cut"]),
        ('shape = "half square"\ncut = "6"\ncut_wide = "6"', ["center.cut_wide"]),
        ('cut_wide = "16 1/4"\ncut_long = "12"\nsewn_already = true', []),
        ('sides = 6\ncut = "6"\nsewn_already = true', []),
        ("corners = [[-3, -2], [3, -2], [0, 3]]\nsewn_already = true", []),
        ('cut = "6"\nsewn_already = true', ["center.shape"]),
        ('shape = "half square"\ncut = "6"\nsewn_already = true', ["center.shape"]),
        ('cut = "6"\nsewn_already = "maybe"', ["center.sewn_already"]),
    ],
)
def test_half_squares_and_half_done_pieces_have_their_sizes(center: str, wrong: list[str]) -> None:
    """A half square is cut from one square; a half-done piece is given as measured."""
    assert wrong == keys(mat('cut = "6"', center))


@pytest.mark.parametrize(
    ("size", "wrong"),
    [
        ('across = "22"', []),
        ('shape = "round"', ["squared_up.across"]),
        ('shape = "round"\nacross = "22"\nwide = "22"', ["squared_up.wide"]),
        ('across = "22"\nends = "pointed"', ["squared_up.ends"]),
        ('across = "22"\nbeyond_points = "1"', ["squared_up.beyond_points"]),
        ('shape = "oval"\nwide = "18"\nlong = "13"', []),
        ('shape = "oval"\nacross = "18"', ["squared_up.across", "squared_up.long", "squared_up.wide"]),
        ('shape = "oval"\nwide = "18"\nlong = "13"\ncorner_radius = "2"', ["squared_up.corner_radius"]),
        ('wide = "18"\nlong = "13"\nacross = "18"\nshape = "rectangle"', ["squared_up.across"]),
        ('wide = "18"\nlong = "13"\ncorner_radius = "2"', []),
        # half of 13 is 6 1/2
        ('wide = "18"\nlong = "13"\ncorner_radius = "6 1/2"', []),
        ('wide = "18"\nlong = "13"\ncorner_radius = "6 3/4"', ["squared_up.corner_radius"]),
        ('wide = "18"\nlong = "13"\ncorner_radius = "2"\nends = "pointed"', ["squared_up.corner_radius"]),
        ('sides = 6\nacross_flats = "17"\ncorner_radius = "2"', ["squared_up.corner_radius"]),
    ],
)
def test_round_and_oval_pieces_and_rounded_corners_have_their_sizes(size: str, wrong: list[str]) -> None:
    """Round from edge to edge, oval wide and long, and a radius only where there are four corners to round."""
    assert wrong == keys(mat(SIZE, size + "\n"))


def test_the_size_across_tells_that_a_piece_is_round() -> None:
    """Nobody has to write the shape that the size says already."""
    assert Outline.ROUND is read_project(mat(SIZE, 'across = "22"\n')).squared_up.shape


@pytest.mark.parametrize(
    ("binding", "wrong"),
    [
        ('fabric = "Oat"\nedge = "binding"\ngrain = "bias"', []),
        ('edge = "binding"', ["binding.fabric"]),
        ('fabric = ""', ["binding.fabric"]),
        ("", ["binding.fabric"]),
        ('edge = "facing"', ["binding.fabric"]),
        ('edge = "facing"\nfabric = "Oat"\nshows = "2"', []),
        ('edge = "self-binding"\nshows = "1/2"', []),
        ('edge = "turned through"', []),
        ('edge = "turned through"\nshows = "1/2"', ["binding.shows"]),
        ('fabric = "Oat"\nshows = "1/2"', ["binding.shows"]),
        ('fabric = "Rye"', ["binding.fabric"]),
        ('fabric = "Oat"\nedge = "fringe"', ["binding.edge"]),
        ('fabric = "Oat"\ngrain = "crosswise"', ["binding.grain"]),
    ],
)
def test_an_edge_has_a_fabric_where_strips_are_sewn_to_it(binding: str, wrong: list[str]) -> None:
    """Binding and facing are strips; a self-binding and a piece that is turned through need none."""
    assert wrong == keys(MAT[: MAT.index("[binding]")] + f"[binding]\n{binding}\n")


@pytest.mark.parametrize(
    ("extras", "wrong"),
    [
        ("sleeve = true", []),
        ('sleeve = true\nsleeve_fabric = "Oat"\nlabel = "corner"\nlabel_fabric = "Brass"', []),
        # the backing may have a name that is none of the fabrics
        ('sleeve = true\nsleeve_fabric = "Backing"', []),
        ('sleeve = true\nsleeve_fabric = "Rye"', ["extras.sleeve_fabric"]),
        ('sleeve_fabric = "Oat"', ["extras.sleeve_fabric"]),
        ('label_fabric = "Oat"', ["extras.label_fabric"]),
        ('label = "round"', ["extras.label"]),
        ("sleeve = 3", ["extras.sleeve"]),
    ],
)
def test_a_sleeve_and_a_label_are_there_before_they_have_a_fabric(extras: str, wrong: list[str]) -> None:
    """Any listed fabric will do, and that of the backing."""
    assert wrong == keys(MAT + f"[extras]\n{extras}\n")
