"""What follows when a part gives, and in which order to see to it."""

from __future__ import annotations

from io import StringIO

import pytest
from rich.console import Console

from conftest import drive_file
from mountlimit import consequence
from mountlimit.assess import assess
from mountlimit.checks import BY_NAME, CHECKS
from mountlimit.errors import InputError
from mountlimit.fields import MACHINES
from mountlimit.report import record, text
from mountlimit.resolve import resolve

WEAK = {"mount__thickness": "4 mm", "current__wanted": "400 A"}


def of(name, machine=None):
    """The consequence of one check on a machine."""
    changes = {} if machine is None else {"use__machine": machine}
    return consequence.of(BY_NAME[name], resolve(drive_file(**changes)))


@pytest.mark.parametrize("machine", [None, *MACHINES])
@pytest.mark.parametrize("check", CHECKS, ids=lambda c: c.name)
def test_every_check_has_one_on_every_machine(check, machine):
    """A rank from 1 to 3 and words for it."""
    found = of(check.name, machine)
    assert found.rank in (1, 2, 3)
    assert len(found.words) > 5


def test_a_chain_off_on_two_wheels_can_lock_the_wheel():
    """The same failure stops a machine that stands still, and lets a held load go."""
    assert of("alignment", "two wheels in line").rank == 1
    assert "lock" in of("alignment", "two wheels in line").words
    assert of("alignment", "stands still").rank == 2
    assert of("alignment", "holds a load").rank == 1
    assert of("alignment").rank == 1  # not told: the worst of them


def test_a_sheared_key_only_hurts_where_a_load_hangs():
    """Without a chain off, drive and motor brake are gone."""
    assert of("key", "two wheels in line").rank == 2
    assert of("key", "holds a load").rank == 1
    assert "runs back" in of("key", "holds a load").words


def test_bearings_give_notice_on_every_machine():
    """A growl comes before the end."""
    assert {of("front_bearing", m).rank for m in (None, *MACHINES)} == {3}


def test_a_hanging_load_is_never_ranked_below_a_standing_machine():
    """Every part of a winch is at least as urgent as of a conveyor."""
    for check in CHECKS:
        assert of(check.name, "holds a load").rank <= of(check.name, "stands still").rank


def printed(file):
    """The text of a check."""
    console = Console(file=StringIO(), width=200)
    text.write(assess(file), console)
    return console.file.getvalue()


def test_the_report_says_it_and_puts_the_worst_first():
    """The passed limits stand by rank, with what follows below them."""
    found = printed(drive_file(**WEAK, use__machine="two wheels in line"))
    after = found[found.index("At the 400 A you want") :]
    assert after.index("What can hurt you at once") < after.index("What gives notice")
    assert "you fall" in found
    # the chain line (rank 1) stands above the front bearing (rank 3), whatever their currents
    table = after[: after.index("What can hurt")]
    assert table.index("chain line") < table.index("front bearing")


def test_the_record_has_it():
    """Rank and words of every limit."""
    answer = assess(drive_file(use__machine="stands still"))
    for limit in record.record(answer)["limits"]:
        expected = consequence.of(BY_NAME[limit["check"]], answer.drive)
        assert limit["consequence"]["rank"] == expected.rank
        assert limit["consequence"]["words"] == expected.words


def test_a_machine_nobody_knows_is_refused():
    """One line with the choices."""
    with pytest.raises(InputError) as caught:
        resolve(drive_file(use__machine="two wheels"))
    assert "use.machine = 'two wheels'" in str(caught.value)
    assert "two wheels in line" in str(caught.value)


def test_only_what_stands_is_spared_the_knocks_of_a_vehicle():
    """5 g at worst, 3 g for a machine that says it stands; what is not told counts as a vehicle."""
    for machine in (None, *MACHINES):
        drive = resolve(drive_file(use__machine=machine))
        knock = next(r for r in drive.ranges if r.key == "duty.bump")
        worst = 3.0 if machine in ("stands still", "holds a load") else 5.0
        assert knock.high == pytest.approx(worst * 9.80665), machine
        given = resolve(drive_file(use__machine=machine, duty__bump="7 g"))
        assert float(given.duty.bump) == pytest.approx(7 * 9.80665)
