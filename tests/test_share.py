"""What is shared, read back by general readers: html5lib in its strict mode, PyLD, icalendar, and by `adapt` itself."""

import json
import os
from collections.abc import Iterator
from datetime import date, datetime
from pathlib import Path
from typing import Any

import html5lib
import icalendar
import pytest
from pyld import jsonld
from textual.pilot import Pilot

from calmlarder.cli import main
from calmlarder.cookbook.lines import LineReader
from calmlarder.cookbook.read import read_recipe
from calmlarder.household.household import Household
from calmlarder.household.sharing import last_plan
from calmlarder.larder.freezing import ToFreeze
from calmlarder.plan.planned import ToBuy
from calmlarder.render.sheet import Part, Recipe, Sheet, plan_sheet
from calmlarder.render.sheet_html import as_html
from calmlarder.render.sheet_jsonld import as_jsonld
from calmlarder.render.sheet_words import as_markdown, as_text
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from programs import run_program, settled

DAY = "2026-03-11"
LINES = (
    "rice noodles 200g", "firm tofu 280g, use by tomorrow", "carrots 300g", "soy sauce", "lime", "rapeseed oil",
    "robin's sesame seeds 50g", "spinach 300g in the freezer",
)  # fmt: skip
NASTY = "<script>alert(1)</script> \"' & [x](http://e) *b* `c` | # <img src=x onerror=y>"


@pytest.fixture(scope="module")
def home(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A home where a dinner was proposed, a meal planned and a recipe adapted."""
    folder = tmp_path_factory.mktemp("share")
    (folder / "lines.txt").write_text("\n".join(LINES), encoding="utf-8")
    recipe = "Soup\n\nServes 2\n\nIngredients\n\n300 g carrots\n100 g onion\n1 tbsp olive oil\n\nMethod\n\nCook it.\n"
    (folder / "recipe.txt").write_text(recipe, encoding="utf-8")
    at = ["--home", str(folder / "home"), "--today", DAY]
    for words in (
        ["larder", "import", str(folder / "lines.txt")],
        ["tonight", "--seconds", "600"],
        ["plan", "--sittings", "tonight, tomorrow", "--work", "1", "--buy", "0"],
        ["adapt", str(folder / "recipe.txt")],
    ):
        assert main([*at, *words]) == 0, words
    return folder / "home"


def shared(home: Path, capsys: pytest.CaptureFixture[str], *words: str) -> str:
    capsys.readouterr()
    assert main(["--home", str(home), "--today", DAY, "share", *words]) == 0
    return capsys.readouterr().out


def elements(page: str) -> Iterator[Any]:
    """The elements of a page that html5lib finds no fault with (strict: any parse error raises)."""
    yield from html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(page).iter()


@pytest.mark.parametrize("what", ["dinner", "plan", "recipe", "shopping", "freezer"])
def test_the_page_asks_for_nothing(what: str, home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    page = shared(home, capsys, what, "--format", "html")
    for one in elements(page):
        if not isinstance(one.tag, str):
            continue
        assert one.tag not in {"script", "link", "img", "iframe", "object", "embed", "form", "base", "video", "audio"}
        assert not {name for name in one.attrib if name in {"src", "href", "srcset", "action"} or name.startswith("on")}
    assert "url(" not in page
    assert "@import" not in page


def test_names_are_text_whatever_they_hold() -> None:
    sheet = Sheet(NASTY, NASTY, (Part(NASTY, "ingredients", (NASTY,)), Part(NASTY, "steps", (NASTY,))), (NASTY,),
                  recipe=Recipe(2))  # fmt: skip
    found = list(elements(as_html(sheet)))
    assert {one.tag for one in found if isinstance(one.tag, str)} <= {
        "html", "head", "meta", "title", "style", "body", "main", "h1", "h2", "p", "div", "section", "ul", "ol", "li",
    }  # fmt: skip
    texts = [one.text for one in found if isinstance(one.tag, str) and one.tag in {"h1", "li", "title"}]
    assert texts == [NASTY] * 4
    assert json.loads(as_jsonld(sheet))["recipeIngredient"] == [NASTY]
    assert NASTY in as_text(sheet)
    assert "<" not in as_markdown(sheet).replace("\\<", "")


@pytest.mark.parametrize("form", ["html", "jsonld", "markdown", "text"])
def test_whose_it_is_stays_at_home(form: str, home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for what in ("dinner", "plan", "freezer"):
        assert "robin" not in shared(home, capsys, what, "--format", form).casefold()


def expanded(text: str) -> Any:
    """As linked data, by PyLD; the context is a vocabulary, which stands in for what schema.org serves."""

    def load(url: str, _: object) -> dict[str, Any]:
        assert url.rstrip("/") == "https://schema.org"
        return {"contextUrl": None, "documentUrl": url, "document": {"@context": {"@vocab": "https://schema.org/"}}}

    return jsonld.expand(json.loads(text), {"documentLoader": load})


def test_jsonld_is_linked_data(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (found,) = expanded(shared(home, capsys, "dinner", "--format", "jsonld"))
    assert found["@type"] == ["https://schema.org/Recipe"]
    assert len(found["https://schema.org/recipeIngredient"]) > 2
    assert all("@value" in one for one in found["https://schema.org/recipeIngredient"])
    (listed,) = expanded(shared(home, capsys, "plan", "--format", "jsonld"))
    items = [one["https://schema.org/item"][0] for one in listed["https://schema.org/itemListElement"]]
    assert items
    assert all(one["@type"] == ["https://schema.org/Recipe"] for one in items)


@pytest.mark.parametrize("form", ["html", "jsonld", "markdown", "text"])
def test_a_shared_dinner_is_read_again_as_the_recipe_it_is(
    form: str, home: Path, tables: Tables, capsys: pytest.CaptureFixture[str]
) -> None:
    dinner = json.loads(shared(home, capsys, "dinner", "--format", "jsonld"))
    recipe = read_recipe(shared(home, capsys, "dinner", "--format", form))
    assert recipe.title == dinner["name"]
    assert recipe.serves == 1
    reader = LineReader(tables)
    read = [reader.read(line) for line in recipe.ingredients]
    wanted = [line.split(" ")[0] for line in dinner["recipeIngredient"] if " g " in line]
    assert [f"{one.grams:g}" for one in read if one.food and one.grams][: len(wanted)] == wanted
    assert len(recipe.steps) >= len(dinner["recipeInstructions"])


def test_the_plan_is_in_the_calendar(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    capsys.readouterr()
    assert main(["--home", str(home), "--today", DAY, "larder", "export", "--ics"]) == 0
    events = icalendar.Calendar.from_ical(capsys.readouterr().out).walk("VEVENT")
    starts = [one.decoded("DTSTART") for one in events]
    assert [one for one in starts if isinstance(one, datetime)] == [
        datetime(2026, 3, 11, 18, 30),
        datetime(2026, 3, 12, 18, 30),
    ]
    assert date(2026, 3, 12) in starts  # the tofu's use-by day
    assert len({str(one["UID"]) for one in events}) == len(events)


def test_nothing_to_share_is_said(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for what in ("dinner", "plan", "recipe", "shopping"):
        assert main(["--home", str(tmp_path / "new"), "share", what]) == 2
        assert "to share yet" in capsys.readouterr().err
    assert not (tmp_path / "new").exists()


def test_a_cooked_dinner_can_still_be_shared(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    at = ["--home", str(tmp_path), "--today", DAY]
    (tmp_path / "lines.txt").write_text("\n".join(LINES[:5]), encoding="utf-8")
    for words in (["larder", "import", str(tmp_path / "lines.txt")], ["tonight"], ["cooked"]):
        assert main([*at, *words]) == 0
    assert "Method" in shared(tmp_path, capsys)


@pytest.mark.skipif(os.name == "nt", reason="needs pipes and links of Unix")
def test_files_are_written_beside_and_nothing_else_is_touched(
    home: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = ["--home", str(home), "--today", DAY, "share", "--format", "html", "--out"]
    (tmp_path / "mine").write_text("mine", encoding="utf-8")
    (tmp_path / "link").symlink_to(tmp_path / "mine")
    (tmp_path / "lost").symlink_to(tmp_path / "nowhere")
    os.mkfifo(tmp_path / "pipe")
    before = sorted(one.name for one in tmp_path.iterdir())
    for name in ("mine", "link", "lost", "pipe", "no/such/folder", "."):
        assert main([*out, str(tmp_path / name)]) == 2, name
    assert sorted(one.name for one in tmp_path.iterdir()) == before
    assert (tmp_path / "mine").read_text(encoding="utf-8") == "mine"
    capsys.readouterr()
    assert main([*out, str(tmp_path / "page.html")]) == 0
    assert str(tmp_path / "page.html") in capsys.readouterr().out
    assert sorted(one.name for one in tmp_path.iterdir()) == sorted([*before, "page.html"])


def test_the_screens_share_what_they_show(
    home: Path, tables: Tables, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await settled(app, pilot)
        await pilot.press("e", "enter")
        await pilot.pause()
        assert "Ingredients" in app.clipboard
        await pilot.press("e", "down", "enter")
        await pilot.pause()

    run_program(home, tables, act, keys=["f3"])
    (page,) = tmp_path.iterdir()
    assert page.suffix == ".html"
    assert len(list(elements(page.read_text(encoding="utf-8")))) > 20


def test_a_shared_plan_says_what_is_past_its_best_and_buys_nothing_that_is_frozen(home: Path, tables: Tables) -> None:
    with Household(home, tables, date.fromisoformat(DAY)) as household:
        planned = last_plan(household)
    first = planned.sittings[0]
    assert first.dinner is not None
    use = first.dinner.uses[0]
    told = f"{use.name.capitalize()}, past its best (use by 2026-03-10): look and smell."
    dinner = first.dinner.model_copy(update={"cautions": (told,), "minutes": 1})
    buy = (
        ToBuy(food="carrot", name="carrots", grams=100, because="makes a soup"),
        ToBuy(food="kale", name="kale", grams=200, because="makes a stew"),
    )
    freezing = ToFreeze(
        lot="1", line="carrots", food="carrot", grams=150, days_left=1, how="blanched", weeks=40, source="s"
    )
    one = first.model_copy(update={"dinner": dinner, "people": 1, "boxed_for": None})
    update = {"sittings": (one,), "buy": buy, "freeze_today": (freezing,)}
    parts = {part.heading: part.lines for part in plan_sheet(planned.model_copy(update=update), tables).parts}
    assert parts["To buy"] == ("200 g kale: makes a stew",)
    assert parts["Freeze today"][1] == "carrots from the freezer, thawed, saves buying 100 g: makes a soup"
    meal = next(iter(parts.values()))
    assert meal[0].endswith("for 1 person, 1 minute.")
    assert meal[-1] == told
