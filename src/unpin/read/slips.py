"""Slips of the pen in a phrase: where it stopped making sense, and the word that was most likely meant."""

from __future__ import annotations

from collections.abc import Callable

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

FRICTION = ("friction", "rough", "frictional")
"""Words of what is not solved here."""

INSIDE = ("shear", "bending", "moment", "normal", "axial", "internal")
"""Words of what is asked inside a member."""

_LEADS = ("reaction", "force", "tension")
"""What may be said before `at B` where something is asked."""


@record
class _Halt:
    """Where the parser gave up: the `line`, the place in it, what was `wanted` there, the token that is amiss and the one before."""

    line: list[Token]
    index: int
    wanted: tuple[str, ...]
    here: Token
    before: Token

    def amiss(self, hint: str, named: str = "") -> Misread:
        """The token that is amiss, with a cure."""
        return Misread(self.here.start, self.here.end, self.here.text, self.wanted, hint, named)


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
    halt = _Halt(line, index, wanted, here, before)
    if kind in _SLIPS and (slip := _SLIPS[kind](halt)):
        return slip
    comma = (
        index > 1
        and (before.text, line[index - 2].kind, here.kind) == (",", "number", "number")
        or (here.text == "," and before.kind == "number" and line[index + 1].kind == "number")
    )
    if comma:
        first, last = (line[index - 1], line[index + 1]) if here.text == "," else (line[index - 2], here)
        if len(last.text) == 3 and last.text.isdigit():
            return Misread(first.start, last.end, f"{first.text},{last.text}"[:40], ("@want.number",), "hint.thousands")
    reserved = here.text in KEYWORDS and wanted == ("@want.name",)
    hint = "hint.decimal_comma" if comma else "hint.nearest_word" if near else "hint.reserved" if reserved else ""
    hint = hint or (_EXAMPLES.get(kind, "") if kind in ("point", "member", "disc") else "")
    return Misread(here.start, here.end, here.text[:40], wanted, hint, near)


def _in_point(h: _Halt) -> Misread | None:
    first = h.line[0]
    if first.text == "(" and h.line[1].kind == "number":
        return Misread(first.start, first.end, first.text, ("@want.coordinates",), "hint.square_brackets")
    return None


def _in_load(h: _Halt) -> Misread | None:
    line, here, before = h.line, h.here, h.before
    called = line[1] if line[0].text.lower() in ("a", "an", "the") and line[1].kind == "word" else line[0]
    if called.text.lower() in _KINDS_OF_LOAD and (called is not line[0] or h.index < 2 or called.kind != "word"):
        return Misread(line[0].start, called.end, called.text, ("@want.amount",), _KINDS_OF_LOAD[called.text.lower()])
    if rough := _rough(h, h.wanted):
        return rough
    if here.kind == "number" and before.kind == "word" and line[h.index + 1].text in ("deg", "degrees", "°"):
        return h.amiss("hint.at_angle", here.text)
    if h.index == 0 and here.kind == "word":
        return Misread(here.start, here.end, here.text[:40], ("@want.amount",), "hint.force_phrase")
    if "hangs" in (here.text, before.text):
        return h.amiss("hint.mass_no_force")
    if here.kind == "number" and before.text == "from":
        return h.amiss("hint.point_first")
    if before.text == "in" and here.kind == "word" and line[h.index - 2].text in (*AXES, *WAYS, *TURNS):
        return Misread(before.start, before.end, before.text, ("on",), "hint.nearest_word", "on")
    return None


def _in_support(h: _Halt) -> Misread | None:
    first, here = h.line[0], h.here
    if sprung := next((t for t in h.line if t.kind == "word" and t.text.lower().startswith("spring")), None):
        return Misread(sprung.start, sprung.end, sprung.text[:40], ("@want.support",), "hint.spring")
    if rough := _rough(h, ("@want.support",)):
        return rough
    if first.text.lower() in SUPPORTS:
        return Misread(first.start, first.end, first.text[:40], ("@want.support",), "hint.nearest_word", SUPPORTS[first.text.lower()])
    if "slope" in (h.before.text, h.line[h.index - 2].text) and here.kind == "number":
        return Misread(here.start, here.end, here.text[:40], h.wanted, "hint.slope", _legs(h.line[h.index :]))
    return None


def _in_asked(h: _Halt) -> Misread | None:
    from unpin.read.report import nearest

    first, before = h.line[0], h.before
    if rough := _rough(h, ("@want.name",)):
        return rough
    if h.index == 1 and first.text in ("N", "V", "Q", "M") and h.here.text in ("at", "in"):
        return Misread(first.start, first.end, first.text, ("@want.name",), "hint.inside")
    if inner := next((t for t in h.line if t.kind == "word" and t.text.lower() in INSIDE), None):
        return Misread(inner.start, inner.end, inner.text, ("@want.name",), "hint.inside")
    if first.text.lower() in ("force", "forces") and any(t.text in ("all", "members", "bars", "links") for t in h.line):
        return Misread(first.start, first.end, first.text, h.wanted, "hint.ask_all", "all bars")
    if h.index == 1 and h.here.text in ("at", "in") and (meant := nearest(before.text, _LEADS)):
        return Misread(before.start, before.end, before.text[:40], _LEADS, "hint.nearest_word", meant)
    return None


def _in_letter(h: _Halt) -> Misread | None:
    first, second = h.line[0], h.line[1] if len(h.line) > 1 else h.line[0]
    if first.text in ("an", "a") and second.text == "unknown":
        first, second = second, h.line[2] if len(h.line) > 2 else second
    place = first.text == "unknown" and second.text in ("length", "distance", "angle", "position")
    return Misread(first.start, second.end, f"{first.text} {second.text}", ("unknown", "@want.letter_kind"), "hint.unknown_place") if place else None


def _in_sum(h: _Halt) -> Misread | None:
    for before, cut in zip(h.line, h.line[1:]):
        if before.text in ("on", "the") and cut.text.lower() in sum_phrases.CUTS:
            return Misread(cut.start, cut.end, cut.text[:40], ("@want.bodies",), "hint.section")
    return None


def _in_link(h: _Halt) -> Misread | None:
    return h.amiss(_EXAMPLES["link"]) if h.here.text in ("to", "and") or h.here.kind == "symbol" else None


def _in_cord(h: _Halt) -> Misread | None:
    return h.amiss(_EXAMPLES["cord"]) if h.here.text in ("around", "round", "via") else None


def _rough(h: _Halt, wanted: tuple[str, ...]) -> Misread | None:
    """A word of friction anywhere in a phrase."""
    rough = next((t for t in h.line if t.kind == "word" and t.text.lower() in FRICTION), None)
    return Misread(rough.start, rough.end, rough.text, wanted, "hint.friction") if rough else None


_SLIPS: dict[str, Callable[[_Halt], Misread | None]] = {
    "point": _in_point,
    "letter": _in_letter,
    "load": _in_load,
    "support": _in_support,
    "contact": lambda h: _rough(h, h.wanted),
    "given": lambda h: _rough(h, h.wanted),
    "asked": _in_asked,
    "sum": _in_sum,
    "link": _in_link,
    "cord": _in_cord,
}
"""The slips that are known of a kind of phrase, the likeliest first."""


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
