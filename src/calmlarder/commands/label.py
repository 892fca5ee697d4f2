"""`calmlarder label TEXT|-`: what in a packet's list of ingredients matters."""

import argparse
import json

from calmlarder.commands.inputs import folders_of
from calmlarder.labels.packet import LONGEST, packet_of
from calmlarder.labels.read import label_of
from calmlarder.labels.words import read_label_words
from calmlarder.larder.files import read_text
from calmlarder.problems import CannotGoOn
from calmlarder.tables.allergens import read_misleading


def label(options: argparse.Namespace) -> int:
    """Read the list and say what matters; never a verdict, so the status is 0 for every list that was read."""
    text = read_text("-", LONGEST, "give the list alone") if options.text == ["-"] else " ".join(options.text)
    folders = folders_of(options)
    words, problems = read_label_words(folders)
    misleading, faults = read_misleading(folders)
    if problems or faults:
        raise CannotGoOn([*problems, *faults])
    found = label_of(packet_of(text), words, misleading)
    if options.json:
        from calmlarder.render.label_text import label_object

        print(json.dumps(label_object(found), ensure_ascii=False, indent=2))
    else:
        from calmlarder.render.label_text import label_text
        from calmlarder.render.style import style_of_output

        print(label_text(found, style_of_output()), end="")
    return 0
