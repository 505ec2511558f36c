"""Cautions, in our own words, in full and as short reminders; they defer to makers of tools and local rules."""

from __future__ import annotations

from stitchflip.pattern.model import Box, BoxKind, Items, Paragraph, Voice, Words, strong, words
from stitchflip.pattern.telling import Teller

DEFERRING = (
    "These lines do not replace the instructions of the makers of your tools and materials, or the rules where you "
    "live."
)

_CUTTER = (
    "close the guard every time you put it down. Stand, cut away from yourself, keep your fingers back from the edge "
    "of the ruler. Change a dull blade and box the old one. Never near children, never when tired."
)


def cutter_caution() -> Words:
    """The caution that belongs to cutting alone."""
    return words(strong("Rotary cutter: "), f"{_CUTTER} {DEFERRING}")


def cautions(teller: Teller) -> Box:
    """All cautions that this piece calls for, in one box."""
    return Box(
        BoxKind.CAUTION,
        "Take care",
        (Items(tuple(_lines(teller))), Paragraph(words(DEFERRING), Voice.SMALL)),
    )


def _lines(teller: Teller) -> list[Words]:
    iron = (
        "hot, and so is its steam. Try it on a scrap of your batting first; stand it on its heel, cable out of the way."
        if teller.iron_is_safe
        else "keep it off this batting, which can melt. Press fabric only before it is sewn on; cable out of the way."
    )
    lines = [
        ("Rotary cutter", _CUTTER),
        (
            "Needles and pins",
            (
                "none between the lips. Take each pin out before the needle reaches it. Switch the machine off to "
                "change "
                "needle or foot. Count the pins before you give the piece away."
            ),
        ),
        ("Iron", iron),
        (
            "Basting spray",
            (
                "open a window; no flame, spark or smoking. Protect eyes, lungs and floor. Short bursts onto the "
                "batting, "
                "not into the air. Ask for the safety sheet if you are pregnant or have asthma."
            ),
        ),
        ("Marking pens", "test on a scrap. Heat or cold can bring a line back, or fix it for good."),
        (
            "Dye",
            "press a wet white cloth on dark fabric before you cut it; if color comes off, wash that fabric first.",
        ),
        (
            "In use",
            (
                "it is no heat mat and does not belong in an oven or microwave. No burning candle on it. No loose "
                "quilt or "
                "padding in a baby’s bed. Keep trimmings away from small children."
            ),
        ),
    ]
    return [words(strong(f"{name}: "), said) for name, said in lines]


def short_reminders(teller: Teller) -> tuple[Words, ...]:
    """Three reminders for a sheet that lies beside the machine."""
    iron = "Iron hot: fingers and cable out of the way." if teller.iron_is_safe else "No iron on this batting."
    return (
        words("Cutter: guard closed each time you put it down."),
        words("Pins out before the needle reaches them."),
        words(iron),
    )
