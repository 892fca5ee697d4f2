"""A dinner with what it is read against."""

from collections.abc import Mapping, Sequence
from datetime import date
from pathlib import Path
from typing import Any, NamedTuple

from calmlarder.checks.lots import Lot
from calmlarder.checks.tables import Row


class Read(NamedTuple):
    """A dinner with what it is read against: its lots by id, rows of its foods, its pattern, boxes by food."""

    dinner: Mapping[str, Any]
    lots: Mapping[str, Lot]
    foods: Mapping[str, Row]
    pattern: Mapping[str, Any]
    boxes: Mapping[str, Any]
    folders: Sequence[Path]
    today: date

    def name(self, food: str) -> str:
        """What a food is called on the screen; a boxed dish by its title. `shown.py` judges that name."""
        if food in self.boxes:
            title = self.boxes[food]["title"]
            return f"{title[:1].lower()}{title[1:]} (boxed)"
        return next((use["name"] for use in self.dinner["uses"] if use["food"] == food), self.foods[food]["name"])
