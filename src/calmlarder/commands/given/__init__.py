"""What was typed, one frozen class a command: past this edge no command sees the parser's own object.

A module holds the classes of one family of commands, and only that of the command which runs is loaded. Fields are
named as the options are (`commands/options/`); an option that a command does not have keeps the default that stands
here. They are never compared and never shown: without that there is half as much to make at each start.
"""
