"""Tables from elsewhere: whatever stands in them is bounded, cleaned, and said by file and line; nothing hangs."""

import contextlib
import os
import re
import subprocess
import sys
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest

from calmlarder.checks.tables import figures_of, foods_of, mixtures, taken_apart
from calmlarder.cli import main
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.tables.check import check_tables
from calmlarder.tables.load import load_tables
from calmlarder.tables.mine import Called, Part, made_food
from calmlarder.tables.mixture import DEEPEST
from calmlarder.tables.places import shipped

TABLES = shipped("ingredient_tables")
FOODS = (TABLES / "foods.csv").read_text(encoding="utf-8").splitlines()
HEADER = "food,part,grams,source,note\n"
STEERS = "\x1b[31mred\x1b]0;title\x07\x9b2J\u202e"
PLAIN = re.compile(r"[\x00-\x09\x0b-\x1f\x7f-\x9f\u202a-\u202e\ud800-\udfff]")  # control and direction signs


def foods(folder: Path, names: list[str]) -> None:
    """Foods like salt, under these ids."""
    salt = next(line for line in FOODS if line.startswith("salt,"))
    rows = [salt.replace("salt,salt,", f"{name},{name.replace('-', ' ')},", 1) for name in names]
    (folder / "foods.csv").write_text("\n".join([FOODS[0], *rows]) + "\n", encoding="utf-8")


def told(folder: Path) -> list[str]:
    """What stops the tables from being loaded, the same as what the check of the tables says first."""
    with pytest.raises(CannotGoOn) as stop:
        load_tables([TABLES, folder])
    first = [str(problem) for problem in stop.value.problems]
    assert [str(problem) for problem in check_tables([TABLES, folder])[1]][: len(first)] == first
    return first


@pytest.mark.parametrize(
    ("table", "row", "where"),
    [
        ("mixtures", "gomasio,salt,1e999,own_recipe,", "mixtures.csv:2:3: grams: `1e999`"),
        ("mixtures", "gomasio,salt,1e-999,own_recipe,", "mixtures.csv:2:3: grams: `1e-999`"),
        ("mixtures", f"gomasio,salt,{'9' * 3000},own_recipe,", "mixtures.csv:2:3: grams: `9999"),
        ("fermentables", "kale,gos,1e-400,,assumed,by_nature,,a test", "fermentables.csv:2:3: g_per_100g"),
        ("fermentables", "kale,gos,NaN,,assumed,by_nature,,a test", "fermentables.csv:2:3: g_per_100g"),
        ("measures", "kale,bag,1e30,1,1e999,common_practice,,", "measures.csv:2:3: grams"),
        ("keeping", f"kale,fridge,whole,{10**30},safety,common_practice,", "keeping.csv:2:4: days"),
        ("conversions", "kale,kale-boiled,Infinity,common_practice,,", "conversions.csv:2:3: factor"),
        ("caps", "elimination,food,lactose,,,1e999,,varney2017", "caps.csv:2:6: typical_g"),
    ],
)
def test_a_number_beyond_all_bounds_is_told(table: str, row: str, where: str, tmp_path: Path) -> None:
    header = (TABLES / f"{table}.csv").read_text(encoding="utf-8").splitlines()[0]
    (tmp_path / f"{table}.csv").write_text(f"{header}\n{row}\n", encoding="utf-8")
    first = told(tmp_path)
    assert first[0].startswith(where), first
    assert max(map(len, first)) < 400


@pytest.mark.parametrize(
    ("table", "row"),
    [
        ("names", f"kale {STEERS},kale"),
        ("names", f"curly kale,{STEERS}"),
        ("sources", f"mine,a book {STEERS},none,data set"),
        ("fermentables", f"kale,gos,0,,assumed,by_nature,,a note {STEERS}"),
        ("measures", f"kale,bag {STEERS},10,9,11,common_practice,,"),
        ("mixtures", f"gomasio,salt,1,own_recipe,{STEERS}"),
        ("swaps", f"kale,spinach,,1,any,{STEERS},colour,,common_practice"),
    ],
)
def test_no_cell_steers_the_terminal(table: str, row: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    header = (TABLES / f"{table}.csv").read_text(encoding="utf-8").splitlines()[0]
    (tmp_path / f"{table}.csv").write_text(f"{header}\n{row}\n", encoding="utf-8")
    assert main(["tables", "check", "--tables", str(tmp_path)]) == 2
    assert main(["tables", "show", "kale", "--tables", str(tmp_path)]) == 2
    out, error = capsys.readouterr()
    assert f"{table}.csv:2:" in error
    assert not PLAIN.search(out + error)


def test_no_header_steers_the_terminal(tmp_path: Path) -> None:
    (tmp_path / "names.csv").write_text(f"name,food,{STEERS}{'x' * 9000}\nkale,kale,1\n", encoding="utf-8")
    first = told(tmp_path)
    assert first[0].startswith("names.csv:1")
    assert not PLAIN.search(first[0])
    assert len(first[0]) < 400


@pytest.mark.parametrize(
    "given",
    [
        ["tables", "show", STEERS],
        ["match", f"100 g {STEERS}"],
        ["limit", STEERS],
        ["swap", STEERS],
        ["demo", "--profile", STEERS],
        ["demo", "--avoid", STEERS],
        ["demo", "--without", STEERS],
        ["demo", "--people", STEERS],
        ["demo", "--tables", f"{STEERS}/none"],
        ["demo", f"--{STEERS}"],
        [STEERS],
        ["tables", "mine", "add", f"dip {STEERS}", "--from", "100 g kale"],
    ],
)
def test_no_argument_steers_the_terminal(
    given: list[str], capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))
    with contextlib.suppress(SystemExit):
        assert main(given) == 2
    out, error = capsys.readouterr()
    assert out + error
    assert not PLAIN.search(out + error)
    assert not list(tmp_path.rglob("foods.csv"))


def test_a_problem_is_clean_whatever_it_quotes() -> None:
    problem = Problem(where=STEERS, what=f"`{STEERS}` is wrong", remedy=f"write {STEERS} \udc9b otherwise")
    assert not PLAIN.search(str(problem))
    assert "red" in str(problem)
    str(problem).encode("utf-8")


def test_mixtures_that_go_round_are_refused_and_never_hang(tmp_path: Path) -> None:
    names = [f"ring-{number}" for number in range(50)]
    foods(tmp_path, [*names, "made-of-it"])
    ring = [f"{name},{names[(number + 1) % 50]},1,own_recipe,\n" for number, name in enumerate(names)]
    rest = ["made-of-it,ring-0,1,own_recipe,\n", "gomasio,gomasio,1,own_recipe,\n"]
    (tmp_path / "mixtures.csv").write_text(HEADER + "".join([*ring, *rest]), encoding="utf-8")
    first = told(tmp_path)
    assert len(first) == 51  # every one in the ring, and the one in itself, but not what is made of them
    assert first[0] == "mixtures.csv:2:2: ring-0 is in itself. List what goes into it."
    assert not any("made-of-it" in one for one in first)
    # The second reading, handed the same by mistake, comes to an end too.
    mixed = mixtures([TABLES, tmp_path])
    assert foods_of([TABLES, tmp_path], mixed, ["ring-0"])["ring-0"]["allergens"] == ""
    figures_of([TABLES, tmp_path], mixed, {"ring-0"})


@pytest.mark.long
def test_a_chain_of_three_thousand_is_refused_by_file_and_line(tmp_path: Path) -> None:
    names = [f"chain-{number}" for number in range(3000)]
    foods(tmp_path, names)
    chain = [f"{name},{after},1,own_recipe,\n" for name, after in zip(names, [*names[1:], "salt"], strict=True)]
    (tmp_path / "mixtures.csv").write_text(HEADER + "".join(chain), encoding="utf-8")
    first = told(tmp_path)
    line = 3000 - DEEPEST + 1  # the deepest that may be stands on the line behind it
    assert first == [
        f"mixtures.csv:{line}:2: chain-{3000 - DEEPEST - 1} is mixtures within mixtures, more than {DEEPEST} deep. "
        "List the foods that go into it."
    ]
    mixed = mixtures([TABLES, tmp_path])
    assert foods_of([TABLES, tmp_path], mixed, ["chain-2500"])["chain-2500"]["diet"] == "vegan"
    figures = figures_of([TABLES, tmp_path], mixed, {"chain-2500"})
    assert [food for food, _ in taken_apart("chain-2500", mixed, figures)] == ["salt"]


def test_what_is_many_times_in_a_mixture_is_counted_once_a_level(tmp_path: Path) -> None:
    """Twenty levels of three mixtures, each of all three of the next: 3^19 ways down to one food."""
    levels = [[f"level-{depth}-{number}" for number in range(3)] for depth in range(DEEPEST)]
    foods(tmp_path, [name for level in levels for name in level])
    below = [*levels[1:], ["mustard", "salt", "sesame-seeds"]]
    rows = [
        f"{name},{part},1,own_recipe,\n"
        for level, parts in zip(levels, below, strict=True)
        for name in level
        for part in parts
    ]
    (tmp_path / "mixtures.csv").write_text(HEADER + "".join(rows), encoding="utf-8")
    tables = load_tables([TABLES, tmp_path])
    assert {"mustard", "sesame"} <= set(tables.food_by_id["level-0-0"].allergens)
    mixture = tables.composite_of("level-0-0")
    assert mixture is not None
    assert sorted(part.food for part in mixture.parts) == ["mustard", "salt", "sesame-seeds"]
    assert all(333_333 <= part.grams <= 333_335 for part in mixture.parts)  # a third each, in millionths
    mixed = mixtures([TABLES, tmp_path])
    figures = figures_of([TABLES, tmp_path], mixed, {"level-0-0"})
    for food, share in taken_apart("level-0-0", mixed, figures):
        assert share == Fraction(1, 3), food


@pytest.mark.long
def test_a_pipe_in_place_of_a_table_is_told(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "names.csv")
    run = subprocess.run(
        [sys.executable, "-m", "calmlarder", "tables", "check", "--tables", str(tmp_path)],
        capture_output=True, text=True, timeout=120, stdin=subprocess.DEVNULL, check=False,
    )  # fmt: skip
    assert run.returncode == 2
    assert run.stderr.startswith("names.csv: is no file that can be read as a table. ")


def test_a_device_a_folder_and_a_huge_file_are_told(tmp_path: Path) -> None:
    (tmp_path / "names.csv").symlink_to("/dev/zero")
    (tmp_path / "caps.csv").mkdir()
    with (tmp_path / "swaps.csv").open("wb") as file:
        file.truncate(10**10)  # a hole: it takes no room on the disk
    first = told(tmp_path)
    assert [one.split(":")[0].rpartition("/")[2] for one in first] == ["names.csv", "swaps.csv", "caps.csv"]
    assert "10000000000 bytes" in first[1]


def test_a_made_food_is_bounded(tables) -> None:  # type: ignore[no-untyped-def]
    part = Part(tables.food_by_id["kale"], Decimal("1e300"))
    with pytest.raises(CannotGoOn):
        made_food(Called("much kale", "paste", "sauce"), [part], None, tables)
    with pytest.raises(CannotGoOn):
        made_food(
            Called("kale", "paste", "sauce"), [Part(tables.food_by_id["kale"], Decimal(1))], Decimal("Infinity"), tables
        )


@pytest.mark.parametrize("grams", ["10", "-4"])
def test_a_mixture_of_water_alone_is_refused(grams: str, tmp_path: Path) -> None:
    foods(tmp_path, ["nothing-much"])
    (tmp_path / "mixtures.csv").write_text(f"{HEADER}nothing-much,water,{grams},own_recipe,\n", encoding="utf-8")
    assert told(tmp_path) == ["mixtures.csv:2:2: nothing-much is made of water alone. List the foods that go into it."]
