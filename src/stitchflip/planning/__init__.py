"""One call: project in, plan out, with everything there is to look at."""

from stitchflip.planning.model import Change, Cure, Finding, Letter, Plan, Severity
from stitchflip.planning.planner import plan

__all__ = ["Change", "Cure", "Finding", "Letter", "Plan", "Severity", "plan"]
