"""`calmlarder why FOOD`: what a food does in tonight's dinner, or why it is not in it."""

import json

from calmlarder.commands.given.evening import WhyFood
from calmlarder.commands.inputs import at_fault, choices_of, food_named, household_of
from calmlarder.commands.tonight import larder_of


def why(options: WhyFood) -> int:
    """Ask, check every dinner that is shown, say; status 3 where no dinner meets the limits at all."""
    with household_of(options) as household:
        choices = choices_of(options, household.tables)
        lots, _ = larder_of(options, household)

        from calmlarder.household.request import evening
        from calmlarder.household.tonight import why as ask

        asked = evening(household, choices, lots)
    *_, explained = ask(food_named(" ".join(options.food), "FOOD", asked.tables), asked)
    if explained.why is None:
        return at_fault("a dinner", explained.faults)
    if options.json:
        from calmlarder.render.why_text import why_object

        print(json.dumps(why_object(explained.why, asked.request), ensure_ascii=False, indent=2))
    else:
        from calmlarder.render.style import style_of_output
        from calmlarder.render.why_text import why_text

        print(why_text(explained.why, asked.request, style_of_output()), end="")
    return 0 if explained.why.tonight else 3
