"""Mutated drive files and material cards by number: the same number gives the same bytes.

``drive(number)`` takes an example, a test drive or a starter and spoils it in one of the ways of
``KINDS``; ``card(number)`` does so with a file of ``materials/``; ``drawing(number)`` with a DXF.
"""

from __future__ import annotations

import copy
import datetime
import random
import tomllib
from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Any

from conftest import toml_text
from mountlimit.cards import folder
from mountlimit.drivefile import fields_for
from mountlimit.fields import Field
from mountlimit.mounts import FORMS
from mountlimit.starter import text as starter_text

DRIVES = Path(__file__).parent.parent / "drives"
Document = dict[str, Any]

EXTREME = (
    "0", "-0", "-1", "1e308", "-1e308", "1e-308", "5e-324", "1e309", "nan", "inf", "-inf", "+inf",
    "1000000", "1e6", "0.5", "1.5", "1_000", "0x7fffffffffffffff", "9223372036854775808", "1" * 400,
    "9" * 5000, "0x" + "f" * 5000, "true", "false", "1979-05-27", "07:32:00", "1979-05-27T07:32:00Z",
)  # fmt: skip
UNITS = (
    "", "mm", "m", "in", "ft", "thou", "kg", "lb", "N", "kN", "lbf", "N*m", "lbf*ft", "A", "V", "rpm/V",
    "N*m/A", "MPa", "psi", "degC", "degF", "K", "deg", "rad", "%", "h", "s", "rpm", "rpm/V/V", "mm mm",
    "mm in", "mmm", "furlong", "\u00b5m", "m^9", "m^99999", "mm^-1", "*mm", "mm*", "//mm", "mm/(s*s)", "°", "''", '"',
    "mm" * 80, "\u202emm", "m\u0660",
)  # fmt: skip
NUMBERS = (
    "6", "-6", "\u22126", "+6", "6,5", "1,000", "1 000", "1/2", "1-1/2", "1/0", "0/0", "-0", "0", "1e308", "1e-308",
    "1e999", "-1e308", "nan", "inf", "-inf", "\u0666", "\u00bd", "6.", ".6", "6..5", "--6", "1e", "0x10", "1" * 60, "",
    "6 + 6", "1 in + 2", "1e6", "99999999999999999999",
)  # fmt: skip
COUNTED = (
    "1000000 x M8", "0 x M8", "-4 x M8", "4.0 x M8", "4 x", "x M8", "4 x M1e308", "999 x M8", "24 x M8", "25 x M8",
    "1 x M8", "2 x M8", "3 x M8", "4 x M3", "4 x M30", "4 x 1/0", "4 x 5/16-18 UNC", "4 x #10", "nan x M8", "4×M8",
    "4 x " + "M" * 5000, "6 x 5 mm", "6 x 1e308 mm", "\u0664 x M8",
)  # fmt: skip
TEXTS = (
    "", " ", "\n", "a\nb", "\x1b[31mred", "\x7f", "\t", "none", "null", "True", "{}", "x" * 3000, "%s%d{0}", "\u202e", "\U0001f6b2",
    "../../etc/passwd", "/dev/zero", "/dev/null", "~", "\\\\host\\share", "-", "--help", "CON", "'", "$(id)", "\ufeff6 mm", "a\u2028b",
)  # fmt: skip


@cache
def seeds() -> tuple[tuple[str, bytes], ...]:
    """Every example, every drive of the tests, and every starter, with its name."""
    files = [*sorted(folder("examples").glob("*.toml")), *sorted(DRIVES.glob("*.toml"))]
    found = [(f.name, f.read_bytes()) for f in files]
    return (*found, *((f"new {form}", starter_text(form, "drive.toml").encode()) for form in FORMS))


@cache
def _documents() -> tuple[Document, ...]:
    return tuple(tomllib.loads(raw.decode()) for _, raw in seeds())


@cache
def _fields(form: str | None) -> tuple[Field, ...]:
    return tuple(fields_for(form).values())


def _document(rng: random.Random) -> Document:
    return copy.deepcopy(rng.choice(_documents()))


def _places(document: Document) -> list[tuple[Document, str]]:
    found = [(document, key) for key in document]
    return found + [(t, key) for t in document.values() if isinstance(t, dict) for key in t]


def _write(document: Document) -> bytes:
    return toml_text(document).encode("utf-8", "surrogatepass")


def _spoil(document: Document, place: tuple[Document, str], literal: str) -> bytes:
    """Write the document with one value replaced by TOML text that may not be valid."""
    mark = "@@mark@@"
    place[0][place[1]] = mark
    return _write(document).replace(f'"{mark}"'.encode(), literal.encode("utf-8", "surrogatepass"))


# ---------------------------------------------------------------- the kinds of mutation


def random_bytes(rng: random.Random) -> bytes:
    """Bytes changed, put in, taken out, doubled."""
    raw = bytearray(rng.choice(seeds())[1])
    for _ in range(rng.choice((1, 1, 2, 5, 40))):
        at, size = rng.randrange(len(raw)), rng.choice((1, 1, 2, 8, 100))
        way = rng.randrange(5)
        if way == 0:
            raw[at] = rng.randrange(256)
        elif way == 1:
            raw[at:at] = rng.randbytes(size)
        elif way == 2:
            del raw[at : at + size]
        elif way == 3:
            raw[at:at] = raw[at : at + size]
        else:
            raw[at] = rng.choice(b"\"'[]{}=.,#\n\\ 0")
        if not raw:
            break
    return bytes(raw)


def cut(rng: random.Random) -> bytes:
    """Only a part of the file."""
    raw = rng.choice(seeds())[1]
    a, b = sorted((rng.randrange(len(raw)), rng.randrange(len(raw) + 1)))
    return rng.choice((raw[:a], raw[b:], raw[:a] + raw[b:], raw[a:b]))


def encoding(rng: random.Random) -> bytes:
    """Another encoding, a mark at the front, NUL, bytes that are no text."""
    raw = rng.choice(seeds())[1]
    text = raw.decode().replace("a", rng.choice("aé½−"), rng.randrange(5))
    way = rng.randrange(9)
    if way < 5:
        names = ("utf-16", "utf-16-le", "utf-32", "cp1252", "utf-8-sig")
        return text.encode(names[way], "replace")
    at = rng.randrange(len(raw))
    stray = (
        b"\0",
        b"\xc0\x80",
        b"\xed\xa0\x80",
        b"\xf4\x90\x80\x80",
        b"\xff\xfe",
        b"\x1a",
        b"\r",
        b"\x85",
    )
    if way == 5:
        return raw[:at] + rng.choice(stray) + raw[at:]
    if way == 6:
        return raw.replace(b"\n", rng.choice((b"\r", b"\r\n", b"\n\r", b"\0")))
    if way == 7:
        return b"\0" * rng.choice((1, 4096, 100_000))
    return rng.randbytes(rng.choice((1, 50, 5000)))


def _odd(rng: random.Random, value: Any) -> Any:
    """Something of another type than a value."""
    deep: Any = 1
    for _ in range(rng.choice((3, 50, 200))):
        deep = [deep] if rng.random() < 0.5 else {"a": deep}
    return rng.choice(
        (
            {}, [], [[]], [{}], {"low": value}, {"low": value, "likely": value, "high": value}, [value], [value] * 3,
            [value, [value, {"a": value}]], {"low": [1], "likely": {}, "high": True}, deep, True, 0, -1, 1.5, 10**6, 10**30, "", " ",
            datetime.date(2020, 1, 1), datetime.time(1, 2), datetime.datetime(2020, 1, 1), {"a": {"b": {}}}, [[value, value]], [1, "2", True],
            [value] * 5000, {"value": value}, [[["x"]]], {"current": value, "seen": "fine"}, [{"current": value, "seen": "bent"}],
        )
    )  # fmt: skip


def structure(rng: random.Random) -> bytes:
    """Values of another type; sections that are lists, values or lacking; keys in the wrong place."""
    document = _document(rng)
    for _ in range(rng.choice((1, 1, 2, 4))):
        places = _places(document)
        if not places:
            break
        table, key = rng.choice(places)
        way = rng.randrange(7)
        if way < 3:
            table[key] = _odd(rng, table[key])
        elif way == 3:
            del table[key]
        elif way == 4:
            table[key + rng.choice(("s", "_", "-", "\u00e9", "2"))] = table.pop(key)
        elif way == 5:
            rng.choice(places)[0][rng.choice(places)[1]] = copy.deepcopy(table[key])
        else:
            section = rng.choice([k for k in document if isinstance(document[k], dict)] or [key])
            document[section] = _odd(rng, "6 mm")
    return _write(_quoted_keys(document))


def _quoted_keys(document: Document) -> Document:
    def name(key: str) -> str:
        bare = key.isascii() and key.replace("_", "").replace("-", "").isalnum()
        return (
            key if bare else '"' + key.encode("unicode_escape").decode().replace('"', '\\"') + '"'
        )

    return {
        name(k): {name(i): v for i, v in t.items()} if isinstance(t, dict) else t
        for k, t in document.items()
    }


def layout(rng: random.Random) -> bytes:
    """Lines doubled and shuffled, dotted keys, lists of tables, deep nesting, long keys, many keys."""
    lines = rng.choice(seeds())[1].decode().splitlines()
    at, n = rng.randrange(len(lines)), rng.choice((2, 10, 100, 500, 2000, 20_000))
    way = rng.randrange(16)
    if way == 0:
        lines.insert(at, rng.choice(lines))
    elif way == 1:
        rng.shuffle(lines)
    elif way == 2:
        lines = [f"[{x}]" if x.startswith("[") and rng.random() < 0.3 else x for x in lines]
    elif way == 3:
        lines.insert(at, "x = " + "[" * n + rng.choice(("", "1")) + "]" * rng.choice((n, n, 0)))
    elif way == 4:
        lines.insert(at, "x = " + "{a=" * n + "1" + "}" * n)
    elif way == 5:
        lines.insert(at, ".".join(["a"] * n) + " = 1")
    elif way == 6:
        lines.insert(at, "[" + ".".join(["a"] * n) + "]")
    elif way == 7:
        lines.insert(at, "k" * n * 5 + " = 1")
    elif way == 8:
        lines.insert(
            at,
            '"'
            + rng.choice(("a\\nb", "\\u001b[2J", "\\u0000", "\\u202e", "", "=", "\\\\")) * 3
            + '" = 1',
        )
    elif way == 9:
        lines[at:at] = [f"key{i} = {i}" for i in range(min(n, 5000))]
    elif way == 10:
        lines[at:at] = [f"[t{i}]\na = 1" for i in range(min(n, 3000))]
    elif way == 11:
        lines.insert(at, f'note = "{"y" * n * 10}"')
    elif way == 12:
        lines.insert(at, "mount.thickness.value = 3\nmount.form.x = 1")
    elif way == 13:
        lines += ['[[trial]]\ncurrent = "60 A"\nseen = "fine"'] * min(n, 200)
    elif way == 14:
        lines.insert(at, "big = " + "9" * n)
    else:
        lines.insert(at, "dates = 0000-99-99T25:61:61")
    return "\n".join(lines).encode("utf-8", "surrogatepass")


def unit(rng: random.Random) -> bytes:
    """Quantities with odd numbers and units."""
    document = _document(rng)
    for _ in range(rng.choice((1, 1, 3))):
        table, key = rng.choice(_places(document))
        if isinstance(table[key], dict) and table is document:
            continue
        number, name = rng.choice(NUMBERS), rng.choice(UNITS)
        table[key] = number + rng.choice(("", " ", "\u00a0", "  ")) + name
        if rng.random() < 0.2:
            table[key] += " " + rng.choice(NUMBERS) + " " + rng.choice(UNITS)
    return _write(document)


def extreme(rng: random.Random) -> bytes:
    """Bare numbers that are too large, too small, none at all, of another type; odd counts."""
    document = _document(rng)
    places = [p for p in _places(document) if not isinstance(p[0][p[1]], dict)]
    table, key = rng.choice(places)
    way = rng.randrange(4)
    if way == 0 and isinstance(table[key], str):
        unit_of = "".join(c for c in table[key] if not c.isdigit() and c not in ".-+")
        table[key] = rng.choice(EXTREME[:14]) + " " + unit_of.strip()
        return _write(document)
    if way == 1:
        counted = [(t, k) for t, k in places if "bolts" in k or "screw" in k] or places
        table, key = rng.choice(counted)
        table[key] = rng.choice(COUNTED)
        return _write(document)
    if way == 2:
        table[key] = rng.choice(TEXTS)
        return _write(document)
    return _spoil(document, (table, key), rng.choice(EXTREME))


# kinds of field that are written as text; others are taken from the field's own example
_ENTRIES: dict[str, tuple[Any, ...]] = {
    "text": ("words", "outline.dxf", "turf_roller.dxf"),
    "flag": (True, False),
    "bolts": ("2 x M6", "4 x M8", "6 x M10", "1 x M12", "8 x M5", "24 x M3", "4 x 1/4-20"),
    "set screws": ("1 x M5", "2 x M6"),
    "screws": ("6 x 5 mm", "2 x 4 mm", "24 x 6 mm", "6 x M5"),
    "key size": ("4 x 4 x 16 mm", "8 x 7 x 60 mm", "1 x 1 x 1 mm", "3/16 x 3/16 x 1 in"),
    "direction": ("across", "away", "towards", "20 deg", "359 deg", ["across", "away"]),
    "points": ([["50 A", "4 N*m"], ["100 A", "9.5 N*m"]], [["0 A", "0 N*m"], ["1e5 A", "1e5 N*m"]]),
    "shaft places": ([["shoulder, sharp", "18 mm", "10 mm"]], [["keyway", "0 mm", "200 mm"]]),
    "spectrum": ([["100 %", "10 %"], ["50 %", "40 %"]], [["0 %", "100 %", "200 %"]]),
    "trials": ([{"current": "60 A", "seen": "fine"}], [{"current": "1 A", "seen": "bent", "part": "key"}]),
    "place": ("20, 15 mm", "0, 0 mm", "9.9, -9.9 m", ["0, 0 mm", "100, 0 mm", "50, 0.1 mm"]),
    "hole": ("20, 15, 9 mm", ["20, 15, 9 mm", "20, 15, 9 mm"], "60, 100, 400 mm"),
    "slot": ("60, 15, 25, 9 mm, 0 deg", "60, 15, 9.001, 9 mm, 45 deg"),
    "heading": ("up", "left", "30 deg"),
    "chain": ("25", "35", "40", "240", "08B", "420", "219", "520", "06C"),
    "bearing": ("6201", "6307", "UC204", "6000"),
    "thread": ("M3", "M8", "M30", "1/4"),
    "bolt class": ("4.6", "8.8", "12.9", "grade 2", "grade 8", "A2-70"),
    "material": ("hdpe", "6061", "s235", "unknown steel", "birch plywood", "oak", "gjl200", "pom_c", "7075"),
}  # fmt: skip


def _sound(rng: random.Random, field: Field) -> Any:
    """Give a value the field itself would take, often at an end of its range."""
    if field.choices:
        return rng.choice(field.choices)
    if field.kind == "form":
        return rng.choice(list(FORMS))
    if field.kind in _ENTRIES:
        return rng.choice(_ENTRIES[field.kind])
    offers = [field.least, field.most, field.example]
    if field.default:
        offers += [field.default.low, field.default.high]
    text = rng.choice([o for o in offers if o] or ["1"])
    if field.kind in ("integer", "number"):
        return float(text) if "." in text or "e" in text else int(text)
    if field.kind == "ratio" and "%" not in text:
        return float(text)
    if field.least and field.most and rng.random() < 0.3:
        return {"low": field.least, "likely": text, "high": field.most}
    return text


def _put(document: Document, key: str, value: Any) -> None:
    section, _, last = key.rpartition(".")
    table = document.setdefault(section, {}) if section else document
    if isinstance(table, dict):
        table[last] = value


def sound_values(rng: random.Random) -> bytes:
    """Keys set to values their field takes: ends of ranges, other words, keys that do not go together."""
    document = _document(rng)
    form = document.get("mount", {}).get("form")
    for _ in range(rng.choice((1, 1, 2, 3, 6, 15))):
        field = rng.choice(_fields(form))
        _put(document, field.key, _sound(rng, field))
    if rng.random() < 0.3:
        table, key = rng.choice(_places(document))
        del table[key]
    return _write(document)


def scaled(rng: random.Random) -> bytes:
    """Given quantities many times larger or smaller, still with their unit."""
    document = _document(rng)
    for _ in range(rng.choice((1, 2, 4, 10))):
        table, key = rng.choice(_places(document))
        value = table[key]
        if isinstance(value, bool) or not isinstance(value, int | float | str):
            continue
        factor = rng.choice((0.01, 0.1, 0.3, 0.5, 0.8, 1.2, 2, 3, 10, 100))
        if isinstance(value, str):
            number, _, name = value.partition(" ")
            try:
                table[key] = f"{float(number) * factor:.6g} {name}"
            except ValueError:
                continue
        else:
            table[key] = type(value)(value * factor)
    return _write(document)


def crossed(rng: random.Random) -> bytes:
    """Sections of two files, or one file's numbers under another form."""
    document, other = _document(rng), rng.choice(_documents())
    for name in other:
        if rng.random() < 0.4:
            document[name] = copy.deepcopy(other[name])
    if rng.random() < 0.3 and isinstance(document.get("mount"), dict):
        document["mount"]["form"] = rng.choice(list(FORMS))
    return _write(document)


def outline(rng: random.Random) -> bytes:
    """An own outline with corners and holes moved, doubled, crossed or gone."""
    own = [d for d in _documents() if d.get("mount", {}).get("form") == "outline"]
    document = copy.deepcopy(rng.choice(own))
    mount = document["mount"]
    for _ in range(rng.choice((1, 2, 5))):
        lists = [k for k, v in mount.items() if isinstance(v, list) and v]
        if not lists:
            mount["drawing"] = rng.choice(
                (
                    "turf_roller.dxf",
                    "gone.dxf",
                    "loop.dxf",
                    ".",
                    "/dev/zero",
                    "pipe.dxf",
                    "a\0b",
                    "x" * 300,
                )
            )
            break
        entries = mount[rng.choice(lists)]
        at, way = rng.randrange(len(entries)), rng.randrange(6)
        if way == 0:
            entries.insert(rng.randrange(len(entries)), entries[at])
        elif way == 1 and len(entries) > 1:
            del entries[at]
        elif way == 2:
            rng.shuffle(entries)
        elif way == 3:
            entries[at] = rng.choice(
                (
                    "0, 0 mm",
                    "60, 75 mm",
                    "1e308, 0 mm",
                    "60, 75, 1000 mm",
                    "0, 0, 9 mm",
                    "1, 2, 3, 4",
                    ", mm",
                    "nan, 0 mm",
                )
            )
        elif way == 4:
            entries[:] = entries * rng.choice((2, 50, 400))
        else:
            parts = str(entries[at]).split(",")
            parts[0] = f"{rng.uniform(-200, 200):.3f}"
            entries[at] = ",".join(parts)
    return _write(document)


KINDS: dict[str, Callable[[random.Random], bytes]] = {
    "bytes": random_bytes, "cut": cut, "encoding": encoding, "structure": structure, "layout": layout,
    "units": unit, "extreme": extreme, "sound values": sound_values, "scaled": scaled,
    "crossed": crossed, "outline": outline,
}  # fmt: skip
SHARES = (1, 1, 1, 2, 1, 1, 1, 3, 1, 1, 1)  # sound values reach deepest


def drive(number: int, kinds: tuple[str, ...] = ()) -> tuple[str, bytes]:
    """Give the kind and the bytes of one mutated drive file."""
    rng = random.Random(f"drive {number}")
    kind = rng.choice(kinds) if kinds else rng.choices(list(KINDS), SHARES)[0]
    return kind, KINDS[kind](rng)


# ---------------------------------------------------------------- material cards and drawings


@cache
def _cards() -> tuple[tuple[str, bytes], ...]:
    files = sorted(f for f in folder("materials").glob("*.toml"))
    return tuple((f.name, f.read_bytes()) for f in files)


def card(number: int) -> tuple[str, str, bytes]:
    """Give kind, file name and bytes of one mutated material card."""
    rng = random.Random(f"card {number}")
    name, raw = rng.choice(_cards())
    kind = rng.choice(("bytes", "cut", "encoding", "structure", "extreme"))
    if kind in ("bytes", "cut", "encoding"):
        at = rng.randrange(len(raw))
        if kind == "bytes":
            spoilt = bytearray(raw)
            for _ in range(rng.choice((1, 3, 20))):
                spoilt[rng.randrange(len(spoilt))] = rng.choice((rng.randrange(256), *b'"[]{}=0\n'))
            return kind, name, bytes(spoilt)
        if kind == "cut":
            return kind, name, raw[:at]
        way = rng.choice(("utf-16", "utf-32", "cp1252", "utf-8-sig", "nul"))
        spoilt_text = raw.decode() + "# é½−"
        return (
            kind,
            name,
            raw[:at] + b"\0" + raw[at:] if way == "nul" else spoilt_text.encode(way, "replace"),
        )
    document = tomllib.loads(raw.decode())
    table, key = rng.choice(_places(document))
    if kind == "extreme":
        return (
            kind,
            name,
            _spoil(
                document,
                (table, key),
                rng.choice((*EXTREME, '"1e308 MPa"', '"-5 MPa"', '"5"', '"nan"', "[" * 3000)),
            ),
        )
    for _ in range(rng.choice((1, 2))):
        table[key] = _odd(rng, table[key])
        table, key = rng.choice(_places(document))
    if rng.random() < 0.3:
        table.pop(key)
    return kind, name, _write(_quoted_keys(document))


def drawing(number: int) -> tuple[str, bytes]:
    """Give kind and bytes of one mutated DXF drawing."""
    rng = random.Random(f"drawing {number}")
    raw = (folder("examples") / "turf_roller.dxf").read_bytes()
    lines = raw.decode().splitlines()
    kind = rng.choice(("bytes", "cut", "numbers", "lines"))
    if kind == "bytes":
        spoilt = bytearray(raw)
        for _ in range(rng.choice((1, 5, 50))):
            spoilt[rng.randrange(len(spoilt))] = rng.randrange(256)
        return kind, bytes(spoilt)
    if kind == "cut":
        at = rng.randrange(len(raw))
        return kind, raw[:at] + rng.choice((b"", b"\n  0\nEOF\n"))
    for _ in range(rng.choice((1, 4, 20))):
        at = rng.randrange(len(lines))
        if kind == "numbers":
            if "." in lines[at]:
                lines[at] = rng.choice(
                    ("1e308", "-1e308", "nan", "inf", "0.0", "1e-300", "x", "", "-7.5", "400.0")
                )
        elif rng.random() < 0.5:
            lines.insert(at, rng.choice(lines))
        else:
            del lines[at]
    return kind, "\n".join(lines).encode() + b"\n"
