"""`mountlimit sure`: bands against closed forms, settling, the same again, and what is printed."""

from __future__ import annotations

import json
import math

import coverage_run
import numpy as np
import pytest
from click.testing import CliRunner
from scipy import integrate, stats

from conftest import changed, drive_file, toml_text
from mountlimit import limits, sampling, sure
from mountlimit.cli import main
from mountlimit.errors import UnknownCard

KEY = {"hub__key_yield": {"low": "260 MPa", "likely": "300 MPa", "high": "400 MPa"},
       "motor__torque_scatter": {"low": "90 %", "likely": "100 %", "high": "105 %"},
       "duty__starting_factor": 2.0, "chain__slack": "2 %"}  # fmt: skip


def log_moments(low, likely, high):
    """Mean and variance of the logarithm of a triangular number, by quadrature."""
    known = stats.triang((likely - low) / (high - low), loc=low, scale=high - low)
    mean = integrate.quad(lambda x: math.log(x) * known.pdf(x), low, high, points=[likely])[0]
    square = integrate.quad(lambda x: math.log(x) ** 2 * known.pdf(x), low, high, points=[likely])[
        0
    ]
    return mean, square - mean**2


def test_a_product_of_inputs_spreads_as_its_logarithms_add():
    """The key: limit = strength over torque, so means and variances of logarithms add.

    Analytic propagation with scipy's triangular distribution and quadrature; 40 000 samples are
    within four standard errors of mean and standard deviation.
    """
    found = limits.find(drive_file(**KEY))
    taken = sampling.take(found, 40_000)
    sample = np.log(taken.gives[:, taken.parts.index("key")].astype(float))
    likely = next(x.gives for x in found.limits if x.check.name == "key")
    (m1, v1), (m2, v2) = log_moments(260, 300, 400), log_moments(0.9, 1.0, 1.05)
    mean = math.log(likely) + (m1 - math.log(300)) - m2
    spread = math.sqrt(v1 + v2 + sampling.MODEL_ERROR**2)
    assert np.all(np.isfinite(sample))
    assert sample.mean() == pytest.approx(mean, abs=4 * spread / math.sqrt(40_000))
    assert sample.std() == pytest.approx(spread, rel=4 / math.sqrt(2 * 40_000))


def test_ends_of_the_band_settle_with_the_root_of_the_samples():
    """Spread of the 5 of 100 end over 40 seeds: 500 against 8000 samples, four times; and the error
    stated for one run is that spread within a factor 2."""
    tried = sampling.tried(limits.find(drive_file()))
    ends = {}
    for count in (500, 8000):
        first = [sampling.drawn(tried, count, seed).first_gives for seed in range(40)]
        ends[count] = np.std([np.quantile(f, 0.05) for f in first], ddof=1)
    assert ends[500] / ends[8000] == pytest.approx(4, rel=0.35)
    first = sampling.drawn(tried, 8000, 99).first_gives
    stated = sure._sampling_error(first, np.ones(len(first)))[0]
    assert 0.5 < stated / ends[8000] < 2


def test_the_same_seed_gives_the_same_answer():
    """Two runs alike to the last digit; another seed another sample."""
    one, two, other = (sure.sure(drive_file(), 2000, seed) for seed in (5, 5, 6))
    assert one.gives == two.gives
    assert one.gives != other.gives


def test_true_limits_lie_in_the_band():
    """300 synthetic drives of one file, drawn without the sampler's code: 90 of 100 within three
    standard errors."""
    found = limits.find(drive_file())
    band = sure.of(found, sampling.take(found)).gives
    inside = [band.low <= t <= band.high for t in coverage_run.truths(found, 300, 11)]
    assert np.mean(inside) == pytest.approx(0.9, abs=3 * math.sqrt(0.09 / 300))


def test_the_long_run():
    """2000 synthetic drives of every mount form: 88 to 92 of 100 lie in their band."""
    known = json.loads(coverage_run.RESULTS.read_text())
    inside, count = coverage_run.covered(known["drives"])
    assert count >= 2000
    assert 0.88 <= inside / count <= 0.92
    assert len({d["form"] for d in known["drives"] if d["truths"]}) == 16


def test_measuring_the_worst_guess_does_what_was_said():
    """Give the input that was said to matter most as a number: the band is as narrow as promised."""
    guess = {
        "hub__key_yield": {"low": "150 MPa", "likely": "300 MPa", "high": "500 MPa"},
        "duty__starting_factor": 2.0,
    }
    before = sure.sure(drive_file(**guess), part="key")
    most = before.measures[0]
    assert most.range.key == "hub.key_yield"
    after = sure.sure(drive_file(**guess | {"hub__key_yield": "300 MPa"}), part="key")
    width = [math.log(a.gives.high / a.gives.low) for a in (before, after)]
    assert width[1] / width[0] == pytest.approx(most.left, abs=0.1)


def test_chances_of_being_first_make_one():
    """Something gives first in every sample in which anything gives."""
    found = limits.find(drive_file())
    taken = sampling.take(found)
    answer = sure.of(found, taken)
    assert sum(p.first for p in answer.parts) == pytest.approx(
        np.mean(np.isfinite(taken.first_gives)), abs=1e-9
    )
    assert answer.parts[0].first == max(p.first for p in answer.parts)


def test_safe_stands_below_the_samples():
    """With every guess at its bad end *safe to* is under nearly all samples' safe currents."""
    assert sure.sure(drive_file()).under_stated < 0.01


def test_unknown_part():
    """A name that gives nowhere is refused with what there is."""
    with pytest.raises(UnknownCard, match="motor_shaft"):
        sure.sure(drive_file(), 1000, part="motor_shft")


def run(tmp_path, data, *arguments):
    file = tmp_path / "drive.toml"
    file.write_text(toml_text(data))
    return CliRunner().invoke(main, ["sure", str(file), *arguments])


def test_printed_and_json(tmp_path):
    """The first line answers; JSON has the same band."""
    text = run(tmp_path, changed()).output
    assert "in 90 of 100 cases like yours" in text.replace("\n", " ")
    assert "not a guarantee" in text.replace("\n", " ")
    record = json.loads(run(tmp_path, changed(), "--json").output)
    assert record["schema"] == "mountlimit-sure-1"
    assert record["gives"]["low"] < record["gives"]["middle"] < record["gives"]["high"]
    assert record["settled"][-1]["gives"] == record["gives"]


def test_mistakes(tmp_path):
    """Too few samples, a broken file: one line, status 2."""
    assert run(tmp_path, changed(), "--samples", "10").exit_code == 2
    result = run(tmp_path, changed(mount__thickness="8"))
    assert result.exit_code == 2
    assert "mount.thickness" in result.output
