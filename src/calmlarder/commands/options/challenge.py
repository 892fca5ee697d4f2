"""Options of `challenge`."""

from calmlarder.commands.options import common


def add(commands: common.Commands) -> None:
    """What challenge days would say."""
    challenge = commands.add_parser("challenge", help="what challenges of one group say of your own limit")
    parts = challenge.add_subparsers(dest="challenge_command", metavar="WHAT", required=True)
    reckon = parts.add_parser("reckon", help="the arithmetic, for any days", allow_abbrev=False)
    reckon.set_defaults(run="challenge:reckoned")
    reckon.add_argument("group", metavar="GROUP", help="sorbitol, excess_fructose, lactose, gos, mannitol or fructans")
    reckon.add_argument("--days", required=True, metavar="DAYS", help='such as "0.5:calm 1:calm 2:reaction"')
    common.json(reckon)
