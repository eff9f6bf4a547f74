"""The opened folder: its problem files by name, read and saved with a stamp, and nothing outside of it.

A stamp stands for the bytes on disk. Who saves says which stamp they began from: a file that another window or program has
changed is never overwritten silently, nor by another desk that saves at the same moment.
"""

from __future__ import annotations

import errno
import hashlib
import os
import threading
import unicodedata
from pathlib import Path

from unpin.base.record import record
from unpin.lock import alone
from unpin.output import save

LARGEST = 256 * 1024
MOST = 500
ENDINGS = (".yaml", ".yml")
_UNSEEN = ("Cc", "Cs", "Zl", "Zp")
_TURNING = "\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"
"""Signs of a name that cannot be seen: ends of lines, and those that turn the way of reading, so that lmay.exe reads exe.yaml."""


class Refused(Exception):
    """A request that is not granted; `code` names the sentence, `status` the reply."""

    def __init__(self, code: str, status: int = 400, **more: object):
        self.code, self.status, self.more = code, status, more
        super().__init__(code)


@record
class File:
    """A problem file as it stands on disk."""

    name: str
    text: str
    stamp: str


class Folder:
    """One folder of problem files. Raises NotADirectoryError for what is none."""

    def __init__(self, path: str | Path):
        self.path = Path(path).resolve()
        if not self.path.is_dir():
            raise NotADirectoryError(20, os.strerror(20), str(path))
        self._lock = threading.Lock()

    def names(self) -> list[str]:
        """Problem files, in the order of their names; what is hidden is left out. Refused when the folder itself is gone."""
        try:
            found = [p.name for p in self.path.iterdir() if p.suffix in ENDINGS and not p.name.startswith(".") and p.is_file()]
        except OSError as fault:
            raise Refused("no_folder", 404) from fault
        return sorted(n for n in found if self._inside(n))[:MOST]

    def read(self, name: str) -> File:
        """The file and its stamp. Refused when there is none, it is too large or no text."""
        try:
            data = self._bytes(name)
        except OSError as fault:
            raise Refused("no_file", 404) from fault
        if len(data) > LARGEST:
            raise Refused("large_file", 413)
        try:
            return File(name, data.decode("utf-8"), stamp_of(data))
        except UnicodeDecodeError as fault:
            raise Refused("not_text", 415) from fault

    def stamp(self, name: str) -> str | None:
        """The stamp of what is on disk, None when there is nothing."""
        try:
            return stamp_of(self._bytes(name))
        except OSError:
            return None

    def _bytes(self, name: str) -> bytes:
        """What a file holds, as far as anybody reads. OSError where there is none: a pipe or a device, at which one could wait for ever,
        is no file."""
        path = self.place(name)
        if not path.is_file():
            raise FileNotFoundError(name)
        with open(path, "rb") as stream:
            return stream.read(LARGEST + 1)

    def save(self, name: str, text: str, stamp: str | None) -> str:
        """Put the text there, whole or not at all; the new stamp. Refused (409) when the file on disk is not the one of `stamp`;
        None stands for a file that must not exist yet."""
        data = text.encode("utf-8", "replace")
        if len(data) > LARGEST:
            raise Refused("large_file", 413)
        path = self.place(name)
        try:
            with self._lock, alone(self.path):
                there = self.stamp(name)
                if there is None and os.path.lexists(path):  # something that is no file, or that we may not read
                    raise Refused("not_saved", 507, reason=os.strerror(errno.EISDIR if path.is_dir() else errno.EACCES))
                if there != stamp and there != stamp_of(data):
                    raise Refused("changed", 409, text=self.read(name).text if there else None, stamp=there)
                save(str(path), data)
        except OSError as fault:
            busy = fault.errno == errno.EBUSY
            raise Refused("busy" if busy else "not_saved", 503 if busy else 507, reason=fault.strerror or str(fault)) from fault
        return stamp_of(data)

    def place(self, name: str) -> Path:
        """The path of a problem file of that name. Refused for anything that is not a plain name inside the folder."""
        return self.output(name, ENDINGS)

    def output(self, name: str, endings: tuple[str, ...]) -> Path:
        """The path of something published beside the problem files."""
        if not name or len(name) > 200 or name != Path(name).name or name.startswith(".") or Path(name).suffix not in endings:
            raise Refused("name", 400)
        if any(unicodedata.category(c) in _UNSEEN or c in _TURNING or c in '<>:"|?*\\' for c in name) or not self._inside(name):
            raise Refused("name", 400)
        return self.path / name

    def _inside(self, name: str) -> bool:
        """A link that leads out of the folder is not followed."""
        try:
            return (self.path / name).resolve().parent == self.path
        except (OSError, RuntimeError):  # links in a ring
            return False


def stamp_of(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()[:20]
