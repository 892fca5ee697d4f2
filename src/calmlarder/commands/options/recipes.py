"""Options of `adapt` and `label`."""

from calmlarder.commands.options import common

FORMS = ("text", "markdown", "jsonld")


def add(commands: common.Commands) -> None:
    """A recipe that is made to fit the limits, and a packet read."""
    _label(commands)
    adapt = common.command(commands, "adapt", "adapt:adapt", "the smallest change that makes a recipe fit the limits")
    adapt.add_argument(
        "file",
        nargs="?",
        metavar="FILE",
        help="text, Markdown, schema.org/Recipe JSON-LD or a page of HTML; - reads standard input",
    )
    kept = adapt.add_mutually_exclusive_group()
    kept.add_argument("--keep", action="store_true", help="keep the recipe that fits; tonight proposes it")
    kept.add_argument("--kept", nargs="?", type=int, const=0, metavar="N", help="the kept recipes, or one of them")
    kept.add_argument("--forget", type=int, metavar="N", help="take a kept recipe out")
    adapt.add_argument("--serves", type=int, metavar="N", help="how many it serves (default: what the recipe says)")
    adapt.add_argument("--people", type=int, metavar="N", help="people who eat all of it at one meal")
    common.at_table(adapt)
    common.profile(adapt)
    common.sitting(adapt)
    common.eaters(adapt)
    common.tolerance_at_home(adapt)
    common.home(adapt)
    adapt.add_argument(
        "--format", choices=FORMS, help="form of the changed recipe (default: as it came in, of a page text)"
    )
    common.tables(adapt)
    common.json(adapt)


def _label(commands: common.Commands) -> None:
    label = common.command(commands, "label", "label:label", "what in a packet's list of ingredients matters")
    label.add_argument(
        "text", nargs="*", metavar="TEXT", help="the list as the packet has it, or a file of it; - reads standard input"
    )
    words = "keep it with this item of the larder, or read what it has"
    label.add_argument("--item", "--lot", dest="lot", type=int, metavar="N", help=words)
    common.home(label)
    common.tables(label)
    common.json(label)
