"""Pictures of every screen, for the README and for looking at: python tests/take_pictures.py [80x24-light ...]."""

import asyncio
import os
import random
import re
import sys
import tempfile
from datetime import date, datetime, time, timedelta
from pathlib import Path

from textual.widgets import Input, TextArea

from calmlarder.history.ended import Ended
from calmlarder.history.felt import Felt
from calmlarder.household import people
from calmlarder.intake.eaten import Eaten, Load
from calmlarder.intake.nourished import Nourished
from calmlarder.store.logs import feel, log
from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped
from calmlarder.tui.app import LarderApp
from calmlarder.tui.challenge_screen import EntryForm
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.manner_asked import keep_manner

RECIPE = Path(__file__).resolve().parent / "recipes" / "chickpea-stew.txt"
FOLDER = Path(os.environ.get("PICTURES") or Path(__file__).parent / "pictures")  # or elsewhere, for looking at
PACKET = "Rice flour, water, wheat starch, inulin, onion powder, natural flavouring, sorbitol (E420), salt"
SIZES = [(60, 20), (80, 24), (120, 40), (200, 50)]
TODAY = date(2026, 3, 11)


DISHES = ("fried rice with tofu", "potato salad", "rice noodle soup", "polenta with greens", "tempeh stir-fry")


def past_weeks(app: LarderApp) -> None:
    """An invented diary and ledger."""
    store, rng = app._store, random.Random(4)
    for back in range(60, -1, -1):
        on = TODAY - timedelta(days=back)
        for hour, share in ((8, 0.5), (13, 0.8), (18, 1.0)):
            if back % 9 == 0 or (hour == 8 and back % 3 == 0):
                continue
            sizes = {g: round(share * rng.randrange(60_000, 420_000)) for g in ("oligosaccharides", "excess_fructose")}
            sizes |= {"lactose": rng.randrange(300_000), "mannitol": rng.randrange(90_000)}
            sizes |= {"polyols": sizes["mannitol"], "total": sum(sizes.values()) - sizes["lactose"]}
            loads = tuple(Load(cutoff_class="other", group=g, likely_ug=x, off_ug=0) for g, x in sizes.items())
            title = DISHES[rng.randrange(len(DISHES))] if hour != 8 else "porridge"
            had = Nourished(protein_g=24 * share, fibre_g=9 * share, calcium_mg=310 * share, iron_mg=4.4 * share)
            at = datetime.combine(on, time(hour))
            log(store, Eaten(at=at, who="me", text=title, food="", title=title, grams=round(420 * share), loads=loads,
                             nourished=had))  # fmt: skip
        note = "tight after lunch" if back in {3, 17} else ""
        feel(store, Felt(at=datetime.combine(on, time(21)), who="me", score=min(9, rng.choice((0, 1, 1, 2, 2, 3, 5))),
                         note=note))  # fmt: skip
        food = ("spinach", "carrot", "bread-rye")[back % 3]
        name = ("spinach", "carrots", "rye bread")[back % 3]
        how = "thrown" if back % 3 == 0 and back % 4 else "eaten"
        entry = Ended(
            on=on, lot=back, food=food, title=name, portion_g=80, line=name, of_grams=200, grams=rng.randrange(40, 200),
            how=how, why="past its day" if how == "thrown" else None, rescued=how == "eaten" and back % 2 == 0,
        )  # fmt: skip
        store.add_logged("ended", entry.model_dump(mode="json"), "past")


def clean_svg(drawn: str) -> str:
    """Fonts of the reader's own machine (the picture asks no network for any), and no coloured window buttons."""
    drawn = re.sub(r"@font-face \{.*?\}|<!--.*?-->", "", drawn, flags=re.DOTALL)
    drawn = re.sub(r"<circle [^>]*/>", "", drawn)
    drawn = drawn.replace("<text ", '<text xml:space="preserve" ')
    return "\n".join(line.rstrip() for line in drawn.splitlines() if line.strip()) + "\n"


async def take(size: tuple[int, int], mode: str) -> None:
    """Walk through the screens once; `mode` is dark, light or plain (NO_COLOR)."""
    tables = load_tables([shipped("ingredient_tables")])
    if mode == "plain":
        os.environ["NO_COLOR"] = "1"
    else:
        os.environ.pop("NO_COLOR", None)
    with tempfile.TemporaryDirectory() as home:
        app = LarderApp(Path(home), tables, TODAY)
        name = f"{size[0]}x{size[1]}{'' if mode == 'dark' else f'-{mode}'}.svg"

        async with app.run_test(size=size) as pilot:

            async def picture(screen: str) -> None:
                await app.workers.wait_for_complete()
                await pilot.pause()
                await pilot.pause()
                (FOLDER / f"{screen}-{name}").write_text(clean_svg(app.export_screenshot()), encoding="utf-8")

            async def press(*keys: str) -> None:
                for key in keys:
                    await pilot.press(key)
                    await app.workers.wait_for_complete()
                    await pilot.pause()

            await pilot.pause()
            if mode == "light":
                app._turn_light()
            await picture("first")
            await press("escape", "f8", "f2")
            await picture("limits")
            people.add(app._kitchen, "kit", {"diet": "vegan", "avoid": ("nuts",), "appetite": 0.6})
            await press("escape", "shift+f2")
            await picture("people")
            await press("enter")
            await picture("person")
            await press("escape", "escape", "shift+f4")
            await picture("challenge")
            await press("n", "enter")
            await picture("questions")
            while isinstance(app.screen, EntryForm):  # each question is on the screen once before it goes on
                await press("ctrl+s")
            await picture("early")
            await press("escape", "escape", "ctrl+p")
            await picture("keys")
            await press("escape")
            app.screen.query_one(Input).value = "half tin cocount milk opened monday"
            await picture("larder")
            await press("ctrl+n")
            await picture("plan")
            await press("enter")
            await picture("planned")
            await press("escape", "escape", "f3")
            await picture("tonight")
            for key, screen in (("w", "why"), ("c", "swap")):
                await press(key, "down", "enter")
                await picture(screen)
                await press("escape")
            await press("f")
            await picture("who")
            await press("escape", "t")
            await picture("time")
            await press("escape", "k")
            await picture("dish")
            await press("escape", "enter", "space", "space", "b")
            await picture("cook")
            await press("f1")
            await picture("help")
            await press("escape", "escape", "escape", "down", "down", "f6")
            await picture("thrown")
            await press("escape", "f10")
            await picture("part")
            await press("escape")
            past_weeks(app)
            await press("ctrl+l")
            await picture("days")
            await press("end")
            await picture("waste")
            await press("e", "enter")
            await picture("score")
            app.screen.query_one(Input).value = "2 calmer than I thought"
            await press("enter")
            await picture("log")
            await press("f9")
            await picture("sources")
            while not isinstance(app.screen, LarderScreen):  # sources, log and days
                await press("escape")
            await press("ctrl+r")
            app.screen.query_one(TextArea).text = RECIPE.read_text(encoding="utf-8")
            await press("f5")
            await picture("recipe")
            while not isinstance(app.screen, LarderScreen):
                await press("escape")
            await press("f12")
            app.screen.query_one(Input).value = PACKET
            await press("enter")
            await picture("packet")
            while not isinstance(app.screen, LarderScreen):
                await press("escape")
            keep_manner(app._kitchen, "american")
            app.screen.draw_anew()
            await picture("ounces")


if __name__ == "__main__":
    FOLDER.mkdir(exist_ok=True)
    asked = sys.argv[1:] or [*(f"{w}x{h}" for w, h in SIZES), "80x24-light", "80x24-plain"]
    for one in asked:
        columns, _, rest = one.partition("x")
        rows, _, mode = rest.partition("-")
        asyncio.run(take((int(columns), int(rows)), mode or "dark"))
