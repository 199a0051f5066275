"""A sprocket tooth under its roller: load, root, shear plane, bearing; the seat of a roller."""

from __future__ import annotations

from ..worked import formula
from ._maths import larger, pi, power, sin, sqrt, tan


@formula
def pressure_angle_new(teeth: float) -> float:
    """Angle of the roller's push from the chord, new chain on a standard tooth.

    phi = (35 - 120 / z) * pi / 180

    Parameters
    ----------
    teeth : z [-]
        number of teeth

    Returns
    -------
    phi [rad]

    Source
    ------
    ASME B29.1 tooth form (from memory)

    Examples
    --------
    >>> pressure_angle_new(20)
    0.5061
    """
    return (35 - 120 / teeth) * pi / 180


@formula
def pressure_angle_least(teeth: float) -> float:
    """Angle of the roller's push from the chord, high on a standard tooth.

    phi = (17 - 64 / z) * pi / 180

    Parameters
    ----------
    teeth : z [-]
        number of teeth

    Returns
    -------
    phi [rad]

    Source
    ------
    ASME B29.1 tooth form, The Complete Guide to Chain, section 2.1.2

    Examples
    --------
    >>> pressure_angle_least(16)
    0.2269
    """
    return (17 - 64 / teeth) * pi / 180


@formula
def tooth_share(pressure_angle: float, teeth: float) -> float:
    """Push of the first roller on its tooth over the pull of the chain.

    c = sin(2 * pi / z) / sin(phi + 2 * pi / z)

    Parameters
    ----------
    pressure_angle : phi [rad]
        angle of the push from the chord to the next roller
    teeth : z [-]
        number of teeth

    Returns
    -------
    c [-]

    Valid for
    ---------
    right pitch, no friction

    Source
    ------
    balance of one roller, The Complete Guide to Chain, section 2.1.2 (sine rule)

    Examples
    --------
    >>> float(tooth_share(0.1951, 11))
    0.7796
    """
    return sin(2 * pi / teeth) / sin(pressure_angle + 2 * pi / teeth)


@formula
def tooth_load(share: float, pull: float) -> float:
    """Push of the roller on the most loaded tooth.

    N = c * F

    Parameters
    ----------
    share : c [-]
        share of the pull
    pull : F [N]
        tight-side pull

    Returns
    -------
    N [N]

    Source
    ------
    balance of one roller
    """
    return share * pull


@formula
def seat_radius_max(roller_diameter: float) -> float:
    """Largest radius of the seat of a roller.

    r_i = 0.505 * d_1 + 0.00069 * d_1**(1 / 3)

    Parameters
    ----------
    roller_diameter : d_1 [m]
        roller (or bush) diameter

    Returns
    -------
    r_i [m]

    Source
    ------
    ISO 606 (from memory; 0.069 times the cube root in mm); Bhandari, Design of Machine Elements,
    example 14.5

    Examples
    --------
    >>> float(seat_radius_max(0.00795))
    0.004152
    """
    return 0.505 * roller_diameter + 0.00069 * power(roller_diameter, 1 / 3)


@formula
def root_diameter(pitch_diameter: float, seat_radius: float) -> float:
    """Diameter through the bottoms of the seats.

    d_f = D - 2 * r_i

    Parameters
    ----------
    pitch_diameter : D [m]
        pitch circle diameter
    seat_radius : r_i [m]
        radius of the seat

    Returns
    -------
    d_f [m]

    Source
    ------
    ISO 606 (from memory); Bhandari, Design of Machine Elements, example 14.5

    Examples
    --------
    >>> root_diameter(0.04508, 0.004152)
    0.03678
    """
    return pitch_diameter - 2 * seat_radius


@formula
def roller_rise(pitch_diameter: float, wear: float) -> float:
    """How far the rollers of a lengthened chain ride up the teeth.

    u = e * D / 2

    Parameters
    ----------
    pitch_diameter : D [m]
        pitch circle diameter
    wear : e [-]
        lengthening of the chain over its length

    Returns
    -------
    u [m]

    Source
    ------
    geometry: pitch circle of the longer pitch

    Examples
    --------
    >>> roller_rise(0.2184, 0.005)
    0.0005460
    """
    return wear * pitch_diameter / 2


@formula
def neck_width(pitch: float, seat_radius: float, rise: float, pressure_angle: float) -> float:
    """Width of a tooth where the roller would shear it off.

    w_s = max(p - 2 * r_i - 2 * u * tan(phi), 0.1 * p)

    Parameters
    ----------
    pitch : p [m]
        chain pitch
    seat_radius : r_i [m]
        radius of the seats on both sides
    rise : u [m]
        how far the roller rides up
    pressure_angle : phi [rad]
        angle of the push from the chord, high on the tooth

    Returns
    -------
    w_s [m]

    Source
    ------
    geometry of ISO 606 and ASME B29.1 teeth; the least of a tenth of the pitch keeps it from nothing

    Examples
    --------
    >>> float(neck_width(0.0127, 0.004152, 0.0, 0.1951))
    0.004396
    """
    return larger(pitch - 2 * seat_radius - 2 * rise * tan(pressure_angle), 0.1 * pitch)


@formula
def root_width(pitch: float, seat_radius: float) -> float:
    """Width of a tooth where the tangent to its seat stands 30 degrees off its axis.

    w = p - sqrt(3) * r_i

    Parameters
    ----------
    pitch : p [m]
        chain pitch
    seat_radius : r_i [m]
        radius of the seats on both sides

    Returns
    -------
    w [m]

    Source
    ------
    30 degree tangent of ISO 6336-3 (from memory) on two seats a pitch apart

    Examples
    --------
    >>> float(root_width(0.0127, 0.004152))
    0.005509
    """
    return pitch - sqrt(3.0) * seat_radius


@formula
def bending_arm(
    seat_radius: float, roller_diameter: float, pressure_angle: float, rise: float
) -> float:
    """Height of the roller's push over the root.

    h = max(r_i / 2 - d_1 / 2 * sin(phi) + u, 0)

    Parameters
    ----------
    seat_radius : r_i [m]
        radius of the seat
    roller_diameter : d_1 [m]
        roller (or bush) diameter
    pressure_angle : phi [rad]
        angle of the push from the chord
    rise : u [m]
        how far the roller rides up

    Returns
    -------
    h [m]

    Source
    ------
    geometry: contact of a round roller, root at the 30 degree tangent

    Examples
    --------
    >>> float(bending_arm(0.004152, 0.00795, 0.1951, 0.0))
    0.001305
    """
    return larger(seat_radius / 2 - roller_diameter / 2 * sin(pressure_angle) + rise, 0.0)


@formula
def root_bending(load: float, arm: float, tooth_width: float, root_width: float) -> float:
    """Bending stress at the root of a tooth.

    s = 6 * N * h / (b * w**2)

    Parameters
    ----------
    load : N [N]
        push of the roller
    arm : h [m]
        its height over the root
    tooth_width : b [m]
        width of the tooth along the shaft
    root_width : w [m]
        width of the root along the chain

    Returns
    -------
    s [Pa]

    Source
    ------
    bending of a rectangular section; Shigley's Mechanical Engineering Design 9th ed. section 14-1
    (the Lewis tooth)

    Examples
    --------
    >>> root_bending(1000.0, 0.002, 0.007, 0.005)
    6.857e+07
    """
    return 6 * load * arm / (tooth_width * root_width**2)


@formula
def mean_shear(load: float, tooth_width: float, width: float) -> float:
    """Mean shear stress across a tooth.

    t = N / (b * w)

    Parameters
    ----------
    load : N [N]
        push of the roller
    tooth_width : b [m]
        width of the tooth along the shaft
    width : w [m]
        width of the tooth along the chain

    Returns
    -------
    t [Pa]

    Source
    ------
    direct shear of a stub

    Examples
    --------
    >>> mean_shear(1000.0, 0.007, 0.005)
    2.857e+07
    """
    return load / (tooth_width * width)


@formula
def roller_pressure(load: float, tooth_width: float, roller_diameter: float) -> float:
    """Pressure of a roller on its seat, on the roller's shadow.

    p_b = N / (b * d_1)

    Parameters
    ----------
    load : N [N]
        push of the roller
    tooth_width : b [m]
        width of the tooth along the shaft
    roller_diameter : d_1 [m]
        roller (or bush) diameter

    Returns
    -------
    p_b [Pa]

    Valid for
    ---------
    a roller that lies in its seat

    Source
    ------
    nominal bearing pressure, Shigley's Mechanical Engineering Design 9th ed. section 8-12

    Examples
    --------
    >>> roller_pressure(1000.0, 0.007, 0.008)
    1.786e+07
    """
    return load / (tooth_width * roller_diameter)


@formula
def hole_spacing(circle: float, count: float) -> float:
    """Distance between neighbouring holes of a circle.

    p_1 = D * sin(pi / n)

    Parameters
    ----------
    circle : D [m]
        diameter of the circle through the holes
    count : n [-]
        number of holes

    Returns
    -------
    p_1 [m]

    Source
    ------
    geometry

    Examples
    --------
    >>> float(hole_spacing(0.05, 6))
    0.02500
    """
    return circle * sin(pi / count)


@formula
def hole_to_root(root_diameter: float, circle: float) -> float:
    """Distance from the centre of a bolt hole to the bottoms of the seats.

    e_2 = (d_f - D) / 2

    Parameters
    ----------
    root_diameter : d_f [m]
        diameter through the bottoms of the seats
    circle : D [m]
        diameter of the circle through the holes

    Returns
    -------
    e_2 [m]

    Source
    ------
    geometry

    Examples
    --------
    >>> hole_to_root(0.2, 0.16)
    0.02000
    """
    return (root_diameter - circle) / 2
