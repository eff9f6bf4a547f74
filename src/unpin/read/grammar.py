"""The grammar of the phrases, as combinators over the tokens of one line. `docs/reference/problem-file.md` lists its forms
(from `read.forms`); `parse_phrase` reads one.

Every parser here is built once, when the first phrase is read.
"""

from __future__ import annotations

from functools import cache, lru_cache

from parsy import ParseError, Parser, Result, alt, generate, seq, success
from parsy import index as parsy_index

from unpin.exact.expression import Name as LetterName
from unpin.exact.expression import tokens
from unpin.read import cord_phrases, given_phrases, sum_phrases
from unpin.read import phrases as say
from unpin.read.pieces import AXES, KEYWORDS, TURNS, amount, at_clause, away, axis, bare_angle, comma, direction, end, linear_names, name, slope, symbol, token, word
from unpin.read.slips import Misread, misread

LONGEST_KEPT = 300
"""Phrases of so many signs are remembered: from edit to edit most of a file says the same."""


def parse_phrase(kind: str, text: str):
    """One phrase of a kind of `PHRASES`: its facts, or a Misread."""
    return _remembered(kind, text) if len(text) <= LONGEST_KEPT else _parsed(kind, text)


@lru_cache(maxsize=2048)
def _remembered(kind: str, text: str):
    return _parsed(kind, text)


def _parsed(kind: str, text: str):
    line = tokens(text)
    if len(line) > 400:
        return Misread(0, len(text), "", ("@want.shorter",))
    try:
        return _phrases()[kind].parse(line)
    except ParseError as fault:
        return misread(kind, line, fault)
    except _Twice as fault:
        again = line[fault.args[0]]
        hint = "hint.point_first" if kind == "load" and again.text == "at" and line[fault.args[0] + 1].kind == "number" else "hint.no_way" if again.text in AXES else ""
        return Misread(again.start, again.end, again.text[:40], ("@want.once",), hint)


# Points.

_given_line = alt(
    seq(word("from") >> name, word("along").optional() >> direction).combine(lambda p, d: say.LineSaid(p, direction=d)),
    seq(name, name).combine(say.LineSaid),
)
_line = word("the").optional() >> word("line") >> _given_line
_any_line = word("the").optional() >> word("line").optional() >> _given_line
# These words mean something only where a construction begins.
_every, _evenly, _foot, _mirrored = (token(lambda t, text=text: t.text == text, text) for text in ("every", "evenly", "foot", "mirrored"))
_between = seq(name, word("and").optional() >> name)


def _names_before(least: int, *words: str) -> Parser:
    """So many names at least, before one of some words. Where that is missing nothing is taken, so that a slip in another construction is told
    where it is."""

    @Parser
    def piece(line, index):
        found = []
        while line[index + len(found)].kind == "word" and line[index + len(found)].text not in KEYWORDS | {*words}:
            found.append(say.Word(*(getattr(line[index + len(found)], k) for k in ("text", "start", "end"))))
        if len(found) >= least and line[index + len(found)].text in words:
            return Result.success(index + len(found), tuple(found))
        return Result.failure(index, "@want.name")

    return piece


_moves = seq(axis, amount << comma).map(tuple).at_least(1).map(tuple)
_distance = seq(amount << word("from"), name).map(tuple)
point = alt(
    seq(_distance << alt(word("and"), symbol(",")), _distance << comma, word("above", "below", "left", "right")).combine(say.Reached),
    seq(_foot >> word("of") >> name << word("on"), _any_line).combine(say.Foot),
    seq(_names_before(2, *AXES), _moves).combine(say.Shifted),
    seq(_names_before(1, "mirrored") << _mirrored << token(lambda t: t.text == "in", "in"), _any_line).combine(say.Mirrored),
    seq(name, _moves).combine(say.Moves),
    seq(amount, word("from") >> name, alt(direction)).combine(say.Away),
    (word("midpoint") >> word("of") >> _between).combine(lambda a, b: say.Share(None, a, b)),
    seq(amount << word("of"), _between).combine(lambda ratio, ends: say.Share(ratio, *ends)),
    seq(word("where") >> _line, word("meets") >> _line).combine(say.Meet),
    seq(
        word("on") >> name, name, word("at") >> token(lambda t: t.text in ("x", "y"), "@want.x_or_y"), symbol("=") >> amount
    ).combine(say.OnLine),
)


# A row of points.
point = point | alt(
    seq(_every >> amount, direction << word("from"), name).combine(say.Every),
    seq(_evenly >> word("from") >> name, word("to") >> name).combine(say.Evenly),
)


# Members, links, supports, joinings, contacts.

member = name.at_least(1).map(tuple)
strokes = member.sep_by(symbol(","), min=1).map(tuple)
link = alt(
    seq(name, word("on") >> name << symbol("-"), name, (word("on") >> name).optional()).combine(
        lambda a, first, b, last: say.LinkSaid((a, b), (first, last))
    ),
    seq(name << symbol("-").optional(), name << word("on"), name).combine(lambda a, b, part: say.LinkSaid((a, b), (None, part))),
    seq(name, (symbol("-") >> name).at_least(1)).combine(lambda a, more: say.LinkSaid((a, *more))),
    seq(name, name.many()).combine(lambda a, more: say.LinkSaid((a, *more))),
)
_one_word = token(lambda t: t.kind == "word" and t.text not in KEYWORDS, "@want.support")


def _two_words(first: str, *second: str) -> Parser:
    return seq(
        token(lambda t: t.text == first, "@want.support") << symbol("-").optional(),
        token(lambda t: t.text in second, "@want.support"),
    ).combine(lambda a, b: say.Word(f"{a.text} {b.text}", a.start, b.end))


_kind = alt(_two_words("knife", "edge"), _two_words("smooth", "surface", "wall", "floor"), _one_word)
_track = alt(
    slope,
    direction,
    linear_names.map(lambda n: say.LinearSaid(n, False, "", n[0].start, n[-1].end)),
    bare_angle,
)
support = seq(
    _kind << token(lambda t: t.text == "support", "support").optional(),
    alt(
        seq(word("pushes").result("pushes"), direction),
        seq(word("on") >> word("slope") >> success("slope"), alt(slope, direction)),
        seq(word("along").result("along"), _track),
        direction.map(lambda said: ("bare", said)),
        success(("", None)),
    ),
    (word("on") >> name).optional(),
).combine(lambda kind, way, part: say.SupportSaid(kind, way[0], way[1], part))
_pinned = token(lambda t: t.text in ("pin", "pinned"), "pinned")
_loose = word("not") >> word("joined")
joining = alt(
    _loose.result(say.JoiningSaid("loose")),
    word("welded").result(say.JoiningSaid("welded")),
    _pinned.result(say.JoiningSaid("pinned")),
    (name << _loose).map(lambda a: say.JoiningSaid("loose", (a,))),
    seq(name << word("welded") << word("to"), name).combine(lambda a, b: say.JoiningSaid("welded", (a, b))),
)

_side = alt(name, word("ground"))
contact = seq(_side << word("pushes"), _side, direction.optional()).combine(say.ContactSaid)
_owner = alt(word("the").optional() >> word("ground").result(None), name)
_in = token(lambda t: t.text == "in", "in")
_built_on = comma >> (token(lambda t: t.text == "built", "built") << word("on")).optional()


def _slide(how: Parser, built_on: Parser) -> Parser:
    return seq(
        name << how,
        _owner,
        (comma >> token(lambda t: t.text in ("round", "around"), "round") >> name).optional(),
        (comma >> word("along") >> _track).optional(),
        (comma >> seq(word("from") >> name, word("to") >> name).map(tuple)).optional(()),
        (comma >> word("the") >> token(lambda t: t.text == "long", "long") << token(lambda t: t.text == "way", "way")).optional(),
        built_on,
    ).combine(lambda slider, owner, centre, along, ends, far, built: say.SlideSaid(slider, owner, along, ends, built, centre, far))


slot = _slide(_in, success(None))
collar = _slide(word("on"), _built_on)


# Loads.

_more = (alt(word("and"), symbol(",") >> word("and").optional()).optional() >> name).many()


@generate
def _at():
    """`at C`, `at C E G`, `at C, E and G`, or a direction."""
    said = yield at_clause
    if not isinstance(said, say.AtSaid):
        return "direction", said
    more = yield _more
    return "at", (said.name, *more)


_clause = comma >> alt(
    _at,
    seq(word("on") >> name, (alt(word("and"), symbol("+")) >> name).many()).combine(lambda a, b: ("on", (a, *b))),
    word(*TURNS).map(lambda turn: ("turn", turn)),
    seq(word("from") >> name, word("to") >> name).map(lambda ends: ("span", tuple(ends))),
    (word("per") >> alt(word("horizontal").result("x"), word("vertical").result("y")) << word("length")).map(
        lambda per: ("per", per)
    ),
    (word("per") >> word("length")).result(("per", "member")),
    (word("over") >> amount).map(lambda width: ("over", width)),
    away.map(lambda said: ("direction", said)),
)


@generate
def _clauses():
    """Clauses in any order. A second `at X` is the direction: `P at C at theta`; of `at theta at C E` the first."""
    found: dict[str, object] = {}
    while True:
        start = yield parsy_index
        clause = yield _clause.optional()
        if clause is None:
            return say.Clauses(**found)
        key, value = clause
        if key == "at":
            value, more = value[0], value[1:]
            if key in found and more and "more" not in found:
                value, found[key] = found[key], value
            if key in found:
                angle = say.Amount(LetterName(value.text, value.start, value.end), value.start, value.end)
                key, value = "direction", say.AngleSaid(angle)
            if more:
                if "more" in found:
                    raise _Twice(start)
                found["more"] = more
        if key in found:
            raise _Twice(start)
        found[key] = value


class _Twice(Exception):
    """A clause that stood before stands again at this token."""


_two = seq(symbol("(") >> amount, axis << symbol(","), amount, axis << symbol(")"))
_body = alt(
    seq(word("weight") >> word("of") >> name, amount, _clauses).combine(
        lambda of, a, c: say.LoadSaid("weight", (a,), c, of=of)
    ),
    seq(word("mass") >> word("of") >> name, amount, _clauses).combine(
        lambda of, a, c: say.LoadSaid("weight", (a,), c, of=of)
    ),
    seq(word("mass") >> amount, word("hangs") >> _clauses).combine(lambda a, c: say.LoadSaid("hanging", (a,), c)),
    seq(_two, amount.optional(), _clauses).combine(
        lambda two, unit, c: say.LoadSaid("components", (two[0], two[2], unit), c, axes=(two[1], two[3]))
    ),
    seq(amount << word("to"), amount, _clauses).combine(lambda a, b, c: say.LoadSaid("varying", (a, b), c)),
    seq(amount, _clauses).combine(lambda a, c: say.LoadSaid("plain", (a,), c)),
)


@generate
def load():
    from dataclasses import replace

    label = yield (name << symbol("=")).optional()
    body = yield _body
    return replace(body, label=label)


# What is asked.

_component = token(lambda t: t.text in ("x", "y", "couple", "magnitude"), "@want.component").map(lambda w: w.text)
_lead = seq(
    word("the").optional(),
    alt(word("force", "reaction"), token(lambda t: t.text == "tension", "tension")),
    alt(word("at"), token(lambda t: t.text == "in", "in")),
).combine(lambda _, what, where: what.text)
_one_asked = seq(
    _lead.optional(""),
    alt(seq(name << symbol("-"), name).map(tuple), name.map(lambda n: (n,))),
    (word("on") >> name).optional(),
    _component.optional(""),
).combine(lambda lead, names, part, component: say.AskedSaid(names, part, component, lead))
_ratio = seq(
    token(lambda t: t.text == "ratio", "ratio") >> word("of") >> _one_asked,
    word("to") >> _one_asked,
).combine(lambda first, second: say.AskedSaid((), ratio=(first, second)))
asked = alt(
    _ratio,
    word("everything").result(say.AskedSaid(())),
    (
        token(lambda t: t.text == "all", "all")
        >> alt(*(token(lambda t, text=text: t.text == text, text) for text in ("links", "bars", "cords", "reactions")))
    ).map(lambda what: say.AskedSaid((), all="links" if what.text == "bars" else what.text)),
    _one_asked,
)

# Letters.

_article = token(lambda t: t.text in ("a", "an"), "@want.letter_kind")
_what = alt(
    (word("force") << word("per") << word("length")).result("force per length"),
    *(token(lambda t, text=text: t.text == text, text).result(text) for text in ("force", "length", "angle", "couple", "mass", "number")),
)
letter = alt(
    seq(_article >> _what, (token(lambda t: t.text == "drawn", "drawn") >> amount).optional()).combine(say.LetterSaid),
    amount,
)

PHRASES = (
    "amount",
    "letter",
    "point",
    "member",
    "link",
    "disc",
    "block",
    "support",
    "joining",
    "contact",
    "slot",
    "collar",
    "cord",
    "load",
    "given",
    "asked",
    "sum",
)


@cache
def _phrases() -> dict[str, Parser]:
    whole = {
        "amount": amount,
        "letter": letter,
        "point": point,
        "member": strokes,
        "link": link,
        "disc": cord_phrases.disc,
        "block": cord_phrases.block,
        "cord": cord_phrases.cord,
        "support": support,
        "joining": joining,
        "contact": contact,
        "slot": slot,
        "collar": collar,
        "load": load,
        "given": given_phrases.given,
        "asked": asked,
        "sum": sum_phrases.wanted_sum,
    }
    return {kind: parser << end for kind, parser in whole.items()}
