"""One writer at a time in a folder, among all desks that are open on it and all commands that change a file: each is a program of its own, and knows of the
others by what is on disk only.

The lock is the system's own on the folder itself: no file of ours lies there, and it goes with the process that holds it, however that ends.
"""

from __future__ import annotations

import errno
import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from time import monotonic, sleep

PATIENCE = 10.0
"""Seconds that another writer is waited for; a save takes some hundredths."""
_PAUSE = 0.003


@contextmanager
def alone(folder: Path, patience: float = PATIENCE) -> Iterator[None]:
    """The block runs while no other process is in such a block of the same folder. Raises OSError (EBUSY) when that does not end.
    Where the system has no such lock (some network folders, or no fcntl) the block runs without."""
    try:
        import fcntl

        door = os.open(folder, os.O_RDONLY)
    except (ImportError, OSError):  # a folder that is gone is told by the save itself
        yield
        return
    until = monotonic() + patience
    try:
        while True:
            try:
                fcntl.flock(door, fcntl.LOCK_EX | fcntl.LOCK_NB)
                break
            except BlockingIOError as held:
                if monotonic() > until:
                    raise OSError(errno.EBUSY, os.strerror(errno.EBUSY)) from held
                sleep(_PAUSE)
            except OSError:
                break
        yield
    finally:
        os.close(door)
