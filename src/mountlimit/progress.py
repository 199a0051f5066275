"""How far a long job has come: the work calls ``step``, whoever shows it listens.

Nothing is printed here, and without a listener a step costs one context-variable read.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar

Listener = Callable[[str, int, int], None]

_LISTENER: ContextVar[Listener | None] = ContextVar("listener", default=None)


def step(words: str, done: int, total: int) -> None:
    """Say that ``done`` of ``total`` parts of a job are finished; ``words`` name the job."""
    listener = _LISTENER.get()
    if listener is not None:
        listener(words, done, total)


@contextmanager
def listening(listener: Listener) -> Iterator[None]:
    """Hand every step inside the block to a listener."""
    token = _LISTENER.set(listener)
    try:
        yield
    finally:
        _LISTENER.reset(token)
