"""From the build to the cutting list: which piece, how wide and long, of which fabric, for how many alike."""

from __future__ import annotations

from dataclasses import replace
from string import ascii_lowercase
from typing import TYPE_CHECKING

from stitchflip.cutting.model import Piece
from stitchflip.lengths import Rounding, Speaker, round_to
from stitchflip.piecing.angled import angled_strip
from stitchflip.piecing.geometry import TOLERANCE, extent
from stitchflip.piecing.shapes import center_cut, is_slanted
from stitchflip.planning.findings.sewing import shown_width
from stitchflip.planning.quilt_pieces import quilt_pieces
from stitchflip.project.model import CenterShape, Grain, Project, Way, Working
from stitchflip.project.numbers import Numbers
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from stitchflip.finishing.edge_model import EdgePiece, EdgePlan, ExtrasPlan
    from stitchflip.finishing.model import BindingPlan
    from stitchflip.finishing.quilt_model import QuiltPlan
    from stitchflip.piecing.model import Build, Polygon, SewnPiece
    from stitchflip.planning.model import BlockKind
    from stitchflip.planning.motifs import MotifRoom


@dataclass(frozen=True, slots=True)
class Making:
    """All that pieces of fabric are cut for."""

    project: Project
    numbers: Numbers
    kinds: Sequence[BlockKind]
    binding: BindingPlan
    edge: EdgePlan
    extras: ExtrasPlan
    quilt: QuiltPlan | None

    @property
    def speaker(self) -> Speaker:
        """Says lengths in the project's unit."""
        return Speaker(self.project.units)


def cutting_list(making: Making) -> dict[str, tuple[Piece, ...]]:
    """The pieces of each fabric, largest first, in the order of the project's fabrics.

    Args:
        making: What is made of them. Blocks of several kinds share a row of the list where step and size agree.
    """
    lists = {fabric.name: _Own() for fabric in making.project.fabrics}
    for kind in making.kinds:
        for fabric, piece in _of_block(making, kind):
            lists.setdefault(fabric, _Own()).add(piece, kind.name)
    if making.quilt is not None:
        for fabric, piece in quilt_pieces(making.project, making.numbers, making.quilt):
            lists.setdefault(fabric, _Own()).add(piece)
    for one in (*making.edge.pieces, *making.extras.pieces):
        lists.setdefault(one.fabric, _Own()).add(_edge_piece(making, one))
    if making.binding.strips and making.binding.grain != Grain.BIAS:
        lists.setdefault(making.binding.fabric, _Own()).add(_binding(making))
    return {name: tuple(_in_cutting_order(own.pieces)) for name, own in lists.items() if own.pieces}


class _Own:
    """The pieces of one fabric; equal ones are counted together."""

    def __init__(self) -> None:
        """Begin with none."""
        self.pieces: list[Piece] = []
        self._places: dict[tuple[object, ...], int] = {}
        self._names: set[str] = set()

    def add(self, piece: Piece, block: str = "") -> None:
        """Count a piece with its equals, or list it by itself with the name of its block."""
        size = (round(piece.wide, 4), round(piece.long, 4), round(piece.shortest, 4))
        alike = (piece.name, *size, replace(piece, count=0, wide=0, long=0, shortest=0))
        if alike in self._places:
            place = self._places[alike]
            self.pieces[place] = replace(self.pieces[place], count=self.pieces[place].count + piece.count)
            return
        self._places[alike] = len(self.pieces)
        is_taken = bool(block) and piece.name in self._names
        self._names.add(piece.name)
        self.pieces.append(replace(piece, name=f"{piece.name} {block}") if is_taken else piece)


def _of_block(making: Making, kind: BlockKind) -> Iterator[tuple[str, Piece]]:
    """(fabric, piece) of one kind of block, for all blocks of that kind."""
    build, count = kind.build, making.project.how_many * kind.count
    first = build.pieces[0]
    if not build.first_is_strip and not is_done(kind.project):
        yield first.fabric, _center(kind.project, making.numbers, first, making.speaker, count)
    last = {strip.side: strip.step for strip in build.strips}
    for strip in build.pieces[0 if build.first_is_strip else 1 :]:
        if strip.cut_length <= 0:
            continue
        if strip.sections:
            yield from _sections(making, strip, count)
        elif strip.square_cut:
            yield strip.fabric, _square(making, strip, count)
        else:
            piece = _strip(
                kind.project, making.numbers, strip, making.speaker, is_last=last.get(strip.side) == strip.step
            )
            if kind.project.building.way is Way.FOUNDATION:
                # The first piece is patch 1, and the area a patch fills has no one finished width.
                piece = replace(piece, kind="rectangle", name=str(strip.step + 1), finished="")
            yield strip.fabric, replace(piece, count=count)


def _angled(numbers: Numbers, build: Build, strip: SewnPiece, piece: Piece) -> Piece:
    """A strip whose ends are cut parallel to its neighbors: as long as its longer edge, with the same extra."""
    angled = angled_strip(build, strip)
    if angled is None or strip.needed_length <= 0:
        return piece
    longer = max(angled.sewn_edge, angled.outer_edge)
    extra = numbers.extra_free_end if strip.free_ends else numbers.extra_raw_edges
    return replace(piece, long=round_to(longer + extra, numbers.round_cuts_to, Rounding.UP), shortest=longer)


def is_done(project: Project) -> bool:
    """True for a half-done piece in the middle: nothing is cut for it."""
    return project.center is not None and project.center.sewn_already


def _sections(making: Making, strip: SewnPiece, count: int) -> Iterator[tuple[str, Piece]]:
    """The stretches of a strip that is pieced beforehand: 7a, 7b, 7c."""
    for letter, section in zip(ascii_lowercase, strip.sections, strict=False):
        is_square = abs(section.cut_length - strip.cut_width) < TOLERANCE
        yield (
            section.fabric,
            Piece(
                name=f"{strip.step}{letter}",
                wide=strip.cut_width,
                long=section.cut_length,
                count=count,
                kind="strip",
                step=strip.step,
                finished=making.speaker.near(strip.cut_width - 2 * making.numbers.seam) if is_square else "",
                can_turn=not _is_one_way(making.project, section.fabric),
            ),
        )


def _square(making: Making, strip: SewnPiece, count: int) -> Piece:
    """A square sewn on from corner to corner."""
    return Piece(
        name=str(strip.step),
        wide=strip.square_cut,
        long=strip.square_cut,
        count=count,
        kind="rectangle",
        step=strip.step,
        can_turn=not _is_one_way(making.project, strip.fabric),
    )


def _edge_piece(making: Making, one: EdgePiece) -> Piece:
    """A piece of a facing, a sleeve or a label."""
    return Piece(
        name=one.name,
        wide=min(one.wide, one.long),
        long=max(one.wide, one.long),
        count=one.count * making.project.how_many,
        kind="rectangle",
        can_turn=not _is_one_way(making.project, one.fabric),
        cut_first=False,
    )


def _binding(making: Making) -> Piece:
    binding = making.binding
    return Piece(
        name="Binding",
        wide=binding.cut,
        long=binding.strip_length,
        count=binding.strips,
        kind="binding",
        can_turn=not _is_one_way(making.project, binding.fabric),
        last_long=binding.strip_length - max(binding.made - binding.need, 0.0),
        last_count=binding.strips // binding.strips_per_piece,
    )


def _in_cutting_order(pieces: list[Piece]) -> list[Piece]:
    """Squares and rectangles first, then strips by width, the widest first; the binding in its width's place."""
    return sorted(
        pieces, key=lambda piece: (piece.kind != "rectangle", -piece.wide, piece.kind == "binding", piece.step)
    )


def _strip(project: Project, numbers: Numbers, strip: SewnPiece, speaker: Speaker, *, is_last: bool) -> Piece:
    shows = strip.cut_width - 2 * numbers.seam
    low, high = extent(strip.opened, *strip.normal)
    first_name = "Middle" if abs(low + high) < TOLERANCE else "First"
    if is_last:
        shows = min(shows, shown_width(strip) * (1 - _draw_up_along(strip, numbers)))
    return Piece(
        name=str(strip.step) if strip.step else first_name,
        wide=strip.cut_width,
        long=strip.cut_length,
        count=project.how_many,
        kind="strip",
        shortest=strip.needed_length,
        step=strip.step,
        finished=speaker.near(shows) if shows > 0 else "",
        can_turn=not _is_one_way(project, strip.fabric),
        cut_first=project.working is Working.CUT_FIRST,
    )


def _draw_up_along(strip: SewnPiece, numbers: Numbers) -> float:
    """Draw-up square to a strip's seam."""
    return numbers.draw_up_x if abs(strip.normal[0]) > abs(strip.normal[1]) else numbers.draw_up_y


def _center(project: Project, numbers: Numbers, first: SewnPiece, speaker: Speaker, count: int) -> Piece:
    wide, long = (
        center_cut(project, first.opened) if project.center is not None else (first.cut_width, first.cut_length)
    )
    window = _window(project, numbers, first.opened)
    inset = 2 * numbers.seam
    if project.center is not None and project.center.shape is CenterShape.HALF_SQUARE:
        count = -(-count // 2)  # a square cut once from corner to corner gives two
    room = _room_round_motif(project, numbers, first, (window or (wide, long))[1], count)
    return Piece(
        name="Center" if project.center is not None else "1",
        wide=wide,
        long=long,
        count=count,
        kind="rectangle",
        finished=speaker.size(wide - inset, long - inset) if _is_four_sided(project) else "",
        can_turn=not _is_one_way(project, first.fabric) and room is None,
        window=window,
        motif_in=room.beside_in if room else 0.0,
        block_in=room.block_in if room else 0.0,
    )


def _room_round_motif(
    project: Project, numbers: Numbers, first: SewnPiece, long: float, count: int
) -> MotifRoom | None:
    """What a center from a print with a repeat takes beside itself."""
    if all(fabric.repeat is None for fabric in project.fabrics if fabric.name == first.fabric):
        return None
    from stitchflip.planning.motifs import center_room

    return center_room(project, numbers, first, long, count)


def _window(project: Project, numbers: Numbers, raw: Polygon) -> tuple[float, float] | None:
    """Upright rectangle of fabric for a one-way center that lies slanted: its print must stay upright."""
    center = project.center
    if center is None or not _is_one_way(project, center.fabric) or not is_slanted(center.turned):
        return None
    (left, right), (low, high) = extent(raw, 1, 0), extent(raw, 0, 1)
    step = numbers.round_cuts_to
    return round_to(right - left, step, Rounding.UP), round_to(high - low, step, Rounding.UP)


def _is_four_sided(project: Project) -> bool:
    return project.center is not None and project.center.shape in (CenterShape.SQUARE, CenterShape.RECTANGLE)


def _is_one_way(project: Project, name: str) -> bool:
    return any(fabric.one_way for fabric in project.fabrics if fabric.name == name)
