"""The built wheel, installed away from the source tree, carries its tables and patterns."""

import json
import os
import subprocess
import sys
import sysconfig
import venv
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]


def run(*command: str | Path, cwd: Path) -> subprocess.CompletedProcess[str]:
    clean = {key: value for key, value in os.environ.items() if not key.startswith(("PYTHON", "CALMLARDER", "COV"))}
    return subprocess.run(
        [str(part) for part in command], cwd=cwd, env=clean, capture_output=True, text=True, check=False
    )


@pytest.fixture(scope="module")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A clean environment with the wheel in it; the libraries it needs are lent by the test environment."""
    folder = tmp_path_factory.mktemp("wheel")
    built = run(sys.executable, "-m", "pip", "wheel", "--no-deps", "--quiet", "-w", folder, ROOT, cwd=folder)
    assert built.returncode == 0, built.stderr
    wheel = next(folder.glob("calmlarder-*.whl"))
    venv.create(folder / "env", with_pip=False)
    python = folder / "env" / ("Scripts" if os.name == "nt" else "bin") / "python"
    into = ("--python", python, "install", "--no-deps", "--quiet", wheel)
    done = run(sys.executable, "-m", "pip", *into, cwd=folder)
    assert done.returncode == 0, done.stderr
    site = run(python, "-c", "import sysconfig; print(sysconfig.get_path('purelib'))", cwd=folder).stdout.strip()
    lent = {sysconfig.get_path("purelib"), sysconfig.get_path("platlib")}
    (Path(site) / "lent.pth").write_text("\n".join(lent) + "\n", encoding="utf-8")
    return python


def test_tables_travel_with_the_wheel(installed: Path, tmp_path: Path) -> None:
    script = (
        "import calmlarder\nfrom calmlarder.tables.places import shipped\n"
        "print(calmlarder.__file__)\nprint(shipped('ingredient_tables'))\nprint(shipped('recipes'))"
    )
    done = run(installed, "-c", script, cwd=tmp_path)
    assert done.returncode == 0, done.stderr
    env = str(installed.parents[1])
    assert all(line.startswith(env) for line in done.stdout.split()), done.stdout


def test_the_main_job_runs_from_the_wheel(installed: Path, tmp_path: Path) -> None:
    done = run(installed.parent / "calmlarder", "demo", "--json", cwd=tmp_path)
    assert done.returncode == 0, done.stderr
    answer = json.loads(done.stdout)
    assert answer["status"] == "proven"
    assert answer["dinners"][0]["uses"]
