"""`calmlarder why FOOD`: what a food does in tonight's dinner, or why it is not in it."""

import argparse
import json

from calmlarder.commands.kitchen_table import at_fault, folders_of, food_named, tables_of, wanted_of
from calmlarder.commands.stacking import eaten_before_of
from calmlarder.commands.stored import fill_from_home
from calmlarder.commands.tonight import larder_asked
from calmlarder.larder.box import boxes_of, with_boxes
from calmlarder.tables.places import shipped


def why(options: argparse.Namespace) -> int:
    """Ask, check every dinner that is shown, say; status 3 where no dinner meets the limits at all."""
    tables = tables_of(options)
    fill_from_home(options, tables)
    lots, _ = larder_asked(options, tables)
    tables = with_boxes(tables, boxes_of(lots))
    food = food_named(" ".join(options.food), "FOOD", tables)
    wanted = wanted_of(options, tables, **eaten_before_of(options))

    from calmlarder.compose.why.why import why as ask
    from calmlarder.patterns.load import load_patterns
    from calmlarder.render.checked import faults_of
    from calmlarder.render.why_text import why_object, why_text

    *_, answer = ask(food, lots, wanted, load_patterns(shipped("recipes")), tables)
    other = answer.instead.dinner if answer.instead else None
    shown = [(dinner, ()) for dinner in (answer.tonight, other) if dinner is not None]
    faults = faults_of(shown, wanted, lots, folders_of(options))
    if faults:
        return at_fault("a dinner", faults)
    if options.json:
        print(json.dumps(why_object(answer, wanted), ensure_ascii=False, indent=2))
    else:
        from calmlarder.render.style import style_of_output

        print(why_text(answer, wanted, style_of_output()), end="")
    return 0 if answer.tonight else 3
