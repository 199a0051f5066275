"""Numbers of a drawing in the units of the file."""

from __future__ import annotations

from dataclasses import dataclass

from .. import units


@dataclass(frozen=True, slots=True)
class Units:
    """The display units of a drive file's system, "metric" or "inch"."""

    system: str

    def unit(self, kind: str) -> str:
        """Give the unit that an axis of a kind is in."""
        known = units.KINDS[kind]
        return known.inch if self.system == "inch" else known.metric

    def of(self, value: float, kind: str) -> float:
        """Give an SI value in the unit of an axis."""
        return float(units.convert(float(value), kind, self.unit(kind)))

    def show(self, value: float, kind: str, digits: int = 3) -> str:
        """Write an SI value with its unit; what rounds to nothing against its kind is written 0."""
        return units.show(float(value), kind, self.system, digits)

    def length(self, value: float) -> str:
        """Write a length or movement to a hundredth of a millimetre or a thousandth of an inch."""
        step = 2.54e-5 if self.system == "inch" else 1e-5
        return self.show(round(float(value) / step) * step, "length")

    def angle(self, value: float) -> str:
        """Write an angle (rad) in degrees."""
        return self.show(float(value), "angle", 2)
