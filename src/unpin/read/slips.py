"""Slips of the pen in a phrase: where it stopped making sense, and the word that was most likely meant."""

from __future__ import annotations

from parsy import ParseError

from unpin.base.record import record
from unpin.exact.expression import Token
from unpin.read import sum_phrases
from unpin.read.pieces import AXES, KEYWORDS, TURNS, WAYS
from unpin.read.synonyms import SUPPORTS


@record
class Misread:
    """Where a phrase stopped making sense: columns, what stood there, and what was wanted (keywords, or codes after @)."""

    start: int
    end: int
    found: str
    wanted: tuple[str, ...]
    hint: str = ""
    nearest: str = ""


_KINDS_OF_LOAD = {
    **dict.fromkeys(("moment", "couple", "torque"), "hint.couple_phrase"),
    **dict.fromkeys(("uniform", "distributed", "spread", "udl", "pressure"), "hint.spread_phrase"),
    **dict.fromkeys(("force", "load", "point"), "hint.force_phrase"),
}
"""Loads that are called by their kind, where the amount should stand first."""


_EXAMPLES = {"point": "hint.point_phrase", "member": "hint.one_point", "link": "hint.link_ends", "disc": "hint.disc", "cord": "hint.cord_sides"}
"""One that is right, by kind of phrase."""

_INSTEAD = {("link", "to"), ("link", "and"), ("cord", "around"), ("cord", "round"), ("cord", "via")}
"""Words that are near to one that is wanted, and were not meant so."""

FRICTION = ("friction", "rough", "frictional")
"""Words of what is not solved here."""

_IN_ITS_PLACE = {"support": ("@want.support",), "asked": ("@want.name",)}

_LEADS = ("reaction", "force", "tension")
"""What may be said before `at B` where something is asked."""


def misread(kind: str, line: list[Token], fault: ParseError) -> Misread:
    """What to tell of a phrase of a kind that could not be parsed: the slip that was most likely made."""
    from unpin.read.report import nearest

    index = min(fault.index, len(line) - 1)
    here = line[index]
    words = [w for w in fault.expected if not w.startswith("@")]
    wanted = _gathered(fault.expected)
    near = nearest(here.text, words) if here.kind == "word" else ""
    before = line[index - 1] if index else here
    if (
        not near
        and before.kind == "word"
        and before.text not in KEYWORDS
        and len(before.text) > 1
        and nearest(before.text, words)
    ):
        # `right 3 dwn 4`: the slip was taken for a unit, and only what follows it made no sense.
        here, near = before, nearest(before.text, words)
    comma = (
        index > 1
        and (before.text, line[index - 2].kind, here.kind) == (",", "number", "number")
        or (here.text == "," and before.kind == "number" and line[index + 1].kind == "number")
    )
    reserved = here.text in KEYWORDS and wanted == ("@want.name",)
    called = line[1] if line[0].text.lower() in ("a", "an", "the") and line[1].kind == "word" else line[0]
    if kind == "load" and called.text.lower() in _KINDS_OF_LOAD and (called is not line[0] or index < 2 or called.kind != "word"):
        return Misread(line[0].start, called.end, called.text, ("@want.amount",), _KINDS_OF_LOAD[called.text.lower()])
    if kind in ("support", "contact", "asked", "load", "given"):
        for rough in line:
            if rough.kind == "word" and rough.text.lower() in FRICTION:
                return Misread(rough.start, rough.end, rough.text, _IN_ITS_PLACE.get(kind, wanted), "hint.friction")
    if kind == "point" and line[0].text == "(" and line[1].kind == "number":
        return Misread(line[0].start, line[0].end, line[0].text, ("@want.coordinates",), "hint.square_brackets")
    if kind == "load" and here.kind == "number" and before.kind == "word" and line[index + 1].text in ("deg", "degrees", "°"):
        return Misread(here.start, here.end, here.text, wanted, "hint.at_angle", here.text)
    if kind == "load" and index == 0 and here.kind == "word":
        return Misread(here.start, here.end, here.text[:40], ("@want.amount",), "hint.force_phrase")
    if kind == "support" and line[0].text.lower() in SUPPORTS:
        return Misread(line[0].start, line[0].end, line[0].text[:40], ("@want.support",), "hint.nearest_word", SUPPORTS[line[0].text.lower()])
    if kind == "asked" and line[0].text.lower() in ("force", "forces") and any(t.text in ("all", "members", "bars", "links") for t in line):
        return Misread(line[0].start, line[0].end, line[0].text, wanted, "hint.ask_all", "all bars")
    if kind == "load" and "hangs" in (here.text, before.text):
        return Misread(here.start, here.end, here.text, wanted, "hint.mass_no_force")
    if kind in _EXAMPLES and (kind, here.text) in _INSTEAD or kind == "link" and here.kind == "symbol":
        return Misread(here.start, here.end, here.text, wanted, _EXAMPLES[kind])
    if kind == "load" and here.kind == "number" and before.text == "from":
        return Misread(here.start, here.end, here.text, wanted, "hint.point_first")
    if kind == "asked" and index == 1 and here.text in ("at", "in") and (meant := nearest(before.text, _LEADS)):
        return Misread(before.start, before.end, before.text[:40], _LEADS, "hint.nearest_word", meant)
    if kind == "load" and before.text == "in" and here.kind == "word" and line[index - 2].text in (*AXES, *WAYS, *TURNS):
        return Misread(before.start, before.end, before.text, ("on",), "hint.nearest_word", "on")
    if kind == "sum":
        for before, cut in zip(line, line[1:]):
            if before.text in ("on", "the") and cut.text.lower() in sum_phrases.CUTS:
                return Misread(cut.start, cut.end, cut.text[:40], ("@want.bodies",), "hint.section")
    if kind == "support" and "slope" in (before.text, line[index - 2].text) and here.kind == "number":
        return Misread(here.start, here.end, here.text[:40], wanted, "hint.slope", _legs(line[index:]))
    if comma:
        first, last = (line[index - 1], line[index + 1]) if here.text == "," else (line[index - 2], here)
        if len(last.text) == 3 and last.text.isdigit():
            return Misread(first.start, last.end, f"{first.text},{last.text}"[:40], ("@want.number",), "hint.thousands")
    hint = "hint.decimal_comma" if comma else "hint.nearest_word" if near else "hint.reserved" if reserved else ""
    hint = hint or (_EXAMPLES.get(kind, "") if kind in ("point", "member", "disc") else "")
    return Misread(here.start, here.end, here.text[:40], wanted, hint, near)


def _legs(line: list[Token]) -> str:
    """`3 in 4`, `3 : 4` as the legs of a slope; one of our own for anything else."""
    if len(line) > 2 and line[1].text in ("in", "on", ":", "/", "to") and line[2].kind == "number":
        return f"right {line[2].text} up {line[0].text}"
    return "right 4 up 3"


_GROUPS = (
    ("@want.axis", AXES),
    ("@want.turn", TURNS),
    ("@want.direction", ("@want.axis", "along", "square", "slope", "to", "towards")),
)


def _gathered(wanted: frozenset[str]) -> tuple[str, ...]:
    """A short list: keywords that belong together become one thing; keywords first, then the rest."""
    found = set(wanted) - {",", *WAYS} if len(wanted) > 1 else set(wanted)
    for code, members in _GROUPS:
        if found >= set(members):
            found = found - set(members) | {code}
    if "@want.place" in found:
        found -= {"@want.number", "slope"}
    if "@want.number" in found:
        found -= {"@want.name"} if len(found) > 2 else set()
    return tuple(sorted(found, key=lambda w: (w.startswith("@"), w)))
