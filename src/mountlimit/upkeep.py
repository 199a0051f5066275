"""The chain's own targets: sag to set, wear at which to replace it, and a length of whole links."""

from __future__ import annotations

from dataclasses import dataclass

from .formulas import chain_length, give, sprocket
from .model import Drive

SAG = (0.02, 0.04)  # The Complete Guide to Chain p. 70
FEW_TEETH = 11  # rating tables begin here
MEASURED = 10.0  # pitches laid under the rule


@dataclass(frozen=True, slots=True, kw_only=True)
class Upkeep:
    """Targets of the chain, in metres."""

    run: float
    sag_least: float
    sag_most: float
    wear_share: float  # elongation at which to replace the chain
    measured_new: float  # ten pitches of a new chain
    measured_worn: float
    links: int  # even
    links_exact: float  # at the centre distance of the file
    centre_distance: float  # that the even number gives
    speed_ripple: float


def links(drive: Drive) -> tuple[int, float, float]:
    """Give the even number of links nearest to the file's centres, the exact one, and its centres."""
    chain = drive.chain
    args = (chain.chain.pitch, chain.driving_teeth, chain.driven_teeth)
    exact = float(chain_length.chain_length_in_pitches(chain.centre_distance, *args))
    even = 2 * round(exact / 2)
    return even, exact, float(chain_length.centre_distance_from_length(float(even), *args))


def upkeep(drive: Drive) -> Upkeep:
    """Give what to set, measure and buy for this chain."""
    chain, pitch = drive.chain, drive.chain.chain.pitch
    driving, driven = (
        sprocket.pitch_diameter(pitch, z) for z in (chain.driving_teeth, chain.driven_teeth)
    )
    run = chain_length.span(chain.centre_distance, driven, driving)
    share = chain_length.wear_limit(max(chain.driving_teeth, chain.driven_teeth))
    even, exact, centres = links(drive)
    least, most = (float(give.sag_depth(s, run)) for s in SAG)
    new = MEASURED * float(pitch)
    return Upkeep(
        run=float(run), sag_least=least, sag_most=most, wear_share=float(share), measured_new=new,
        measured_worn=new + float(chain_length.wear_length(share, MEASURED, pitch)), links=even,
        links_exact=exact, centre_distance=centres,
        speed_ripple=float(sprocket.speed_variation(chain.driving_teeth)),
    )  # fmt: skip
