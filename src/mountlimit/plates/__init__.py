"""Plates: flat facets of six-node triangles, their bolts, contact and stress (SI floats throughout).

``solve(model)`` meshes and solves a ``PlateModel`` once; its ``response(wrench, point)`` answers any
load on the motor. ``family`` reduces a model, so that any thickness, modulus and joint stiffness is
answered in a few milliseconds; ``sweep`` uses it for many thicknesses.
"""

from .answer import Answer, Bearing, Reading
from .error import PlateError
from .family import Family, family
from .model import (
    Bend,
    Contact,
    Cutout,
    Facet,
    FrameBolt,
    Hole,
    LineWeld,
    MotorBolt,
    PlateModel,
    Seam,
    SectionLine,
    Slot,
    Spacer,
    Strut,
)
from .scales import Scales, Varying
from .solution import PlateResponse, PlateSolution, solve
from .stress import StressSamples, equivalent
from .thickness import SweepResponse, sweep

__all__ = [
    "Answer",
    "Bearing",
    "Bend",
    "Contact",
    "Cutout",
    "Facet",
    "Family",
    "FrameBolt",
    "Hole",
    "LineWeld",
    "MotorBolt",
    "PlateError",
    "PlateModel",
    "PlateResponse",
    "PlateSolution",
    "Reading",
    "Scales",
    "Seam",
    "SectionLine",
    "Slot",
    "Spacer",
    "StressSamples",
    "Strut",
    "SweepResponse",
    "Varying",
    "equivalent",
    "family",
    "solve",
    "sweep",
]
