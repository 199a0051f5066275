"""Reads a drive file (TOML) into ``Given`` values; finds every mistake in one pass."""

from __future__ import annotations

import difflib
import hashlib
import math
import re
from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass, replace
from functools import cache
from itertools import pairwise
from pathlib import Path
from typing import Any

from . import cards, shaft_places, spectrum, trial_entries, units
from .data import toml_file
from .errors import MOST_SHOWN, InputError, Mistake, MountlimitError, one_line
from .factors import DESIGN_FACTORS
from .fields import SECTIONS, Field
from .mounts import FORMS
from .outlines import EntryMistake, points

LONGEST_TEXT = 300  # characters of a word, a name or a title
LONGEST_WORD = 80  # characters; nobody misspells a key at that length
DIRECTIONS = {"across": 0.0, "away": 90.0, "towards": -90.0, "across reversed": 180.0}


@dataclass(frozen=True, slots=True, kw_only=True)
class Given:
    """One key as the user gave it: the text, and its value in SI or as a word or card."""

    key: str
    text: str
    kind: str
    value: Any
    low: float | None = None
    high: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class DriveFile:
    """A read drive file; ``given`` is the only state that later steps edit (by copying)."""

    name: str
    given: Mapping[str, Given]
    sha256: str
    notes: tuple[
        str, ...
    ] = ()  # said beside the answer, such as why no plate model stands behind it
    plates: Any = (
        None  # the reduced plate model of the mount as it is given (``plate_route.Route``)
    )
    tested: DriveFile | None = None  # as it was when pulled by hand, where it was edited since

    def edited(self, **changes: Any) -> DriveFile:
        """Give a copy with some keys changed; write ``section__key`` for ``section.key``.

        The plate model behind the file is left out: the edit may have changed the mount.  A pull
        test speaks of the drive as it was before the edit, unless the edit is of the test itself.
        """
        given = dict(self.given)
        for name, value in changes.items():
            key = name.replace("__", ".")
            if value is None:
                given.pop(key, None)
            elif isinstance(value, Given):
                given[key] = value
            else:
                given[key] = _parse(field_for(key, str(self.given["mount.form"].value)), value)
        return self._with(given, changes)

    def _with(self, given: Mapping[str, Given], changed: Collection[str]) -> DriveFile:
        """Give a copy with other keys; names of the changed ones tell whether the test itself was."""
        tested = self.tested or (self if "pull_test.force" in self.given else None)
        if any(name.startswith("pull_test") for name in changed):
            tested = None
        return replace(self, given=given, plates=None, tested=tested)


def set_text(file: DriveFile, key: str, text: str) -> DriveFile:
    """Give a copy with one key set to what the user typed.

    Raises
    ------
    InputError
        with one mistake, in the reader's words, when the text does not fit the key.
    """
    reader = _Reader(file.name)
    found = reader.one(field_for(key, str(file.given["mount.form"].value)), text)
    if found is None:
        raise InputError(reader.mistakes)
    return file.edited(**{key: found})


def fields_for(form: str | None) -> dict[str, Field]:
    """All keys a file may hold, for one mount form (or for all of them when it is unknown)."""
    found = {f.key: f for section in SECTIONS for f in section.fields}
    forms = [FORMS[form]] if form in FORMS else list(FORMS.values())
    for module in forms:
        found |= {f.key: f for f in module.FIELDS}
    if form in FORMS:
        unused = set(getattr(FORMS[form], "UNUSED", ()))
        if not getattr(FORMS[form], "SECOND", False):
            unused |= {key for key in found if key.startswith("second.")}
        found = {key: field for key, field in found.items() if key not in unused}
    for name, (factor, source) in DESIGN_FACTORS.items():
        key = f"policy.factor_{name}"
        meaning = f"design factor of the check {name} ({factor:g}; {source})"
        found[key] = Field(key=key, kind="number", meaning=meaning, least="1", most="20")
    return found


def field_for(key: str, form: str) -> Field:
    """Give the declaration of one key; KeyError when there is none."""
    return fields_for(form)[key]


def read(path: str | Path) -> DriveFile:
    """Read a drive file.

    Raises
    ------
    InputError
        with every mistake found: unreadable file, broken TOML, unknown or missing keys, wrong
        units, values out of range.
    """
    file = Path(path)
    try:
        raw = toml_file.contents(file)
    except toml_file.NotToml as error:
        hint = "expected a drive file such as drive.toml" if file.is_dir() else ""
        raise InputError([Mistake(str(path), "", error.value, error.problem, hint)]) from None
    except (FileNotFoundError, NotADirectoryError):
        raise InputError([Mistake(str(path), "", "", _no_file(file))]) from None
    except OSError as error:
        problem = f"cannot be read: {error.strerror}"
        raise InputError([Mistake(str(path), "", "", problem)]) from None
    except ValueError:
        raise InputError([Mistake(str(path), "", "", "is not a file name")]) from None
    return parse(raw, str(path))


def _no_file(file: Path) -> str:
    near: list[str] = []
    try:
        names = [p.name for p in file.parent.glob("*.toml")]
        near = difflib.get_close_matches(file.name, names, 1)
    except OSError:  # no folder, or one that cannot be listed
        pass
    return "no such file" + (f"; did you mean {near[0]}?" if near else "")


def parse(raw: bytes, name: str) -> DriveFile:
    """Read the bytes of a drive file; ``name`` is used in messages. Raises as ``read``."""
    try:
        document = toml_file.parsed(raw)
    except toml_file.NotToml as error:
        raise InputError([Mistake(name, "", "", error.problem, error.suggestion)]) from None
    reader = _Reader(name)
    given = reader.run(document)
    if reader.mistakes:
        raise InputError(reader.mistakes)
    return DriveFile(name=name, given=given, sha256=hashlib.sha256(raw).hexdigest())


def rewritten(file: DriveFile, keys: Mapping[str, Any]) -> DriveFile:
    """Give the file with some keys written anew, each value as it stands in TOML; None takes one out.

    With another ``mount.form`` the keys that form does not know are left out.

    Raises
    ------
    InputError
        when a value cannot be read, or the form misses a key.
    """
    form = str(keys.get("mount.form", file.given["mount.form"].value))
    known, reader = fields_for(form), _Reader(file.name)
    given = {k: g for k, g in file.given.items() if k in known and k not in keys}
    for key, value in keys.items():
        if key not in known and value is not None:
            reader.fail(key, value, f"is not a key of the form '{form}'")
        elif value is not None and (found := reader.one(known[key], value)) is not None:
            given[key] = found
    reader.miss(known, form, given.keys() | {m.key for m in reader.mistakes})
    if reader.mistakes:
        raise InputError(reader.mistakes)
    return file._with(given, keys)


class _Reader:
    """Collects values and mistakes of one file."""

    def __init__(self, name: str) -> None:
        self.name = name
        self.mistakes: list[Mistake] = []
        self.meant: set[str] = set()  # keys a misspelled key probably stands for: not missed too

    def fail(self, key: str, value: Any, expected: str, suggestion: str = "") -> None:
        text = "" if value is None else _short(value)
        self.mistakes.append(Mistake(self.name, key, text, expected, suggestion))

    def run(self, document: Mapping[str, Any]) -> dict[str, Given]:
        flat = self._flatten(document)
        form = flat.get("mount.form")
        form = form if isinstance(form, str) else None
        known = fields_for(form)
        given: dict[str, Given] = {}
        for key, value in flat.items():
            if key not in known:
                self._unknown(key, value, known)
                continue
            if (found := self.one(known[key], value)) is not None:
                given[key] = found
        self.miss(known, form, flat.keys() | self.meant)
        return given

    def miss(self, known: Mapping[str, Field], form: Any, there: Collection[str]) -> None:
        """Note every required key that is not there."""
        for key, field in known.items():
            if field.required and key not in there and self._wanted(field, form):
                hint = f"for example {key.split('.')[-1]} = {_quoted(field.example)}"
                self.fail(key, None, f"is missing: {field.meaning}", hint)

    def one(self, field: Field, value: Any) -> Given | None:
        """Read one value; a mistake is noted and gives None."""
        try:
            return _parse(field, value)
        except units.UnitMistake as error:
            self.fail(
                field.key, value, f"{error.problem}; expected {error.expected}",
                f"for example {error.suggestion}",
            )  # fmt: skip
        except EntryMistake as error:
            self.fail(field.key, error.entry, error.expected, error.suggestion)
        except _Wrong as error:
            self.fail(field.key, value, error.expected, error.suggestion)
        except MountlimitError as error:
            self.fail(field.key, value, str(error))
        return None

    @staticmethod
    def _wanted(field: Field, form: Any) -> bool:
        """Form-specific keys are only missed when the form itself is known."""
        return form in FORMS or any(field in s.fields for s in SECTIONS)

    def _flatten(self, document: Mapping[str, Any]) -> dict[str, Any]:
        names = [s.name for s in SECTIONS if s.name]
        tops = {f.key for f in SECTIONS[0].fields}
        flat: dict[str, Any] = {}
        for name, value in document.items():
            if name in names and isinstance(value, Mapping):
                flat |= {f"{name}.{key}": v for key, v in value.items()}
            elif name in tops or not isinstance(value, Mapping | list):
                flat[name] = value
            elif name in names:
                self.fail(f"[{name}]", None, f"write one table [{name}], not a list of them")
            else:
                meant = _closest(name, names) if len(self.mistakes) < MOST_SHOWN else ""
                hint = f"did you mean [{meant}]?" if meant else ""
                self.fail(f"[{name}]", None, "is no section of a drive file", hint)
                if meant and meant not in document and isinstance(value, Mapping):
                    flat |= {f"{meant}.{key}": v for key, v in value.items()}
        return flat

    def _unknown(self, key: str, value: Any, known: Mapping[str, Field]) -> None:
        if len(self.mistakes) >= MOST_SHOWN:  # nobody will see a hint
            self.fail(key, value, "is not a known key")
            return
        section, _, last = key.rpartition(".")
        siblings = [k.rpartition(".")[2] for k in known if k.rpartition(".")[0] == section]
        meant = _closest(last, siblings)
        hint = f"did you mean {meant}?" if meant else ""
        self.meant.add(key.removesuffix(last) + meant)
        if not hint:
            elsewhere = [k for k in known if k.rpartition(".")[2] == last]
            hint = f"did you mean {elsewhere[0]}?" if elsewhere else ""
        if not hint and siblings:
            hint = f"[{section}] knows: {', '.join(sorted(siblings))}" if section else ""
        self.fail(key, value, "is not a known key", hint)


class _Wrong(Exception):
    def __init__(self, expected: str, suggestion: str = "") -> None:
        self.expected, self.suggestion = expected, suggestion


def _quoted(text: str) -> str:
    return text if re.fullmatch(r"\d+", text) else f'"{text}"'


def _short(value: Any) -> str:
    return one_line(f"'{value}'" if isinstance(value, str) else str(value), 60)


def _closest(word: str, known: list[str]) -> str:
    if len(word) > LONGEST_WORD:
        return ""
    return next(iter(difflib.get_close_matches(word.lower(), known, 1, 0.6)), "")


def _near(word: str, known: list[str], form: str) -> str:
    match = _closest(word, known)
    return f"did you mean {form.format(match)}?" if match else ""


def _parse(field: Field, value: Any) -> Given:
    if isinstance(value, Mapping):
        return _parse_range(field, value)
    if field.many and isinstance(value, list):
        if not value:
            raise _Wrong("expected at least one entry")
        each = tuple(_parse_one(field, v) for v in value)
        text = ", ".join(map(_text_of, value))
        return Given(key=field.key, text=text, kind=field.kind, value=each)
    one = _parse_one(field, value)
    return Given(
        key=field.key, text=_text_of(value), kind=field.kind, value=(one,) if field.many else one
    )  # fmt: skip


def _text_of(value: Any) -> str:
    """Write a value as it was given, on one line."""
    return " ".join(str(value).split())


def _parse_range(field: Field, value: Mapping[str, Any]) -> Given:
    if field.kind not in units.KINDS:
        raise _Wrong("expected one value, not a table")
    if set(value) != {"low", "likely", "high"}:
        raise _Wrong("a range is written { low = ..., likely = ..., high = ... }")
    low, likely, high = (_parse_one(field, value[k]) for k in ("low", "likely", "high"))
    if not low <= likely <= high:
        raise _Wrong("expected low <= likely <= high")
    text = " / ".join(_text_of(value[k]) for k in ("low", "likely", "high"))
    return Given(key=field.key, text=text, kind=field.kind, value=likely, low=low, high=high)


def _parse_one(field: Field, value: Any) -> Any:
    reader = _WORDS.get(field.kind)
    if reader is not None:
        return reader(field, value)
    number = units.parse_value(value, field.kind)
    _within(field, number, field.kind)
    return number


def _within(field: Field, number: float, kind: str) -> None:
    for bound, wrong in ((field.least, number.__lt__), (field.most, number.__gt__)):
        if bound and wrong(_bound(bound, kind)):
            raise _Wrong(f"expected {field.least} to {field.most}: {field.meaning}")


@cache
def _bound(bound: str, kind: str) -> float:
    """Give an end of a field's range in SI."""
    bare = kind == "ratio" and "%" not in bound
    return units.parse_value(float(bound) if bare else bound, kind)


def _number(field: Field, value: Any) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float) or not math.isfinite(value):
        raise _Wrong(f"expected a bare number: {field.meaning}")
    if field.least and not float(field.least) <= value <= float(field.most):
        raise _Wrong(f"expected {field.least} to {field.most}: {field.meaning}")
    return float(value)


def _integer(field: Field, value: Any) -> float:
    if isinstance(value, bool) or not isinstance(value, int):
        raise _Wrong(f"expected a whole number without quotes: {field.meaning}")
    return _number(field, value)


def _text(field: Field, value: Any) -> str:
    if not isinstance(value, str) or not value.strip():
        raise _Wrong(f"expected text in quotes: {field.meaning}")
    text = " ".join(value.split())
    if len(text) > LONGEST_TEXT:
        raise _Wrong(f"expected at most {LONGEST_TEXT} characters")
    if one_line(text) != text:
        raise _Wrong("holds a control character; write it anew")
    return text


def _choice(field: Field, value: Any) -> str:
    word = _text(field, value).lower()
    if word not in field.choices:
        raise _Wrong(
            f"expected one of: {', '.join(field.choices)}", _near(word, list(field.choices), "'{}'")
        )
    return word


def _flag(field: Field, value: Any) -> bool:
    if not isinstance(value, bool):
        hint = _near(str(value).lower(), ["true", "false"], "{}")
        raise _Wrong(f"expected true or false without quotes: {field.meaning}", hint)
    return value


def _form(field: Field, value: Any) -> str:
    word = _text(field, value).lower()
    if word not in FORMS:
        raise _Wrong(f"expected a mount form: {', '.join(FORMS)}", _near(word, list(FORMS), "'{}'"))
    return word


def _counted(field: Field, value: Any, what: str) -> tuple[int, str]:
    match = re.fullmatch(r"\s*(\d{1,3})\s*[xX×*]\s*(\S.*?)\s*", _text(field, value))
    if not match or int(match[1]) < 1:
        raise _Wrong(
            f"expected a number of {what} and a size, for example '4 x M8' or '4 x 5/16-18'"
        )
    return int(match[1]), match[2]


def _bolts(field: Field, value: Any) -> tuple[int, cards.Thread]:
    count, size = _counted(field, value, "bolts")
    if count > 24:
        raise _Wrong("expected at most 24 bolts")
    return count, cards.thread(size)


def _screws(field: Field, value: Any) -> tuple[int, float, cards.Thread | None]:
    """Read '6 x 5 mm' or '6 x M5': count, diameter, and the thread where one is named."""
    count, size = _counted(field, value, "screws")
    if not 1 < count < 25:
        raise _Wrong("expected 2 to 24 screws in the row")
    if not re.fullmatch(r"[\d.,/\s-]+\s*(mm|cm|in|inch|\")", size):
        thread = cards.thread(size)
        return count, float(thread.diameter), thread
    diameter = units.parse(size, "length")
    if not 0.0015 < diameter < 0.025:
        raise _Wrong("expected a diameter from 2 to 24 mm")
    return count, diameter, None


def _set_screws(field: Field, value: Any) -> tuple[int, cards.SetScrew]:
    count, size = _counted(field, value, "set screws")
    return count, cards.set_screw(size)


def _key_size(field: Field, value: Any) -> tuple[float, float, float]:
    parts = re.split(r"\s*[xX×]\s*", _text(field, value))
    unit = re.sub(r"^[\d\s./-]*", "", parts[-1])
    if len(parts) != 3 or not unit:
        raise _Wrong("expected width x height x length with a unit, for example '5 x 5 x 22 mm'")
    sized = [p if re.search(r"[A-Za-z\"]", p) else f"{p} {unit}" for p in parts]
    width, height, length = (units.parse(p, "length") for p in sized)
    if not all(0.0005 < v < 0.3 for v in (width, height, length)):
        raise _Wrong("expected sizes between 0.5 and 300 mm")
    return width, height, length


def _direction(field: Field, value: Any) -> tuple[str, float]:
    word = _text(field, value).lower()
    if word in DIRECTIONS:
        return word, math.radians(DIRECTIONS[word])
    try:
        angle = units.parse(word, "angle")
    except units.UnitMistake as error:
        words = ", ".join(f"'{w}'" for w in DIRECTIONS)
        raise _Wrong(f"expected {words} or an angle such as '20 deg'", error.suggestion) from None
    return word, math.remainder(angle, 2 * math.pi)


def _points(_: Field, value: Any) -> tuple[tuple[float, float], ...]:
    if not isinstance(value, list) or len(value) < 2:
        raise _Wrong(
            'expected a list of pairs, for example [["50 A", "4 N*m"], ["100 A", "9.5 N*m"]]'
        )
    pairs = []
    for pair in value:
        if not isinstance(pair, list) or len(pair) != 2:
            raise _Wrong("expected pairs of current and torque")
        pairs.append((units.parse_value(pair[0], "current"), units.parse_value(pair[1], "torque")))
    if any(b[0] <= a[0] or b[1] <= a[1] for a, b in pairwise(pairs)):
        raise _Wrong("expected current and torque to rise from each pair to the next")
    if pairs[0][0] < 0 or pairs[0][1] < 0:
        raise _Wrong("expected no negative current or torque")
    return tuple(pairs)


def _card(look_up: Callable[[str], Any]) -> Callable[[Field, Any], Any]:
    return lambda field, value: look_up(_text(field, value))


_WORDS: dict[str, Callable[[Field, Any], Any]] = {
    "text": _text,
    "choice": _choice,
    "flag": _flag,
    "form": _form,
    "integer": _integer,
    "number": _number,
    "bolts": _bolts,
    "set screws": _set_screws,
    "screws": _screws,
    "key size": _key_size,
    "direction": _direction,
    "points": _points,
    "shaft places": lambda _, value: shaft_places.read(value),
    "spectrum": lambda _, value: spectrum.read(value),
    "trials": lambda _, value: trial_entries.read(value),
    "place": lambda _, value: points.place(value),
    "hole": lambda _, value: points.hole(value),
    "slot": lambda _, value: points.slot(value),
    "heading": lambda _, value: points.heading(value),
    "chain": _card(lambda n: cards.chain(n)),
    "bearing": _card(lambda n: cards.bearing(n)),
    "thread": _card(lambda n: cards.thread(n)),
    "bolt class": _card(lambda n: cards.bolt_class(n)),
    "material": _card(lambda n: cards.material(n)),
}
