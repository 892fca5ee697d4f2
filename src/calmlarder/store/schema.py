"""The tables of the store, one step a version. A step is never changed once it has been used.

A step may call `opened_by_now` (documents.py), which opening.py makes known to SQLite.
"""

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
    """
    CREATE TABLE eaten (
        id INTEGER PRIMARY KEY,
        content TEXT NOT NULL CHECK (json_valid(content)),
        at TEXT GENERATED ALWAYS AS (json_extract(content, '$.at')) VIRTUAL NOT NULL,
        who TEXT GENERATED ALWAYS AS (json_extract(content, '$.who')) VIRTUAL NOT NULL,
        line TEXT GENERATED ALWAYS AS (json_extract(content, '$.text')) VIRTUAL NOT NULL,
        food TEXT GENERATED ALWAYS AS (json_extract(content, '$.food')) VIRTUAL NOT NULL,
        title TEXT GENERATED ALWAYS AS (json_extract(content, '$.title')) VIRTUAL NOT NULL,
        grams REAL GENERATED ALWAYS AS (json_extract(content, '$.grams')) VIRTUAL NOT NULL
    ) STRICT;
    CREATE INDEX eaten_at ON eaten (at);
    CREATE TABLE changes_wider (
        id INTEGER PRIMARY KEY,
        action INTEGER NOT NULL REFERENCES actions (id) ON DELETE CASCADE,
        place TEXT NOT NULL CHECK (place IN ('lots', 'settings', 'eaten')),
        row_id TEXT NOT NULL,
        before TEXT,
        after TEXT
    ) STRICT;
    INSERT INTO changes_wider SELECT id, action, place, row_id, before, after FROM changes;
    DROP TABLE changes;
    ALTER TABLE changes_wider RENAME TO changes;
    """,
    """
    CREATE TABLE ended (
        id INTEGER PRIMARY KEY,
        content TEXT NOT NULL CHECK (json_valid(content)),
        at TEXT GENERATED ALWAYS AS (json_extract(content, '$.on')) VIRTUAL NOT NULL,
        food TEXT GENERATED ALWAYS AS (json_extract(content, '$.food')) VIRTUAL NOT NULL,
        grams REAL GENERATED ALWAYS AS (json_extract(content, '$.grams')) VIRTUAL NOT NULL,
        how TEXT GENERATED ALWAYS AS (json_extract(content, '$.how')) VIRTUAL NOT NULL
            CHECK (how IN ('eaten', 'given', 'thrown'))
    ) STRICT;
    CREATE INDEX ended_at ON ended (at);
    CREATE TABLE felt (
        id INTEGER PRIMARY KEY,
        content TEXT NOT NULL CHECK (json_valid(content)),
        at TEXT GENERATED ALWAYS AS (json_extract(content, '$.at')) VIRTUAL NOT NULL,
        who TEXT GENERATED ALWAYS AS (json_extract(content, '$.who')) VIRTUAL NOT NULL,
        score INTEGER GENERATED ALWAYS AS (json_extract(content, '$.score')) VIRTUAL NOT NULL
    ) STRICT;
    CREATE INDEX felt_at ON felt (at);
    CREATE TABLE changes_wider (
        id INTEGER PRIMARY KEY,
        action INTEGER NOT NULL REFERENCES actions (id) ON DELETE CASCADE,
        place TEXT NOT NULL CHECK (place IN ('lots', 'settings', 'eaten', 'ended', 'felt')),
        row_id TEXT NOT NULL,
        before TEXT,
        after TEXT
    ) STRICT;
    INSERT INTO changes_wider SELECT id, action, place, row_id, before, after FROM changes;
    DROP TABLE changes;
    ALTER TABLE changes_wider RENAME TO changes;
    """,
    """
    UPDATE settings SET content = json_object('value', json(content));
    UPDATE changes SET before = json_object('value', json(before)) WHERE place = 'settings' AND before IS NOT NULL;
    UPDATE changes SET after = json_object('value', json(after)) WHERE place = 'settings' AND after IS NOT NULL;
    """,
    # The number of a lot that was taken out, or whose coming in was undone, is never another lot's.
    """
    CREATE TABLE lots_counted (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        content TEXT NOT NULL CHECK (json_valid(content))
    ) STRICT;
    INSERT INTO lots_counted SELECT id, content FROM lots;
    DROP TABLE lots;
    ALTER TABLE lots_counted RENAME TO lots;
    DELETE FROM sqlite_sequence WHERE name = 'lots';
    INSERT INTO sqlite_sequence (name, seq) SELECT 'lots', max(id) FROM (
        SELECT id FROM lots UNION SELECT CAST(row_id AS INTEGER) FROM changes WHERE place = 'lots' UNION SELECT 0
    );
    UPDATE lots SET content = opened_by_now(content);
    UPDATE changes SET before = opened_by_now(before) WHERE place = 'lots' AND before IS NOT NULL;
    UPDATE changes SET after = opened_by_now(after) WHERE place = 'lots' AND after IS NOT NULL;
    """,
    # What became of challenges, event by event.
    """
    CREATE TABLE challenges (
        id INTEGER PRIMARY KEY,
        content TEXT NOT NULL CHECK (json_valid(content)),
        at TEXT GENERATED ALWAYS AS (json_extract(content, '$.at')) VIRTUAL NOT NULL,
        who TEXT GENERATED ALWAYS AS (json_extract(content, '$.who')) VIRTUAL NOT NULL,
        kind TEXT GENERATED ALWAYS AS (json_extract(content, '$.kind')) VIRTUAL NOT NULL
    ) STRICT;
    CREATE INDEX challenges_at ON challenges (at);
    CREATE TABLE changes_wider (
        id INTEGER PRIMARY KEY,
        action INTEGER NOT NULL REFERENCES actions (id) ON DELETE CASCADE,
        place TEXT NOT NULL CHECK (place IN ('lots', 'settings', 'eaten', 'ended', 'felt', 'challenges')),
        row_id TEXT NOT NULL,
        before TEXT,
        after TEXT
    ) STRICT;
    INSERT INTO changes_wider SELECT id, action, place, row_id, before, after FROM changes;
    DROP TABLE changes;
    ALTER TABLE changes_wider RENAME TO changes;
    """,
)
DOCUMENTS_SINCE = 4  # the step from which on documents carry a version (documents.py)


def statements(step: str) -> list[str]:
    """The statements of a step, one by one; none of them holds a semicolon."""
    return [statement for part in step.split(";") if (statement := part.strip())]
