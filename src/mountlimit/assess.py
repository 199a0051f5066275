"""The whole job: drive file -> Assessment, the one thing every report is made from."""

from __future__ import annotations

import math
from dataclasses import dataclass

from . import consequence, crosscheck, evaluate, jam, limits, pull_reading, traction
from .case import Case
from .checks.alignment import skew
from .checks.jack_screw import stands_idle
from .consequence import Consequence
from .crosscheck import Both
from .drivefile import DriveFile
from .evaluate import Governing
from .limits import Effect, Found, Limit
from .model import Drive, Driven, Hub
from .resolve import resolve
from .stages import second_drive
from .starting import explain
from .traction import Lines
from .upkeep import FEW_TEETH, Upkeep, upkeep

HALF = 0.5  # of the thickness: movement beyond which linear theory ends
ALIKE = 6  # decimals of a radian from which two cases skew the chain alike
SMALL_TURN = 0.02  # rad; beyond it linear theory ends
ONE_PLATE = math.radians(2.0)  # skew from which one side plate may carry the whole pull

JACK_IDLE = (
    "The slots run across the chain's pull, so the jack screw stops nothing: turn the slots, or see "
    "fixings.slots_run."
)
BANDS_HELD = "how the cradle is held on its base plate, the bands and their lugs, the motor's shell under them"
JACK_HELD = "the threads that hold the jack screw, and how hard it was driven home"
CAUTIONS = (
    "Guard the chain; keep fingers, hair, clothes and bystanders clear of the chain line.",
    "Isolate the battery before you touch the drive; first runs with the wheels off the ground.",
    "Raise the current in steps; stop at any noise, movement or slack you did not have before.",
    "An estimate, not a certificate: local codes and a licensed engineer decide where people can be hurt.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class AtCurrent:
    """One limit looked at with one current flowing, every uncertain input at its safe-side end."""

    governing: Governing | None
    utilisation: float  # design factor included: above 1 the safe limit is passed


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One line of the answer: a limit, how it stands at the set and the wanted current, and notes."""

    limit: Limit
    at_set: AtCurrent
    at_wanted: AtCurrent | None
    station: str
    case: str
    consequence: Consequence
    source: str
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Assessment:
    """Everything the reports say."""

    file: DriveFile
    drive: Drive
    lines: tuple[Line, ...]
    first_safe: Line
    first_gives: Line | None
    uses: Lines
    at_set: Case
    skew_at_set: tuple[float, float, float]
    effects: tuple[Effect, ...]
    starting_from: str
    warnings: tuple[str, ...]
    balance: float
    reach: float
    route: str  # which model governs stiffness and bolt forces
    both: tuple[Both, ...]  # the two routes side by side at the set current
    stops: (
        jam.Stops | None
    )  # what a dead stop uses up, at the set current; None when not worked out
    upkeep: Upkeep
    second_upkeep: Upkeep | None

    @property
    def over(self) -> bool:
        """Whether the set current is over a safe limit of the peak setting."""
        return float(self.drive.current.set) > self.first_safe.limit.safe


def assess(file: DriveFile, dead_stop: bool = False) -> Assessment:
    """Do the whole job; a dead stop at speed when it is asked for or the motor's speed is known.

    Raises ``InputError`` as ``resolve``.
    """
    return of_found(limits.find(file), dead_stop)


def of_found(found: Found, dead_stop: bool = False) -> Assessment:
    """Do the rest of the job when the limits are found."""
    drive = found.drive
    pick = _pull_index(drive)
    lines = tuple(_line(found, limit, pick) for limit in found.limits)
    gives = found.first_gives
    case = evaluate.case_at(drive, float(drive.current.set), pick)
    eps = tuple(float(v) for v in skew(case))
    both = crosscheck.compare(drive, float(drive.current.set), pick)
    return Assessment(
        file=found.file, drive=drive, lines=lines, first_safe=lines[found.limits.index(found.first_safe)],
        first_gives=lines[found.limits.index(gives)] if gives else None,
        uses=traction.lines(drive), at_set=case, skew_at_set=(eps[0], eps[1], eps[2]),
        effects=found.effects, starting_from=explain(drive),
        warnings=(*drive.warnings, *_few_teeth(drive), *_idle(drive), *pull_reading.notes(drive), *_warnings(drive, eps, case), *_apart(both), *_seen(found)),
        balance=found.balance, reach=found.reach, route=crosscheck.governing_route(drive), both=both,
        stops=jam.stops(found) if dead_stop or drive.motor.speed is not None else None,
        upkeep=upkeep(drive),
        second_upkeep=upkeep(second_drive(drive)) if drive.jackshaft else None,
    )  # fmt: skip


def not_checked(drive: Drive) -> tuple[str, ...]:
    """Say what stays unchecked on this drive: what the program cannot do, and what was not told."""
    bending = (
        "" if drive.plates is not None else "bending of the mount between its bolts (prying); "
    )
    speed = (
        "" if drive.motor.speed else "bearing life, and pin pressure and power rating of the chain "
        "(motor.speed is not given); "
    )  # fmt: skip
    return (
        *_frame(drive),
        *_on_motor_shaft(drive.hub),
        *_second_stage(drive),
        *_driven_side(drive.driven),
        *([BANDS_HELD] if drive.mount.bands else []),
        *([JACK_HELD] if drive.fixings.jack else []),
        f"{bending}what stops the drive, and how suddenly",
        f"{speed}worn sprockets{_untold_teeth(drive)}",
        "strength of the chain guard, quality of welds, corrosion, heat of motor and controller",
    )


def _untold_teeth(drive: Drive) -> str:
    """Say whose teeth are not checked: their sprocket's material is not told."""
    sides = {"driving": drive.hub.sprocket, "driven": drive.driven.sprocket}
    untold = [side for side, told in sides.items() if told is None]
    if not untold:
        return ""
    keys = [f"{'hub' if side == 'driving' else side}.sprocket_material" for side in untold]
    return (
        f"; teeth of the {' and the '.join(untold)} sprocket, bolt holes in a thin or soft one "
        f"({' and '.join(keys)} not given)"
    )


def _frame(drive: Drive) -> list[str]:
    """Say what of the frame is not checked."""
    if drive.frame.span is None:
        return ["the frame, wheels and brakes (you call the frame rigid)"]
    wall = "holes in the frame member, and its wall under bolts or clamp and beside welds"
    if drive.frame.yield_strength is None:
        wall = "strength of the frame member (its size, wall or yield strength is not given)"
    return [wall, "the frame beyond the member given, how its ends are fastened, wheels and brakes"]


def _on_motor_shaft(hub: Hub) -> list[str]:
    """Say what of the driving hub is not checked."""
    found = []
    if hub.drive == "splines" or (hub.drive == "flats" and hub.flats is None):
        found.append(f"the {hub.drive} of the motor shaft")
    if hub.drive == "taper bush" and hub.grip is None:
        found.append("the grip of the taper bush")
    if hub.bolts is None and hub.weld is None:
        found.append("bolts or welds between driving sprocket and hub, if any")
    if hub.pin is not None and hub.pin.through_shaft:
        found.append("strength of the motor shaft where the pin crosses it")
        if hub.pin.hub_diameter is None:
            found.append("crushing of the hub by the pin (hub.outer_diameter is not given)")
    if hub.key is not None:
        found.append("strength of the hub's wall over the keyway")
    if not hub.set_screw_count:
        found.append("what keeps the driving sprocket in its place along the shaft")
    return ["; ".join(found)] if found else []


def _second_stage(drive: Drive) -> list[str]:
    """Say what of an outboard bearing and of a jackshaft is not checked."""
    found = []
    if drive.shaft.outboard is not None:
        found.append(
            "what holds the outboard bearing, a knock of the motor against it, and the force it puts on the "
            "shaft when it is not set in line"
        )
    if drive.jackshaft is not None:
        found.append(
            "line of the second chain under load (the jackshaft is taken to stay where it is), its slack and jerk"
        )
    return found


def _driven_side(driven: Driven) -> list[str]:
    """Say what of the driven side was not told."""
    fastened = driven.bolts or driven.weld or driven.key or driven.pin
    found = [
        words
        for words, told in (
            ("how the driven sprocket is fastened", fastened),
            ("the driven shaft", driven.shaft),
            ("a freewheel, if any", driven.freewheel_torque),
        )
        if told is None
    ]
    if driven.pin is not None and driven.pin.through_shaft:
        found.append("strength of the driven shaft where the pin crosses it")
        if driven.pin.hub_diameter is None:
            found.append(
                "crushing of the driven hub by the pin (driven.outer_diameter is not given)"
            )
    left = [f"on the driven side: {'; '.join(found)}"] if found else []
    return [*left, _driven_shaft(driven)]


def _driven_shaft(driven: Driven) -> str:
    """Say what of the driven shaft was not told; wheels' side forces are never asked for."""
    shaft, bearing = driven.shaft, driven.bearings
    told = {
        "weight": shaft is not None and shaft.weight is not None,
        "its fatigue": shaft is not None and shaft.fatigue is not None,
        "its bearings": bearing is not None,
    }
    if not any(told.values()):
        return "weight on the driven shaft, its bearings and its fatigue"
    left = [words for words, known in told.items() if not known]
    if bearing is not None and (bearing.static_rating is None or bearing.dynamic_rating is None):
        left.append("static load" if bearing.static_rating is None else "life")
        left[-1] += " of its bearings"
    return f"on the driven shaft: {'; '.join([*left, 'side forces (a wheel in a corner)'])}"


def _pull_index(drive: Drive) -> int:
    """Give the load case 'pull' that skews the chain most at the set current.

    Of cases that skew it alike but for rounding, the one that slackens it most.
    """
    from .loads import case_list

    current = float(drive.current.set)

    def worst(index: int) -> tuple[float, float]:
        turned, _, near = skew(evaluate.case_at(drive, current, index))
        return round(float(turned), ALIKE), float(near)

    return max((i for i, c in enumerate(case_list(drive)) if c[1] == "pull"), key=worst)


def _idle(drive: Drive) -> list[str]:
    """Say so when a jack screw stops nothing."""
    return [JACK_IDLE] if drive.fixings.jack and stands_idle(drive) else []


def _seen(found: Found) -> list[str]:
    """Say what trials tell: that there are some, and any that gave or rubbed within the safe limit."""
    trials, safe = found.drive.trials, found.first_safe.safe
    lines = [
        f"You saw it: {trial}. That is within what is said to be safe: the file is not your drive. Stay below "
        "that current, and find out what differs before you trust a number here."
        for trial in trials if trial.seen != "fine" and trial.current <= safe
    ]  # fmt: skip
    return lines + (["Trials move the estimate: ask mountlimit sure."] if trials else [])


def _few_teeth(drive: Drive) -> list[str]:
    """Say what a very small driving sprocket costs."""
    teeth = int(drive.chain.driving_teeth)
    if teeth >= FEW_TEETH:
        return []
    return [
        f"{teeth} driving teeth: the chain's speed swings by {100 * upkeep(drive).speed_ripple:.1f} % with every "
        f"tooth, and power ratings of chains begin at {FEW_TEETH} teeth. More teeth pull less and run smoother."
    ]


def _apart(both: tuple[Both, ...]) -> list[str]:
    """Say where the two routes differ by more than is usual."""
    return [
        f"The two routes differ in the {b.name}: the plate model gives {b.ratio:.2g} times the section "
        f"route ({b.reason}). What governs: {b.governs}."
        for b in both
        if b.disagree
    ]


def _warnings(drive: Drive, eps: tuple[float, ...], case: Case) -> list[str]:
    found = []
    moved = max(abs(float(w)) for w in case.response.displacements[0].move)
    if moved > HALF * drive.mount.thickness:
        found.append(
            f"The mount moves the sprocket {1000 * moved:.1f} mm at the set current, more than half its "
            "thickness: past small movements, the numbers become rough."
        )
    if eps[0] > SMALL_TURN:
        found.append(
            f"The sprocket leans {math.degrees(eps[0]):.1f} deg at the set current: past small turns, "
            "the numbers become rough."
        )
    if eps[0] > ONE_PLATE:
        found.append("Above 2 deg of skew one side plate of the chain may carry the whole pull.")
    if drive.motor.points and drive.current.set > drive.motor.points[-1][0]:
        found.append(
            "The set current is beyond the last measured torque: extrapolated straight on."
        )
    return found


def _line(found: Found, limit: Limit, pick: int) -> Line:
    worst = resolve(found.file, limit.corner)
    current = found.drive.current
    asked = [float(current.set)]
    asked += [] if current.wanted is None else [float(current.wanted)]
    usable = math.isfinite(limit.safe) and limit.safe > 0
    at = at_currents(worst, limit, [*asked, limit.safe] if usable else asked)
    at_set, wanted = at[0], None if current.wanted is None else at[1]
    seen = (at[-1].governing if usable else None) or at_set.governing
    return Line(
        limit=limit, at_set=at_set, at_wanted=wanted,
        station=seen.row.station if seen else "", case=seen.case if seen else "",
        consequence=consequence.of(limit.check, found.drive), source=limit.factor_source, notes=tuple(_notes(found, limit, pick)),
    )  # fmt: skip


def at_currents(worst: Drive, limit: Limit, currents: list[float]) -> list[AtCurrent]:
    """Give how a limit stands at some currents, with the drive at the limit's safe-side ends."""
    level = "continuous" if limit.current_kind == "continuous" else "safe"
    return [
        AtCurrent(governing=seen, utilisation=seen.utilisation * limit.factor if seen else 0.0)
        for seen in evaluate.governing_at(worst, limit.check, currents, level)
    ]


def _before_the_fuse(found: Found, limit: Limit) -> list[str]:
    """Say what may give before a pin that is meant to go first does."""
    pins = {"hub_pin": found.drive.hub.pin, "driven_pin": found.drive.driven.pin}
    pin, high = pins.get(limit.check.name), limit.gives_high
    if pin is None or not pin.fuse or high is None:
        return []
    sooner = [
        x.check.part
        for x in found.limits
        if x is not limit and x.counts and x.gives_low is not None and x.gives_low < high
    ]
    if math.isinf(high):
        return ["meant to go first, but not reached: a smaller or softer pin would go sooner"]
    where = f"meant to go first, by {high:.0f} A at the latest"
    if not sooner:
        return [f"{where}; nothing else gives below that"]
    return [f"{where}; these may give before it: {', '.join(dict.fromkeys(sooner))}"]


def _notes(found: Found, limit: Limit, pick: int) -> list[str]:
    notes = [limit.why_not] if limit.why_not else []
    notes += _before_the_fuse(found, limit)
    if limit.check.name == "alignment" and limit.gives and math.isfinite(limit.gives):
        bent = next(x for x in found.limits if x.check.name == "mount_section").gives
        if bent is not None and bent < limit.gives:
            notes.append(f"the mount yields first, at about {bent:.0f} A")
        case = evaluate.case_at(found.drive, limit.gives, pick)
        if float(skew(case)[0]) > SMALL_TURN:
            notes.append("thrown-chain current extrapolated past small turns")
        notes.append("throw criterion: proposal, no published source")
    return notes
