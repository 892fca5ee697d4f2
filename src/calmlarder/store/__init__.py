"""The larder on disk: SQLite in the user's data directory, with undo, redo and a copy to fall back on."""
