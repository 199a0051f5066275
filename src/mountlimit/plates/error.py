"""The error a plate model can raise: one line that names the part and what is wrong with it."""

from __future__ import annotations

from ..errors import MountlimitError


class PlateError(MountlimitError):
    """A plate model that cannot be meshed or solved: which part, and why."""

    def __init__(self, part: str, fault: str) -> None:
        self.part, self.fault = part, fault
        super().__init__(f"{part}: {fault}")
