"""The screens. They show and ask; no rule lives here."""
