"""The grammar of discs, blocks and cords. Words such as `winds` mean something only where they stand, and are free as names."""

from __future__ import annotations

from parsy import Parser, alt, seq

from unpin.read import phrases as say
from unpin.read.pieces import amount, amount_before, comma, direction, name, symbol, token, word


def _only_here(*texts: str) -> Parser:
    """Words that are no keywords elsewhere."""
    return alt(*(token(lambda t, text=text: t.text == text, text) for text in texts))


_the = word("the").optional()
_and = alt(word("and"), symbol("+"), symbol(",") >> word("and").optional())

block = alt(
    word("at") >> name,
    (_only_here("corners").optional() >> name.at_least(3)).map(lambda names: say.BoxSaid(tuple(names))),
)
disc = seq(_only_here("radius", "radii").optional() >> amount, (_and >> amount).optional(), word("at") >> name).combine(
    lambda a, b, centre: say.DiscSaid((a, b) if b else (a,), centre)
)

_side = alt(
    word("over").result("over"),
    word("under").result("under"),
    _only_here("through").result("through"),
    (word("left") << word("of")).result("left"),
    (word("right") << word("of")).result("right"),
)
# What may follow an amount here is no unit of it: `at 0.15 m pulled down`.
_radius = (word("at") >> amount_before("pulled", "winds", "under", "through", "then")).optional()
_passing = seq(_side, _the >> name, _radius).combine(lambda side, disc, radius: say.StopSaid(disc, side=side, radius=radius))
_pulled = (_only_here("pulled") >> direction).map(lambda way: say.StopSaid(direction=way))
_wound = seq(
    _only_here("winds") >> _only_here("onto", "off") >> _the >> name,
    word("on") >> alt(_only_here("its"), word("the")) >> word("left", "right"),
    _radius,
).combine(lambda disc, side, radius: say.StopSaid(disc, side=side.text, radius=radius, wound=True))
_end = seq(_the >> name, (word("on") >> name).optional()).combine(lambda point, part: say.StopSaid(point, part))
_last = alt(word("to") >> _end, _pulled, _wound)
_then = comma >> alt(word("and"), _only_here("then")).optional()
_ON_RIM = {"top": "over", "bottom": "under"}
_rim = seq(_the >> alt(_only_here(*_ON_RIM), word("left", "right")), word("of") >> _the >> name, _radius).combine(
    lambda side, disc, radius: say.StopSaid(disc, side=_ON_RIM.get(side.text, side.text), radius=radius, wound=True)
)
_belt = seq(_only_here("belt") >> word("from") >> _rim, comma >> alt(word("to") >> alt(_rim, _end), _pulled))
cord = _belt.map(tuple) | seq(alt(_pulled, _wound, _end), (_then >> _passing).many(), _then >> _last).combine(
    lambda first, middle, last: (first, *middle, last)
)
