"""Least inside radius of a cold bend through 90 degrees, over the thickness, for each material.

Across the direction of rolling, in a press; a bend made by hand over a bar needs about 1.5 times
as much.  Below it the outer side cracks.
"""

from __future__ import annotations

from bisect import bisect_left
from dataclasses import dataclass

TABLE = "Aluminum Association, least bend radii of sheet and plate"
MEMORY = "from memory (the tightest of the usual range)"
COLUMNS = (1.6e-3, 3.2e-3, 4.8e-3, 6.4e-3, 9.5e-3, 12.7e-3)  # m, thicknesses of the table


@dataclass(frozen=True, slots=True)
class LeastRadius:
    """Radii over thickness: one for each column of the table, or one for all thicknesses."""

    radii: tuple[float, ...]
    source: str


LEAST: dict[str, LeastRadius] = {
    "al1050_h14": LeastRadius((0.0, 1.0, 1.0, 1.5, 2.0, 2.5), f"{TABLE}, 1100-H14 taken for it"),
    "al5052_h32": LeastRadius((1.0, 1.5, 1.5, 1.5, 1.5, 2.0), f"{TABLE}, 5052-H32"),
    "al6061_t6": LeastRadius((1.5, 2.5, 3.0, 3.5, 4.5, 5.0), f"{TABLE}, 6061-T6"),
    "al5083_h111": LeastRadius((1.0,), MEMORY),
    "al6082_t6": LeastRadius((2.5,), MEMORY),
    "al2024_t3": LeastRadius((3.0,), MEMORY),
    "al7075_t6": LeastRadius((5.0,), MEMORY),
    "dc01": LeastRadius((0.5,), MEMORY),
    "dx51d": LeastRadius((0.5,), MEMORY),
    "s235": LeastRadius((1.0,), MEMORY),
    "a36": LeastRadius((1.0,), MEMORY),
    "s355": LeastRadius((1.5,), MEMORY),
    "304": LeastRadius((1.0,), MEMORY),
    "316": LeastRadius((1.0,), MEMORY),
    "1018_cd": LeastRadius((2.0,), MEMORY),
    "4130_n": LeastRadius((2.0,), MEMORY),
}


def least_radius(material: str, thickness: float) -> tuple[float, str] | None:
    """Least inside radius in metres and its source, or None where none is known.

    Between two columns of the table straight lines hold; outside it the nearest column.
    """
    known = LEAST.get(material)
    if known is None:
        return None
    return _at(known.radii, thickness) * thickness, known.source


def _at(radii: tuple[float, ...], thickness: float) -> float:
    if len(radii) == 1 or thickness <= COLUMNS[0]:
        return radii[0]
    if thickness >= COLUMNS[-1]:
        return radii[-1]
    i = bisect_left(COLUMNS, thickness)
    low, high = COLUMNS[i - 1], COLUMNS[i]
    share = (thickness - low) / (high - low)
    return (1 - share) * radii[i - 1] + share * radii[i]
