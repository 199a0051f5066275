"""What a fastener bears across between two members, by Johansen's yield theory (EN 1995-1-1 8.2.2).

Mode by mode, single shear, without the rope effect (safe side); ``b`` is the ratio of the embedment
strengths.  Member 1 is the one under the head.
"""

from __future__ import annotations

from ..worked import formula
from ._maths import smaller, sqrt


@formula
def embedment_ratio(first: float, second: float) -> float:
    """Embedment strength of the second member over that of the first.

    b = f_2 / f_1

    Parameters
    ----------
    first : f_1 [Pa]
        embedment strength of the first member
    second : f_2 [Pa]
        embedment strength of the second member

    Returns
    -------
    b [-]

    Source
    ------
    EN 1995-1-1 eq. 8.8

    Examples
    --------
    >>> embedment_ratio(2.0e7, 3.0e7)
    1.5
    """
    return second / first


@formula
def crushed(embedment: float, thickness: float, diameter: float) -> float:
    """Modes a and b: one member is crushed along its whole depth.

    F_a = f_h * t * d

    Parameters
    ----------
    embedment : f_h [Pa]
        embedment strength of the member
    thickness : t [m]
        depth of the fastener in it
    diameter : d [m]
        diameter of the fastener

    Returns
    -------
    F_a [N]

    Source
    ------
    EN 1995-1-1 eq. 8.6 (a) and (b)

    Examples
    --------
    >>> crushed(2.7265e7, 0.018, 0.005)
    2453.85
    """
    return embedment * thickness * diameter


@formula
def thickness_ratio(first: float, second: float) -> float:
    """Depth of the fastener in the second member over that in the first.

    r = t_2 / t_1

    Parameters
    ----------
    first : t_1 [m]
        depth in the first member
    second : t_2 [m]
        depth in the second member

    Returns
    -------
    r [-]

    Source
    ------
    EN 1995-1-1 eq. 8.6 (c)

    Examples
    --------
    >>> thickness_ratio(0.018, 0.036)
    2.0
    """
    return second / first


@formula
def tilted(crushed_first: float, ratio: float, depths: float) -> float:
    """Mode c: the fastener tilts stiffly in both members.

    F_c = F_a / (1 + b) * (sqrt(b + 2 * b**2 * (1 + r + r**2) + b**3 * r**2) - b * (1 + r))

    Parameters
    ----------
    crushed_first : F_a [N]
        what crushes the first member
    ratio : b [-]
        ratio of the embedment strengths
    depths : r [-]
        ratio of the depths

    Returns
    -------
    F_c [N]

    Source
    ------
    EN 1995-1-1 eq. 8.6 (c)

    Examples
    --------
    >>> float(tilted(1000.0, 1.0, 1.0))
    414.21
    """
    root = sqrt(ratio + 2 * ratio**2 * (1 + depths + depths**2) + ratio**3 * depths**2)
    return crushed_first / (1 + ratio) * (root - ratio * (1 + depths))


@formula
def hinge_in_second(
    embedment: float, thickness: float, diameter: float, ratio: float, moment: float
) -> float:
    """Mode d: the fastener tilts in the first member and bends in the second.

    F_d = 1.05 * f_1 * t_1 * d / (2 + b) * (sqrt(2 * b * (1 + b) + 4 * b * (2 + b) * M_y / (f_1 * d * t_1**2)) - b)

    Parameters
    ----------
    embedment : f_1 [Pa]
        embedment strength of the first member
    thickness : t_1 [m]
        depth in the first member
    diameter : d [m]
        diameter of the fastener
    ratio : b [-]
        ratio of the embedment strengths
    moment : M_y [N*m]
        yield moment of the fastener

    Returns
    -------
    F_d [N]

    Source
    ------
    EN 1995-1-1 eq. 8.6 (d)

    Examples
    --------
    >>> float(hinge_in_second(2.7265e7, 0.018, 0.005, 1.0, 5.0))
    1129.2
    """
    crushing = embedment * thickness * diameter
    bent = 4 * ratio * (2 + ratio) * moment / (embedment * diameter * thickness**2)
    return 1.05 * crushing / (2 + ratio) * (sqrt(2 * ratio * (1 + ratio) + bent) - ratio)


@formula
def hinge_in_first(
    embedment: float, thickness: float, diameter: float, ratio: float, moment: float
) -> float:
    """Mode e: the fastener bends in the first member and tilts in the second.

    F_e = 1.05 * f_1 * t_2 * d / (1 + 2 * b) * (sqrt(2 * b**2 * (1 + b) + 4 * b * (1 + 2 * b) * M_y / (f_1 * d * t_2**2)) - b)

    Parameters
    ----------
    embedment : f_1 [Pa]
        embedment strength of the first member
    thickness : t_2 [m]
        depth in the second member
    diameter : d [m]
        diameter of the fastener
    ratio : b [-]
        ratio of the embedment strengths
    moment : M_y [N*m]
        yield moment of the fastener

    Returns
    -------
    F_e [N]

    Source
    ------
    EN 1995-1-1 eq. 8.6 (e)

    Examples
    --------
    >>> float(hinge_in_first(2.7265e7, 0.018, 0.005, 1.0, 5.0))
    1129.2
    """
    crushing = embedment * thickness * diameter
    bent = 4 * ratio * (1 + 2 * ratio) * moment / (embedment * diameter * thickness**2)
    return 1.05 * crushing / (1 + 2 * ratio) * (sqrt(2 * ratio**2 * (1 + ratio) + bent) - ratio)


@formula
def hinge_in_both(embedment: float, diameter: float, ratio: float, moment: float) -> float:
    """Mode f: the fastener bends in both members.

    F_f = 1.15 * sqrt(2 * b / (1 + b)) * sqrt(2 * M_y * f_1 * d)

    Parameters
    ----------
    embedment : f_1 [Pa]
        embedment strength of the first member
    diameter : d [m]
        diameter of the fastener
    ratio : b [-]
        ratio of the embedment strengths
    moment : M_y [N*m]
        yield moment of the fastener

    Returns
    -------
    F_f [N]

    Source
    ------
    EN 1995-1-1 eq. 8.6 (f)

    Examples
    --------
    >>> float(hinge_in_both(2.7265e7, 0.005, 1.0, 5.0))
    1342.7
    """
    return 1.15 * sqrt(2 * ratio / (1 + ratio)) * sqrt(2 * moment * embedment * diameter)


@formula
def lowest_mode(a: float, b: float, c: float, d: float, e: float, f: float) -> float:
    """The lowest of the six modes is what the fastener bears.

    F_v = min(F_a, F_b, F_c, F_d, F_e, F_f)

    Parameters
    ----------
    a : F_a [N]
        first member crushed
    b : F_b [N]
        second member crushed
    c : F_c [N]
        fastener tilts in both
    d : F_d [N]
        hinge in the second
    e : F_e [N]
        hinge in the first
    f : F_f [N]
        hinge in both

    Returns
    -------
    F_v [N]

    Source
    ------
    EN 1995-1-1 eq. 8.6

    Examples
    --------
    >>> float(lowest_mode(6.0, 5.0, 4.0, 3.0, 2.0, 1.0))
    1.0
    """
    return smaller(smaller(smaller(a, b), smaller(c, d)), smaller(e, f))
