"""A clip link takes its share off the strength of the chain."""

from __future__ import annotations

import pytest

from conftest import drive_file
from mountlimit import evaluate, limits
from mountlimit.checks import BY_NAME
from mountlimit.errors import InputError
from mountlimit.resolve import resolve

CHECKS = ("chain_static", "chain_fatigue")


@pytest.fixture(scope="module")
def found():
    """Limits without a word of the link, riveted and with a clip."""
    files = {"unsaid": {}, "rivet": {"chain__link": "rivet"}, "clip": {"chain__link": "clip"}}
    return {
        name: {x.check.name: x for x in limits.find(drive_file(**c)).limits}
        for name, c in files.items()
    }


@pytest.mark.parametrize("name", CHECKS)
@pytest.mark.parametrize(("end", "share"), [("low", 0.7), ("likely", 0.8), ("high", 1.0)])
def test_share_of_the_strength(name, end, share):
    """20 % less fatigue strength, 0 to 20 % by the table and up to 30 % by one maker."""
    file = drive_file(chain__link="clip")
    listed = next(r for r in resolve(file).ranges if r.key == "chain.link")
    clipped = resolve(file, {"chain.link": getattr(listed, end)})
    whole = resolve(drive_file())
    a, b = (evaluate.governing(d, BY_NAME[name], 60.0, "safe") for d in (clipped, whole))
    assert a.row.capacity / b.row.capacity == pytest.approx(share, rel=1e-12)
    assert a.row.demand == b.row.demand
    assert a.row.station == "clip link"


@pytest.mark.parametrize("name", CHECKS)
def test_a_clip_lowers_the_safe_current_and_nothing_else_does(found, name):
    """The safe current takes the low end; a riveted chain is what no word means."""
    assert found["clip"][name].safe < 0.72 * found["rivet"][name].safe
    assert found["clip"][name].ends["chain.link"] == "low"
    assert found["unsaid"][name].safe == found["rivet"][name].safe
    others = set(found["clip"]) - set(CHECKS)
    for other in others:
        assert found["clip"][other].safe == pytest.approx(found["rivet"][other].safe, rel=1e-9)


def test_taken_for_granted_is_said():
    """Without a word a riveted link is taken for granted, and listed."""
    assert ("chain.link", "rivet") in resolve(drive_file()).words
    assert "chain.link" not in dict(resolve(drive_file(chain__link="clip")).words)


def test_unknown_link_is_refused():
    """A word that is none of the two."""
    with pytest.raises(InputError, match="rivet, clip"):
        drive_file(chain__link="cranked")
