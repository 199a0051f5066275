"""Rating life of a ball bearing in hours, by the program's two formulas."""

import numpy as np

from mountlimit.formulas import bearings


def hours(dynamic_rating: float, load: float, revolutions_per_minute: float) -> float:
    """Rating life of a ball bearing in hours."""
    turns = bearings.rating_life_revs(dynamic_rating, load, 3.0)
    return bearings.rating_life(turns, revolutions_per_minute * 2 * np.pi / 60) / 3600
