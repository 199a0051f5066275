"""Which chain is this: every card's readings name it or its look-alikes; wear, markings, bad input."""

from __future__ import annotations

import json

import pytest
from click.testing import CliRunner

from mountlimit import cards
from mountlimit.cli import main
from mountlimit.errors import InputError, UnknownCard
from mountlimit.identify import identify, read, stamped
from mountlimit.lookalikes import Readings

CHAINS = [c.id for c in cards.chains()]


def of(name: str, grown: float = 0.0) -> Readings:
    """Readings of a card, its length grown by a share."""
    c = cards.chain(name)
    return Readings(ten_pitches=10 * float(c.pitch) * (1 + grown),
                    roller_diameter=float(c.roller_diameter), inner_width=float(c.inner_width))  # fmt: skip


def run(*words: str):
    """Run the command."""
    return CliRunner().invoke(main, ["identify", *words])


def same_sizes(one: str, other: str) -> bool:
    """Whether two cards differ by less than 0.1 mm in all three sizes."""
    a, b = (of(n) for n in (one, other))
    return all(abs(x - y) < 1e-4 for x, y in ((a.pitch, b.pitch), (a.roller_diameter, b.roller_diameter), (a.inner_width, b.inner_width)))  # fmt: skip


@pytest.mark.parametrize("name", CHAINS)
def test_own_readings_name_the_chain_or_its_twins(name):
    """A card's own readings give itself, or a twin with itself among the look-alikes."""
    found = identify(of(name))
    names = [found.best.chain.id, *(r.match.chain.id for r in found.rivals)]
    assert found.fits
    assert name in names
    assert same_sizes(found.best.chain.id, name)


@pytest.mark.parametrize("name", CHAINS)
def test_own_readings_and_marking_name_the_chain(name):
    """With its own marking the card itself is named, and nothing contradicts."""
    found = identify(of(name), name)
    assert found.best.chain.id == name
    assert found.by_marking
    assert not found.contradicted


@pytest.mark.parametrize("name", CHAINS)
def test_what_tells_apart_really_does(name):
    """The further reading stands between the two cards' sizes, and was not yet taken."""
    ten = Readings(ten_pitches=of(name).ten_pitches)
    for rival in identify(ten, name).rivals:
        telling = rival.telling
        assert telling is None or telling.what != "ten pitches"
        if telling is not None:
            low, high = sorted((telling.best, telling.rival))
            assert low < telling.between < high
            assert high - low >= 0.0002 - 1e-12


@pytest.mark.parametrize("name", CHAINS)
def test_roller_reading_settles_what_it_is_said_to_settle(name):
    """Taking the reading that was named puts the rival out."""
    ten = Readings(ten_pitches=of(name).ten_pitches)
    for rival in identify(ten, name).rivals:
        if rival.telling is None or rival.telling.what not in ("roller diameter", "inner width"):
            continue
        both = of(name)
        more = (
            Readings(ten_pitches=ten.ten_pitches, roller_diameter=both.roller_diameter)
            if rival.telling.what == "roller diameter"
            else Readings(ten_pitches=ten.ten_pitches, inner_width=both.inner_width)
        )
        assert rival.match.chain.id not in [r.match.chain.id for r in identify(more, name).rivals]


@pytest.mark.parametrize(("grown", "state"), [(0.0, "new"), (0.007, "worn"), (0.012, "soon"), (0.018, "replace")])  # fmt: skip
def test_worn(grown, state):
    """A lengthened chain is still known, and its wear is the lengthening."""
    found = identify(of("60", grown), "60")
    assert found.best.chain.id == "60"
    assert found.state == state
    assert found.worn == pytest.approx(grown, abs=1e-9)


def test_worn_219_or_new_scooter_chain():
    """80 mm over ten pitches is a new T8F or a 219 worn out; both are said."""
    found = identify(Readings(ten_pitches=0.080, roller_diameter=0.00468))
    names = {found.best.chain.id, *(r.match.chain.id for r in found.rivals)}
    assert {"T8F", "219"} <= names


def test_marking_contradicts():
    """Rollers of 8.5 mm are none of a 40: the readings are believed."""
    found = identify(Readings(ten_pitches=0.127, roller_diameter=0.0085), "40")
    assert found.contradicted
    assert found.best.chain.id in ("08B", "428")
    shown = run("--ten-pitches", "127 mm", "--roller", "8.5 mm", "--marking", "40")
    assert shown.exit_code == 0
    assert "marking does not agree" in shown.output
    assert "rollers 0.55 mm too large" in shown.output


@pytest.mark.parametrize(
    ("mark", "card"),
    [("RS40", "40"), ("#40", "40"), ("520VX3", "520"), ("428H", "428H"), ("08B-1", "08B"), ("25h", "25H"), ("50 SS", "50")],
)  # fmt: skip
def test_stampings(mark, card):
    """What stands before and after the number is left out and said."""
    assert stamped(mark)[0].id == card


def test_two_strands_are_said():
    """A chain of two strands is not passed off as one."""
    assert "2 strands" in stamped("60-2")[1]


def test_unknown_marking_beside_readings_is_left_out():
    """The answer still comes; the marking is named as left out."""
    found = identify(of("25"), "ZQ99")
    assert found.marked is None
    assert "left out" in found.marking_note
    assert found.fits


def test_nothing_fits():
    """Eleven pitches counted as ten are seen; a far-off reading names its nearest and why not."""
    eleven = identify(Readings(ten_pitches=0.1397, roller_diameter=0.00795))
    assert not eleven.fits
    assert eleven.counted is not None
    assert eleven.counted[1] == 11
    assert eleven.counted[0].id == "40"
    shown = run("--ten-pitches", "108 mm", "--roller", "14 mm")
    assert shown.exit_code == 0
    assert "No chain known here fits" in shown.output
    assert "type =" not in shown.output
    past = run("--ten-pitches", "132 mm", "--roller", "8.5 mm", "--inner-width", "7.75 mm")
    assert "worn far past use" in past.output


def test_line_and_json():
    """The line to copy is that of the best chain, in words and in the record."""
    words = ("--ten-pitches", "5 in", "--inner-width", "7.9 mm", "--roller", "7.9 mm", "--marking", "40")  # fmt: skip
    shown = run(*words)
    assert shown.exit_code == 0
    assert 'type = "40"' in shown.output
    data = json.loads(run(*words, "--json").output)
    assert data["best"]["chain"] == "40"
    assert data["line"] == 'type = "40"'
    assert data["best"]["lengthened"] == pytest.approx(0.0, abs=1e-12)
    assert data["look_alikes"][0]["tell_apart"]["measure"] == "thickness of a link plate"


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ((), "nothing to go by"), (("--marking", "  "), "nothing to go by"), (("--roller", "8"), "has no unit"),
        (("--ten-pitches", "12.7 mm"), "measure over ten pitches"), (("--inner-width", "8 kg"), "--inner-width"),
        (("--marking", "4OH"), "did you mean"), (("--roller", "-8 mm"), "--roller"), (("--roller", "nan mm"), "--roller"),
    ],
)  # fmt: skip
def test_bad_input_is_one_line(words, said):
    """One line and status 2."""
    shown = run(*words)
    lines = shown.output.strip().splitlines()
    assert shown.exit_code == 2
    assert len(lines) == 1
    assert said in lines[0]


def test_every_mistake_is_said():
    """Two bad readings give two lines."""
    with pytest.raises(InputError) as error:
        read("12.7 mm", "", "8", "")
    assert len(error.value.mistakes) == 2
    with pytest.raises(UnknownCard):
        identify(Readings(), "ZQ99")


@pytest.mark.parametrize("name", CHAINS)
def test_every_marking_alone_prints(name):
    """A marking alone is answered with the sizes to look for."""
    shown = run("--marking", name)
    assert shown.exit_code == 0, shown.output
    assert "A stamp alone is no proof" in shown.output
    assert f'type = "{name}"' in shown.output


def test_reading_at_the_edge_of_the_caliper_counts():
    """7.9 mm is 0.15 mm over the 7.75 mm of 08B: just inside what a caliper may be off."""
    found = identify(*read("127 mm", "7.9 mm", "8.5 mm", ""))
    assert found.fits
    assert found.best.chain.id in ("08B", "428")
