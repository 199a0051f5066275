"""A round motor held in a cradle by bands: how hard it is pressed, and what its screws take."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..worked import formula

Number = Any


@formula
def band_tension(preload: Number, kept: Number) -> Number:
    """Tension of each end of a band once it has settled.

    T = k * F_V

    Parameters
    ----------
    preload : F_V [N]
        clamping force of the screw
    kept : k [-]
        share of it that stays

    Returns
    -------
    T [N]

    Source
    ------
    definition

    Examples
    --------
    >>> band_tension(6000.0, 0.5)
    3000.0
    """
    return preload * kept


@formula
def end_pulls(wrap: Number) -> Number:
    """How many times its tension a band presses the motor into the cradle: nearly its two ends.

    p = 2 * sin(w / 2)

    Parameters
    ----------
    wrap : w [rad]
        arc of the motor that the band lies on

    Returns
    -------
    p [-]

    Source
    ------
    statics of a belt without friction

    Examples
    --------
    >>> float(end_pulls(3.14159265))
    2.0
    """
    return 2 * np.sin(wrap / 2)


@formula
def mean_spread(first: Number, second: Number) -> Number:
    """Sum of pressure over force, mean of the two sides of a clamp.

    c = (c_1 + c_2) / 2

    Parameters
    ----------
    first : c_1 [-]
        of one side: under the bands
    second : c_2 [-]
        of the other: in the cradle

    Returns
    -------
    c [-]

    Source
    ------
    both sides press with the same force

    Examples
    --------
    >>> mean_spread(1.5, 1.1)
    1.3
    """
    return (first + second) / 2


@formula
def row_force(
    force: Number, moment: Number, count: Number, place: Number, square_sum: Number
) -> Number:
    """Force on one of several equal rows under a stiff motor.

    R = F / n + M * z / S

    Parameters
    ----------
    force : F [N]
        force on all rows
    moment : M [N*m]
        moment of the force about their middle
    count : n [-]
        number of rows
    place : z [m]
        the row, from the middle
    square_sum : S [m^2]
        sum of the squared distances of all rows from the middle

    Returns
    -------
    R [N]

    Source
    ------
    statics; equal springs under a stiff body where there are more than two rows

    Examples
    --------
    >>> row_force(1000.0, 103.0, 2, 0.045, 0.00405)
    1644.444
    """
    return force / count + moment * place / square_sum


@formula
def row_square_sum(along: Number, count: Number) -> Number:
    """Sum of the squared distances of evenly spread rows from their middle.

    S = b**2 * n * (n + 1) / (12 * (n - 1))

    Parameters
    ----------
    along : b [m]
        from the first to the last row
    count : n [-]
        number of rows, two or more

    Returns
    -------
    S [m^2]

    Source
    ------
    sum of an arithmetic series

    Examples
    --------
    >>> row_square_sum(0.09, 3)
    0.00405
    """
    return along**2 * count * (count + 1) / (12 * (count - 1))


@formula
def counted_seat(seat_angle: Number) -> Number:
    """Half the arc of the seat that is counted on against climbing.

    a = min(alpha, pi / 3)

    Parameters
    ----------
    seat_angle : alpha [rad]
        half the arc the motor lies in

    Returns
    -------
    a [rad]

    Source
    ------
    a motor that is turned as well climbs a steep side sooner; a part of the seat is always there (safe side)

    Examples
    --------
    >>> float(counted_seat(1.4))
    1.0472
    """
    return np.minimum(seat_angle, np.pi / 3)


@formula
def climb_asked(
    side: Number, lift: Number, turning: Number, diameter: Number, pressed: Number, count: Number,
    seat_angle: Number,
) -> Number:  # fmt: skip
    """Side force that the full press at one row must hold: its own, what its lift takes away, and the torque's.

    A = abs(R_x) + max(R_y, 0) * tan(a) + abs(M) / (n * d) * (tan(a)**2 + 2 * n * max(R_y, 0) / F)

    Parameters
    ----------
    side : R_x [N]
        force of the motor across the cradle at the row
    lift : R_y [N]
        force off the cradle at the row
    turning : M [N*m]
        moment about the motor's axis
    diameter : d [m]
        diameter of the motor
    pressed : F [N]
        force with which all bands press the motor down
    count : n [-]
        number of rows that share it
    seat_angle : a [rad]
        half the arc that is counted

    Returns
    -------
    A [N]

    Valid for
    ---------
    friction up to 0.25; 3 % too good near 0.5 in a shallow seat

    Source
    ------
    statics with the seat's force through its edge: X = (F - Y) * tan(a - e) + m * F, tan(e) = m, the
    friction m in use being no more than |M| / r over the sum of the pressure; straightened (safe side)

    Examples
    --------
    >>> float(climb_asked(-500.0, 200.0, 20.0, 0.1, 4000.0, 2, 0.78539816))
    820.0
    """
    off = np.maximum(lift, 0)
    own = np.abs(side) + off * np.tan(seat_angle)
    return own + np.abs(turning) / (count * diameter) * (
        np.tan(seat_angle) ** 2 + 2 * count * off / pressed
    )


@formula
def climb_held(pressed: Number, count: Number, seat_angle: Number) -> Number:
    """Side force at which a motor pressed down at one row climbs the side of its seat.

    H = F / n * tan(a)

    Parameters
    ----------
    pressed : F [N]
        force with which all bands press the motor down
    count : n [-]
        number of rows that share it
    seat_angle : a [rad]
        half the arc the motor lies in

    Returns
    -------
    H [N]

    Source
    ------
    statics, friction left out (safe side)

    Examples
    --------
    >>> float(climb_held(12000.0, 2, 0.78539816))
    6000.0
    """
    return pressed / count * np.tan(seat_angle)


@formula
def end_tension(
    lift: Number, tipping: Number, rolling: Number, count: Number, place: Number,
    square_sum: Number, across: Number,
) -> Number:  # fmt: skip
    """Tension that the load adds at the worst end of a band; motor, cradle and plate stiff.

    T = (max(F_y, 0) / n + abs(M_x) * z / S) / 2 + abs(M_z) / (n * a)

    Parameters
    ----------
    lift : F_y [N]
        force off the base plate
    tipping : M_x [N*m]
        moment about the line across, through the middle of the rows
    rolling : M_z [N*m]
        moment about the line along the shaft, on top of the base plate
    count : n [-]
        number of rows
    place : z [m]
        the outermost row, from the middle
    square_sum : S [m^2]
        sum of the squared distances of all rows from the middle
    across : a [m]
        between the two ends of a band

    Returns
    -------
    T [N]

    Valid for
    ---------
    bands that take all that lifts: what the cradle gives back when it is relieved is left out (safe side)

    Source
    ------
    statics of equal rows

    Examples
    --------
    >>> float(end_tension(1000.0, 103.0, 0.0, 2, 0.045, 0.00405, 0.112))
    822.222
    """
    lifted = np.maximum(lift, 0) / count + np.abs(tipping) * place / square_sum
    return lifted / 2 + np.abs(rolling) / (count * across)


@formula
def tension_left(resistance: Number, preload: Number) -> Number:
    """Tension that a tightened screw can take on top of its preload.

    R = max(R_t - F_V, 0.02 * R_t)

    Parameters
    ----------
    resistance : R_t [N]
        tension resistance of the screw
    preload : F_V [N]
        its preload

    Returns
    -------
    R [N]

    Source
    ------
    the whole load counts on top of the preload, as on a joint with a soft band (safe side)

    Examples
    --------
    >>> float(tension_left(20000.0, 14000.0))
    6000.0
    """
    return np.maximum(resistance - preload, 0.02 * resistance)
