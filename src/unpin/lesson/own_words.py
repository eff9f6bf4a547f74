"""The teacher's own words as a lesson prints them."""

from __future__ import annotations

import re

from unpin.base.units import BY_SPELLING

_TOGETHER = re.compile(r"(?<=\d) (?=(?:" + "|".join(sorted(map(re.escape, BY_SPELLING), key=len, reverse=True)) + r")(?!\w))")


def kept_together(text: str) -> str:
    """A number and its unit stay on one line: the space between them (SI Brochure, 9th edition, 5.4.3) is one that does not break."""
    return _TOGETHER.sub("\u00a0", text)
