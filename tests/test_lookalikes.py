"""Chains that look alike: readings find their chain, mix-ups are refused, a worn chain is not."""

from __future__ import annotations

import pytest
from click.testing import CliRunner

from conftest import changed, drive_file, toml_text
from mountlimit import cards, chains, lookalikes
from mountlimit.cli import main
from mountlimit.errors import InputError
from mountlimit.lookalikes import Readings
from mountlimit.resolve import resolve

# Ten pitches, roller and inner width as the cards' own sources print them, in mm.
SIZES = {
    "25": (63.5, 3.3, 3.18), "219": (77.74, 4.59, 4.68), "T8F": (80.0, 4.7, 4.8),
    "05B": (80.0, 5.0, 3.0), "35": (95.25, 5.08, 4.77), "06B": (95.25, 6.35, 5.72),
    "40": (127.0, 7.95, 7.85), "41": (127.0, 7.77, 6.25), "428": (127.0, 8.51, 7.75),
    "081": (127.0, 7.75, 3.3), "415": (127.0, 7.77, 4.76), "520": (158.75, 10.16, 6.35),
    "50": (158.75, 10.16, 9.4),
}  # fmt: skip


def sizes(name: str) -> dict[str, str]:
    """Readings of a chain as keys of a drive file."""
    ten, roller, width = SIZES[name]
    return {"chain__ten_pitches": f"{ten} mm", "chain__roller_diameter": f"{roller} mm",
            "chain__inner_width": f"{width} mm"}  # fmt: skip


def readings(name: str) -> Readings:
    """Readings of a chain in metres."""
    ten, roller, width = (v / 1000 for v in SIZES[name])
    return Readings(ten_pitches=ten, roller_diameter=roller, inner_width=width)


def refused(**changes) -> str:
    """The one line a drive is refused with."""
    with pytest.raises(InputError) as error:
        resolve(drive_file(**changes))
    (mistake,) = error.value.mistakes
    return str(mistake)


@pytest.mark.parametrize("name", SIZES)
def test_readings_find_their_chain(name):
    """The nearest card is the chain, or one of the same sizes."""
    best = lookalikes.rank(readings(name))[0]
    assert best.fits
    own = cards.chain(name)
    assert (best.chain.pitch, best.chain.roller_diameter) == (own.pitch, own.roller_diameter)
    assert best.chain.inner_width == pytest.approx(own.inner_width, abs=0.15e-3)


@pytest.mark.parametrize("name", SIZES)
def test_the_right_chain_is_accepted(name):
    """Its own sprockets, and readings a tenth of a millimetre off, say nothing."""
    ten, roller, width = SIZES[name]
    near = {"chain__ten_pitches": f"{ten * 1.0015} mm", "chain__roller_diameter": f"{roller - 0.1} mm",
            "chain__inner_width": f"{width + 0.1} mm"}  # fmt: skip
    drive = resolve(drive_file(chain__type=name, chain__sprockets=name, **near))
    assert not [w for w in drive.warnings if "chain" in w.lower()]


# Chain, sprockets it is put on, what the line says: mix-ups that people report.
MIXED = [
    ("T8F", "219", "1.1 mm out of their seats"),
    ("219", "T8F", "1.1 mm out of their seats"),
    ("05B", "219", "1.1 mm out of their seats"),
    ("05B", "T8F", "does not go on teeth 4.5 mm wide"),
    ("428", "40", "do not seat and ride high"),
    ("428", "420", "do not seat and ride high"),
    ("41", "40", "does not go on teeth 7.3 mm wide"),
    ("420", "40", "does not go on teeth 7.3 mm wide"),
    ("25", "219", "climb the teeth"),
    ("06B", "35", "do not seat and ride high"),
    ("35", "06B", "does not go on teeth 5.3 mm wide"),
    ("520", "50", "does not go on teeth 8.9 mm wide"),
]


@pytest.mark.parametrize(("chain", "cut", "words"), MIXED)
def test_a_chain_on_sprockets_of_another_is_refused(chain, cut, words):
    """One line: the key, both chains, the sizes and what would happen."""
    line = refused(chain__type=chain, chain__sprockets=cut)
    for part in ("test.toml: chain.sprockets", f"chain {cards.chain(chain).designation} on", words):
        assert part in line
    assert "\n" not in line


@pytest.mark.parametrize(("chain", "cut", "words"), MIXED)
def test_readings_of_another_chain_are_refused(chain, cut, words):
    """The same by caliper: the chain in hand beside the one in the file, and which one it is."""
    if chain not in SIZES:
        pytest.skip("no readings of it")
    line = refused(chain__type=cut, **sizes(chain))
    assert words in line
    assert line.startswith("test.toml: chain.")
    assert f"so measures {lookalikes.named(m for m in lookalikes.rank(readings(chain)) if m.fits)}" in line or (
        "or a 219 that is worn out" in line
    )  # fmt: skip


@pytest.mark.parametrize(
    ("chain", "cut", "words"),
    [("40", "41", "seat only in wide-cut teeth"), ("40", "428", "lie loosely"),
     ("50", "520", "more play sideways")],
)  # fmt: skip
def test_a_chain_that_runs_loosely_is_warned_of(chain, cut, words):
    """40 goes on 41 sprockets, on 428 ones with play, a wide chain on narrow teeth."""
    drive = resolve(drive_file(chain__type=chain, chain__sprockets=cut))
    assert any(words in w and "chain.sprockets" in w for w in drive.warnings)


def test_rollers_of_a_lighter_chain_are_warned_of():
    """Readings of a 40 in a drive with 428: loose, and named."""
    drive = resolve(drive_file(chain__type="428", **sizes("40")))
    (said,) = [w for w in drive.warnings if "chain.roller_diameter" in w]
    assert "so measures 40" in said


@pytest.mark.parametrize("percent", [0.5, 1.5, 2.9])
def test_a_worn_chain_is_no_other_chain(percent):
    """It measures long: said, with the value for chain.wear; not said again once given."""
    long = {
        "chain__ten_pitches": f"{127.0 * (1 + percent / 100)} mm",
        "chain__roller_diameter": "7.9 mm",
    }
    drive = resolve(drive_file(**long))
    assert any(f'chain.wear = "{percent} %"' in w for w in drive.warnings)
    drive = resolve(drive_file(**long, chain__wear=f"{percent} %"))
    assert not any("chain.wear" in w for w in drive.warnings)


def test_a_worn_chain_of_another_size_is_told_apart():
    """A 40 worn by 1.5 % in a drive with 428: worn and loose, not a wrong pitch."""
    ten = {**sizes("40"), "chain__ten_pitches": "128.9 mm"}
    (said,) = [w for w in resolve(drive_file(chain__type="428", **ten)).warnings if "roller" in w]
    for part in ("lie loosely", "worn by 1.5 %", "so measures a worn 40"):
        assert part in said


def test_a_new_8_mm_chain_and_a_worn_out_219_measure_the_same():
    """80 mm over ten: both are named, since no reading tells them apart."""
    line = refused(chain__type="219", chain__ten_pitches="80 mm")
    assert "so measures a new 05B or T8F, or a 219 that is worn out" in line
    assert any("1.5 %" in w for w in resolve(drive_file(chain__type="219", chain__ten_pitches="78.9 mm")).warnings)  # fmt: skip


@pytest.mark.parametrize(
    ("bad", "words"),
    [
        ({"chain__sprockets": "44"}, ["chain.sprockets", "no chain called"]),
        ({"chain__ten_pitches": "12.7 mm"}, ["chain.ten_pitches", "40 mm to 600 mm"]),
        ({"chain__ten_pitches": "127"}, ["chain.ten_pitches", "mm"]),
        ({"chain__roller_diameter": "8 kg"}, ["chain.roller_diameter", "length"]),
        ({"chain__inner_width": "0 mm"}, ["chain.inner_width", "1.5 mm to 50 mm"]),
        ({"chain__ten_pitches": "110 mm"}, ["chain.ten_pitches", "no chain of the data fits"]),
        ({"chain__sprockets": "428", "chain__type": "35"}, ["chain.sprockets", "climb the teeth"]),
    ],
)  # fmt: skip
def test_bad_inputs_end_in_one_line(bad, words, tmp_path):
    """Exit status 2 and no traceback."""
    file = tmp_path / "x.toml"
    file.write_text(toml_text(changed(**bad)))
    result = CliRunner().invoke(main, ["check", str(file)])
    assert result.exit_code == 2
    assert len(result.stderr.strip().splitlines()) == 1
    for word in words:
        assert word in result.stderr


def test_other_chains_are_still_compared():
    """What was measured says nothing of the other chains the command `chains` looks at."""
    file = drive_file(chain__sprockets="40", mount__route="sections", **sizes("40"))
    with_other = chains.with_chain(file, cards.chain("428"), 11, 54)
    assert resolve(with_other).chain.chain.designation == "428"


def test_every_chain_of_those_sizes_is_named():
    """08B and 428 have the same sizes and both fit; the stronger grade is not named too."""
    assert "(so measures 08B or 428)" in refused(chain__type="40", **sizes("428"))


def test_nothing_measured_ranks_by_order():
    """Without readings every chain is as near; a subset of chains can be asked."""
    assert [m.chain.id for m in lookalikes.rank(Readings())] == [c.id for c in cards.chains()]
    few = [cards.chain("40"), cards.chain("428")]
    assert [m.chain.id for m in lookalikes.rank(readings("428"), few)] == ["428", "40"]
