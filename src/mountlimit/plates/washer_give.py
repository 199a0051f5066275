"""What the plate gives close under the motor's washers, which a ring tied through the thickness leaves out.

The motor's washers hold both faces; the middle of a plate lags behind them.  A ring tied to the motor
through the whole thickness has none of that, so a thick plate under small washers leans too little:
by up to 40 % where a motor stands on two bolts.  Under the forces that the tied rings carry, the
energy of this give is put to the motor's movement; forces and contact stay as they are, which leaves
the answer on the soft side (theorem of least complementary energy).

Along the face it is the give of two stiff discs on the faces of a thick plate, ``1 / (G a)``; in tilt
the discs turn the plate by a pair of forces along its faces, ``1 / (G a^2 t)``.  The two numbers were
fitted to solid elements (tests/audit).
"""

from __future__ import annotations

import numpy as np

from .model import FloatArray, PlateModel
from .scales import Scales, Varying, stretch

ALONG, TILT = 0.08, 0.021  # by solid elements on 103 random mounts (computed)


def under_washers(
    model: PlateModel,
    wrenches: FloatArray,
    varying: Varying | None = None,
    scales: Scales | None = None,
) -> FloatArray:
    """Give what the motor moves more by it, per column: (6, columns).

    Parameters
    ----------
    wrenches : [N, N*m]
        of the motor on the plates at every motor bolt, (bolts, 6, columns); the first six columns are
        the unit loads on the motor
    varying, scales : marks and sizes
        of a model at other sizes than it was laid out
    """
    if model.motor_face_diameter is not None:  # then the whole face holds the plate
        return np.zeros(wrenches.shape[1:])
    varying, scales = varying or Varying.none(len(model.facets)), scales or Scales()
    thick = stretch(varying.thickness, scales.thickness)
    stiff = stretch(varying.modulus, scales.modulus) * stretch(varying.second, scales.second)
    found = np.zeros(wrenches.shape[1:])
    for bolt, wrench in zip(model.motor_bolts, wrenches, strict=True):
        plate = model.facets[bolt.facet]
        radius, thickness = 0.5 * bolt.washer_diameter, plate.thickness * thick[bolt.facet]
        shear = plate.in_plane_shear_modulus * stiff[bolt.facet]
        along = plate.axes[:2] @ wrench[:3]
        turned = plate.axes[:2] @ wrench[3:]
        found += ALONG / (shear * radius) * along[:, :6].T @ along
        found += TILT / (shear * radius**2 * thickness) * turned[:, :6].T @ turned
    return found
