"""How words run together in a language: `de el` becomes `del`, `y` before an i becomes `e`; rules of its `language.toml`.

A rule is a regular expression and what stands in its place, as Python writes them. They are applied to finished sentences.

>>> joined("la tensión de el cable"), joined("la tensión de el cable", "es")
('la tensión de el cable', 'la tensión del cable')
"""

from __future__ import annotations

import re
from functools import cache


def joined(text: str, language: str = "en") -> str:
    """The sentence with its words run together as the language does."""
    for rule, instead in _rules(language):
        text = rule.sub(instead, text)
    return text


def before(text: str, following: str, language: str = "en") -> str:
    """The same for words that stand before something that is no word (a formula); `following`: how that begins."""
    return joined(text + following, language).removesuffix(following) if following else joined(text, language)


@cache
def _rules(language: str) -> tuple[tuple[re.Pattern[str], str], ...]:
    from unpin.words.sentences import catalogue

    return tuple((re.compile(name.removeprefix("contraction.")), instead)
                 for name, instead in catalogue("language", language).items() if name.startswith("contraction."))
