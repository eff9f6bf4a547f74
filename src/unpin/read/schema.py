"""The format of a problem file, stated once: sections, what each holds, and the presence rules.

From here come the checks of the skeleton, the JSON Schema and the reference page.
"""

from __future__ import annotations

from typing import Any, Literal

from unpin.base.record import record

Shape = Literal["text", "units", "amount", "whole", "phrases by name", "points", "phrases", "phrases or phrases by name"]


@record
class Section:
    """`shape`: how its YAML looks; `phrase`: the kind of each phrase in it (see `read.forms`); `unit`: what a bare number
    means; `default`: what holds where it is left out; `needed`: must be there (`members|links`: one of the two); `keyed` point: its
    entries are named by the point they are at."""

    name: str
    shape: Shape
    doc: str
    example: str
    phrase: str = ""
    unit: str = ""
    default: str = ""
    needed: str = ""
    keyed: str = ""


SECTIONS: tuple[Section, ...] = (
    Section("title", "text", "One line that names the problem.", "title: Market awning"),
    Section("text", "text", "The statement for the student, printed as it stands.", "text: Find the force in the stay."),
    Section("units", "units", "Units of bare numbers and of the answers, separated by commas.", "units: m, kN", default="m, N"),
    Section(
        "gravity",
        "amount",
        "Acceleration that turns a mass into a weight.",
        "gravity: 9.81 m/s^2",
        unit="acceleration",
        default="9.81 m/s² with SI lengths, 32.2 ft/s² with feet and inches, 9.80665 m/s² with kgf or tf",
    ),
    Section("figures", "whole", "Significant figures of the answers, 2 to 8.", "figures: 3", default="3"),
    Section(
        "letters",
        "phrases by name",
        "Letters with their values. A value may use letters above it; every expression below may use them. A letter that is "
        "`unknown` is a load to be found. One that is `a force`, `a length`, `an angle` … has no value and stays a letter in every answer.",
        "letters: {P: 300 N, a: a length, b: 2a, theta: 35 deg}",
        phrase="letter",
    ),
    Section(
        "points",
        "points",
        "Points by name: two coordinates (right, up), or a construction from points above. Several names before one colon "
        "make a row: `C E G: every 4 right from A`.",
        "points: {O: [0, 0], C: [0, 2.4], D: C right 1.6}",
        phrase="point",
        unit="length",
        needed="points",
    ),
    Section(
        "members",
        "phrases or phrases by name",
        "Rigid members: the points each passes, in order, straight from one to the next. In a list, a member takes its name "
        "from its points.",
        "members: {post: A C B O, arm: C D E}",
        phrase="member",
        needed="members|links|discs|blocks",
    ),
    Section(
        "links",
        "phrases or phrases by name",
        "Weightless links pinned at both ends, named by their ends; a chain of points makes a link of each step.",
        "links: [B-D, A-C-E-G]",
        phrase="link",
        needed="members|links|discs|blocks",
    ),
    Section(
        "discs",
        "phrases by name",
        "Wheels, pulleys and drums by name: the radius, and the point that is the centre. A disc is pinned at its centre like a "
        "member; `pins: {C: welded}` fixes it to what else is there. A link may end and a load act at a point on its rim; `on` the disc, at any point on it.",
        "discs: {pulley: 0.2 m at C}",
        phrase="disc",
        needed="members|links|discs|blocks",
    ),
    Section(
        "blocks",
        "phrases by name",
        "Blocks by name: of no size, at a point; or with a size, by their corners in order.",
        "blocks: {sack: at K}",
        phrase="block",
        needed="members|links|discs|blocks",
    ),
    Section(
        "pins",
        "phrases by name",
        "Only where members that share a point are not simply pinned there.",
        "pins: {C: not joined}",
        phrase="joining",
        keyed="point",
        default="members that share a named point are pinned there",
    ),
    Section(
        "contacts",
        "phrases by name",
        "Where two members touch, smooth, and only push each other, by the point at which they do; where a wheel touches something the "
        "point may be new.",
        "contacts: {K: drum pushes lever up}",
        phrase="contact",
        keyed="point",
    ),
    Section(
        "slots",
        "phrases by name",
        "Where a pin of one member slides in a slot, straight or along an arc, of another or of the ground, smooth, by the point at which the pin is.",
        "slots: {K: crank in lever}",
        phrase="slot",
        keyed="point",
    ),
    Section(
        "collars",
        "phrases by name",
        "Where a collar slides on a straight member or a rod of the ground, smooth, by the point at which it is: pinned to its "
        "member, or built on it.",
        "collars: {K: arm on rod}",
        phrase="collar",
        keyed="point",
    ),
    Section(
        "cords",
        "phrases by name",
        "Light cords, and strands of belts. The name is the letter of the tension; the phrase follows the cord from one end to the other.",
        "cords: {T: W over pulley to sack}",
        phrase="cord",
    ),
    Section(
        "supports",
        "phrases by name",
        "What holds the structure, by the point it acts at.",
        "supports: {A: pin, O: roller pushes right}",
        phrase="support",
        keyed="point",
    ),
    Section(
        "loads", "phrases", "Forces, couples, spread loads and weights.", "loads: [300 N at E right 3 down 4]", phrase="load"
    ),
    Section(
        "given",
        "phrases",
        "Forces of links, members, cords, supports, contacts and pins that are given, so that something else can be found: a tension, a reaction, "
        "a support that just lifts.",
        "given: [B-W 5 kN tension, A just lifts]",
        phrase="given",
    ),
    Section("find", "phrases", "What is asked.", "find: [O, B-D, C on arm]", phrase="asked", default="everything"),
    Section(
        "route", "phrases", "Your own sums, to be followed and remarked upon.", "route: [moments about A on arm]", phrase="sum"
    ),
)

BY_NAME = {s.name: s for s in SECTIONS}
NAME_PATTERN = r"^[^\W\d]\w*'*$"
MOST = {
    "letters": 60,
    "points": 200,
    "members": 150,
    "links": 300,
    "discs": 60,
    "blocks": 60,
    "cords": 60,
    "pins": 200,
    "contacts": 60,
    "slots": 60,
    "collars": 60,
    "supports": 60,
    "loads": 100,
    "given": 60,
    "find": 100,
    "route": 60,
}
"""Most entries of a section; far above any problem for a person."""


def json_schema() -> dict[str, Any]:
    """The skeleton as JSON Schema 2020-12; the phrases themselves are plain strings to it."""
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Problem file",
        "type": "object",
        "properties": {s.name: {"description": s.doc, **_shape(s)} for s in SECTIONS},
        "required": [s.name for s in SECTIONS if s.needed == s.name],
        "anyOf": [{"required": [name]} for name in ("members", "links", "discs", "blocks")],
        "unevaluatedProperties": False,
    }


_WORDS = {"type": ["string", "number"]}


def _shape(s: Section) -> dict[str, Any]:
    most = MOST.get(s.name, 1)
    by_name = {
        "type": "object",
        "propertyNames": {"pattern": NAME_PATTERN},
        "additionalProperties": _WORDS,
        "maxProperties": most,
    }
    phrases = {"type": "array", "items": _WORDS, "maxItems": most}
    if s.name == "members":
        by_name = {**by_name, "additionalProperties": {"anyOf": [_WORDS, {"type": "array", "items": _WORDS}]}}
    if s.shape == "points":
        pair = {"type": "array", "items": _WORDS, "minItems": 2, "maxItems": 2}
        names = {"pattern": r"^[^\W\d]\w*'*([\s,]+[^\W\d]\w*'*)*$"}
        return {**by_name, "propertyNames": names, "additionalProperties": {"anyOf": [{"type": "string"}, pair]}}
    return {
        "text": {"type": ["string", "number"]},
        "units": {"type": "string"},
        "amount": _WORDS,
        "whole": {"type": "integer", "minimum": 2, "maximum": 8},
        "phrases by name": by_name,
        "phrases": {"anyOf": [phrases, _WORDS]},
        "phrases or phrases by name": {"anyOf": [phrases, by_name, _WORDS]},
    }[s.shape]
