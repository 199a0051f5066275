"""Drive file -> Drive: fills every gap from cards and class defaults, and lists what was assumed."""

from __future__ import annotations

from collections.abc import Mapping

from ..drivefile import DriveFile
from ..errors import InputError, OutOfRange
from ..model import Drive
from ..mounts import FORMS
from ..mounts._parts import Parts
from ..picking import Picker
from . import clamp as clamp_part
from . import driven as driven_part
from . import frame as frame_part
from . import hub as hub_part
from . import joint, line, rests, second_stage
from . import motor as motor_part
from . import pull_test as pull_part


def resolve(file: DriveFile, overrides: Mapping[str, float] | None = None) -> Drive:
    """Give the drive of a file, with ``overrides`` (key -> SI value) put over uncertain inputs.

    Raises
    ------
    InputError
        with every mistake that shows only when several keys are seen together.
    """
    picker = Picker(file, overrides or {})
    motor, current = motor_part.motor(picker), motor_part.current(picker)
    try:
        material, second = joint.substance(picker), joint.second_substance(picker)
    except OutOfRange as error:
        picker.mistake("mount.temperature", str(error), "choose another material or keep it cooler")
        raise InputError(picker.mistakes) from None
    form = FORMS[str(file.given["mount.form"].value)]
    clamped = second if second and getattr(form, "SECOND_BOLTED", False) else material
    own = form.bolt_holes(picker, motor) if hasattr(form, "bolt_holes") else joint.OF_KEYS
    fixings = joint.fixings(picker, clamped, own[0])
    face, motor = joint.face(picker, motor, material, own[1])
    mount = form.build(
        picker,
        Parts(
            motor=motor, fixings=fixings, material=material, second=second,
            clamp=clamp_part.clamp(picker, material),
        ),
    )  # fmt: skip
    chain, shaft = line.chain(picker), line.shaft(picker, motor)
    hub = hub_part.hub(picker, shaft, chain)
    frame, use = frame_part.frame(picker), line.use(picker)
    if not picker.mistakes:
        mount, frame = rests.on_member(picker, mount, fixings, frame)
    welded = bool(mount.welds or hub.weld) or "driven.weld_diameter" in picker.given
    duty, policy = line.duty(picker, welded), line.policy(picker)
    jackshaft = second_stage.jackshaft(picker, chain)
    driven = driven_part.driven(picker, chain if jackshaft is None else jackshaft.run)
    if mount.flat_face and shaft.face_overhang <= mount.thickness / 2:
        picker.mistake(
            "shaft.face_overhang",
            "the sprocket would sit inside the plate",
            "it is measured from the motor's face to the middle of the sprocket",
        )
    pulled = pull_part.readings(picker, chain)
    if picker.mistakes:
        raise InputError(picker.mistakes)
    drive = Drive(
        title=str(file.given["title"].value), system=picker.system, motor=motor, face=face, current=current,
        chain=chain, shaft=shaft, hub=hub, jackshaft=jackshaft, driven=driven, mount=mount, fixings=fixings, frame=frame, use=use,
        duty=duty, policy=policy, ranges=tuple(picker.ranges.values()),
        words=tuple(picker.words.items()), warnings=tuple(dict.fromkeys((*picker.warnings, *file.notes))),
        trials=file.given["trial"].value if "trial" in file.given else (), plates=file.plates,
    )  # fmt: skip
    if pulled is None:
        return drive
    return pull_part.with_test(drive, file, overrides or {}, pulled, resolve)
