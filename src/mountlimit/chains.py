"""Which chain pitch?  Every chain of the cards at this torque, same ratio, about the same sprocket.

Each chain edits the drive (chain and teeth) and runs the one pipeline again.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from . import cards, evaluate, limits, loads, quick, upkeep
from .checks import alignment, chain_power
from .drivefile import DriveFile, Given
from .errors import InputError
from .formulas import chain_drive, sprocket, torque
from .model import Drive

FEWEST_TEETH = 9

# What was told of the chain and sprockets in the file says nothing of another chain.
OF_THE_OLD_CHAIN = (
    "chain__sprockets", "chain__ten_pitches", "chain__roller_diameter", "chain__inner_width",
    "hub__tooth_width", "driven__tooth_width",
)  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Running:
    """A chain at the motor's speed under load; the rating is that of 15 000 h."""

    chain_speed: float  # m/s
    power_rating: float | None = None  # W, of this chain on these teeth
    rated_pull: float | None = None  # N, the pull of that power at that speed
    # W, at the continuous (or set) current, service factor in it
    rating_needed: float | None = None

    @property
    def rating_share(self) -> float | None:
        """Give how much of the rating is used."""
        if self.power_rating is None or self.rating_needed is None:
            return None
        return self.rating_needed / self.power_rating


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """One chain at this torque."""

    chain: cards.Chain
    driving_teeth: int
    driven_teeth: int
    sprocket_diameter: float  # over the tips of the driving sprocket, m
    pull: float  # tight side at a start, at the current asked about, N
    tensile_factor: float  # minimum tensile strength over that pull
    dynamic_share: float  # without the starting factor
    pin_pressure: float
    rub_angle: float
    speed_ripple: float
    links: int  # even, nearest to the centre distance of the file
    centre_distance: float  # that those links give, m
    running: Running | None  # when motor.speed is given
    safe: float
    safe_check: str
    chain_safe: float  # the chain's own safe current, static and fatigue
    why_not: str = ""


def compare(file: DriveFile) -> list[Choice]:
    """Compare all chains at the wanted current (or the set one), best for the question first.

    Sorted by the safe current of the whole drive, then by mass of chain.

    Raises
    ------
    InputError
        when the file itself does not resolve.
    """
    base = limits.find(file)
    ends = quick.safe_ends(base)
    current = float(base.drive.current.wanted or base.drive.current.set)
    found = [_choice(base.file, base.drive, ends, card, current) for card in cards.chains()]
    kept = [c for c in found if c is not None]
    return sorted(kept, key=lambda c: (-min(c.safe, 1e9), float(c.chain.mass_per_length)))


def teeth_for(drive: Drive, card: cards.Chain) -> tuple[int, int]:
    """Give teeth that keep the driving sprocket's pitch diameter and the ratio as nearly as they can."""
    chain = drive.chain
    diameter = float(sprocket.pitch_diameter(chain.chain.pitch, chain.driving_teeth))
    driving = max(FEWEST_TEETH, round(math.pi / math.asin(min(float(card.pitch) / diameter, 0.5))))
    return driving, max(
        driving, round(driving * float(chain.driven_teeth) / float(chain.driving_teeth))
    )


def with_chain(file: DriveFile, card: cards.Chain, driving: int, driven: int) -> DriveFile:
    """Edit the drive to another chain and its sprockets; the plate model of the mount stays."""
    edited = file.edited(
        chain__type=Given(key="chain.type", text=card.id, kind="chain", value=card),
        chain__driving_teeth=Given(key="chain.driving_teeth", text=str(driving), kind="integer", value=float(driving)),
        chain__driven_teeth=Given(key="chain.driven_teeth", text=str(driven), kind="integer", value=float(driven)),
        **dict.fromkeys(OF_THE_OLD_CHAIN),
    )  # fmt: skip
    return replace(edited, plates=file.plates)


def running(drive: Drive) -> Running | None:
    """Give chain speed and use of the power rating at the motor's speed; None without a speed."""
    chain, card, turning = drive.chain, drive.chain.chain, drive.motor.speed
    if turning is None:
        return None
    revolutions = torque.turns_per_second(turning)
    speed = float(chain_drive.chain_speed(chain.driving_teeth, card.pitch, revolutions))
    if not chain_power.is_rated(drive):
        return Running(chain_speed=speed)
    rating = float(min(chain_power.ratings(drive)))
    held = float(drive.current.continuous or drive.current.set)
    needed = chain_power.needed(drive, loads.torque_at(drive, held))
    return Running(
        chain_speed=speed, power_rating=rating, rating_needed=float(needed),
        rated_pull=float(chain_drive.pull_from_power(rating, speed)),
    )  # fmt: skip


def _choice(
    file: DriveFile, base: Drive, ends: quick.EndsOf, card: cards.Chain, current: float
) -> Choice | None:
    own = card.id == base.chain.chain.id
    driving, driven = (
        (int(base.chain.driving_teeth), int(base.chain.driven_teeth))
        if own
        else teeth_for(base, card)
    )
    edited = file if own else with_chain(file, card, driving, driven)
    try:
        safe = quick.safe_currents(edited, ends, limits.grid(10 * current))
    except InputError as error:
        return _left_out(card, driving, driven, str(error).splitlines()[0])
    drive = safe.drive
    pull = next(i for i, c in enumerate(loads.case_list(drive)) if c[1] == "pull")
    case = evaluate.case_at(drive, current, pull)
    diameter = sprocket.pitch_diameter(card.pitch, driving)
    links, _, centres = upkeep.links(drive)
    tight = float(case.loads.tight_side_tension)
    chain_only = min(safe.by_check[name] for name in ("chain_static", "chain_fatigue"))
    return Choice(
        chain=card, driving_teeth=driving, driven_teeth=driven,
        sprocket_diameter=float(sprocket.tip_diameter_max(diameter, card.pitch, card.roller_diameter)),
        pull=tight,
        tensile_factor=float(
            chain_drive.factor_on_tensile_strength(card.minimum_tensile_strength, tight)
        ),
        dynamic_share=float(case.loads.steady_tension / drive.chain.minimum_dynamic_strength),
        pin_pressure=float(chain_drive.pin_pressure(case.loads.steady_tension, card.bearing_area)),
        rub_angle=float(alignment.rub(case)), speed_ripple=float(sprocket.speed_variation(driving)),
        links=links, centre_distance=centres, running=running(drive),
        safe=safe.current, safe_check=safe.first, chain_safe=chain_only,
    )  # fmt: skip


def _left_out(card: cards.Chain, driving: int, driven: int, why: str) -> Choice:
    return Choice(
        chain=card, driving_teeth=driving, driven_teeth=driven, sprocket_diameter=math.nan,
        pull=math.nan, tensile_factor=math.nan, dynamic_share=math.nan, pin_pressure=math.nan,
        rub_angle=math.nan, speed_ripple=math.nan, links=0,
        centre_distance=math.nan, running=None, safe=-1.0, safe_check="", chain_safe=-1.0, why_not=why,
    )  # fmt: skip
