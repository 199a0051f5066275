"""A folded strip of as many equal plates as asked for: what growth with plates is measured on."""

from __future__ import annotations

import numpy as np

from mountlimit.plates import Contact, Facet, FrameBolt, Hole, MotorBolt, PlateModel

SIDE, THICKNESS = 0.12, 0.006  # m
CORNERS = np.array([(-0.5, 0.0), (0.5, 0.0), (0.5, 1.0), (-0.5, 1.0)]) * SIDE


def stairs(count: int) -> PlateModel:
    """Give ``count`` square plates at right angles one after another, bolted at the one end."""
    treads, place, facets = ((0.0, 1.0, 0.0), (0.0, 0.0, 1.0)), np.zeros(3), []
    last = count - 1
    for number in range(count):
        along = np.array(treads[number % 2])
        facets.append(
            Facet(
                name=f"plate {number + 1}", outline=CORNERS, origin=tuple(place), e1=(1.0, 0.0, 0.0),
                e2=tuple(along), thickness=THICKNESS, elastic_modulus=70e9, poissons_ratio=0.33,
                holes=[Hole(centre=(0.0, 0.07), diameter=0.03)] if number == last else (),
            )
        )  # fmt: skip
        place = place + SIDE * along
    bolts = [
        FrameBolt(
            facet=0, centre=(x, 0.018), hole_diameter=0.009, washer_diameter=0.018, frame_side=-1,
            normal_stiffness=4e8, tangential_stiffness=2e8,
        )
        for x in (-0.035, 0.035)
    ]  # fmt: skip
    motor = [
        MotorBolt(facet=last, centre=(x, 0.07 + y), hole_diameter=0.007, washer_diameter=0.014)
        for x in (-0.026, 0.026)
        for y in (-0.026, 0.026)
    ]
    strip = [(-0.055, 0.002), (0.055, 0.002), (0.055, 0.036), (-0.055, 0.036)]
    return PlateModel(
        facets=facets, frame_bolts=bolts, motor_bolts=motor,
        motor_centre=tuple(facets[-1].to_space(np.array([0.0, 0.07]))),
        contacts=[Contact(facet=0, side=-1, stiffness=2e12, region=strip, pitch=0.012)],
    )  # fmt: skip
