"""Use cases, each once: read the home, build the request, run, check, answer; cook, eat, freeze, discard, undo.

Screens and commands reach solver, store and checks only through here. Nothing here prints, draws or parses options.
"""
