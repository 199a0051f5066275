"""ASME B29.1-2011, Precision Power Transmission Roller Chains, Attachments, and Sprockets.

Sizes and strengths, pitch diameters, and the power rating of its appendix.
The rating equations in the American Chain Association form, p in inches, n in rev/min:
link plates 0.004 z^1.08 n^0.9 p^(3-0.07p) hp (0.0022 for chain 41), rollers and bushes
1000 K2 z^1.5 p^0.8 / n^1.5 hp; the rating is the lower.  Tolerance: half the last printed digit.
"""

import pytest
from printed import near, printed

from mountlimit import cards
from mountlimit.formulas import chain_drive

HORSEPOWER, INCH, LBF = 745.7, 0.0254, 4.4482216152605

PITCH_DIAMETERS = {
    9: "74.26", 10: "82.20", 11: "90.16", 13: "106.14", 15: "122.17", 17: "138.23",
    25: "202.66", 60: "485.33",
}  # fmt: skip

SPEEDS = (10, 25, 50, 100, 200, 300, 400, 500, 700, 900, 1000, 1200, 1400)
CHAIN_41 = {
    11: "0.03 0.07 0.13 0.24 0.44 0.64 0.82 1.01 1.37 1.71 1.88 1.71 1.36",
    17: "0.05 0.11 0.20 0.38 0.71 1.02 1.32 1.61 2.18 2.74 3.01 3.29 2.61",
    20: "0.06 0.13 0.24 0.45 0.84 1.21 1.57 1.92 2.60 3.26 3.59 4.20 3.33",
}


def both(chain: str, teeth: int, speed: float) -> tuple[float, float]:
    """Give the two ratings in horsepower."""
    card = cards.chain(chain)
    shared = (teeth, speed / 60, card.pitch)
    return (
        chain_drive.link_plate_power(*shared, card.link_plate_constant) / HORSEPOWER,
        chain_drive.roller_bush_power(*shared, card.roller_bush_constant) / HORSEPOWER,
    )


@pytest.mark.parametrize("teeth", PITCH_DIAMETERS)
def test_pitch_diameter_table_of_one_inch_pitch(teeth: int) -> None:
    """Confirmed: table of pitch diameters, 25.4 mm pitch. SPK-01."""
    assert chain_drive.pitch_diameter(0.0254, teeth) * 1000 == printed(PITCH_DIAMETERS[teeth])


@pytest.mark.parametrize(
    ("teeth", "speed", "power"),
    [
        (teeth, speed, power)
        for teeth, row in CHAIN_41.items()
        for speed, power in zip(SPEEDS, row.split(), strict=True)
    ],
)
def test_rating_table_of_chain_41(teeth: int, speed: int, power: str) -> None:
    """From memory: 39 values of a printed rating table of chain 41, its publisher not known."""
    assert min(both("41", teeth, speed)) == printed(power)


def test_link_plate_rating_of_chain_40() -> None:
    """Computed: 17 teeth, 100 rpm; equation and constants read. CHP-01."""
    assert both("40", 17, 100)[0] == printed("0.6893")
    assert both("40", 17, 100)[0] * HORSEPOWER / 1000 == printed("0.514")


def test_bush_rating_of_chain_35() -> None:
    """Computed: 11 teeth, 3000 rpm; rollers and bushes govern. CHP-02."""
    plates, bushes = both("35", 11, 3000)
    assert plates == printed("3.886")
    assert bushes == printed("2.938")
    assert bushes < plates


def test_ratings_of_chain_41_and_25() -> None:
    """Computed: 13 teeth at 2000 rpm, 17 teeth at 3000 rpm. CHP-03."""
    assert min(both("41", 13, 2000)) == printed("1.0234")
    assert min(both("25", 17, 3000)) == printed("1.8395")


# Single strand: pitch in, roller (25, 35: bush) diameter in, least tensile strength lbf.
# The roller of 40 is 5/16 in (0.3125): cut to 0.312 there, 7.95 mm (0.3130) in metric tables.
# The strengths follow 12 500 p^2 lbf (not 41), which the standard's table rounds to 10 lbf.
SINGLE_STRAND = (
    ("25", 0.250, 0.130, 781),
    ("35", 0.375, 0.200, 1758),
    ("41", 0.500, 0.306, 1500),
    ("40", 0.500, 0.312, 3125),
)


@pytest.mark.parametrize(("name", "pitch", "roller", "strength"), SINGLE_STRAND)
def test_sizes_and_tensile_strength(
    name: str, pitch: float, roller: float, strength: float
) -> None:
    """Confirmed: dimensions and least tensile strength of single-strand chain. CHD-01."""
    chain = cards.chain(name)
    assert chain.pitch / INCH == near(pitch, abs=0.0005)
    assert chain.roller_diameter / INCH == near(roller, abs=0.0011)  # 7.95 mm is 0.312 and 0.313
    assert chain.minimum_tensile_strength / LBF == near(strength, abs=5)
    assert chain.tensile_kind == "standard minimum"


DYNAMIC = (
    ("25", 140), ("35", 320), ("41", 305), ("40", 560), ("50", 870), ("60", 1230), ("60H", 1420),
    ("80", 2150), ("80H", 2400),
)  # fmt: skip


@pytest.mark.parametrize(("name", "strength"), DYNAMIC)
def test_dynamic_strength(name: str, strength: float) -> None:
    """Confirmed: least dynamic strength, lbf."""
    assert cards.chain(name).minimum_dynamic_strength / LBF == near(strength, rel=1e-12)
