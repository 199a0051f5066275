"""The elementary functions of the equations, typed for floats; all of them take arrays too."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

pi: float = float(np.pi)
sin: Callable[[float], float] = np.sin
cos: Callable[[float], float] = np.cos
tan: Callable[[float], float] = np.tan
asin: Callable[[float], float] = np.arcsin
atan: Callable[[float], float] = np.arctan
sqrt: Callable[[float], float] = np.sqrt
exp: Callable[[float], float] = np.exp
log: Callable[[float], float] = np.log
tanh: Callable[[float], float] = np.tanh
power: Callable[[float, float], float] = np.power
larger: Callable[[float, float], float] = np.maximum
smaller: Callable[[float, float], float] = np.minimum
