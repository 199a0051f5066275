"""Machines by size: what motor, shaft, bolts and chain go together."""

from __future__ import annotations

from dataclasses import dataclass

from chance import Chance

from mountlimit import cards

Two = tuple[float, float]


@dataclass(frozen=True)
class Size:
    """Usual ranges of one size of machine: N*m/A, kg, mm, A."""

    torque: Two
    mass: Two
    shaft: tuple[float, ...]
    circle: Two
    face: tuple[str, ...]
    frame: tuple[str, ...]
    chains: tuple[str, ...]
    current: Two
    overhang: Two


SIZES = (
    Size((0.03, 0.08), (0.7, 2.5), (6, 8, 10), (30, 52), ("M4", "M5"), ("M5", "M6", "#10-32"),
         ("25", "25H", "219", "T8F", "35", "05B", "06B"), (20, 90), (12, 30)),
    Size((0.08, 0.14), (4, 7), (10, 12, 12.7), (52, 85), ("M5", "M6", "1/4-20"), ("M6", "M8", "1/4-20"),
         ("T8F", "25H", "219", "35", "35H", "41", "420", "06B", "081", "415"), (20, 120), (15, 40)),
    Size((0.10, 0.25), (8, 20), (12, 15, 17, 19.05, 20), (80, 130), ("M8", "5/16-18"), ("M8", "M10", "5/16-18"),
         ("40", "40H", "420", "428", "08B", "35", "50", "219H", "520", "415H"), (60, 300), (18, 55)),
    Size((0.12, 0.30), (15, 35), (20, 22.225, 25, 28), (100, 180), ("M8", "M10", "3/8-16"), ("M10", "M12", "3/8-16"),
         ("40", "50", "60", "520", "525H", "428H", "10B", "12B", "530", "80"), (100, 450), (25, 60)),
)  # fmt: skip
PLATE = {  # thickness by what the mount is made of, mm
    "steel": (3.0, 8.0), "iron": (6.0, 14.0), "aluminium": (4.0, 14.0), "plastic": (8.0, 25.0),
    "wood": (12.0, 24.0),
}  # fmt: skip
ORDER = ("aluminium", "steel", "aluminium", "steel", "plastic", "wood", "iron")


@dataclass(frozen=True)
class Build:
    """What the rest of a drive is drawn about; lengths in mm."""

    size: Size
    form: str
    family: str
    material: str
    thickness: float
    shaft: float
    circle: float
    face_bolts: int
    face_thread: cards.Thread
    frame_thread: cards.Thread
    face_holes: str | None

    @property
    def washer(self) -> float:
        """Washer of the face bolts."""
        return 1000 * float(self.face_thread.washer_diameter)

    @property
    def reach(self) -> float:
        """Most that the nearest face bolts lie below the shaft axis."""
        return self.circle / 2

    @property
    def frame_washer(self) -> float:
        """Washer of the frame bolts."""
        return 1000 * float(self.frame_thread.washer_diameter)


def build(chance: Chance, form: str, families: tuple[str, ...], weldable: bool) -> Build:
    """Draw the sizes of a machine for a mount form."""
    size = chance.one_of(SIZES)
    family = chance.one_of([f for f in ORDER if f in families])
    cards_of = [m for m in cards.materials() if m.family == family and (m.weldable or not weldable)]
    return Build(
        size=size, form=form, family=family, material=chance.one_of(cards_of).id,
        thickness=round(chance.between(*PLATE[family]), 1), shaft=chance.one_of(size.shaft),
        circle=round(chance.between(*size.circle), 1), face_bolts=chance.one_of((4, 4, 4, 3, 6, 2)),
        face_thread=cards.thread(chance.one_of(size.face)),
        frame_thread=cards.thread(chance.one_of(size.frame)),
        face_holes="slotted" if chance.happens(0.25) else None,
    )  # fmt: skip
