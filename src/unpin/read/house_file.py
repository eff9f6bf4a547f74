"""The file of a house style: its name, and where it is looked for."""

from __future__ import annotations

import os
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pathlib import Path

NAME = "house.style"
"""What the file is called where it is looked for."""


def find_house(problem: str | Path, opened: str | Path = "") -> str | None:
    """The house style file that holds for a problem file: in its folder, or in the nearest one above it, up to the folder that was
    `opened` (by default the one the program was started in). Folders above that, or beside it, are not looked into."""
    here, top = os.path.dirname(os.path.realpath(problem)), os.path.realpath(opened or os.curdir)
    while not os.path.isfile(os.path.join(here, NAME)):
        if here == top or not _is_below(here, top):
            return None
        here = os.path.dirname(here)
    return os.path.join(here, NAME)


def _is_below(folder: str, top: str) -> bool:
    return os.path.normcase(folder).startswith(os.path.normcase(os.path.join(top, "")))
