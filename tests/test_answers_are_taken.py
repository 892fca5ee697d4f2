"""An answer is never asked for twice: what was chosen is what stands. The lines are ours and those of tests/fridges."""

from pathlib import Path

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.to_answer import Answers
from calmlarder.tables.book import Tables

LINES = (
    "leftover stew", "leftover curry", "a bit of leftover stew from wednesday", "mystery tub", "blue box",
    "thing in foil", "unlabelled tub from the freezer", "stew", "jar of green stuff", "noodles, half a packet",
    "beans", "chocolate", "noodles",
)  # fmt: skip


def test_each_choice_stands(reader: LarderReader, tables: Tables) -> None:
    ids = {food.name: food.id for food in tables.foods}
    fridges = sorted((Path(__file__).parent / "fridges").glob("*.txt"))
    typed = [line for path in fridges for line in path.read_text(encoding="utf-8").splitlines()]
    asked = 0
    for line in (*LINES, *typed):
        reading = reader.read(line, "here")
        question = reading and reading.to_answer
        if not question or question.about != "food" or not question.said:
            continue
        for choice in question.choices:
            answers = Answers(foods={question.said: (ids[choice],)})
            again = reader.read(line, "here", answers=answers)
            assert again is not None
            assert ids[choice] in [lot.food for lot in again.lots] or (
                again.to_answer is not None and (again.to_answer.about, again.to_answer.said) != ("food", question.said)
            ), (line, choice)
            asked += 1
    assert asked >= 30
