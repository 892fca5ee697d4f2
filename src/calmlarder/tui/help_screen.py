"""Help: the keys, a short tour, the cautions."""

from calmlarder.export.text import CAUTION
from calmlarder.tui.page import Page

_TOUR = f"""\
LARDER. Type what came in, one line a thing; the line below says what it means. Enter keeps it. \
Many lines may be pasted at once. A line that begins with / filters the list: /tofu. Down goes to the list; \
F4 edits, F5 used up, F6 thrown away, F7 frozen, F9 where the figures of the chosen food come from, \
Ctrl+Z takes back, Ctrl+Y does again. F2: who eats, and what holds for them. F8: a demo larder, while it is empty.

TONIGHT (F3). n another dinner, u something that must be in it, x something that must not, r start over, \
+ and - people, t less time, s another kind of sitting, d diet, p profile of caps, \
v a food you never want (F2 lists them), i where the figures of a food come from, \
. takes the best so far, Enter to cook it.

COOK. Space goes on, Left goes back, w says what the scale really showed and computes the loads again, \
b starts the clock of the timeline (what runs now, what comes next), t a timer for what cooks by itself, \
c takes what was used out of the larder and logs your share; it counts for three hours. \
What else you eat: `calmlarder ate "200 ml orange juice"`.

RECIPE (Ctrl+R, in the larder). Paste a recipe or name its file, F5 brings it under the caps by the smallest change, \
F7 saves the changed recipe, Esc goes back to the recipe.

EVERYWHERE. Esc steps back, F1 is this page, Ctrl+Q leaves. Nothing leaves this machine.

Amounts marked weigh go on the scale; the others may be judged by eye. The bars show the load of \
each group against its cap for one person.

{CAUTION}
"""


class HelpScreen(Page):
    """One page for all screens."""

    def __init__(self) -> None:
        super().__init__(_TOUR)
