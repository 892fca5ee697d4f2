"""Options of `people`."""

from calmlarder.commands.options import common
from calmlarder.household.person import CHILD, HUNGRY
from calmlarder.intake.own_limit import OWN_COMPONENTS
from calmlarder.render.manner import MEASURES, NAMINGS

PHASES = ("elimination", "reintroduction", "personal")


def add(commands: common.Commands) -> None:
    """List, add, set, remove."""
    people = commands.add_parser("people", help="who eats here: diet, allergens, limits, appetite", allow_abbrev=False)
    parts = people.add_subparsers(dest="people_command", required=True, metavar="COMMAND")
    listed = common.command(parts, "list", "people:listed", "everybody, and what holds for them")
    new = common.command(parts, "add", "people:added", "somebody new")
    change = common.command(parts, "set", "people:changed", "what holds for somebody")
    gone = common.command(parts, "remove", "people:removed", "somebody leaves; what they logged stays")
    for parser in (new, change, gone):
        parser.add_argument("name", metavar="NAME", help="me, or another name")
    for parser in (new, change):
        _values(parser)
    for parser in (listed, new, change, gone):
        for more in (common.home, common.today, common.tables, common.json):
            more(parser)


def _values(parser: common.Parser) -> None:
    option = parser.add_argument
    common.diet(parser, "what they eat (default omnivore: no limit)")
    option("--avoid", metavar="A,B", help="their allergens, or none")
    option("--never", action="append", metavar="FOOD", help="a food they never eat; may be repeated; none for none")
    option("--dislike", action="append", metavar="FOOD", help="a food they would rather not; may be repeated")
    option("--protein", type=float, metavar="G", help="protein to aim at in a dinner, g")
    option("--weight", type=float, metavar="KG", help="their weight, if they want to say it")
    option("--age", type=int, metavar="YEARS", help="their age, if they want to say it")
    option("--appetite", type=float, metavar="X", help=f"share of a dish: usual 1, a child {CHILD}, hungry {HUNGRY}")
    option(
        "--profile",
        metavar="P",
        help="their limits: elimination, careful, very-careful, roomy, own, or none (others: none)",
    )
    option("--phase", choices=PHASES, help="where they are in the low FODMAP approach")
    option("--since", metavar="DATE", help="when the phase began (default: today)")
    components = ", ".join(OWN_COMPONENTS)
    option("--limit", action="append", metavar="WHAT", help=f'a limit of their own, such as "gos 1.0": {components}')
    option("--said-by", metavar="WHO", help='who says so, such as "my dietitian" (needed with --limit)')
    option("--forget-limit", action="append", metavar="WHAT", help="a group whose own limit goes")
    option("--measures", choices=MEASURES, help="of this home: american puts ounces, cups and °F beside grams")
    option("--names", choices=NAMINGS, help="of this home: courgette is british, zucchini american")
    option("--limits-add", choices=("yes", "no"), help="whether a dietitian said that own limits add up (default no)")
