"""Which chain pitch?  Every chain of the cards at this torque, same ratio, about the same sprocket.

Each chain edits the drive (chain and teeth) and runs the one pipeline again.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from . import cards, crossings, evaluate, limits, loads, quick, stages, upkeep
from .checks import alignment, chain_power
from .drivefile import DriveFile, Given
from .errors import InputError, Mistake
from .formulas import chain_drive, sprocket, torque
from .limits import Limit
from .model import Array, Drive
from .plate_route import with_plates
from .progress import step

FEWEST_TEETH = 9

# What was told of the chain and sprockets in the file says nothing of another chain.
OF_THE_OLD_CHAIN = (
    "chain__sprockets", "chain__ten_pitches", "chain__roller_diameter", "chain__inner_width",
    "hub__tooth_width", "driven__tooth_width",
)  # fmt: skip
OWN_CHECKS = ("chain_static", "chain_fatigue")
NEAR = 1.5  # a check whose quick limit is this near to the least one is looked at exactly


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
class Band:
    """Safe to, and gives at with its band, A; infinity means not reached below ``reach``."""

    safe: float
    safe_check: str
    gives: float | None
    gives_low: float | None
    gives_high: float | None
    gives_check: str
    reach: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Changes:
    """What else comes with a chain, against the one of the file; the sprocket's middle plane stays."""

    driving_radius: float  # tip radius of the driving sprocket less that of now, m
    driven_radius: float
    tooth_width: float  # of sprockets made for this chain, m
    tooth_width_more: float  # less that of sprockets made for the chain of the file
    width_over_plates: float  # inner width and four plates; pin ends stand out a little more, m
    centre_more: float  # centre distance of the even links less that of the file, m
    new_sprockets: bool


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
    changes: Changes | None = None
    near: tuple[str, ...] = ()  # checks that may come first, safe or giving
    own: Band | None = None  # exact, of the chain itself; None where not asked for
    whole: Band | None = None  # exact, of the whole drive
    why_not: str = ""


def compare(file: DriveFile, second: bool = False) -> list[Choice]:
    """Compare all chains at the wanted current (or the set one), best for the question first.

    Sorted by the safe current of the whole drive, then by mass of chain.  The safe currents are
    quick ones, to rank by; ``banded`` adds the exact ones.

    Raises
    ------
    InputError
        when the file itself does not resolve, or has no second chain to compare.
    """
    base = limits.find(file)
    if second and base.drive.jackshaft is None:
        gone = Mistake(
            file.name, "second_chain.type", "", "is missing: --second compares this chain"
        )
        raise InputError([gone])
    ends = quick.safe_ends(base)
    current = float(base.drive.current.wanted or base.drive.current.set)
    found, known = [], cards.chains()
    for i, card in enumerate(known):
        found.append(_choice(base.file, base.drive, ends, card, current, second))
        step("chains, to rank them", i + 1, len(known))
    return _sorted(found)


def banded(file: DriveFile, choices: list[Choice], second: bool = False) -> list[Choice]:
    """Give the choices with exact limits and bands, as ``limits.find`` has them on the edited drive."""
    file = with_plates(file)
    found = []
    for i, choice in enumerate(choices):
        found.append(choice if choice.why_not else _with_bands(file, choice, second))
        step("chains, their bands", i + 1, len(choices))
    return _sorted(found)


def _sorted(choices: list[Choice]) -> list[Choice]:
    return sorted(choices, key=lambda c: (-min(c.safe, 1e9), float(c.chain.mass_per_length)))


def _with_bands(file: DriveFile, choice: Choice, second: bool) -> Choice:
    edited = file
    own_id = file.given[f"{_part(second)}.type"].value.id
    if choice.chain.id != own_id:
        edited = with_chain(file, choice.chain, choice.driving_teeth, choice.driven_teeth, second)
    mine = _own_checks(second)
    found = limits.find(edited, only=sorted({*choice.near, *mine}))
    peak = [x for x in found.limits if x.current_kind == "peak setting"]
    own = _band([x for x in peak if x.check.name in mine])
    whole = _band([x for x in peak if x.counts])
    return replace(
        choice, own=own, whole=whole, safe=whole.safe, safe_check=whole.safe_check, chain_safe=own.safe,
    )  # fmt: skip


def _band(found: list[Limit]) -> Band:
    safe = min(found, key=lambda x: x.safe)
    giving = [(x.gives, x) for x in found if x.gives is not None]
    gives, first = min(giving, key=lambda g: g[0]) if giving else (None, safe)
    return Band(
        safe=safe.safe, safe_check=safe.check.name, gives=gives, gives_low=first.gives_low,
        gives_high=first.gives_high, gives_check=first.check.name if giving else "", reach=safe.reach,
    )  # fmt: skip


def _part(second: bool) -> str:
    return "second_chain" if second else "chain"


def _own_checks(second: bool) -> tuple[str, ...]:
    return tuple(f"second_{name}" if second else name for name in OWN_CHECKS)


def teeth_for(drive: Drive, card: cards.Chain) -> tuple[int, int]:
    """Give teeth that keep the driving sprocket's pitch diameter and the ratio as nearly as they can."""
    chain = drive.chain
    diameter = float(sprocket.pitch_diameter(chain.chain.pitch, chain.driving_teeth))
    driving = max(FEWEST_TEETH, round(math.pi / math.asin(min(float(card.pitch) / diameter, 0.5))))
    return driving, max(
        driving, round(driving * float(chain.driven_teeth) / float(chain.driving_teeth))
    )


def with_chain(
    file: DriveFile, card: cards.Chain, driving: int, driven: int, second: bool = False
) -> DriveFile:
    """Edit the drive to another chain and its sprockets; the plate model of the mount stays."""
    part = _part(second)
    new = (
        Given(key=f"{part}.type", text=card.id, kind="chain", value=card),
        Given(key=f"{part}.driving_teeth", text=str(driving), kind="integer", value=float(driving)),
        Given(key=f"{part}.driven_teeth", text=str(driven), kind="integer", value=float(driven)),
    )
    old = dict.fromkeys(_told_of(file, second))
    edited = file.edited(**{g.key.replace(".", "__"): g for g in new}, **old)
    return replace(edited, plates=file.plates)


def _told_of(file: DriveFile, second: bool) -> tuple[str, ...]:
    """Give the keys that say nothing of another chain; the driven sprocket is on the last one."""
    if second:
        return ("driven__tooth_width",)
    two = "second_chain.type" in file.given
    return tuple(k for k in OF_THE_OLD_CHAIN if not (two and k == "driven__tooth_width"))


def running(drive: Drive, ratio: float = 1.0) -> Running | None:
    """Give chain speed and use of the power rating at the motor's speed; None without a speed.

    For the second chain as a drive of its own, ``ratio`` is that of the first stage.
    """
    chain, card, turning = drive.chain, drive.chain.chain, drive.motor.speed
    if turning is None:
        return None
    revolutions = torque.turns_per_second(turning)
    speed = float(chain_drive.chain_speed(chain.driving_teeth, card.pitch, revolutions))
    if not chain_power.is_rated(drive):
        return Running(chain_speed=speed)
    rating = float(min(chain_power.ratings(drive)))
    held = float(drive.current.continuous or drive.current.set)
    needed = chain_power.needed(drive, loads.torque_at(drive, held) * ratio)
    return Running(
        chain_speed=speed, power_rating=rating, rating_needed=float(needed),
        rated_pull=float(chain_drive.pull_from_power(rating, speed)),
    )  # fmt: skip


def _choice(
    file: DriveFile, base: Drive, ends: quick.EndsOf, card: cards.Chain, current: float, second: bool
) -> Choice:  # fmt: skip
    now = stages.second_drive(base) if second else base
    own = card.id == now.chain.chain.id
    driving, driven = (
        (int(now.chain.driving_teeth), int(now.chain.driven_teeth)) if own else teeth_for(now, card)
    )
    edited = file if own else with_chain(file, card, driving, driven, second)
    currents = crossings.grid(limits.reach_of(base))
    try:
        safe = quick.safe_currents(edited, ends, currents)
    except InputError as error:
        return _left_out(card, driving, driven, str(error).splitlines()[0])
    pull = next(i for i, c in enumerate(loads.case_list(safe.drive)) if c[1] == "pull")
    case = evaluate.case_at(safe.drive, current, pull)
    ratio = 1.0
    if second:
        ratio = float(base.chain.driven_teeth) / float(base.chain.driving_teeth)
        case = stages.second(case)
    drive = case.drive
    links, _, centres = upkeep.links(drive)
    tight = float(case.loads.tight_side_tension)
    return Choice(
        chain=card, driving_teeth=driving, driven_teeth=driven,
        sprocket_diameter=_over_tips(card, driving), pull=tight,
        tensile_factor=float(
            chain_drive.factor_on_tensile_strength(card.minimum_tensile_strength, tight)
        ),
        dynamic_share=float(case.loads.steady_tension / drive.chain.minimum_dynamic_strength),
        pin_pressure=float(chain_drive.pin_pressure(case.loads.steady_tension, card.bearing_area)),
        # the mount does not turn the sprockets of the second chain
        rub_angle=math.nan if second else float(alignment.rub(case)),
        speed_ripple=float(sprocket.speed_variation(driving)),
        links=links, centre_distance=centres, running=running(drive, ratio),
        safe=safe.current, safe_check=safe.first,
        chain_safe=min(safe.by_check[name] for name in _own_checks(second)),
        changes=_changes(now, drive, centres), near=_near(safe, currents),
    )  # fmt: skip


def _over_tips(card: cards.Chain, teeth: float) -> float:
    """Give the largest diameter over the tips of a sprocket, m."""
    diameter = sprocket.pitch_diameter(card.pitch, teeth)
    return float(sprocket.tip_diameter_max(diameter, card.pitch, card.roller_diameter))


def _tooth_width(card: cards.Chain) -> float:
    return float(sprocket.tooth_width(card.inner_width, sprocket.width_factor(card.pitch)))


def _changes(now: Drive, then: Drive, centres: float) -> Changes:
    old, new = now.chain, then.chain
    card = new.chain
    more = _tooth_width(card) - _tooth_width(old.chain)
    same = all(
        abs(float(getattr(card, n)) - float(getattr(old.chain, n))) < 1e-5
        for n in ("pitch", "roller_diameter")
    )
    teeth = (new.driving_teeth, new.driven_teeth) == (old.driving_teeth, old.driven_teeth)
    driving, driven = (
        (_over_tips(card, float(z)) - _over_tips(old.chain, float(was))) / 2
        for z, was in (
            (new.driving_teeth, old.driving_teeth),
            (new.driven_teeth, old.driven_teeth),
        )
    )
    return Changes(
        driving_radius=driving, driven_radius=driven, tooth_width=_tooth_width(card),
        tooth_width_more=more,
        width_over_plates=float(card.inner_width) + 4 * float(card.plate_thickness),
        centre_more=centres - float(old.centre_distance),
        new_sprockets=not (same and teeth and more > -1e-5),  # wider teeth do not enter the chain
    )  # fmt: skip


def _near(safe: quick.Safe, currents: Array) -> tuple[str, ...]:
    """Give the checks whose limits, safe or likely, lie near the least one."""
    used = quick.likely_utilisations(safe.drive, currents, list(safe.by_check))
    likely = {n: crossings.crossing(currents, u) for n, u in used.items()}
    return tuple(sorted(quick.near_the_first((safe.by_check, likely), NEAR, float(currents[0]))))


def _left_out(card: cards.Chain, driving: int, driven: int, why: str) -> Choice:
    return Choice(
        chain=card, driving_teeth=driving, driven_teeth=driven, sprocket_diameter=math.nan,
        pull=math.nan, tensile_factor=math.nan, dynamic_share=math.nan, pin_pressure=math.nan,
        rub_angle=math.nan, speed_ripple=math.nan, links=0,
        centre_distance=math.nan, running=None, safe=-1.0, safe_check="", chain_safe=-1.0, why_not=why,
    )  # fmt: skip
