"""HiGHS as every search of this room wants it: one thread, silent, the same every time, and without presolve.

With presolve 1.13.1 has called a choice of columns optimal that was none (an equality on the cost, the plan
infeasible), so what is to prove something runs without. A search that only wants a plan quickly may ask for it.
"""

from __future__ import annotations

from typing import Any


def quiet_highs(**settings: bool | float | str) -> Any:  # noqa: ANN401  the library ships no types
    """A solver without a model.

    Args:
        settings: options beside the usual ones, or in their place.
    """
    import highspy  # type: ignore[import-untyped]  # ships no types

    highs = highspy.Highs()
    usual: dict[str, bool | float | str] = {"output_flag": False, "threads": 1, "random_seed": 0, "presolve": "off"}
    for option, setting in (usual | settings).items():
        highs.setOptionValue(option, setting)
    return highs
