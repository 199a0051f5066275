"""Texts whose name is not known any more: problems of machine-design courses, makers' data.

All from memory.  Tolerance: half the last printed digit unless a test says why not.
"""

import numpy as np
from principal import largest_shear
from printed import printed

from mountlimit.formulas import chain_drive, motor, shaft, stress


def test_key_length() -> None:
    """From memory: worked key problem, 61 mm printed, 800 N*m, 40 mm shaft, 15 x 12 mm.

    Allowed 58 MPa in shear and 110 MPa in crushing; the unrounded lengths are recomputed. KEY-01.
    """
    by_shear = shaft.key_shear(800.0, 0.04, 0.015, 1.0) / 58e6 * 1000
    by_crushing = shaft.key_crushing(800.0, 0.04, 0.012, 1.0) / 110e6 * 1000
    assert by_shear == printed("45.98")
    assert by_crushing == printed("60.61")
    assert np.ceil(max(by_shear, by_crushing)) == 61


def test_shaft_stresses_and_their_combination() -> None:
    """From memory: 180 lbf*in on 0.75 in gives 2173 psi; 8780 and 2170 psi combine to 4897 shear and
    9287 normal (problems of a machine-design text, chapter 17)."""
    assert stress.round_torsion_stress(180.0, 0.75) == printed("2173")
    assert largest_shear(8780.0, 2170.0) == printed("4897")
    assert stress.principal_max(8780.0, 0.0, 2170.0) == printed("9287")


def test_published_pair() -> None:
    """From memory: motor data print 505 rpm/V beside 0.0189 N*m/A. MOT-01."""
    assert motor.torque_constant_from_speed_constant(505.0 * 2 * np.pi / 60) == printed("0.0189")


def test_chain_length_problem() -> None:
    """From memory: a problem in the manner of Shigley's book, 21 and 84 teeth, 1/2 in, centres 20 in.

    CHL-03.
    """
    links = chain_drive.chain_length_in_pitches(20.0, 0.5, 21, 84)
    assert links * 0.5 == printed("67.5")


def test_speed_variation_as_handbooks_state_it() -> None:
    """From memory: 2 % at 16 and 1.2 % at 20 teeth in an engineering encyclopaedia."""
    assert 100 * chain_drive.speed_variation(16) == printed("2")
    assert 100 * chain_drive.speed_variation(20) == printed("1.2")
