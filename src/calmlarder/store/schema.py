"""The tables of the store, one step a version. A step is never changed once it has been used."""

STEPS: tuple[str, ...] = (
    """
    CREATE TABLE lots (
        id INTEGER PRIMARY KEY,
        content TEXT NOT NULL CHECK (json_valid(content))
    ) STRICT;
    CREATE TABLE settings (
        id TEXT PRIMARY KEY,
        content TEXT NOT NULL CHECK (json_valid(content))
    ) STRICT;
    CREATE TABLE actions (
        id INTEGER PRIMARY KEY,
        words TEXT NOT NULL,
        undone INTEGER NOT NULL DEFAULT 0 CHECK (undone IN (0, 1))
    ) STRICT;
    CREATE TABLE changes (
        id INTEGER PRIMARY KEY,
        action INTEGER NOT NULL REFERENCES actions (id) ON DELETE CASCADE,
        place TEXT NOT NULL CHECK (place IN ('lots', 'settings')),
        row_id TEXT NOT NULL,
        before TEXT,
        after TEXT
    ) STRICT;
    """,
)
