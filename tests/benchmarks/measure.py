"""Makes tests/benchmarks/results.json and the README's table of it: `python tests/benchmarks/measure.py`.

CPU time, not the clock's (`process_time` inside, the children's own time for whole commands): the
machine may be busy. Everything is taken in turn, round after round, and the least of the rounds counts;
all figures are ratios within the one run. Needs the extra `solid`. About a minute of an idle core a round.
`--more check help ...` adds rounds of those commands to what is stored, of the same versions.
"""

from __future__ import annotations

import argparse
import gc
import importlib.metadata
import json
import os
import platform
import resource
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

os.environ.update(
    dict.fromkeys(("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"), "1")
)
sys.path[:0] = [str(Path(__file__).parents[1] / "solid"), str(Path(__file__).parents[1])]

import numpy as np  # noqa: E402
from stairs import stairs  # noqa: E402

import update_benchmark_table  # noqa: E402
from mountlimit import limits, plate_route, sampling, sure  # noqa: E402
from mountlimit.cards import folder  # noqa: E402
from mountlimit.drivefile import read  # noqa: E402
from mountlimit.plates import solve  # noqa: E402
from mountlimit.resolve import resolve  # noqa: E402

HERE = Path(__file__).parent
RESULTS = HERE / "results.json"
NAME = "orchard_barrow"
EXAMPLE = str(folder("examples") / f"{NAME}.toml")
MATERIALS = ("al6061_t6", "s235", "pom_c")
SWEEP = """
import sys
import numpy as np
from mountlimit import cards, crossings, limits, quick
from mountlimit.drivefile import read
from mountlimit.thickness import with_material
from mountlimit.thinner import Sweep

file = read(sys.argv[1])
base = limits.find(file)
for name in sys.argv[2:]:
    edited = with_material(file, cards.material(name))
    sweep = Sweep(edited, quick.safe_ends(base), crossings.grid(300.0), 0.05)
    assert len(sweep.points(np.geomspace(0.002, 0.049, 40))) == 40
"""  # 40 thicknesses of three materials
MOUNT = "strap"  # of tests/solid
SIZES = (0.013, 2, 0.003)  # its solid: bulk, layers, edge; 5 % off in tilt, the plates 4 %
SAMPLES = (30_000, 100_000, 300_000)
FACETS = (2, 4, 8)
MESH = (0.010, 0.007, 0.005, 0.0035)  # m
MESH_OF_STAIRS = 0.012


def commands(out: Path) -> dict[str, list[str]]:
    """Give the words of every process that is measured."""
    materials = [word for name in MATERIALS for word in ("--material", name)]
    ours = {
        "help": ["--help"],
        "check": ["check", EXAMPLE],
        "thickness": ["thickness", EXAMPLE, "--for", "30A", *materials],
        "sure": ["sure", EXAMPLE],
        "report": ["report", EXAMPLE, "-o", str(out / "sheet.html")],
    }
    own = {"interpreter": ["-c", "pass"], "120 thicknesses": ["-c", SWEEP, EXAMPLE, *MATERIALS]}
    return own | {k: ["-m", "mountlimit", *v] for k, v in ours.items()}


def child(words: list[str]) -> float:
    """Give the CPU seconds of one process."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    done = subprocess.run([sys.executable, *words], capture_output=True)
    assert done.returncode in (0, 1), done.stderr
    assert b"Traceback" not in done.stderr, done.stderr
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def inside(call: Callable[[], Any]) -> float:
    """Give the CPU seconds of a call, with what lies about swept up before."""
    gc.collect()
    began = time.process_time()
    call()
    return time.process_time() - began


def least(jobs: dict[str, Callable[[], float]], rounds: int) -> dict[str, float]:
    """Give the least time of each job, the jobs taken in turn."""
    found = {name: float("inf") for name in jobs}
    for number in range(rounds):
        for name, job in jobs.items():
            found[name] = min(found[name], job())
        print(
            f"  round {number + 1}: " + ", ".join(f"{k} {v:.3g} s" for k, v in found.items()),
            flush=True,
        )
    return found


def exponent(steps: dict[float, float]) -> float:
    """Give the exponent of growth: slope of the logarithms by least squares."""
    x, y = np.log(list(steps)), np.log(list(steps.values()))
    return float(np.polyfit(x, y, 1)[0])


def processes(rounds: int, names: list[str]) -> dict[str, float]:
    """Whole commands, files and imports in the cache of the system."""
    with tempfile.TemporaryDirectory() as out:
        jobs = {k: lambda w=w: child(w) for k, w in commands(Path(out)).items() if k in names}
        return least(jobs, rounds)


def solid_of_the_same_mount(rounds: int) -> dict[str, Any]:
    """A mount of tests/solid as plates and as solid elements, one load each, contact settled."""
    from direct_solver import solver_name
    from solid_mesh import Sizes, build
    from solid_model import SolidModel
    from solid_mounts import LOADS, MOUNTS, sprocket

    model = MOUNTS[MOUNT]()
    load, point = np.r_[LOADS[MOUNT]["along"], 0.0, 0.0, 0.0], sprocket(model)
    size: dict[str, int] = {}

    def plates() -> None:
        solution = solve(model)
        solution.response(load, point)
        size["triangles"] = len(solution.system.mesh.triangles)

    def solid() -> None:
        mesh = build(model, Sizes(*SIZES))
        SolidModel(model, mesh).solve(load, point)
        size["tetrahedra"] = len(mesh.tets)

    plates()
    times = least({"plates": lambda: inside(plates), "solid": lambda: inside(solid)}, rounds)
    return {"mount": MOUNT, "solver": solver_name(), "seconds": times, **size}


def samples(rounds: int) -> dict[float, float]:
    """Samples drawn and everything read off them, the fit already made."""
    found = limits.find(read(EXAMPLE))
    tried = sampling.tried(found)
    jobs = {
        str(n): lambda n=n: inside(lambda: sure.of(found, sampling.drawn(tried, n)))
        for n in SAMPLES
    }
    return {float(n): t for n, t in least(jobs, rounds).items()}


def meshes(rounds: int) -> dict[float, float]:
    """The example's mount, finer and finer: time by the number of triangles."""
    model = plate_route.model_of(resolve(read(EXAMPLE)))
    count = {size: len(solve(model, size).system.mesh.triangles) for size in MESH}
    times = least(
        {str(size): lambda s=size: inside(lambda: solve(model, s)) for size in MESH}, rounds
    )
    return {float(count[size]): times[str(size)] for size in MESH}


def facets(rounds: int) -> dict[float, float]:
    """Stairs of more and more plates, all alike, meshed alike: time by the number of plates."""
    models = {n: stairs(n) for n in FACETS}
    jobs = {str(n): lambda m=m: inside(lambda: solve(m, MESH_OF_STAIRS)) for n, m in models.items()}
    return {float(n): t for n, t in least(jobs, rounds).items()}


def versions() -> dict[str, str]:
    """Give the versions that a figure depends on."""
    names = ("numpy", "scipy", "matplotlib", "scikit-fem")
    return {"python": platform.python_version()} | {n: importlib.metadata.version(n) for n in names}


def measured(rounds: int) -> dict[str, Any]:
    """Everything, once."""
    print("whole commands")
    names = list(commands(HERE))
    whole = processes(rounds, names)
    print("the same mount in solid elements")
    solid = solid_of_the_same_mount(max(2, rounds // 2))
    grown = {}
    for name, job in (("samples", samples), ("triangles", meshes), ("plates", facets)):
        print(f"growth with {name}")
        steps = job(max(3, rounds // 2))
        grown[name] = {
            "seconds": {str(n): t for n, t in steps.items()},
            "exponent": exponent(steps),
        }
    return {
        "made by": "python tests/benchmarks/measure.py", "example": NAME, "versions": versions(),
        "cpu seconds": whole, "rounds": dict.fromkeys(names, rounds), "solid": solid, "growth": grown,
    }  # fmt: skip


def more(record: dict[str, Any], names: list[str], rounds: int) -> dict[str, Any]:
    """Add rounds of some commands to a stored record."""
    if record["versions"] != versions():
        sys.exit("other versions than those stored: measure everything")
    for name, seconds in processes(rounds, names).items():
        record["cpu seconds"][name] = min(record["cpu seconds"][name], seconds)
        record["rounds"][name] += rounds
    return record


def main() -> None:
    words = argparse.ArgumentParser(description=__doc__)
    words.add_argument("--rounds", type=int, default=5)
    words.add_argument("--more", nargs="+", choices=list(commands(HERE)))
    given = words.parse_args()
    if given.more:
        record = more(json.loads(RESULTS.read_text("utf-8")), given.more, given.rounds)
    else:
        record = measured(given.rounds)
    RESULTS.write_text(json.dumps(record, indent=1) + "\n", encoding="utf-8")
    update_benchmark_table.write()


if __name__ == "__main__":
    main()
