"""The frame member in a whole drive: directions, the warning, what is assumed, bad input."""

from __future__ import annotations

from typing import Any

import pytest

from conftest import angle_file, drive_file
from mountlimit import limits
from mountlimit.errors import InputError
from mountlimit.resolve import resolve

BEAMS = {"mount__route": "sections", "mount__warping_held": 1}
KNOWN = {
    "frame__size": "40 mm", "frame__wall": "3 mm", "frame__span": "450 mm", "frame__place": 0.5,
}  # fmt: skip


def alignment(pull: str, **changes: Any) -> float:
    """Give the safe current of the chain line."""
    found = limits.find(
        drive_file(chain__pull=pull, **{**BEAMS, **KNOWN, **changes}), ["alignment"]
    )
    return min(x.safe for x in found.limits if x.check.name == "alignment")


@pytest.mark.parametrize("pull", ["across", "away"])
def test_softer_members_lower_the_alignment_limit(pull: str) -> None:
    usual = alignment(pull)
    assert alignment(pull, frame__span="900 mm") < usual
    assert alignment(pull, frame__wall="1.5 mm") < usual
    assert alignment(pull, frame__member="angle") < usual
    assert alignment(pull, frame__member="flat bar") < usual
    assert alignment(pull, frame__member="channel") < usual
    deeper = alignment(pull, frame__member="rectangular tube", frame__depth="60 mm")
    assert deeper > usual


def test_hinged_ends_lower_the_limit_and_an_end_is_stiffer_in_twist() -> None:
    assert alignment("across", frame__ends="hinged") < alignment("across")
    assert alignment("away", frame__place=0.1) > alignment("away")


def test_an_unknown_way_round_is_never_the_better_one() -> None:
    channel = {"frame__member": "channel", "frame__depth": "20 mm"}
    for pull in ("across", "away"):
        known = [alignment(pull, **channel, frame__open_side=s) for s in ("away", "side")]
        assert alignment(pull, **channel) <= min(known) * (1 + 1e-9)


def test_an_open_section_is_warned_of_in_plain_words() -> None:
    for name, help_ in (
        ("angle", "plate welded"),
        ("channel", "plate welded"),
        ("flat bar", "closed tube"),
    ):
        (said,) = [
            w for w in resolve(drive_file(frame__member=name)).warnings if "open section" in w
        ]
        assert "second member" in said
        assert help_ in said
    assert not [w for w in resolve(drive_file()).warnings if "open section" in w]


def test_the_warning_counts_a_common_angle_as_sixty_to_seventy_times_softer() -> None:
    """Computed beforehand: 40 x 40 x 4 angle, about 60 times softer than a 40 x 40 x 2 square tube."""
    file = drive_file(frame__member="angle", frame__size="40 mm", frame__wall="4 mm")
    (said,) = [w for w in resolve(file).warnings if "open section" in w]
    times = float(said.split(" times less")[0].split()[-1])
    assert 60 <= times <= 72


def test_a_place_off_the_middle_is_listed_where_it_can_weigh() -> None:
    def place(**changes: Any) -> Any:
        return next(r for r in resolve(drive_file(**changes)).ranges if r.key == "frame.place")

    assert (place().low, place().high) == (0.5, 0.5)
    for changes in ({"frame__member": "angle"}, {"frame__ends": "hinged"}):
        assert (place(**changes).low, place(**changes).high) == (0.2, 0.8)


def test_an_angle_mount_lies_on_the_member_too() -> None:
    soft = limits.find(angle_file(frame__member="angle", **BEAMS, **KNOWN))
    stiff = limits.find(angle_file(frame__member="rigid", **BEAMS))
    for one, other in ((soft, stiff),):
        a, b = (min(x.safe for x in f.limits if x.check.name == "alignment") for f in (one, other))
        assert a < b


@pytest.mark.parametrize(
    ("frame", "words"),
    [
        ({"depth": "60 mm"}, ["frame.depth", "square tube", "rectangular tube"]),
        ({"member": "rectangular tube"}, ["frame.depth", "missing"]),
        ({"member": "flat bar", "depth": "60 mm"}, ["frame.depth", "flat bar"]),
        ({"place": 1.2}, ["frame.place", "0.01 to 0.99"]),
        ({"place": 0}, ["frame.place", "0.01 to 0.99"]),
        ({"ends": "loose"}, ["frame.ends", "held, hinged"]),
        ({"open_side": "away"}, ["frame.open_side", "channel", "square tube"]),
        ({"member": "chanel"}, ["frame.member", "channel"]),
        ({"size": "40 mm", "wall": "21 mm"}, ["frame.wall", "thicker than half"]),
        ({"member": "angle", "size": "40 mm", "depth": "20 mm", "wall": "20 mm"}, ["frame.wall", "leg"]),
        ({"member": "channel", "size": "40 mm", "wall": "20 mm"}, ["frame.wall", "fills"]),
        ({"member": "flat bar", "size": "20 mm", "wall": "25 mm"}, ["frame.wall", "thicker"]),
    ],
)  # fmt: skip
def test_bad_input_is_one_clear_line(frame: dict[str, Any], words: list[str]) -> None:
    changes = {f"frame__{k}": v for k, v in frame.items()}
    with pytest.raises(InputError) as caught:
        resolve(drive_file(**changes))
    assert len(caught.value.mistakes) == 1
    line = str(caught.value.mistakes[0])
    for word in words:
        assert word in line
