"""The next sittings planned together, so that least is wasted."""
