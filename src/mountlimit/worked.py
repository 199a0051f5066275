"""The worked-calculation record.

A *formula* is a plain function whose docstring is its data sheet: title, one Python-readable
equation, symbols and units of the arguments and the result, and the source.  ``@formula`` enrols
it.  Normally a formula costs one context-variable read; inside ``recording()`` every call leaves a
``Step``, and its result remembers the step, so the next step can say where its number came from.
"""

from __future__ import annotations

import inspect
import re
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass, field
from functools import cache, wraps
from typing import Any, TypeVar

FORMULAS: dict[str, Callable[..., Any]] = {}


class Value(float):
    """An SI number that remembers the key it was given or assumed under, and its source."""

    __slots__ = ("key", "origin", "source")

    key: str
    origin: str  # "given", "assumed", "card", "derived"
    source: str

    def __new__(cls, number: float, key: str, origin: str, source: str = "") -> Value:
        """Wrap ``number``; arithmetic on the result gives plain floats again."""
        self = super().__new__(cls, number)
        self.key, self.origin, self.source = key, origin, source
        return self

    def __reduce__(self) -> tuple[Any, ...]:
        return (Value, (float(self), self.key, self.origin, self.source))


class Traced(float):
    """The result of a recorded step; ``step`` is its place on the tape."""

    __slots__ = ("step",)

    step: int

    def __new__(cls, number: float, step: int) -> Traced:
        """Wrap ``number`` with the index of the step that gave it."""
        self = super().__new__(cls, number)
        self.step = step
        return self


@dataclass(frozen=True, slots=True)
class Symbol:
    """One argument or result of a formula: its name in the code, its letter and its SI unit."""

    name: str
    letter: str
    unit: str


@dataclass(frozen=True, slots=True)
class DataSheet:
    """What a formula's docstring says about it."""

    title: str
    equation: str
    arguments: tuple[Symbol, ...]
    result: Symbol
    source: str


@dataclass(frozen=True, slots=True)
class Entry:
    """A number put into a step, and where it came from: a key, an earlier step, or neither."""

    symbol: Symbol
    value: float
    key: str = ""
    origin: str = ""
    source: str = ""
    step: int | None = None


@dataclass(frozen=True, slots=True)
class Step:
    """One line of a worked calculation."""

    index: int
    kind: str  # "formula" or "mesh"
    title: str
    equation: str
    entries: tuple[Entry, ...]
    result: Symbol
    value: float
    source: str


@dataclass
class Tape:
    """The steps recorded so far."""

    steps: list[Step] = field(default_factory=list)
    index_of: dict[Any, int] = field(default_factory=dict)

    def add(self, kind: str, sheet: DataSheet, values: dict[str, Any], value: float) -> Traced:
        """Append a step, once for the same numbers, and return its result carrying the index."""
        entries = tuple(_entry(s, values[s.name]) for s in sheet.arguments if s.name in values)
        known = self.index_of.setdefault((sheet.title, sheet.equation, entries), len(self.steps))
        if known == len(self.steps):
            self.steps.append(
                Step(
                    known, kind, sheet.title, sheet.equation, entries, sheet.result,
                    float(value), sheet.source,
                )
            )  # fmt: skip
        return Traced(value, known)


_TAPE: ContextVar[Tape | None] = ContextVar("tape", default=None)


def _entry(symbol: Symbol, value: Any) -> Entry:
    if isinstance(value, Value):
        return Entry(symbol, float(value), value.key, value.origin, value.source)
    if isinstance(value, Traced):
        return Entry(symbol, float(value), step=value.step)
    return Entry(symbol, float(value))


@contextmanager
def recording() -> Iterator[Tape]:
    """Record every formula called inside the block; use it round one evaluation, never a search."""
    tape = Tape()
    token = _TAPE.set(tape)
    try:
        yield tape
    finally:
        _TAPE.reset(token)


F = TypeVar("F", bound=Callable[..., Any])


def formula(function: F) -> F:
    """Enrol a formula: a pure function of SI numbers (or arrays) with a data-sheet docstring."""
    signature = inspect.signature(function)
    name = f"{function.__module__.rsplit('.', 1)[-1]}.{function.__name__}"

    @wraps(function)
    def wrapper(*args: Any, **kwargs: Any) -> Any:
        tape = _TAPE.get()
        result = function(*args, **kwargs)
        if tape is None or (hasattr(result, "ndim") and result.ndim):  # arrays are not recorded
            return result
        bound = signature.bind(*args, **kwargs)
        bound.apply_defaults()
        return tape.add("formula", data_sheet(wrapper), dict(bound.arguments), result)

    FORMULAS[name] = wrapper
    return wrapper  # type: ignore[return-value]


def note(sheet: DataSheet, values: dict[str, Any], value: float) -> float:
    """Record a step that is not a formula (a solver's result); without a tape it only returns it."""
    tape = _TAPE.get()
    return value if tape is None else tape.add("mesh", sheet, values, value)


def is_recording() -> bool:
    """Tell whether a tape is running."""
    return _TAPE.get() is not None


_ARGUMENT = re.compile(r"^(\w+) : (\w+) \[([^\]]+)\]")
_RESULT = re.compile(r"^(\w+) \[([^\]]+)\]")


@cache
def data_sheet(function: Callable[..., Any]) -> DataSheet:
    """Read a formula's docstring.

    Raises
    ------
    ValueError
        when the docstring lacks a title, an equation, an argument line or a source.
    """
    doc = inspect.getdoc(function) or ""
    if not doc:
        raise ValueError(f"{function.__name__}: no docstring (python -OO removes them)")
    blocks = re.split(r"\n\s*\n", doc)
    equation = " ".join(blocks[1].split())
    sections = _sections(doc)
    matches = (_ARGUMENT.match(line) for line in sections.get("Parameters", []))
    arguments = [Symbol(m[1], m[2], m[3]) for m in matches if m]
    result = next((m for line in sections.get("Returns", []) if (m := _RESULT.match(line))), None)
    source = " ".join(line.strip() for line in sections.get("Source", []) if line.strip())
    if "=" not in equation or result is None or not source:
        raise ValueError(f"{function.__name__}: docstring is not a complete data sheet")
    title = " ".join(blocks[0].split()).rstrip(".")
    return DataSheet(title, equation, tuple(arguments), Symbol("", result[1], result[2]), source)


def _sections(doc: str) -> dict[str, list[str]]:
    lines, current = doc.splitlines(), ""
    found: dict[str, list[str]] = {}
    for i, line in enumerate(lines):
        if i + 1 < len(lines) and re.fullmatch(r"-{3,}", lines[i + 1].strip()):
            current = line.strip()
            found[current] = []
        elif current and not re.fullmatch(r"-{3,}", line.strip()):
            found[current].append(line)
    return found


def lineage(steps: list[Step], last: list[float]) -> list[Step]:
    """Keep only the steps that lead to the numbers in ``last``, in order."""
    wanted = {v.step for v in last if isinstance(v, Traced)}
    for step in reversed(steps):
        if step.index in wanted:
            wanted |= {e.step for e in step.entries if e.step is not None}
    return [s for s in steps if s.index in wanted]
