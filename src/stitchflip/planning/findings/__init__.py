"""What the plan notices, with its grade, place and numbers. Nothing here refuses to plan."""

from stitchflip.planning.findings.codes import CODES
from stitchflip.planning.findings.look import geometry_findings, kind_of, look_at, seen_of
from stitchflip.planning.findings.seen import Seen, see

__all__ = ["CODES", "Seen", "geometry_findings", "kind_of", "look_at", "see", "seen_of"]
