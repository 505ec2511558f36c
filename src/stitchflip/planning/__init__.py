"""One call: project in, plan out, with everything there is to look at."""

from stitchflip.planning.model import Cure, Finding, Letter, Plan, Severity
from stitchflip.planning.planner import plan
from stitchflip.project.model import Change

__all__ = ["Change", "Cure", "Finding", "Letter", "Plan", "Severity", "plan"]
