"""Where things are: distances along the mount worked out from what the user measured."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..worked import formula

Number = Any


@formula
def nearest_motor_bolts(bolt_circle: Number, count: Number) -> Number:
    """Shaft axis to the motor bolts nearest the frame.

    h = D_b / 2 * cos(pi / n)

    Parameters
    ----------
    bolt_circle : D_b [m]
        diameter of the circle through the face bolts
    count : n [-]
        number of face bolts, two of them level at the frame side

    Returns
    -------
    h [m]

    Source
    ------
    geometry of equally spaced bolts
    """
    return bolt_circle / 2 * np.cos(np.pi / count)


@formula
def motor_bolt_half_span(bolt_circle: Number, count: Number) -> Number:
    """Half the distance across between the two motor bolts nearest the frame.

    s = D_b / 2 * sin(pi / n)

    Parameters
    ----------
    bolt_circle : D_b [m]
        diameter of the circle through the face bolts
    count : n [-]
        number of face bolts

    Returns
    -------
    s [m]

    Source
    ------
    geometry of equally spaced bolts
    """
    return bolt_circle / 2 * np.sin(np.pi / count)


@formula
def difference(whole: Number, part: Number) -> Number:
    """What is left of a length.

    L = a - b

    Parameters
    ----------
    whole : a [m]
        whole length
    part : b [m]
        part taken off

    Returns
    -------
    L [m]

    Source
    ------
    geometry
    """
    return whole - part


@formula
def total(first: Number, second: Number) -> Number:
    """Two lengths one after the other.

    L = a + b

    Parameters
    ----------
    first : a [m]
        first length
    second : b [m]
        second length

    Returns
    -------
    L [m]

    Source
    ------
    geometry
    """
    return first + second


@formula
def bearing_overhang(face_overhang: Number, face_to_bearing: Number) -> Number:
    """Front bearing to the middle of the sprocket.

    a = e_f + c

    Parameters
    ----------
    face_overhang : e_f [m]
        motor's mounting face to the middle of the sprocket
    face_to_bearing : c [m]
        mounting face back to the middle of the front bearing

    Returns
    -------
    a [m]

    Source
    ------
    geometry
    """
    return face_overhang + face_to_bearing


@formula
def pivot_lever(position: Number, low_end: Number, edge: Number) -> Number:
    """Distance of a bolt from the edge the mount tips about.

    l = s - s_0 + c

    Parameters
    ----------
    position : s [m]
        place of the bolt
    low_end : s_0 [m]
        place of the bolt nearest that edge
    edge : c [m]
        that bolt to the edge of the bearing surface

    Returns
    -------
    l [m]

    Source
    ------
    geometry
    """
    return position - low_end + edge


@formula
def face_half(face: Number, outer: Number, edge: Number) -> Number:
    """How far from the middle of its bolts a mount bears on the face of a frame member.

    h = max(w / 2, s + e)

    Parameters
    ----------
    face : w [m]
        width of the face, the bolts in its middle
    outer : s [m]
        outermost row from the middle of the bolts
    edge : e [m]
        from that row to the edge of its washers

    Returns
    -------
    h [m]

    Validity
    --------
    a face too narrow for the rows of bolts is taken to go as far as their washers

    Source
    ------
    geometry
    """
    return np.maximum(face / 2, outer + edge)


@formula
def bearing_end(edge: Number, face_half: Number, outer: Number) -> Number:
    """From the outermost row of bolts to where the bearing ends: with the mount or with the frame's face.

    c = min(e, h - s)

    Parameters
    ----------
    edge : e [m]
        outermost row to the end of the mount
    face_half : h [m]
        middle of the bolts to the edge of the frame's face
    outer : s [m]
        outermost row from the middle of the bolts

    Returns
    -------
    c [m]

    Source
    ------
    geometry
    """
    return np.minimum(edge, face_half - outer)


@formula
def opposite(length: Number) -> Number:
    """A place on the other side of the origin.

    b = -a

    Parameters
    ----------
    length : a [m]
        length

    Returns
    -------
    b [m]

    Source
    ------
    geometry
    """
    return -length


@formula
def half(length: Number) -> Number:
    """Half of a length.

    b = a / 2

    Parameters
    ----------
    length : a [m]
        length

    Returns
    -------
    b [m]

    Source
    ------
    geometry
    """
    return length / 2


@formula
def bolt_place(span: Number, place: Number, count: Number) -> Number:
    """Place of a bolt in an evenly spaced row, from the middle.

    x = b * (i / (n - 1) - 0.5)

    Parameters
    ----------
    span : b [m]
        distance of the outermost bolts
    place : i [-]
        place in the row, from 0
    count : n [-]
        bolts in the row

    Returns
    -------
    x [m]

    Source
    ------
    geometry
    """
    return span * (place / (count - 1) - 0.5)
