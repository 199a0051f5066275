"""Shared pieces of the tests: a short valid drive file as a mapping, and ways to run it."""

from __future__ import annotations

import copy
import os
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

import pytest

for _name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ.setdefault(_name, "1")  # two workers share two cores; set before numpy is loaded

from mountlimit.drivefile import DriveFile, fields_for, parse  # noqa: E402
from mountlimit.fields import Field  # noqa: E402
from mountlimit.model import Range  # noqa: E402
from mountlimit.resolve import resolve  # noqa: E402
from mountlimit.units import KINDS  # noqa: E402

BASE: dict[str, Any] = {
    "title": "test drive",
    "motor": {"torque_constant": "0.12 N*m/A", "mass": "5.5 kg", "centre_of_mass": "60 mm",
              "bolts": "4 x M6", "bolt_circle": "79 mm", "bolt_class": "8.8"},
    "current": {"kind": "motor", "set": "40 A", "wanted": "90 A", "continuous": "28 A"},
    "chain": {"type": "40", "driving_teeth": 11, "driven_teeth": 54, "centre_distance": "360 mm",
              "pull": "across"},
    "shaft": {"diameter": "12 mm", "face_overhang": "28 mm", "bearing": "6201"},
    "hub": {"key": "4 x 4 x 16 mm"},
    "mount": {"form": "plate", "material": "6061", "thickness": "8 mm", "width": "120 mm",
              "free_length": "85 mm"},
    "fixings": {"bolts": "4 x M8", "bolt_class": "8.8", "span_across": "90 mm", "span_along": "40 mm"},
}  # fmt: skip

ANGLE = {"form": "angle", "heel_to_bolts": "35 mm"}


WELDED = {
    "mount__form": "welded plate", "mount__material": "s235", "mount__thickness": "6 mm",
    "fixings__bolts": None, "fixings__bolt_class": None, "fixings__span_across": None,
    "fixings__span_along": None, "fixings__weld_leg": "5 mm", "fixings__weld_sides": "both",
}  # fmt: skip


def _toml(value: Any) -> str:
    if isinstance(value, str):
        return '"' + value.replace("\\", "\\\\").replace('"', '\\"') + '"'
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, list):
        return "[" + ", ".join(_toml(v) for v in value) + "]"
    if isinstance(value, dict):
        return "{ " + ", ".join(f"{k} = {_toml(v)}" for k, v in value.items()) + " }"
    return str(value)


def toml_text(data: dict[str, Any]) -> str:
    """Write a drive mapping as TOML text."""
    lines = [f"{k} = {_toml(v)}" for k, v in data.items() if not isinstance(v, dict)]
    for name, table in data.items():
        if isinstance(table, dict):
            lines.append(f"\n[{name}]")
            lines += [f"{k} = {_toml(v)}" for k, v in table.items()]
    return "\n".join(lines) + "\n"


def changed(**changes: Any) -> dict[str, Any]:
    """Give the base drive with ``section__key=value`` put over it; ``None`` takes the key out."""
    data = copy.deepcopy(BASE)
    for name, value in changes.items():
        section, _, key = name.partition("__")
        target = data.setdefault(section, {}) if key else data
        key = key or section
        if value is None:
            target.pop(key, None)
        else:
            target[key] = value
    return data


# Files of few long tests: begun first, so that no worker is left alone with one at the end.
LONG = (
    "test_reached.py", "test_thickness.py", "test_why.py", "test_sure.py", "test_terminal.py", "test_built_up_angle.py",
    "test_schema.py", "test_figures.py", "test_seam_screws.py", "test_chains.py", "test_search.py", "test_stop.py",
    "test_jam.py", "test_explain_failure.py", "test_forms.py", "test_trials.py", "test_ratios.py",
)  # fmt: skip


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Put the tests of the long files first; the rest keeps its order."""
    items.sort(key=lambda item: item.path.name not in LONG)


def some(of: list[Any], first: int = 0) -> list[Any]:
    """Give every third of what is looked at in turn; all with EVERY_EXAMPLE set (see DEVELOPERS.md)."""
    return of if os.environ.get("EVERY_EXAMPLE") else of[first::3]


def drive_file(**changes: Any) -> DriveFile:
    """Read the base drive with changes."""
    return parse(toml_text(changed(**changes)).encode(), "test.toml")


def tellable(ranges: Iterable[Range], known: Mapping[str, Field]) -> list[Range]:
    """Give what is assumed of keys that can be written as it is listed."""
    return [r for r in ranges if r.key in known and known[r.key].kind == r.kind]


def in_words(r: Range) -> Any:
    """Write the likely value of an uncertain input as it would stand in a file."""
    if r.kind in ("number", "integer"):
        return round(r.likely) if r.kind == "integer" else round(r.likely, 6)
    unit = KINDS[r.kind].si
    return f"{r.likely:.7g}" if unit == "-" else f"{r.likely:.7g} {unit}"


def told(file: DriveFile) -> dict[str, Any]:
    """Give what a file leaves to assume, at its likely value, as changes of the base drive.

    Without the slack: with that told a start takes it up, which it does not otherwise.
    """
    known = fields_for(str(file.given["mount.form"].value))
    found = tellable(resolve(file).ranges, known)
    return {r.key.replace(".", "__"): in_words(r) for r in found if r.key != "chain.slack"}


def careful(file: DriveFile) -> DriveFile:
    """Give a file with all that could be told told: a search then is many times quicker."""
    return file.edited(**told(file))


def angle_file(**changes: Any) -> DriveFile:
    """Read the base drive as an angle, with changes."""
    mount = {f"mount__{k}": v for k, v in ANGLE.items()}
    return drive_file(**{**mount, **changes})


def welded_file(**changes: Any) -> DriveFile:
    """Read the base drive as a steel plate welded along both sides, with changes."""
    return drive_file(**{**WELDED, **changes})


# Clamped on a tube that neither slips nor gives way, so that the rest is seen.
CLAMPED = {
    "mount__grip_length": "60 mm", "frame__member": "round tube", "frame__size": "40 mm",
    "frame__wall": "4 mm", "fixings__clamp_preload": "6 kN", "fixings__clamp_surface": "painted",
}  # fmt: skip
SADDLE = {
    "mount__form": "saddle", "fixings__bolts": None, "fixings__bolt_class": None,
    "fixings__span_across": None, "fixings__span_along": None, "fixings__clamp_bolts": "2 x M8",
    **CLAMPED,
}  # fmt: skip
BLOCK = {"mount__form": "clamp block", "fixings__clamp_bolts": "4 x M8", **CLAMPED}


def saddle_file(**changes: Any) -> DriveFile:
    """Read the base drive as an ear on a saddle, with changes."""
    return drive_file(**{**SADDLE, **changes})


def block_file(**changes: Any) -> DriveFile:
    """Read the base drive as an ear on a clamp block, with changes."""
    return drive_file(**{**BLOCK, **changes})


IDEAL = {
    "frame__member": "rigid", "chain__slack": "20 %", "chain__skew": "0 deg", "chain__offset": "0 mm",
    "shaft__bearing_play": "0 mm", "duty__starting_factor": 1, "motor__mass": "0.05 kg",
    "motor__torque_scatter": 1, "mount__warping_held": 1, "fixings__joint_stiffness": "10000 kN/mm",
}  # fmt: skip


@pytest.fixture(scope="session", autouse=True)
def _shared_folder(tmp_path_factory: pytest.TempPathFactory) -> None:
    """A folder that all workers of a run share, for what is worked out once a run (see ``sheet.made``)."""
    own = Path(tmp_path_factory.getbasetemp())
    os.environ["MOUNTLIMIT_SHARED"] = str(
        own.parent if "PYTEST_XDIST_WORKER" in os.environ else own
    )


@pytest.fixture
def base() -> DriveFile:
    """The base drive."""
    return drive_file()
