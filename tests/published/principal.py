"""Largest shear stress from the program's larger principal stress."""

from mountlimit.formulas import stress


def largest_shear(normal: float, shear: float) -> float:
    """Give the larger principal stress less half the normal stress."""
    return stress.principal_max(normal, 0.0, shear) - normal / 2
