"""Options of `completion` and `manual`."""

from calmlarder.commands.options import common

SHELLS = ("bash", "zsh", "fish")


def add(commands: common.Commands) -> None:
    """Both commands."""
    completion = common.command(commands, "completion", "shell:completion", "what a shell reads to complete commands")
    completion.add_argument("shell", choices=SHELLS)
    common.command(commands, "manual", "shell:manual", "the manual page, for `man -l -`")
