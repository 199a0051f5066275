"""Data tables: dimensions that hang together, strengths in order, ranges that rise."""

import math
from itertools import pairwise

import pytest

from mountlimit import cards

CHAINS = [pytest.param(c, id=c.id) for c in cards.chains()]
THREADS = [pytest.param(t, id=t.id) for t in cards.threads()]
ALL_KEYS = cards.keys()


@pytest.mark.parametrize("chain", CHAINS)
def test_chain_dimensions_hang_together(chain):
    assert chain.roller_diameter < 0.75 * chain.pitch
    assert 0.25 * chain.pitch < chain.inner_width < 0.75 * chain.pitch
    assert 0.4 * chain.roller_diameter < chain.pin_diameter < 0.75 * chain.roller_diameter
    assert chain.plate_height <= chain.pitch
    wide = chain.inner_width + 2 * chain.plate_thickness
    assert chain.bearing_area == pytest.approx(chain.pin_diameter * wide, rel=0.005)
    # breaking stress over the two plates left beside the pin, a coarse sieve for slipped digits
    section = 2 * chain.plate_thickness * (chain.plate_height - chain.pin_diameter)
    assert 150e6 < chain.minimum_tensile_strength / section < 1500e6
    if chain.minimum_dynamic_strength is not None:
        share = chain.minimum_dynamic_strength / chain.minimum_tensile_strength
        assert 0.17 < share < 0.21
    assert (chain.tensile_kind == "from memory") == (
        "memory" in chain.minimum_tensile_strength.source
        and "catalogue" not in chain.minimum_tensile_strength.source.split(",")[0]
    )


def test_enough_chains_of_every_series():
    known = {c.id for c in cards.chains()}
    wanted = [
        "25",
        "25H",
        "35",
        "40",
        "41",
        "50",
        "60",
        "60H",
        "80",
        "80H",
        "05B",
        "06B",
        "08B",
        "10B",
        "12B",
        "081",
        "415",
        "415H",
        "420",
        "428",
        "428H",
        "520",
        "520H",
        "525",
        "525H",
        "530",
        "530H",
        "219",
        "219H",
        "T8F",
    ]
    assert set(wanted) <= known


@pytest.mark.parametrize("thread", THREADS)
def test_thread_dimensions_follow_the_standard_profile(thread):
    """ISO 724 / ASME B1.1: d2 = d - 0.649519 P, d3 = d - 1.226869 P; half the last digit kept."""
    half_digit = 0.5e-6
    assert abs(thread.diameter - 0.649519 * thread.pitch - thread.pitch_diameter) <= 2 * half_digit
    assert abs(thread.diameter - 1.226869 * thread.pitch - thread.minor_diameter) <= 2 * half_digit
    if thread.system == "metric":  # ISO 898-1
        area = math.pi / 4 * ((thread.pitch_diameter + thread.minor_diameter) / 2) ** 2
    else:  # ASME B1.1
        area = 0.7854 * (thread.diameter - 0.9743 * thread.pitch) ** 2
    assert abs(area - thread.stress_area) < 0.06e-6
    assert thread.diameter < thread.clearance_hole < 1.2 * thread.diameter
    assert thread.clearance_hole < thread.head_diameter < thread.hex_width
    assert thread.hex_width < thread.washer_diameter <= thread.wide_washer_diameter


def test_bolt_classes_are_in_order_and_8_8_knows_its_two_sizes():
    for grade in cards.bolt_classes():
        assert grade.proof_stress < grade.yield_strength < grade.ultimate_strength
        assert grade.smallest < grade.largest
        assert grade.shear_factor in (0.5, 0.6)
    assert cards.bolt_class("8.8").ultimate_strength == 800e6
    assert cards.bolt_class("8.8", 0.016).ultimate_strength == 800e6
    assert cards.bolt_class("8.8", 0.020).ultimate_strength == 830e6
    assert cards.bolt_class("10.9", 0.5).ultimate_strength == 1040e6
    unmarked = cards.bolt_class("unmarked")
    metric = [c for c in cards.bolt_classes() if c.system == "metric" and c.id[0] != "A"]
    assert unmarked.ultimate_strength == min(c.ultimate_strength for c in metric)


def test_bearings_by_kind_and_with_suffixes():
    assert cards.bearing("6203-2RS C3") is cards.bearing("6203")
    assert {b.kind for b in cards.bearings("deep groove")} == {"deep groove"}
    assert len(cards.bearings()) == len(cards.bearings("deep groove")) + len(
        cards.bearings("insert unit")
    )
    for b in cards.bearings():
        assert b.bore < b.outside_diameter
        assert b.static_load_rating < b.dynamic_load_rating
        assert (b.set_screw_torque is None) == (b.kind == "deep groove")
    for series in ("60", "62", "63"):
        rows = sorted((b for b in cards.bearings() if b.series == series), key=lambda b: b.bore)
        assert len(rows) == 8
        assert all(b.dynamic_load_rating > a.dynamic_load_rating for a, b in pairwise(rows))


@pytest.mark.parametrize("system", ["metric", "inch"])
def test_keys_follow_each_other_without_gap_or_overlap(system):
    sizes = [k for k in ALL_KEYS if k.system == system]
    for small, big in pairwise(sizes):
        assert small.shaft_to == big.shaft_over
        assert small.width < big.width
        at = cards.key_for_shaft(float(small.shaft_to), system)
        assert at is small
        assert cards.key_for_shaft(small.shaft_to + 1e-5, system) is big
    for key in sizes:
        assert key.height <= key.width
        assert key.height <= key.shaft_depth + key.hub_depth < 1.15 * key.height
    assert cards.key_for_shaft(float(sizes[0].shaft_over), system) is None
    assert cards.key_for_shaft(0.2, system) is None


def test_ranges_run_low_likely_high():
    for kind in ("surface", "torque_coefficient", "tightening"):
        for row in cards.frictions(kind):
            assert row.low < row.likely < row.high
    for screw in cards.set_screws():
        assert screw.holding_low < screw.holding < screw.holding_high
    for system in ("metric", "inch"):
        rows = sorted(
            (s for s in cards.set_screws() if s.system == system), key=lambda s: s.diameter
        )
        assert all(b.holding > a.holding for a, b in pairwise(rows))
        assert all(b.seating_torque > a.seating_torque for a, b in pairwise(rows))


@pytest.mark.parametrize("family", ["steel", "aluminium", "plastic", "wood", "iron"])
@pytest.mark.parametrize("system", ["metric", "inch"])
def test_stock_rises(family, system):
    found = cards.stock(family, system)
    assert found.family == family
    assert len(found.thicknesses) >= 5
    assert all(b > a for a, b in pairwise(found.thicknesses))
