"""What joined blocks, borders and panels need, and what they cannot have."""

from __future__ import annotations

import pytest

from stitchflip.project.agreements.joined import blocks_in_one, rows_of_blocks
from stitchflip.project.model import Setting
from stitchflip.project.reading import read_project
from tests.project.drafts import MAT, mat, mistakes

JOINED = '[joined]\nacross = 2\ndown = 3\nfabric = "Oat"\n'
SIZE = 'wide = "18"     # as it lies\nlong = "13"\n'


def keys(text: str) -> list[str]:
    """Where the mistakes of a file are."""
    return sorted(mistake.key for mistake in mistakes(text))


def joined(*lines: str, fabric: str = 'fabric = "Oat"') -> str:
    """The mat as a block, six of them joined."""
    return MAT + "\n".join(["[joined]", "across = 2", "down = 3", fabric, *lines]) + "\n"


@pytest.mark.parametrize(
    ("lines", "wrong"),
    [
        ([], []),
        (['join = "flat and folded"', 'flat_cut = "1 1/8"', 'folded_cut = "2"', 'fold = "in front"'], []),
        (['shows = "2"'], ["joined.shows"]),
        (['corner_squares = "Brass"'], ["joined.corner_squares"]),
        (['join = "covered"', 'shows = "2"', 'corner_squares = "Brass"', 'folded_cut = "3"'], []),
        (['join = "covered"', 'flat_cut = "2"'], ["joined.flat_cut"]),
        (['join = "covered"', 'fold = "in front"'], ["joined.fold"]),
        (['join = "glue"'], ["joined.join"]),
        (['fabric_behind = "Rye"'], ["joined.fabric_behind"]),
        (['join = "covered strips"', 'corner_squares = "Rye"'], ["joined.corner_squares"]),
        (["across = 0"], ["joined.across"]),
    ],
)
def test_a_join_has_its_own_strips(lines: list[str], wrong: list[str]) -> None:
    """Keys that belong to one join only are told beside another."""
    text = joined(*lines)
    if lines[:1] == ["across = 0"]:
        text = text.replace("across = 2\n", "", 1)

    assert wrong == keys(text)


@pytest.mark.parametrize("key", ["flat_cut", "folded_cut", "shows", "fabric", "fabric_behind", "corner_squares"])
def test_a_plain_seam_has_no_strips(key: str) -> None:
    """Nothing lies between the blocks."""
    value = '"2"' if key.endswith(("cut", "shows")) else '"Oat"'
    (mistake,) = mistakes(joined('join = "plain seam"', f"{key} = {value}", fabric=""))

    assert f"joined.{key}" == mistake.key
    assert f"{key}, though the blocks are joined by plain seam" == mistake.found


def test_strips_between_blocks_have_a_fabric() -> None:
    """Where they show it must be named; a plain seam, and a single block in its borders, show none."""
    assert ["joined.fabric"] == keys(joined(fabric=""))
    assert ["joined.fabric"] == keys(joined('join = "covered strips"', fabric=""))
    assert [] == keys(joined('join = "plain seam"', fabric=""))
    assert [] == keys(MAT + '[joined]\nacross = 1\ndown = 1\n[[borders]]\ncut = "3"\nfabric = "Oat"\n')


def test_frames_round_small_blocks_have_a_fabric_whatever_the_join() -> None:
    """Framing adds strips even where the blocks are joined by a plain seam."""
    assert [] == keys(joined('join = "plain seam"', 'unequal = "frame the small ones"'))


def test_what_is_missing_of_a_quilt_is_told_with_an_example() -> None:
    """Both numbers of blocks must be there."""
    told = {mistake.key: mistake.would_do for mistake in mistakes(MAT + "[joined]\njoin = 'plain seam'\n")}

    assert {
        "joined.across": "the blocks in a row, such as across = 4",
        "joined.down": "the blocks in a column, such as down = 5",
    } == told


@pytest.mark.parametrize(
    ("lines", "wrong"),
    [
        (['setting = "on point"', 'triangle_fabric = "Brass"', 'triangles = "oversize"'], []),
        (['setting = "on point"'], ["joined.triangle_fabric"]),
        (['setting = "on point"', 'triangle_fabric = "Rye"'], ["joined.triangle_fabric"]),
        (['triangle_fabric = "Brass"'], ["joined.triangle_fabric"]),
        (['triangles = "exact"'], ["joined.triangles"]),
        (
            ['setting = "on point"', 'triangle_fabric = "Oat"', 'unequal = "like sizes share a column"'],
            ["joined.unequal"],
        ),
    ],
)
def test_triangles_belong_to_blocks_on_point(lines: list[str], wrong: list[str]) -> None:
    """They fill the edge there and need a fabric; straight blocks have none."""
    assert wrong == keys(joined(*lines))


@pytest.mark.parametrize(
    ("measured", "wrong"),
    [
        ('[["13", "13"], ["12 7/8", "13"], ["13", ["13", "12 7/8"]]]', []),
        ('[["13", "13"], ["13", "13"]]', ["joined.measured"]),
        ('[["13", "13"], ["13", "13"], ["13"]]', ["joined.measured[3]"]),
        ('[["13", "13"], ["13", "13"], ["13", "13", "13"]]', ["joined.measured[3]"]),
        ('[["13", "13"], ["13", "two"], ["13", "13"]]', ["joined.measured[2][2]"]),
        ('[["13", "13"], ["13", ["13", "two"]], ["13", "13"]]', ["joined.measured[2][2][2]"]),
        ('[["13", "13"], ["13", ["13"]], ["13", "13"]]', ["joined.measured[2][2][2]"]),
        ('["13", "13", "13"]', ["joined.measured[1]", "joined.measured[2]", "joined.measured[3]"]),
        ('"13"', ["joined.measured"]),
    ],
)
def test_measured_blocks_stand_in_the_rows_of_the_quilt(measured: str, wrong: list[str]) -> None:
    """Three rows of two; a mistake in one block is told with its row, its place and its measure."""
    assert wrong == keys(joined(f"measured = {measured}"))


def test_a_mistake_in_a_measured_block_is_told_in_its_own_words_and_line() -> None:
    """A block can be one size or two: what is told is what is wrong with the one it is."""
    text = joined('measured = [\n  ["13", "13"],\n  ["13", ["0", "13"]],\n  [true, "13"],\n]')
    first, second = mistakes(text)

    line = text[: text.index('["13", ["0"')].count("\n") + 1
    assert (line, "joined.measured[2][2][1]", '"0" (not above zero)') == (first.line, first.key, first.found)
    assert (line + 1, "joined.measured[3][1]", "true (no length)") == (second.line, second.key, second.found)


@pytest.mark.parametrize(
    ("across", "down", "setting", "rows"),
    [
        (4, 5, "straight", [4, 4, 4, 4, 4]),
        # on point (m - 1)(n - 1) more lie between: 3 x 2 and 2 x 1 are 8
        (3, 2, "on point", [3, 2, 3]),
        (1, 3, "on point", [1, 1, 1]),
        (2, 1, "on point", [2]),
    ],
)
def test_blocks_on_point_have_rows_between_the_rows(across: int, down: int, setting: str, rows: list[int]) -> None:
    """The rows between have one block fewer; as many in all as the project counts."""
    table = {"across": across, "down": down, "setting": setting}
    fabric = 'triangle_fabric = "Oat"\n' if setting == Setting.ON_POINT else ""
    text = f'{MAT}[joined]\nacross = {across}\ndown = {down}\nsetting = "{setting}"\nfabric = "Oat"\n{fabric}'

    assert rows == rows_of_blocks(table)
    assert read_project(text).blocks_in_one == blocks_in_one(table) == sum(rows)


BLOCKS = """
[[blocks]]
name = "Lit window"
count = 2

[[blocks]]
name = "Dark shed"
count = 4
"""


@pytest.mark.parametrize(
    ("blocks", "places", "wrong"),
    [
        (BLOCKS, "", []),
        (BLOCKS, 'places = ["1 2", "2 1", "2 2"]', []),
        (BLOCKS, 'places = ["1 2", "2 1", "2, 2"]', []),
        (BLOCKS, 'places = ["1 2", "2 1"]', ["joined.places"]),
        (BLOCKS, 'places = ["1 2", "2 1", "2"]', ["joined.places[3]"]),
        (BLOCKS, 'places = ["1 2", "2 1", "2 3"]', ["joined.places[3]"]),
        (BLOCKS, 'places = ["1 2", "2 1", "2 Dark"]', ["joined.places[3]"]),
        (BLOCKS, 'places = ["1 2", "1 2", "1 2"]', ["blocks[1].count", "blocks[2].count"]),
        ("", 'places = ["1 1", "1 1", "1 1"]', ["joined.places"]),
        (BLOCKS.replace("count = 4", "count = 3"), "", ["blocks[2].count"]),
        (BLOCKS.replace("count = 4", "count = 5"), "", ["blocks[2].count"]),
        (BLOCKS.replace("count = 4", ""), "", []),
        (BLOCKS.replace("count = 2", "").replace("count = 4", "count = 7"), "", ["blocks[2].count"]),
        (BLOCKS.replace("count = 2", "count = -1"), "", ["blocks[1].count"]),
        (BLOCKS.replace("Dark shed", "lit  window"), "", ["blocks[2].name"]),
        (BLOCKS.replace('name = "Dark shed"', ""), "", ["blocks[2].name"]),
    ],
)
def test_kinds_of_block_fill_the_quilt(blocks: str, places: str, wrong: list[str]) -> None:
    """Six blocks in all, each place a number of a kind, each kind a name of its own."""
    assert wrong == keys(joined(places) + blocks)


def test_kinds_of_block_need_a_quilt() -> None:
    """Blocks that are not joined are told once."""
    assert ["blocks"] == keys(MAT + BLOCKS)


@pytest.mark.parametrize(
    ("block", "wrong"),
    [
        ('center = { fabric = "Oat", cut = "5" }', []),
        ('center = { fabric = "Rye", cut = "5" }', ["blocks[1].center.fabric"]),
        ('center = { fabric = "Oat" }', ["blocks[1].center.cut"]),
        ('[blocks.center]\nfabric = "Oat"\ncut = "0"', ["blocks[1].center.cut"]),
        ('rounds = [{ cut = "2", cuts = ["2"] }]', ["blocks[1].rounds[1].cuts"]),
        ('[[blocks.rounds]]\ncut = "2"\nfabric = "Rye"', ["blocks[1].rounds[1].fabric"]),
        ('building = { way = "sides in my order" }', ["blocks[1].steps"]),
        ('building = { way = "sides in my order" }\nsteps = [{ side = "top", cut = "2" }]', []),
        ('building = { way = "string block" }', []),
        ('building = { way = "numbered foundation" }\npatches = [{ fabric = "Rye" }]', ["blocks[1].patches[1].fabric"]),
        ('building = { way = "wonky", smallest_angle = 20 }', ["blocks[1].building.smallest_angle"]),
        ('patches = [{ fabric = "Oat" }]', ["blocks[1].patches"]),
        ('wide = "13"', ["blocks[1].wide"]),
    ],
)
def test_a_kind_of_block_is_checked_as_it_is_built(block: str, wrong: list[str]) -> None:
    """What it says for itself counts, what it leaves out is the project's, and what its way has no use for is idle."""
    assert wrong == keys(joined() + f'[[blocks]]\nname = "Lit window"\n{block}\n')


def test_a_braid_block_stands_upright_in_its_quilt() -> None:
    """Which way the length runs is said once, for all blocks, and told there."""
    text = joined().replace('long = "13"\n', 'long = "13"\nlength_runs = "across"\n', 1)
    braid = '[[blocks]]\nname = "Plait"\nbuilding = { way = "braid" }\n'

    assert ["squared_up.length_runs"] == keys(text + braid + braid.replace("Plait", "Queue"))


def test_what_the_project_lacks_is_not_told_again_for_each_block() -> None:
    """A round without a width is one mistake, however many kinds are built with it."""
    assert ["rounds[1].cut"] == keys((joined() + BLOCKS).replace('cut = "2", fabric = "Brass"', 'fabric = "Brass"'))


def test_a_block_with_a_building_of_its_own_names_its_way() -> None:
    """Nothing of the project's building is taken over, so that its way would be lost unsaid."""
    steps = 'rows_run = "along"\n'
    text = (joined() + '[building]\nway = "courthouse steps"\n[[blocks]]\nname = "Shed"\n[blocks.building]\n') + steps

    assert ["blocks[1].building.way"] == keys(text)
    assert [] == keys(text + 'way = "log cabin"\n')


BORDER = '[[borders]]\ncut = "3"\nfabric = "Oat"\n'


@pytest.mark.parametrize(
    ("borders", "wrong"),
    [
        (BORDER, []),
        (BORDER + 'corners = "mitred"\n' + BORDER + 'corners = "corner squares"\ncorner_fabric = "Brass"', []),
        (BORDER + 'corners = "corner squares"', ["borders[1].corner_fabric"]),
        (BORDER + 'corner_fabric = "Brass"', ["borders[1].corner_fabric"]),
        (BORDER + 'corners = "corner squares"\ncorner_fabric = "Rye"', ["borders[1].corner_fabric"]),
        (BORDER.replace("Oat", "Rye"), ["borders[1].fabric"]),
        ('[[borders]]\nfabric = "Oat"', ["borders[1].cut"]),
        (BORDER + 'corners = "round"', ["borders[1].corners"]),
    ],
)
def test_a_border_has_a_width_a_fabric_and_the_fabric_of_its_corner_squares(borders: str, wrong: list[str]) -> None:
    """Squares need a fabric, other corners have none."""
    assert wrong == keys(joined() + borders + "\n")


def test_borders_go_round_joined_blocks() -> None:
    """A piece by itself gets a border as one block of a quilt of one."""
    (mistake,) = mistakes(MAT + BORDER)

    assert ("borders", "a [joined] table with across and down, 1 and 1 for a single piece") == (
        mistake.key,
        mistake.would_do,
    )


@pytest.mark.parametrize(
    "shape", ['across = "18"', 'sides = 6\nacross_flats = "18"', 'shape = "oval"\nwide = "18"\nlong = "13"']
)
@pytest.mark.parametrize("table", [JOINED, "[cut_apart]\ndown = 2\n"])
def test_only_rectangles_are_joined_or_cut_apart(shape: str, table: str) -> None:
    """Round, oval and many-sided pieces do not fit side by side."""
    assert 1 == len(keys(mat(SIZE, shape + "\n") + table))


def test_pieces_with_points_are_neither_joined_nor_cut_apart() -> None:
    """Pointed ends leave gaps."""
    pointed = mat(SIZE, SIZE + 'ends = "pointed"\n')

    assert ["squared_up.ends"] == keys(pointed + JOINED)
    assert ["squared_up.ends"] == keys(pointed + "[cut_apart]\nacross = 2\n")


@pytest.mark.parametrize(
    ("table", "wrong"),
    [
        ("[cut_apart]\nacross = 2\ndown = 2\n", []),
        ('[cut_apart]\ndown = 4\nloss = "0"\n', []),
        ("[cut_apart]\n", ["cut_apart"]),
        ("[cut_apart]\nacross = 1\ndown = 1\n", ["cut_apart"]),
        ("[cut_apart]\nacross = 61\n", ["cut_apart.across"]),
        (JOINED + "[cut_apart]\ndown = 2\n", ["cut_apart"]),
    ],
)
def test_panels_are_two_or_more_of_one_piece(table: str, wrong: list[str]) -> None:
    """One base is cut apart into at least two; joined blocks are not."""
    assert wrong == keys(MAT + table)
