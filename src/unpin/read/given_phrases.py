"""The grammar of forces that are given. Words such as `lifts` mean something only where they stand, and are free as names."""

from __future__ import annotations

from parsy import Parser, alt, seq

from unpin.read import phrases as say
from unpin.read.pieces import TURNS, amount, amount_before, direction, name, symbol, token, word


def _only(texts: tuple[str, ...]) -> Parser:
    """Words that are no keywords elsewhere."""
    return alt(*(token(lambda t, text=text: t.text == text, text) for text in texts))


_lead = (
    word("the").optional() >> alt(word("force", "reaction"), _only(("tension",))) >> alt(word("at"), _only(("in",)))
).optional()
_axial = seq(_only(("in",)).optional(), _only(("tension", "compression"))).combine(lambda _, sense: sense)
_is = alt(_only(("is", "carries", "pushes", "pulls", "holds")), symbol("=")).optional()
_lifts = (_only(("just",)).optional() >> _only(("lifts", "opens", "touches"))) << _only(("off",)).optional()
given = seq(
    _lead
    >> alt(
        seq(name << symbol("-"), name).map(lambda ends: (tuple(ends), None)),
        seq(name, (word("on") >> name).optional()).map(lambda n: ((n[0],), n[1])),
    ),
    alt(
        _lifts.result((None, None)),
        seq(_is >> amount_before("in", "tension", "compression"), _axial.map(lambda w: ("sense", w))).map(tuple),
        seq(
            _is >> amount,
            alt(
                word(*TURNS).map(lambda w: ("turn", w)),
                direction.map(lambda d: ("direction", d)),
            ).optional(),
        ).map(tuple),
    ),
).combine(lambda names, rest: say.GivenSaid(*names, rest[0], **({rest[1][0]: rest[1][1]} if rest[1] else {})))
