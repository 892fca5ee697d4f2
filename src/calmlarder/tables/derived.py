"""What was made from files before, kept in the user's cache folder and dropped at the slightest doubt.

A value is found again by a digest of everything it was made from, the code that made it included, and has its own
checksum before it. It is plain JSON, so reading it can run nothing. Whatever is wrong with the folder or the file, the
value is made anew; nothing is lost by deleting it. A file is a head with digest and checksum, the names of the values
as a JSON list, and each value as JSON on a line of its own.
"""

import hashlib
import json
import os
import zlib
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import suppress
from functools import lru_cache
from pathlib import Path
from tempfile import mkstemp
from typing import Any

from platformdirs import user_cache_path

_MOST_BYTES = 50_000_000  # ours: ten times the largest one
_OTHERS_MAY_WRITE = 0o022


def digest_of(files: Iterable[Path]) -> str:
    """A digest of the names and bytes of files. Raises OSError."""
    digest = hashlib.blake2b(digest_size=32)
    for path in files:
        found = path.stat()
        digest.update(f"{path.name} {_digest_of(path, found.st_mtime_ns, found.st_size)}\n".encode())
    return digest.hexdigest()


@lru_cache(maxsize=1024)  # the tables and the names in them are made of the same files
def _digest_of(path: Path, changed_ns: int, size: int) -> str:
    """A digest of a file's bytes, read once as long as it does not change."""
    return hashlib.blake2b(path.read_bytes(), digest_size=32).hexdigest()


class Kept(Mapping[str, Any]):
    """Values by name, each taken out of its JSON when it is first asked for: a start needs half of them."""

    def __init__(self, names: Sequence[str], written: Sequence[bytes]) -> None:
        self._written = dict(zip(names, written, strict=True))
        self._read: dict[str, Any] = {}

    def __getitem__(self, name: str) -> Any:
        if name not in self._read:
            self._read[name] = json.loads(self._written[name])
        return self._read[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self._written)

    def __len__(self) -> int:
        return len(self._written)


def kept(name: str, made_from: str) -> Kept | None:
    """The values kept under a name, where they were made from just this and are whole; else None."""
    with suppress(OSError, ValueError):
        folder = _folder()
        if folder is not None:
            with (folder / name).open("rb") as file:
                head, content = file.readline(_MOST_BYTES), file.read(_MOST_BYTES)
            if head == _head(made_from, content):
                names, *written = content.split(b"\n")
                return Kept(json.loads(names), written)
    return None


def keep(name: str, made_from: str, values: Mapping[str, Any]) -> None:
    """Keep values by name for the next start, if that can be done."""
    with suppress(OSError, TypeError):
        written = (json.dumps(one, ensure_ascii=False, separators=(",", ":")) for one in ([*values], *values.values()))
        content = "\n".join(written).encode()
        folder = _folder()
        if folder is not None:
            number, whole = mkstemp(dir=folder)
            try:
                with os.fdopen(number, "wb") as file:
                    file.write(_head(made_from, content) + content)
                os.replace(whole, folder / name)
            except OSError:
                os.unlink(whole)


def _head(made_from: str, content: bytes) -> bytes:
    return f"{made_from} {zlib.crc32(content):08x}\n".encode()


def _folder() -> Path | None:
    """The user's cache folder, made where there is none; None where somebody else could write to it."""
    folder = user_cache_path("calmlarder", appauthor=False)
    folder.parent.mkdir(parents=True, exist_ok=True)
    with suppress(FileExistsError):
        folder.mkdir(mode=0o700)
    found = folder.stat()
    if hasattr(os, "getuid") and (found.st_uid != os.getuid() or found.st_mode & _OTHERS_MAY_WRITE):
        return None
    return folder
