"""What a line means, as one JSON object; apart from the dinners, so that matching loads no solver."""

from typing import Any

from calmlarder.larder.reading import Reading


def match_object(reading: Reading) -> dict[str, Any]:
    """The answer of `match --json` for one line."""
    lot = reading.lot
    told = lot.first_date if lot else None
    return {
        "text": reading.text,
        "outcome": reading.match.outcome,
        "food": reading.match.food.id if reading.match.food else None,
        "name": reading.match.name,
        "score": reading.match.score,
        "candidates": [candidate._asdict() for candidate in reading.candidates],
        "grams_low": lot.grams_low if lot else None,
        "grams": lot.grams if lot else None,
        "grams_high": lot.grams_high if lot else None,
        "place": lot.place if lot else None,
        "date": told.on.isoformat() if told and told.on else None,
        "date_kind": told.kind if told else None,
        "days_left": lot.days_left if lot else None,
        "condition": lot.condition if lot else None,
        "owner": lot.owner if lot else None,
        **({"problem": str(reading.problem)} if reading.problem else {}),
    }
