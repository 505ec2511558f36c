"""What the plan notices, with its grade, place and numbers. Nothing here refuses to plan."""

from stitchflip.planning.findings.codes import CODES
from stitchflip.planning.findings.look import geometry_findings, look_at
from stitchflip.planning.findings.seen import Seen, see

__all__ = ["CODES", "Seen", "geometry_findings", "look_at", "see"]
