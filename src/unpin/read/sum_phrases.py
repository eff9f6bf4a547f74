"""The grammar of a teacher's sums."""

from __future__ import annotations

from parsy import alt, seq

from unpin.read import phrases as say
from unpin.read.pieces import amount, direction, linear, name, slope, symbol, token, word

CUTS = ("section", "cut")
"""What a sum cannot be taken on: the pins on one side of it are named instead."""

_body_name = word("the").optional() >> alt(
    word("whole"),
    seq(token(lambda t: t.text == "pin", "pin"), name).combine(lambda pin, at: say.Word(f"pin {at.text}", pin.start, at.end)),
    name,
)
_next = alt(symbol(",") >> word("and").optional(), word("and"), symbol("+"))
_pins = seq(
    word("the").optional() >> token(lambda t: t.text in ("pins", "joints"), "pins"),
    seq(name, (_next >> (word("pin", "the").optional() >> name)).many()).combine(lambda first, more: (first, *more)),
).combine(lambda _, names: tuple(say.Word(f"pin {n.text}", n.start, n.end) for n in names))
_bodies = word("on") >> alt(
    _pins, seq(_body_name, (_next >> _body_name).many()).combine(lambda first, more: (first, *more))
)
_xy = token(lambda t: t.text in ("x", "y"), "@want.x_or_y").map(say.AxisSaid)
wanted_sum = alt(
    seq(
        word("moments")
        >> word("about")
        >> alt(name, seq(symbol("(") >> amount, symbol(",") >> amount << symbol(")")).map(tuple)),
        _bodies,
    ).combine(lambda about, parts: say.SumSaid(parts, about=about)),
    seq(word("forces"), word("along") >> alt(_xy, slope, direction), _bodies).combine(
        lambda _, along, parts: say.SumSaid(parts, along=along)
    ),
    seq(word("forces"), linear(word("along"), False), _bodies).combine(lambda _, along, parts: say.SumSaid(parts, along=along)),
    seq(word("forces"), linear(word("square") << word("to"), True), _bodies).combine(
        lambda _, along, parts: say.SumSaid(parts, along=along)
    ),
)
