"""Options of `challenge`."""

from typing import get_args

from calmlarder.commands.options import common
from calmlarder.commands.options.ledger import scores
from calmlarder.reintroduction.entry_questions import QUESTIONS
from calmlarder.reintroduction.events import LeftOut

_GROUP = (
    "sorbitol, excess_fructose, lactose, gos, mannitol, wheat, onion or garlic (the last three: fructans, which begin "
    "with wheat)"
)


def add(commands: common.Commands) -> None:
    """Challenges, a day at a time, and the arithmetic of any days."""
    challenge = commands.add_parser("challenge", help="try one group again, a day at a time, to a limit of your own")
    parts = challenge.add_subparsers(dest="challenge_command", metavar="WHAT", required=True)
    reckon = parts.add_parser("reckon", help="what any list of days would say; nothing is kept", allow_abbrev=False)
    reckon.set_defaults(run="challenge:reckoned")
    reckon.add_argument("group", metavar="GROUP", help="sorbitol, excess_fructose, lactose, gos, mannitol or fructans")
    reckon.add_argument("--days", required=True, metavar="DAYS", help='such as "0.5:calm 1:calm 2:reaction"')
    common.json(reckon)

    start = common.command(parts, "start", "challenge:start", "begin one, after the questions that come first")
    start.add_argument("group", metavar="GROUP", help=_GROUP)
    start.add_argument("--food", metavar="FOOD", help="the food to eat for it (default: the first that suits)")
    start.add_argument(
        "--control", action="store_true", help="first a day with the dish but without a dose, to compare"
    )
    start.add_argument(
        "--yes", metavar="A,B", help="the questions below that you answer yes to, or none (default: asked)"
    )
    start.epilog = " ".join(["Questions:", *(f"{one.key}: {one.words}" for one in QUESTIONS)])
    control = common.command(
        parts, "control", "challenge:control", "a day to compare before the first dose, in one that goes on"
    )
    today = common.command(parts, "today", "challenge:today", "what to eat today, and why")
    score = common.command(parts, "score", "challenge:score", "how today was: pain, bloating, wind, urgency, 0 to 10")
    scores(score)
    score.add_argument("--not-eaten", action="store_true", help="today's dose was not eaten")
    score.add_argument(
        "--also", action="append", default=[], metavar="WHAT",
        help=f"why the day says nothing of the group: {', '.join(get_args(LeftOut))}; may be repeated",
    )  # fmt: skip
    skip = common.command(parts, "skip", "challenge:skip", "not today; it goes on tomorrow")
    skip.add_argument("--why", default="", metavar="TEXT", help="a few words on it")
    status = common.command(parts, "status", "challenge:status", "where you are, what was found, what comes next")
    stop = common.command(parts, "stop", "challenge:stop", "end it; nothing is concluded from it")
    stop.add_argument("--why", default="", metavar="TEXT", help="a few words to it")
    history = common.command(parts, "history", "challenge:history", "every challenge, day by day")
    page = common.command(parts, "page", "challenge:page", "a page for your dietitian: eaten, scored, found")
    page.add_argument("--out", metavar="FILE", help="a file to write, .html or .md (default: Markdown is shown)")
    for parser in (start, control, today, score, skip, status, stop, history, page):
        parser.add_argument("--who", default="me", metavar="NAME", help="whose (default me)")
        for more in (common.home, common.today, common.tables, common.json):
            more(parser)
