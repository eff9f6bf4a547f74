"""The smallest parsers of the phrases: keywords, names, amounts and directions."""

from __future__ import annotations

from parsy import Parser, Result, alt, generate, seq

from unpin.exact.expression import Name as LetterName
from unpin.exact.expression import NotAnExpression, parse_at, tokens
from unpin.read import phrases as say

AXES = ("right", "left", "up", "down")
WAYS = {"downward": "down", "downwards": "down", "upward": "up", "upwards": "up"}
"""Other words for the axes."""
TURNS = ("clockwise", "anticlockwise", "counterclockwise")
KEYWORDS = frozenset(
    (*AXES, *TURNS, *WAYS)
    + tuple(
        "above below of at on from to towards along square slope line the where meets midpoint and per length horizontal "
        "vertical weight mass hangs pushes welded about moments forces whole everything ground force reaction not joined over".split()
    )
)
"""Words that cannot be names of points, members or letters."""


def is_name(text: str) -> bool:
    """Whether a text can be the name of a point, a member or a letter."""
    line = tokens(text)
    return len(line) == 2 and line[0].kind == "word" and text not in KEYWORDS and text != "°" and len(text) <= 40


# The smallest pieces.


def token(test, wanted: str) -> Parser:
    @Parser
    def piece(line, index):
        found = line[index] if index < len(line) else None
        if found is not None and test(found):
            return Result.success(index + 1, say.Word(found.text, found.start, found.end))
        return Result.failure(index, wanted)

    return piece


def word(*texts: str) -> Parser:
    """One of some keywords."""
    return alt(*(token(lambda t, text=text: t.kind == "word" and t.text == text, text) for text in texts))


def symbol(text: str) -> Parser:
    return token(lambda t: t.kind == "symbol" and t.text == text, text)


name = token(lambda t: t.kind == "word" and t.text not in KEYWORDS, "@want.name")
end = token(lambda t: t.kind == "end", "@want.end")
comma = symbol(",").optional()


def amount_before(*stops: str) -> Parser:
    """A number, letter or expression, with its unit if it has one; the `stops` are no names in it."""

    @Parser
    def piece(line, index):
        try:
            found, after = parse_at(line, index, KEYWORDS | set(stops))
        except NotAnExpression as fault:
            return Result.failure(fault.index, f"@want.{fault.wanted}")
        return Result.success(after, say.Amount(found, line[index].start, line[after - 1].end))

    return piece


amount = amount_before()


@Parser
def _lone_name(line, index):
    """A name that no sign of arithmetic follows. Two names side by side are not a product here: `at E dwn` is a slip."""
    token, after = line[index], line[min(index + 1, len(line) - 1)]
    if token.kind == "word" and token.text not in KEYWORDS and not (after.kind == "symbol" and after.text in "+-*/^("):
        found = LetterName(token.text, token.start, token.end)
        return Result.success(index + 1, say.Amount(found, token.start, token.end))
    return Result.failure(index, "@want.place")


# Directions.

axis = word(*AXES)
_side = seq(comma, axis).combine(lambda _, side: side).optional()
_way = alt(
    word(*WAYS).map(lambda w: say.AxisSaid(say.Word(WAYS[w.text], w.start, w.end))),
    (word("to") >> word("the") >> word("right", "left")).map(say.AxisSaid),
)
linear_names = seq(name, name.optional()).combine(lambda a, b: (a, b) if b else (a,))
_turn = alt(
    seq(word("above", "below"), word("right", "left")).combine(
        lambda turn, base: (base.text, {"above": "up", "below": "down"}[turn.text], base.end)
    ),
    seq(word("left", "right"), word("of") >> word("up", "down")).combine(lambda turn, base: (base.text, turn.text, base.end)),
    seq(word(*TURNS) << word("from"), name, name).combine(lambda turn, a, b: ("", turn.text, b.end, (a, b))),
)
slope = seq(axis, amount, axis, amount).combine(lambda a, b, c, d: say.SlopeSaid(((a, b), (c, d))))


bare_angle = seq(amount, _turn.optional()).combine(lambda said, turn: say.AngleSaid(said, *(turn or ())))
"""`30 deg`, `20 deg left of up`: where `at` need not be said."""


def linear(first: Parser, square: bool) -> Parser:
    return seq(first, linear_names, _side).combine(
        lambda lead, names, side: say.LinearSaid(names, square, side.text if side else "", lead.start, (side or names[-1]).end)
    )


away = alt(
    slope,
    word("slope") >> slope,
    axis.map(say.AxisSaid),
    _way,
    (word("towards") >> name).map(say.TowardsSaid),
    linear(word("along"), False),
    linear(word("square") << word("to"), True),
)


@generate
def at_clause():
    """`at E`, `at 30 deg`, `at 30 deg above right`, `at slope right 3 up 4`."""
    yield word("at")
    legs = yield (word("slope") >> slope).optional()
    if legs:
        return legs
    said = yield alt(_lone_name, amount)
    turn = yield _turn.optional()
    if turn:
        return say.AngleSaid(said, *turn)
    if isinstance(said.expression, LetterName):
        return say.AtSaid(say.Word(said.expression.name, said.start, said.end))
    return say.AngleSaid(said)


at_angle = at_clause.map(
    lambda said: (
        say.AngleSaid(say.Amount(LetterName(said.name.text, said.name.start, said.name.end), said.name.start, said.name.end))
        if isinstance(said, say.AtSaid)
        else said
    )
)
direction = alt(at_angle, away)
