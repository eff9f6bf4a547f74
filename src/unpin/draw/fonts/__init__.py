"""The two typefaces that ship with the package: they measure labels, go into SVG and pages, and to the typesetter.

`Unpin Text` (regular, italic, bold) and `Unpin Math` are subsets of STIX Two, under the SIL Open Font License beside
them; `tools/fonts.py` makes them. Advances are in thousandths of the size, without kerning, as the subsets have none.
"""

from __future__ import annotations

import json
from functools import cache
from importlib.resources import files
from pathlib import Path

TEXT_FAMILY = "Unpin Text"
MATH_FAMILY = "Unpin Math"
NAMES = ("text", "text-italic", "text-bold", "math")


@cache
def woff2(name: str) -> bytes:
    """One of NAMES for pages and standalone drawings."""
    return files(__name__).joinpath(f"{_known(name)}.woff2").read_bytes()


def opentype_folder() -> Path:
    """The folder with the `.ttf` files, for a typesetter."""
    return Path(str(files(__name__)))


@cache
def advances(name: str) -> dict[str, int]:
    """Width of each character of a text face, in thousandths of the size."""
    return _table()[_known(name)]


@cache
def _table() -> dict[str, dict[str, int]]:
    return json.loads(files(__name__).joinpath("advances.json").read_text("utf-8"))


def _known(name: str) -> str:
    if name not in NAMES:
        raise ValueError(f"no font {name!r}; there are {', '.join(NAMES)}")
    return name
