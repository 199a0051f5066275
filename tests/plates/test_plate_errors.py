"""Plate models that cannot be: each fault is one line naming the part."""

from __future__ import annotations

import dataclasses
import math
from typing import Any

import numpy as np
import pytest
from plate_kit import model_of

from mountlimit.errors import MountlimitError
from mountlimit.plates import (
    Contact,
    Cutout,
    Hole,
    LineWeld,
    PlateError,
    PlateModel,
    SectionLine,
    Spacer,
    solve,
)


def _facet(model: PlateModel, **changes: Any) -> PlateModel:
    facets = [dataclasses.replace(model.facets[0], **changes), *model.facets[1:]]
    return dataclasses.replace(model, facets=facets)


def _bolt(model: PlateModel, kind: str, **changes: Any) -> PlateModel:
    bolts = list(getattr(model, kind))
    bolts[0] = dataclasses.replace(bolts[0], **changes)
    return dataclasses.replace(model, **{kind: bolts})


FLAT, ANGLE = model_of("C1"), model_of("C2")
STEEL = {"elastic_modulus": 2e11, "poissons_ratio": 0.3}
FAULTS = [
    (_facet(FLAT, outline=[[0, 0], [0.1, 0.1], [0.1, 0], [0, 0.1]]),
     "face: outline crosses itself"),
    (_facet(FLAT, outline=[[0, 0], [0.1, 0.1]]), "face: outline needs at least three corners"),
    (_facet(FLAT, e2=(0.0, 1.0, 0.2)), "face: e1 and e2 are not unit vectors at right angles"),
    (_facet(FLAT, thickness=0.0), "face: thickness 0 m is not above nothing"),
    (_facet(FLAT, poissons_ratio=0.6), "face: elastic modulus or Poisson's ratio is not possible"),
    (_facet(FLAT, holes=[Hole(centre=(0.055, 0.1), diameter=0.02)]),
     "face: the hole of hole 1 leaves the plate"),
    (_facet(FLAT, holes=[Cutout(corners=[(0, 0.1), (0.02, 0.12), (0.02, 0.1), (0, 0.12)])]),
     "face: the edge of hole 1 crosses itself"),
    (_facet(FLAT, holes=[Cutout(corners=[(0, 0.1), (0.2, 0.1), (0, 0.12)])]),
     "face: the hole of hole 1 leaves the plate"),
    (_facet(FLAT, holes=[Hole(centre=(0.0, 0.14), diameter=0.1)]),
     "face: the holes of hole 1 and motor bolt 1 overlap"),
    (_bolt(FLAT, "frame_bolts", centre=(-0.054, 0.02)),
     "face: the washer of frame bolt 1 leaves the plate"),
    (_bolt(FLAT, "motor_bolts", washer_diameter=0.005),
     "motor bolt 1: its washer is not larger than its hole"),
    (_bolt(FLAT, "frame_bolts", centre=(0.03, 0.02)),
     "face: the washer of frame bolt 1 and the washer of frame bolt 2 overlap"),
    (_bolt(FLAT, "frame_bolts", facet=3), "frame bolt 1: there is no plate 3"),
    (_bolt(FLAT, "frame_bolts", normal_stiffness=0.0),
     "frame bolt 1: its stiffness is not above nothing"),
    (_bolt(FLAT, "frame_bolts", normal_stiffness=math.inf),
     "frame bolt 1: is rigid in one direction only"),
    (_bolt(FLAT, "frame_bolts", frame_side=0), "frame bolt 1: its frame side must be +1 or -1"),
    (_facet(ANGLE, outline=np.array(ANGLE.facets[0].outline) - [0.0, 0.01],
            holes=[Hole(centre=(0.02, 0.002), diameter=0.01)]),
     "face: the hole of hole 1 lies on a bend or weld line"),
    (dataclasses.replace(FLAT, motor_face_diameter=0.13),
     "face: the motor is larger than the plate"),
    (dataclasses.replace(FLAT, motor_face_diameter=0.1),
     "motor bolt 1: lies outside the motor's face"),
    (dataclasses.replace(FLAT, frame_bolts=()), "mount: nothing holds it to the frame"),
    (dataclasses.replace(FLAT, motor_bolts=()), "motor: has no bolt"),
    (dataclasses.replace(FLAT, facets=[*FLAT.facets, dataclasses.replace(
        FLAT.facets[0], origin=(0.0, 0.0, 0.05), holes=())]),
     "mount: a plate is not joined to the rest"),
    (dataclasses.replace(FLAT, contacts=[Contact(facet=0, side=0, stiffness=1e12)]),
     "contact 1: needs a side of +1 or -1 and a stiffness"),
    (dataclasses.replace(FLAT, contacts=[Contact(facet=0, side=1, stiffness=1e12,
        region=[[1, 1], [2, 1], [2, 2]])]), "contact 1: its region holds no plate"),
    (dataclasses.replace(FLAT, welds=[LineWeld(facet=0, start=(0, 0), end=(0.1, 0))]),
     "weld 1: its line does not lie on face"),
    (dataclasses.replace(FLAT, section_lines=[SectionLine(facet=0, start=(1, 0), end=(1, 1))]),
     "section line 1: does not cross face"),
    (dataclasses.replace(ANGLE, spacers=[Spacer(facets=(0, 1), centre=(0, 0.04), diameter=0.01,
        **STEEL)]), "spacer 1: its two plates are not parallel"),
    (dataclasses.replace(FLAT, spacers=[Spacer(facets=(0, 0), centre=(0, 0.04), diameter=0.01,
        **STEEL)]), "spacer 1: needs two different plates"),
]  # fmt: skip


@pytest.mark.parametrize(("model", "message"), FAULTS, ids=[text for _, text in FAULTS])
def test_faults_are_named_in_one_line(model: PlateModel, message: str) -> None:
    with pytest.raises(PlateError) as caught:
        solve(model)
    assert str(caught.value) == message
    assert isinstance(caught.value, MountlimitError)
