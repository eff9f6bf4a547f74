"""Writing files so that what was there before is never damaged: a file beside it first, then one move."""

from __future__ import annotations

import os
import re
import stat
import tempfile
import time
from pathlib import Path

_BEGUN, _PART = ".unpin-", ".part"
"""What the name of a file that is not yet whole begins and ends with; it is hidden, and no file of anybody else is called so."""
_UNFINISHED = re.compile(r"\.unpin-[a-z0-9_]{8}\.part")
DAY = 86400.0


class SameFile(Exception):
    """The output would overwrite the problem it is made from."""


def save(name: str, data: bytes, source: str = "") -> None:
    """Put data under a name, whole or not at all. Raises SameFile rather than overwrite `source`, OSError when it cannot
    be written."""
    if same(name, source):
        raise SameFile(name)
    # Through a link to the file it stands for, so that the link stays one.
    target = Path(os.path.realpath(name))
    handle, beside = tempfile.mkstemp(dir=target.parent, prefix=_BEGUN, suffix=_PART)
    try:
        with os.fdopen(handle, "wb") as stream:
            stream.write(data)
            stream.flush()
            os.fsync(stream.fileno())  # on the disk before the old file goes
        os.chmod(beside, _mode(target))
        os.replace(beside, target)
    except BaseException:
        os.unlink(beside)
        raise


def same(name: str, source: str) -> bool:
    """Whether two names, the second of them perhaps empty or -, stand for one file."""
    return bool(source) and source != "-" and os.path.exists(name) and os.path.exists(source) and os.path.samefile(name, source)


def sweep(folder: Path, ours: re.Pattern[str], kept: set[str]) -> None:
    """Remove what an earlier run left in a folder: files whose whole name is of the kind `ours` and that are not `kept`."""
    for path in folder.iterdir():
        if ours.fullmatch(path.name) and path.name not in kept:
            path.unlink()


def sweep_unfinished(folder: Path, age: float = DAY) -> list[str]:
    """Remove what saves that were killed left behind in a folder: hidden files of our own making, `age` seconds old at least, so that no
    save that is still at work loses its file, be it on another machine. Names of what went. A link is not ours, wherever it leads."""
    gone = []
    try:
        found = [e for e in os.scandir(folder) if _UNFINISHED.fullmatch(e.name)]
    except OSError:
        return gone
    for entry in found:
        try:
            about = entry.stat(follow_symlinks=False)
            if stat.S_ISREG(about.st_mode) and about.st_nlink == 1 and _mine(about) and time.time() - about.st_mtime >= age:
                os.unlink(entry.path)
                gone.append(entry.name)
        except OSError:
            continue  # another desk was faster, or it may not be
    return sorted(gone)


def _mine(about: os.stat_result) -> bool:
    return not hasattr(os, "geteuid") or about.st_uid == os.geteuid()


def _mode(target: Path) -> int:
    """The rights of the old file, or those a new one would get."""
    if target.exists():
        return target.stat().st_mode & 0o777
    mask = os.umask(0)
    os.umask(mask)
    return 0o666 & ~mask


def copy(sources: list[Path], folder: Path) -> None:
    """Copy files into a folder, which is made. Raises FileExistsError, before anything is copied, if one of them is there."""
    for source in sources:
        if (folder / source.name).exists():
            raise FileExistsError(17, "", str(folder / source.name))
    folder.mkdir(parents=True, exist_ok=True)
    for source in sources:
        save(str(folder / source.name), source.read_bytes())
