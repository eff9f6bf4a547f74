"""Which form of a sentence a number takes: rules of the language, kept in its catalogue (`language.toml`).

A rule is a small condition on the whole number n, in the manner of the Unicode plural rules: `n = 1`, or
`n % 10 = 2..4 and n % 100 != 12..14`. The first form whose rule holds is taken, else `other`.

>>> category(1), category(0), category(7)
('one', 'other', 'other')
"""

from __future__ import annotations

import re

_RELATION = re.compile(r"n(?:\s*%\s*(\d+))?\s*(!?=)\s*([\d.,\s]+)")


def category(count: int, language: str = "en") -> str:
    """The name of the form: `one`, `other`, or what else the language has."""
    from unpin.words.sentences import catalogue

    for name, rule in catalogue("language", language).items():
        if name.startswith("plural.") and holds(rule, count):
            return name.removeprefix("plural.")
    return "other"


def holds(rule: str, count: int) -> bool:
    """Whether a rule holds for a number; ValueError if it is none.

    >>> holds("n % 10 = 2..4 and n % 100 != 12..14", 22), holds("n = 0,1", 1)
    (True, True)
    """
    return any(all(_relation(part.strip(), count) for part in either.split(" and ")) for either in rule.split(" or "))


def _relation(text: str, count: int) -> bool:
    found = _RELATION.fullmatch(text)
    if not found:
        raise ValueError(f"no plural rule: {text}")
    modulus, sign, ranges = found.groups()
    value = abs(count) % int(modulus) if modulus else abs(count)
    return any(_within(value, each.strip()) for each in ranges.split(",")) == (sign == "=")


def _within(value: int, each: str) -> bool:
    low, _, high = each.partition("..")
    return int(low) <= value <= int(high or low)
