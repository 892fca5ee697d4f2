"""Help: the keys, a short tour, the cautions."""

from calmlarder.render.caution import CAUTION
from calmlarder.tui.page import Page

_TOUR = f"""\
LARDER. Type what came in, one line a thing; the line below says what it means. Enter keeps it. \
Many lines may be pasted at once. A line that begins with / filters the list: /tofu. Down goes to the list; \
F4 edits, F5 used up (and who ate it, for the log), F6 thrown away (one key says why, g that it was given), \
F7 frozen, and out of it again, \
F10, or a in the list, is for a part of it: half, 100 g (used, thrown, given or frozen; the rest stays), \
F9 where the figures of the chosen food come from, Shift+F9 what its packet says is in it, \
`adds, g` is what one portion adds to the group it comes nearest to the limit of. In the list s, or Ctrl+S anywhere, \
tells what can stand in for the chosen food; w, or Ctrl+O, why it is in tonight's dinner or not. \
Esc puts a typed line away, Up brings it back. Ctrl+Z takes back, Ctrl+Y does again. \
F2: who eats, what holds for them, what they dislike, what the kitchen has, and for how long \
what was eaten counts, of all and of one person (kit 5 fades). \
F8: a demo larder, while it is empty.

WHAT YOU EAT (Ctrl+T, or type it): `ate 200 ml orange juice` is logged and counts for three hours; \
`ate boxed rice bowl` eats one box of the larder. \
`plate 170 g tofu, 75 g broccoli` says what a plate brings and whether it fits; Enter logs it. \
HOW THE GUT FEELS (Ctrl+G): `feel 3 a bit tight`, from 0 calm to 10 the worst you know. \
`feel 1 0 2 0` says pain, bloating, wind and urgency apart. \
PEOPLE (Shift+F2): who eats here, each with a diet, allergens, limits and an appetite of their own. \
CHALLENGE (Shift+F3): one group tried again, day by day, to a limit of your own: s scores today, n starts one, \
k not today, x stops it, w writes a page for your dietitian. Go through it with a dietitian. \
DAYS (Ctrl+L): both side by side, what was thrown and what would help most; + and - more and fewer days.

TONIGHT (F3). n another dinner, u something that must be in it, x something that must not, r start over, \
m more like this one (m again: all dinners), + and - people, t less time, s another kind of sitting, d diet, \
p set of limits, v a food you never want (F2 lists them), c swaps a food of it for what is at home, \
w why a food is in it or not, i where the figures of a food come from, \
e shares it (text, a page, a file), . takes the best so far, Enter to cook it.

PLAN (Ctrl+N, or p in the list). A dinner each day and packed lunches between, least wasted first; it gets better \
while you look. p pins the chosen dish for the next round, x bars it from its sitting, r redoes this sitting alone, \
n plans again, + and - more and fewer days, o start over, e shares the plan, . keeps the best so far, \
Enter the dinner whole and from there to the stove if it is the first, \
Tab to the notes: what is wasted, to freeze, to buy. Esc leaves at any moment.

WHY. The answer grows while you read; . ends the search, Esc goes back at any moment. \
SWAP. The arrows move, Enter takes what is at home into the dinner.

COOK. Space goes on, Left goes back, w says what the scale really showed and computes the loads again, \
b starts the clock of the timeline (what runs now, what comes next), t a timer for what cooks by itself, \
c takes what was used out of the larder and logs your share; it counts for three hours. \
Esc goes back; where timers run or weights are typed it asks first. \
A dinner whose terminal was closed in the middle is asked for at the next start.

RECIPE (Ctrl+R, in the larder). Paste a recipe or name its file, F5 makes it fit the limits by the smallest change, \
F7 saves the changed recipe (`calmlarder share recipe` makes a page of it), Esc goes back to the recipe.

EVERYWHERE. Esc steps back, F1 is this page, Ctrl+Q leaves, Ctrl+P lists all keys of a screen to search in. \
A key below the screen may be clicked; a click beside what opened over a screen puts it away. \
Nothing leaves this machine.

Amounts marked weigh go on the scale; the others may be judged by eye. The bars show the load of \
each group against its limit for one person.

{CAUTION}
"""


# The word that each screen's own paragraph begins with; the larder's stands first anyway.
_OWN = {
    "TonightScreen": "TONIGHT", "PlanScreen": "PLAN", "WhyScreen": "WHY", "SwapScreen": "WHY", "CookScreen": "COOK",
    "AdaptScreen": "RECIPE", "DaysScreen": "WHAT YOU EAT", "PeopleScreen": "WHAT YOU EAT",
    "ChallengeScreen": "WHAT YOU EAT",
}  # fmt: skip


def _for_screen(name: str) -> str:
    """The page with the keys of the screen one stands on before the rest."""
    paragraphs = _TOUR.split("\n\n")
    own = _OWN.get(name)
    return "\n\n".join(sorted(paragraphs, key=lambda text: own is None or not text.startswith(own)))


class HelpScreen(Page):
    """One page for all screens, that of the present one first."""

    def __init__(self, screen: str = "") -> None:
        super().__init__(_for_screen(screen))
