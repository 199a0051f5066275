"""Forces and moments of rigid bodies and of the overhung shaft."""

from __future__ import annotations

from ..worked import formula
from ._maths import larger


@formula
def moment_x(y: float, z: float, force_y: float, force_z: float) -> float:
    """Moment about the x axis of a force at a point.

    M_x = y * F_z - z * F_y

    Parameters
    ----------
    y : y [m]
        position along y
    z : z [m]
        position along z
    force_y : F_y [N]
        force along y
    force_z : F_z [N]
        force along z

    Returns
    -------
    M_x [N*m]

    Source
    ------
    Hibbeler, Engineering Mechanics: Statics, chapter 4, M = r x F

    Examples
    --------
    >>> moment_x(4.0, 4.0, 10.0, 15.0)
    20.00
    """
    return y * force_z - z * force_y


@formula
def moment_y(x: float, z: float, force_x: float, force_z: float) -> float:
    """Moment about the y axis of a force at a point.

    M_y = z * F_x - x * F_z

    Parameters
    ----------
    x : x [m]
        position along x
    z : z [m]
        position along z
    force_x : F_x [N]
        force along x
    force_z : F_z [N]
        force along z

    Returns
    -------
    M_y [N*m]

    Source
    ------
    Hibbeler, Engineering Mechanics: Statics, chapter 4, M = r x F

    Examples
    --------
    >>> moment_y(3.0, 4.0, -20.0, 15.0)
    -125.0
    """
    return z * force_x - x * force_z


@formula
def moment_z(x: float, y: float, force_x: float, force_y: float) -> float:
    """Moment about the z axis of a force at a point.

    M_z = x * F_y - y * F_x

    Parameters
    ----------
    x : x [m]
        position along x
    y : y [m]
        position along y
    force_x : F_x [N]
        force along x
    force_y : F_y [N]
        force along y

    Returns
    -------
    M_z [N*m]

    Source
    ------
    Hibbeler, Engineering Mechanics: Statics, chapter 4, M = r x F

    Examples
    --------
    >>> moment_z(3.0, 4.0, -20.0, 10.0)
    110.0
    """
    return x * force_y - y * force_x


@formula
def weight(mass: float) -> float:
    """Weight of a mass.

    W = m * 9.80665

    Parameters
    ----------
    mass : m [kg]
        mass

    Returns
    -------
    W [N]

    Source
    ------
    standard gravity, ISO 80000-3

    Examples
    --------
    >>> weight(3.5)
    34.32
    """
    return mass * 9.80665


@formula
def front_bearing_reaction(load: float, overhang: float, bearing_span: float) -> float:
    """Reaction of the front bearing to a load outside the bearings.

    R = F * (l + a) / l

    Parameters
    ----------
    load : F [N]
        load
    overhang : a [m]
        distance from the front bearing to the load, outside the bearings
    bearing_span : l [m]
        distance between the bearings

    Returns
    -------
    R [N]

    Source
    ------
    AISC Manual table 3-23, beam overhanging one support (from memory)

    Examples
    --------
    >>> front_bearing_reaction(1000.0, 0.03, 0.05)
    1600.0
    """
    return load * (bearing_span + overhang) / bearing_span


@formula
def rear_bearing_reaction(load: float, overhang: float, bearing_span: float) -> float:
    """Reaction of the rear bearing to a load outside the bearings, opposed to the load.

    R = F * a / l

    Parameters
    ----------
    load : F [N]
        load
    overhang : a [m]
        distance from the front bearing to the load, outside the bearings
    bearing_span : l [m]
        distance between the bearings

    Returns
    -------
    R [N]

    Source
    ------
    AISC Manual table 3-23, beam overhanging one support (from memory)

    Examples
    --------
    >>> rear_bearing_reaction(1000.0, 0.03, 0.05)
    600.0
    """
    return load * overhang / bearing_span


@formula
def overhung_moment(load: float, overhang: float) -> float:
    """Bending moment at the front bearing.

    M = F * a

    Parameters
    ----------
    load : F [N]
        load
    overhang : a [m]
        distance from the front bearing to the load, outside the bearings

    Returns
    -------
    M [N*m]

    Source
    ------
    AISC Manual table 3-23, beam overhanging one support (from memory)

    Examples
    --------
    >>> overhung_moment(1000.0, 0.03)
    30.00
    """
    return load * overhang


@formula
def far_reaction(load: float, near: float, bearing_span: float) -> float:
    """Force on the other of two bearings than the one that the load's place is measured from.

    R = F * a / l

    Parameters
    ----------
    load : F [N]
        load
    near : a [m]
        from a bearing to the load, towards the other; negative outside
    bearing_span : l [m]
        between the two bearings

    Returns
    -------
    R [N]

    Source
    ------
    statics (AISC Manual table 3-23, from memory)
    """
    return load * near / bearing_span


@formula
def moment_between(far_reaction: float, near: float, bearing_span: float) -> float:
    """Bending moment of a shaft under a load between its bearings.

    M = R * (l - a)

    Parameters
    ----------
    far_reaction : R [N]
        force on the farther bearing
    near : a [m]
        load to the nearer bearing
    bearing_span : l [m]
        between the two bearings

    Returns
    -------
    M [N*m]

    Source
    ------
    statics (AISC Manual table 3-23, from memory)
    """
    return far_reaction * (bearing_span - near)


@formula
def near_reaction(load: float, near: float, bearing_span: float) -> float:
    """Force on the one of two bearings that the load's place is measured from.

    R = F * (l - a) / l

    Parameters
    ----------
    load : F [N]
        load
    near : a [m]
        from this bearing to the load, towards the other; negative outside
    bearing_span : l [m]
        between the two bearings

    Returns
    -------
    R [N]

    Source
    ------
    statics (AISC Manual table 3-23, from memory)
    """
    return load * (bearing_span - near) / bearing_span


@formula
def added_moments(first: float, second: float) -> float:
    """Bending moments of two loads added in size.

    M = M_a + M_b

    Parameters
    ----------
    first : M_a [N*m]
        moment of one load
    second : M_b [N*m]
        moment of the other load

    Returns
    -------
    M [N*m]

    Source
    ------
    statics; both taken at one place and one way, since their directions are not asked for: the safe side
    """
    return first + second


@formula
def knocked_weight(weight: float, acceleration: float) -> float:
    """Steady load on a shaft in a bump.

    W_k = W * max(a, 9.80665) / 9.80665

    Parameters
    ----------
    weight : W [N]
        load at rest
    acceleration : a [m/s^2]
        acceleration of the bump, gravity included

    Returns
    -------
    W_k [N]

    Source
    ------
    statics, standard gravity of ISO 80000-3
    """
    return weight * larger(acceleration, 9.80665) / 9.80665
