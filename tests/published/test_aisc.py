"""American Institute of Steel Construction: prying of bolted plates, bearing and tear-out.

AISC Manual of Steel Construction, Allowable Stress Design, 9th ed., pp. 4-89 to 4-95; AISC Steel
Construction Manual part 9 (later editions); ANSI/AISC 360-16 section J3.10.  Tolerance: half the
last printed digit.
"""

import pytest
from printed import printed

from mountlimit.formulas import holes, joint


def test_prying_of_a_tee_hanger() -> None:
    """Confirmed: eight 1 in bolts share 230 kip, flange 1 in, bolt allowed 31.4 kip.

    31.4 kip is the table's figure for 40 ksi on a 1 in bolt.
    """
    tension, capacity = 230.0 / 8, 31.4
    gauge, edge = (3.0 - 0.375) / 2, (6.88 - 3.0) / 2
    lever = joint.prying_bolt_lever(gauge, 1.0)
    outer = joint.prying_edge_lever(edge, gauge, 1.0)
    assert lever == printed("0.8125")
    assert outer == printed("2.140625")
    critical = joint.prying_critical_thickness(8.0, capacity, lever, 3.0, 50.0)
    assert critical == printed("1.166")
    net = joint.prying_net_ratio(1.0625, 3.0)
    share = joint.prying_share(tension, capacity, critical, 1.0, net)
    assert share == printed("0.381")
    force = joint.prying_force(capacity, net, share, lever / outer, 1.0, critical)
    assert force == printed("2.15")
    allowed = joint.prying_tension_allowed(capacity, 1.0, critical, net, lever / outer)
    assert allowed == printed("29.11")
    thick = joint.prying_critical_thickness(8.0, tension, lever, 3.0, 50.0)
    assert thick == printed("1.116")


@pytest.mark.parametrize(("thickness", "force"), [(6.0, 1.52), (10.0, 0.0), (14.0, 0.0)])
def test_thick_plates_do_not_pry(thickness: float, force: float) -> None:
    """Computed: 10 kN, bolt 21.2 kN, plate of 360 MPa; strength form, factor 4.

    The bolt's 21.2 kN carries three figures, half of the last is 0.12 % of the critical thickness.
    """
    critical = joint.prying_critical_thickness(4.0, 21.2, 20.0, 50.0, 0.36)
    assert critical == pytest.approx(9.708, rel=1.2e-3)
    net = joint.prying_net_ratio(9.0, 50.0)
    share = joint.prying_share(10.0, 21.2, critical, thickness, net)
    value = joint.prying_force(21.2, net, share, 20.0 / 25.0, thickness, critical)
    assert value == (printed("1.52") if force else 0.0)


def test_tear_out_governs_a_thin_tab() -> None:
    """From memory: 5 mm bolt, 5.5 mm hole 8 mm from the end of a 3 mm tab, 290 MPa."""
    clear = holes.clear_distance(8.0, 5.5)
    assert clear == printed("5.25")
    torn, borne = holes.tear_out(clear, 3.0, 290.0), holes.bearing_strength(5.0, 3.0, 290.0)
    assert (torn, borne) == (printed("5481"), printed("10440"))
    assert torn < borne
