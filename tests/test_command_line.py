"""The commands as a cook or another program runs them."""

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from calmlarder.cli import main

LARDER = """\
# an invented fridge
spinach, 1 bag, use by today
firm tofu 280g, use by tomorrow
cooked rice 350g, made yesterday
3 carrots, bendy
eggs x6 (robin's)
noodles
my old boots
mouldy cheddar
chicken thighs 300g, use by yesterday
lychees 200g
rapeseed oil
soy sauce
"""


@pytest.fixture
def larder(tmp_path: Path) -> str:
    path = tmp_path / "larder.txt"
    path.write_text(LARDER, encoding="utf-8")
    return str(path)


def answer(capsys: pytest.CaptureFixture[str], *arguments: str) -> dict:  # type: ignore[type-arg]
    assert main([*arguments, "--json"]) == 0
    return json.loads(capsys.readouterr().out)


def test_tonight_as_json(larder: str, capsys: pytest.CaptureFixture[str]) -> None:
    result = answer(capsys, "tonight", "--larder", larder, "--today", "2026-03-11")
    assert result["status"] == "proven"
    assert (result["today"], result["profile"], result["people"]) == ("2026-03-11", "elimination", 1)
    dinner = result["dinners"][0]
    assert set(dinner) == {
        "title", "pattern", "people", "proven", "minutes", "uses", "per_person", "rescued", "weigh_first", "steps",
        "taken_for_granted", "cautions", "timeline", "timeline_proven", "at_least", "protein_target_g", "more_protein",
    }  # fmt: skip
    assert set(dinner["timeline"][0]) == {"start_min", "minutes", "what", "hands_on", "equipment", "adds"}
    assert all(
        {"line", "food", "grams", "how", "days_left", "household"} <= set(use)
        and use["how"] in {"weigh", "eye", "staple"}
        for use in dinner["uses"]
    )
    each = dinner["per_person"]
    assert each["protein_g"] >= 20
    assert set(each["loads_g"]) == set(each["at_most_g"]) == set(each["limits_g"])
    assert set(each["limits_g"]) == {"oligosaccharides", "lactose", "excess_fructose", "polyols", "total"}
    for key, (typical, most) in each["limits_g"].items():
        assert each["loads_g"][key] <= typical + 0.005
        assert each["loads_g"][key] <= each["at_most_g"][key] <= most + 0.005
    assert all(near["g"] >= 0.9 * near["limit_g"] for near in each["foods_near"])
    used = {use["line"] for use in dinner["uses"]}
    assert "spinach, 1 bag, use by today" in used
    assert dinner["rescued"]["portions"] > 1
    assert used <= set(LARDER.splitlines())
    assert result["unmatched"] == ["my old boots", "mouldy cheddar"]
    assert [asked["line"] for asked in result["asked"]] == ["noodles"]
    why = {excluded["line"]: excluded["why"] for excluded in result["excluded"]}
    assert set(why) == {
        "eggs x6 (robin's)", "chicken thighs 300g, use by yesterday", "lychees 200g",
    }  # fmt: skip
    assert "no figure" in why["lychees 200g"]
    assert "do not eat" in why["chicken thighs 300g, use by yesterday"]


def test_shared_food_only_when_allowed(larder: str, capsys: pytest.CaptureFixture[str]) -> None:
    result = answer(capsys, "tonight", "--larder", larder, "--today", "2026-03-11", "--use-shared", "--use", "eggs")
    assert any(use["food"] == "egg" for use in result["dinners"][0]["uses"])
    assert main(["tonight", "--larder", larder, "--today", "2026-03-11", "--use", "eggs"]) == 3


def test_diet_avoid_without(larder: str, capsys: pytest.CaptureFixture[str]) -> None:
    base = ("tonight", "--larder", larder, "--today", "2026-03-11", "--use-shared")
    vegan = answer(capsys, *base, "--diet", "vegan")
    assert answer(capsys, *base, "--diet", "Pescetarian") == answer(capsys, *base, "--diet", "pescatarian")
    assert {use["food"] for use in vegan["dinners"][0]["uses"]}.isdisjoint({"egg", "cheddar"})
    no_soya = answer(capsys, *base, "--avoid", "soya,gluten")
    assert {use["food"] for use in no_soya["dinners"][0]["uses"]}.isdisjoint({"tofu-firm", "soy-sauce"})
    without = answer(capsys, *base, "--without", "spinach")
    assert all(use["food"] != "spinach" for use in without["dinners"][0]["uses"])


def test_people_share_the_dish_and_the_caps(larder: str, capsys: pytest.CaptureFixture[str]) -> None:
    one = answer(capsys, "tonight", "--larder", larder, "--today", "2026-03-11")["dinners"][0]
    two = answer(capsys, "tonight", "--larder", larder, "--today", "2026-03-11", "--people", "2", "--protein", "15")
    dish = two["dinners"][0]
    assert dish["people"] == 2
    assert sum(use["grams"] for use in dish["uses"]) > 1.3 * sum(use["grams"] for use in one["uses"])
    assert all(
        dish["per_person"]["at_most_g"][key] <= most + 0.005
        for key, (_, most) in dish["per_person"]["limits_g"].items()
    )


def test_count_gives_dinners_that_differ_in_what_one_eats(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The same foods in another form are no other dinner: the main protein, the base or half the vegetables are new."""
    larder = tmp_path / "fridge.txt"
    larder.write_text(LARDER + "potatoes 800g\ntempeh 200g\ncourgette 300g\ndry quinoa 300g\n", encoding="utf-8")
    dinners = answer(capsys, "tonight", "--larder", str(larder), "--today", "2026-03-11", "--count", "3")["dinners"]
    assert len(dinners) == 3

    def grams(dinner: dict[str, Any], *slots: str) -> dict[str, int]:
        return {use["food"]: use["grams"] for use in dinner["uses"] if use["slot"] in slots}

    for index, dinner in enumerate(dinners):
        for earlier in dinners[:index]:
            before, now = (grams(one, "vegetable", "salad", "side") for one in (earlier, dinner))
            new = sum(weight for food, weight in now.items() if food not in before)
            assert (
                grams(dinner, "protein").keys() != grams(earlier, "protein").keys()
                or grams(dinner, "base").keys() != grams(earlier, "base").keys()
                or 2 * new >= sum(now.values())
            )


def test_minutes_are_kept(larder: str, capsys: pytest.CaptureFixture[str]) -> None:
    result = answer(capsys, "tonight", "--larder", larder, "--today", "2026-03-11", "--minutes", "20")
    assert result["dinners"][0]["minutes"] <= 20


@pytest.mark.parametrize(
    ("options", "limit"),
    [(["--protein-floor", "90"], "protein floor"), (["--minutes", "5"], "time of 5 minutes")],
)
def test_no_dinner_names_the_limit(
    options: list[str], limit: str, larder: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["tonight", "--larder", larder, "--today", "2026-03-11", *options]) == 3
    assert limit in capsys.readouterr().out


def test_no_dinner_names_the_cap(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "larder.txt"
    path.write_text("silken tofu 600g\ncooked rice 300g, made today\nkale 200g\nsoy sauce\n", encoding="utf-8")
    assert main(["tonight", "--larder", str(path), "--today", "2026-03-11"]) == 3
    assert "Problem: the limit on fructans + GOS" in capsys.readouterr().out


def test_demo_shows_everything(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["demo"]) == 0
    out = capsys.readouterr().out
    for part in (
        "Amounts for the whole dish",
        "Steps",
        "Each person",
        "Used up in time",
        "Left out",
        "Not medical advice",
        "Weigh",
    ):
        assert part in out
    assert "\033[" not in out  # plain in a pipe


def test_match_as_json_lines(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["match", "half", "tin", "coconut", "milk", "opened", "monday", "--today", "2026-03-11", "--json"]) == 0
    result = json.loads(capsys.readouterr().out)
    assert list(result) == [
        "text", "outcome", "food", "name", "grams_low", "grams", "grams_high", "place", "date", "date_kind",
        "days_left", "days_estimated", "condition", "to_bin", "owner", "kept_for", "score", "candidates", "assumed",
        "lots",
    ]  # fmt: skip
    assert (result["outcome"], result["food"], result["date"]) == ("matched", "coconut-milk", "2026-03-09")
    assert (result["date_kind"], result["days_left"], result["grams"]) == ("opened", 1, 200)


def test_limit_as_json(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["limit", "broccoli", "--json"]) == 0
    result = json.loads(capsys.readouterr().out)
    assert list(result) == ["food", "grams_weighed", "grams_eye", "binding", "household"]
    # Fructans 0.1 g in 100 g, at most 0.3 (recalled), GOS 0.1 (published, 30 %): off by √(0.2² + 0.03²) = 0.203 g.
    # At most 1.6 times the cut-off of 0.20 g (Varney 2017) and 0.005 g: 79 g x (0.2 + 0.203) % + 2 g x 0.2 % = 0.322 g
    # on the scale; by eye 78 g x (0.2 + √(0.06² + 0.203²)) % = 0.321 g, and 79 g would be over: 0.3255 g.
    assert (result["grams_weighed"], result["grams_eye"]) == (79, 78)
    assert main(["limit", "cooked white rice", "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["grams_weighed"] is None


def test_limit_of_an_unknown_food_cannot_be_told(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["limit", "lychees"]) == 3
    assert "no figure" in capsys.readouterr().out


def test_limit_in_the_roomy_profile_of_before_is_larger(capsys: pytest.CaptureFixture[str]) -> None:
    main(["limit", "broccoli", "--json"])
    narrow = json.loads(capsys.readouterr().out)["grams_weighed"]
    main(["limit", "broccoli", "--profile", "wide", "--json"])
    assert json.loads(capsys.readouterr().out)["grams_weighed"] > 1.5 * narrow


def test_tables_check(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["tables", "check"]) == 0
    assert "foods" in capsys.readouterr().out


BAD = {
    "empty": b"",
    "only comments": b"# nothing\n\n",
    "binary": bytes(range(256)) * 4,
    "not utf-8": b"spinach 200g \xff\xfe\n",
    "five megabytes": b"spinach " * 700_000,
    "long line": b"spinach " * 100,
    "negative": b"-50 g spinach\n",
    "impossible day": b"firm tofu 200g, use by 31 feb\n",
    "nothing known": b"old boots\nplutonium\n",
}


@pytest.mark.parametrize("name", BAD)
def test_bad_larders_are_clear_errors(name: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "larder.txt"
    path.write_bytes(BAD[name])
    assert main(["tonight", "--larder", str(path)]) == 2
    error = capsys.readouterr().err
    assert error.startswith("calmlarder: ")
    assert "Traceback" not in error
    assert len(error) < 2_000


def test_a_line_that_cannot_be_is_named_and_stops_nothing(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "larder.txt"
    path.write_text(f"{LARDER}-50 g beetroot\nno eggs left\n", encoding="utf-8")
    assert main(["tonight", "--larder", str(path), "--today", "2026-03-11"]) == 0
    told = " ".join(capsys.readouterr().out.split())
    assert "below nothing" in told
    assert "there is none" in told


@pytest.mark.parametrize(
    "arguments",
    [
        ["tonight"],  # the kept larder is empty
        ["tonight", "--larder", "/nowhere/at/all.txt"],
        ["tonight", "--larder", "x", "--nonsense"],
        ["demo", "--people", "0"],
        ["demo", "--people", "many"],
        ["demo", "--protein", "-3"],
        ["demo", "--protein", "nan"],
        ["demo", "--seconds", "0"],
        ["demo", "--avoid", "moonlight"],
        ["demo", "--profile", "nobody"],
        ["demo", "--without", "old boots"],
        ["demo", "--use", "tofu"],
        ["demo", "--today", "2026-02-30"],
        ["demo", "--diet", "carnivore"],
        ["demo", "--tables", "/nowhere/at/all"],
        ["limit", "plutonium"],
        ["limit", "tofu"],
        ["match", "-50g spinach"],
        ["cook"],
        [],
    ],
)
def test_wrong_use_is_status_two(arguments: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    try:
        status = main(arguments)
    except SystemExit as stop:
        status = stop.code  # type: ignore[assignment]
    assert status == 2
    captured = capsys.readouterr()
    assert captured.err.strip()
    assert "Traceback" not in captured.err


@pytest.mark.parametrize(
    "command", ["['match', 'spinach 200g']", "['limit', 'kale']", "['tables', 'check']", "['--help']"]
)
def test_light_commands_load_no_solver(command: str) -> None:
    script = (
        "import sys\nfrom calmlarder.cli import main\n"
        f"try:\n    main({command})\nexcept SystemExit:\n    pass\n"
        "heavy = [name for name in sys.modules if name.split('.')[0] in {'ortools', 'textual', 'numpy', 'pandas'}]\n"
        "sys.exit(f'loaded {heavy}' if heavy else 0)\n"
    )
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr


def test_module_and_standard_input() -> None:
    done = subprocess.run(
        [sys.executable, "-m", "calmlarder", "tonight", "--larder", "-", "--json", "--today", "2026-03-11"],
        input=LARDER,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    assert json.loads(done.stdout)["dinners"]


def test_out_of_time_says_so(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Either the best found so far, not called proven, or nothing and a word on --seconds."""
    path = tmp_path / "larder.txt"
    path.write_text(LARDER, encoding="utf-8")
    status = main(["tonight", "--larder", str(path), "--today", "2026-03-11", "--seconds", "0.001", "--json"])
    result = json.loads(capsys.readouterr().out)
    assert result["status"] in {"best_found", "none"}
    assert status == (3 if result["status"] == "none" else 0)
    if not result["dinners"]:
        assert any("--seconds" in obstacle for obstacle in result["obstacles"])
    assert not any(dinner["proven"] for dinner in result["dinners"])


def test_show_tells_a_food_whole(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["tables", "show", "silken", "tofu"]) == 0
    out = capsys.readouterr().out
    for part in (
        "tofu-silken",
        "fermentables",
        "from memory, not verified",
        "keeping",
        "USDA",
        "other names",
        "measures",
    ):
        assert part in out


@pytest.mark.long
def test_a_food_made_at_home_is_known_from_then_on(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))
    line = ["tables", "mine", "add", "seed pesto", "--from", "50 g fresh basil; 30 g walnuts; 60 ml olive oil"]
    assert main(line) == 0
    assert "made at home" in capsys.readouterr().out
    assert main(["match", "2 tbsp seed pesto", "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["food"] == "seed-pesto"
    assert main(["tables", "check"]) == 0
    capsys.readouterr()
    assert main(line) == 2  # taken
    assert main(["tables", "mine", "add", "odd", "--from", "50 g plutonium"]) == 2
    assert "Traceback" not in capsys.readouterr().err


@pytest.mark.parametrize("sitting", ["breakfast", "packed", "shake", "snack"])
def test_every_sitting_has_something_for_a_stocked_vegan(
    sitting: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "larder.txt"
    path.write_text(
        "rolled oats\nsoya drink with calcium\nalmond drink\n2 firm bananas\nstrawberries 200g\nwalnuts\n"
        "peanut butter\ngluten-free bread\nspinach 100g\nfirm tofu 300g\ncarrots x3\ncucumber\n"
        "cooked quinoa 300g\nlemon\nolive oil\n"
        "lettuce\nmaple syrup\npumpkin seeds\nmustard\nsmoked tofu 200g\nedamame 200g\nsoy sauce\n",
        encoding="utf-8",
    )
    result = answer(
        capsys, "tonight", "--larder", str(path), "--sitting", sitting, "--diet", "vegan", "--protein", "8",
        "--profile", "wide",
    )  # fmt: skip
    assert result["sitting"] == sitting
    assert result["dinners"][0]["uses"]


def test_quoted_lines_are_a_line_each_and_bare_words_one(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """As one line the cooked of the rice would be that of the tofu, too."""
    home = ["--home", str(tmp_path), "--today", "2026-03-11", "larder"]
    assert main([*home, "add", "firm tofu 280g", "cooked rice 300g, made today", "carrots x3"]) == 0
    assert main([*home, "add", "soy", "sauce", "150", "ml"]) == 0
    capsys.readouterr()
    assert main([*home, "list", "--json"]) == 0
    foods = {one["food"] for one in json.loads(capsys.readouterr().out)["lots"]}
    assert foods == {"tofu-firm", "rice-white-cooked", "carrot", "soy-sauce"}


@pytest.mark.parametrize(
    ("lines", "words"),
    [
        # What joins bacon in the pot and is lifted out with it, and a word in another number than the tables have it.
        ("half a white cabbage\n3 carrots\npotatoes 1kg\n2 rashers bacon\ntin sardines\nbutter", ["bacon", "sardines"]),
        ("Sliced sausage 2, no onion or garlic\npotatoes 1kg\n3 carrots\noil\nhalf a swede", []),
    ],
)
def test_a_right_dinner_is_not_refused(
    lines: str, words: list[str], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    larder = tmp_path / "larder.txt"
    larder.write_text(lines, encoding="utf-8")
    asked = [part for word in words for part in ("--use", word)]
    assert main(["tonight", "--larder", str(larder), "--home", str(tmp_path), "--today", "2026-03-11", *asked]) == 0
    assert "at fault" not in capsys.readouterr().err
