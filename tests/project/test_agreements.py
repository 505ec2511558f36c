from __future__ import annotations

import pytest

from stitchflip.errors import Mistake
from stitchflip.project.agreements import disagreements
from tests.project.drafts import MAT, mat, mistakes


def only(text: str) -> Mistake:
    """The one mistake of a file."""
    (mistake,) = mistakes(text)
    return mistake


def center(corners: str) -> str:
    """The mat with a center given by its corners."""
    return mat('cut = "6"', f'shape = "corners"\ncorners = {corners}')


@pytest.mark.parametrize(
    ("old", "new", "line", "key", "would_do"),
    [
        ('"2", fabric = "Brass"', '"2", fabric = "Brasss"', 7, "rounds[1].fabric", '"Brass" or "Oat"'),
        ('"2", fabric = "Brass"', '"2", fabrics = ["Oat", "brass"]', 7, "rounds[1].fabrics[2]", '"Brass" or "Oat"'),
        ('fabric = "Oat"\n', 'fabric = "Rye"\n', 17, "center.fabric", '"Oat" or "Brass"'),
        ('[binding]\nfabric = "Brass"', '[binding]\nfabric = "Wool"', 28, "binding.fabric", '"Oat" or "Brass"'),
    ],
)
def test_a_fabric_nobody_listed_is_told_with_those_there_are(
    old: str, new: str, line: int, key: str, would_do: str
) -> None:
    """Names are compared letter for letter; the one that looks alike comes first."""
    mistake = only(mat(old, new))

    assert (line, key, would_do) == (mistake.line, mistake.key, mistake.would_do)


def test_a_backing_may_have_a_name_of_its_own() -> None:
    """A backing that is none of the fabrics is no mistake."""
    assert not mistakes(MAT + '[backing]\nfabric = "Old sheet"\n')


def test_spaces_in_a_name_do_not_matter() -> None:
    """A name is its words."""
    assert not mistakes(mat('name = "Oat"', 'name = " Blue   Hour "').replace('fabric = "Oat"', 'fabric = "Blue Hour"'))


def test_two_fabrics_of_one_name_are_told() -> None:
    """Names that differ in capitals only are the same name."""
    mistake = only(mat('name = "Brass"', 'name = "oat"').replace('fabric = "Brass"', 'fabric = "Oat"'))

    assert (24, "fabrics[2].name", '"oat" a second time (as fabric 1 already)') == (
        mistake.line,
        mistake.key,
        mistake.found,
    )


@pytest.mark.parametrize(
    ("new", "key", "found"),
    [
        ('cuts = ["2", "2"], cut = "2"', "rounds[2].cuts", "cut and cuts in one round"),
        ('fabrics = ["Oat"], cut = "2"', "rounds[2].fabrics", "fabric and fabrics in one round"),
        ("cuts = []", "rounds[2].cuts", "cuts with nothing in it"),
        ("cut_long = '9'", "rounds[2].cut", "nothing"),
    ],
)
def test_a_round_says_one_thing_once(new: str, key: str, found: str) -> None:
    """One cut width or one for each strip, one fabric or several in turn."""
    mistake = only(mat('cut = "2 1/2"', new))

    assert (8, key, found) == (mistake.line, mistake.key, mistake.found)


@pytest.mark.parametrize(
    ("new", "keys"),
    [
        ('wide = "18"', ["squared_up.long"]),
        ('shape = "polygon"\nsides = 6', ["squared_up.across_flats"]),
        ('across_flats = "12"', ["squared_up.sides"]),
        ('sides = 6\nacross_flats = "12"\nwide = "12"', ["squared_up.wide"]),
        ('sides = 6\nacross_flats = "12"\nends = "pointed"', ["squared_up.ends"]),
        ('shape = "rectangle"\nwide = "18"\nlong = "13"\nsides = 4', ["squared_up.sides"]),
        ('beyond_points = "1"\nwide = "18"', ["squared_up.wide"]),
        ('sides = 6\nacross_flats = "12"\nbeyond_points = "1"', ["squared_up.beyond_points"]),
        ("", ["squared_up.wide", "squared_up.long"]),
        ('ends = "square"', ["squared_up.wide", "squared_up.long"]),
        ('sides = 2\nacross_flats = "12"', ["squared_up.sides"]),
    ],
)
def test_the_squared_up_piece_has_the_sizes_of_its_shape(new: str, keys: list[str]) -> None:
    """Wide and long, or beyond the points, or sides and across the flats."""
    found = mistakes(mat('wide = "18"     # as it lies\nlong = "13"\n', new + "\n"))

    assert sorted(keys) == sorted(mistake.key for mistake in found)


@pytest.mark.parametrize(
    ("new", "keys"),
    [
        ("", ["center.cut"]),
        ('cut = "6"\ncut_wide = "5"', ["center.cut", "center.cut_long"]),
        ('shape = "rectangle"\ncut_wide = "6"', ["center.cut_long"]),
        ('shape = "square"\ncut = "6"\nsides = 6', ["center.sides"]),
        ('shape = "polygon"\ncut = "6"', ["center.sides"]),
        ("sides = 6", ["center.cut"]),
        ('shape = "corners"\ncut = "6"', ["center.corners", "center.cut"]),
    ],
)
def test_a_center_has_the_sizes_of_its_shape(new: str, keys: list[str]) -> None:
    """What its shape needs and nothing else."""
    assert keys == sorted(mistake.key for mistake in mistakes(mat('cut = "6"', new)))


@pytest.mark.parametrize(
    ("new", "shape"),
    [
        ('cut = "6"', "square"),
        ('cut_wide = "6"\ncut_long = "4"', "rectangle"),
        ('sides = 6\ncut = "6"', "polygon"),
        ("corners = [[-1, -1], [1, -1], [0, 1]]", "corners"),
    ],
)
def test_the_sizes_of_a_center_tell_its_shape(new: str, shape: str) -> None:
    """Nobody has to write the shape that the sizes say already."""
    from stitchflip.project import read_project

    made = read_project(mat('cut = "6"', new)).center

    assert made is not None
    assert shape == made.shape


@pytest.mark.parametrize(
    ("corners", "key", "found"),
    [
        ("[[-2, -2], [2, -2]]", "center.corners", "2 corners"),
        ("[[-2, -2], [-2, 2], [2, 2], [2, -2]]", "center.corners", "corners listed clockwise"),
        (
            "[[-2, -2], [2, -2], [0, -1], [2, 2], [-2, 2]]",
            "center.corners[3]",
            "corner 3 at (0, -1), where the outline does not bend outward",
        ),
        (
            '[[-2, -2], [2, -2], ["0", "-1"], [2, 2], ["-2", 2]]',
            "center.corners[3]",
            "corner 3 at (0, -1), where the outline does not bend outward",
        ),
        (
            "[[-2, -2], [0, -2], [2, -2], [2, 2], [-2, 2]]",
            "center.corners[2]",
            "corner 2 at (0, -2), where the outline does not bend outward",
        ),
        (
            # a five-pointed star drawn in one line: it turns left everywhere and goes round twice
            "[[0, 3], [-2, -3], [3, 1], [-3, 1], [2, -3]]",
            "center.corners",
            "an outline that crosses itself",
        ),
    ],
)
def test_corners_that_make_no_outline_are_told_by_corner(corners: str, key: str, found: str) -> None:
    """Too few, the wrong way round, bent inward, straight on, or crossing itself."""
    mistake = only(center(corners))

    assert (17, key, found) == (mistake.line, mistake.key, mistake.found)


def test_a_triangle_and_a_kite_are_good_centers() -> None:
    """Outlines that bend outward at each corner, counter-clockwise, are read; texts may be lengths."""
    assert not mistakes(center("[[-2, -1], [2, -1], [0, 3]]"))
    assert not mistakes(center('[["0", "-3 1/2"], [2, 0], [0, "2 1/2"], ["-2 in", 0]]'))


@pytest.mark.parametrize(
    ("way", "keys"),
    [("log cabin", ["center"]), ("sides in my order", ["center", "rounds", "steps"]), ("rows of strips", [])],
)
def test_a_way_of_building_has_what_it_begins_with(way: str, keys: list[str]) -> None:
    """Only rows can begin without a center; sides in my order have steps instead of rounds."""
    text = mat('[center]        # the first piece\ncut = "6"\nfabric = "Oat"\n', f'[building]\nway = "{way}"\n')

    assert keys == sorted(mistake.key for mistake in mistakes(text))


def test_steps_belong_to_sides_in_my_order_only() -> None:
    """Steps beside rounds are told, with both ways out."""
    mistake = only(mat("\n[squared_up]", '\nsteps = [{ side = "top", cut = "2" }]\n\n[squared_up]'))

    assert ("steps", 'rounds, or way = "sides in my order" under [building]') == (mistake.key, mistake.would_do)


@pytest.mark.parametrize(
    ("pair", "would_do"),
    [
        ('["top", "left"]', '["top", "bottom"]'),
        ('["upper left", "upper right"]', '["upper left", "lower right"]'),
    ],
)
def test_a_pair_of_courthouse_steps_is_opposite(pair: str, would_do: str) -> None:
    """Two sides that meet are no pair."""
    mistake = only(MAT + f'[building]\nway = "courthouse steps"\nfirst_pair = {pair}\n')

    assert ("building.first_pair", would_do) == (mistake.key, mistake.would_do)


@pytest.mark.parametrize(
    ("rule", "key"),
    [
        ('accent = "Oat"', "fabric_rule.accent_every"),
        ("accent_every = 3", "fabric_rule.accent"),
        ('accent = "Rye"\naccent_every = 3', "fabric_rule.accent"),
        ('fabrics = ["Oat", "Rye"]', "fabric_rule.fabrics[2]"),
        ('order = "light and dark halves"', "fabric_rule.light_sides"),
    ],
)
def test_the_eyes_rules_are_complete(rule: str, key: str) -> None:
    """An accent needs its number, halves need their sides, and all names are known."""
    assert key == only(MAT + f"[fabric_rule]\n{rule}\n").key


def test_only_what_is_on_hand_needs_something_on_hand() -> None:
    """A fabric that cannot be bought and of which there is nothing is told."""
    mistake = only(mat('name = "Oat"', 'name = "Oat"\nonly_on_hand = true'))

    assert (19, "fabrics[1].on_hand") == (mistake.line, mistake.key)


def test_a_strip_was_cut_short_once() -> None:
    """Two lengths for one strip are told at the second."""
    short = 'short_strips = [{ step = 2, long = "5" }, { step = 2, long = "6" }]\n\n[squared_up]'

    assert "short_strips[2].step" == only(mat("[squared_up]", short)).key


def test_a_strip_of_two_seams_is_no_mistake_of_the_file() -> None:
    """What only the sewing shows is left to the plan."""
    assert not mistakes(mat('cut = "2 1/2"', 'cut = "1/2"'))


@pytest.mark.parametrize("way", ["braid", "chevron"])
def test_a_braid_and_a_chevron_stand_upright(way: str) -> None:
    """Both grow up the picture, so a piece drawn lying would get its strips the short way."""
    found = list(disagreements({"building": {"way": way}, "squared_up": {"length_runs": "across"}}))
    (lying,) = (one for one in found if one.path == ("squared_up", "length_runs"))
    assert 'length_runs = "up"' == lying.would_do


@pytest.mark.parametrize(
    ("told", "keys"),
    [
        ("half_drop = true", "repeat repeat_across"),
        ('repeat_across = "8"', "repeat"),
        ("spare_repeats = 1", "repeat"),
        ("motif_chosen = true", "repeat"),
        ('repeat = "12"\nhalf_drop = true', "repeat_across"),
        ('repeat = "12"\nmotifs = [{ across = "1", along = "2" }, { across = "4", along = "8" }]', "repeat_across"),
    ],
)
def test_a_print_is_told_from_its_repeat(told: str, keys: str) -> None:
    """What is told of a print needs its repeat; half drop and several motifs need its columns too."""
    told_of = {one.key for one in mistakes(mat('name = "Oat"', f'name = "Oat"\n{told}'))}
    assert {f"fabrics[1].{key}" for key in keys.split()} == told_of


@pytest.mark.parametrize(("across", "along", "key"), [("9", "2", "across"), ("2", "13", "along")])
def test_a_motif_lies_inside_its_repeat(across: str, along: str, key: str) -> None:
    """A print of 8 by 12 has no motif 9 in across or 13 in along; told for a project as for a file."""
    told = f'repeat = "12"\nrepeat_across = "8"\nmotifs = [{{ across = "{across}", along = "{along}" }}]'
    assert {f"fabrics[1].motifs[1].{key}"} == {
        one.key for one in mistakes(mat('name = "Oat"', f'name = "Oat"\n{told}'))
    }
