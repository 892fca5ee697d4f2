"""The commands: they read, call the domain, and write. No rule lives here."""
