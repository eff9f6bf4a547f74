"""Amounts as quantities: numbers with units, letters, and expressions of both, with their dimension checked."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from unpin.base.units import ANGLE, BY_SPELLING, DIMENSION_NAMES, NUMBER, PRESSURE, UNITS, Dimension, Unit
from unpin.exact.expression import Apply, CannotEvaluate, Expression, Literally, Name, evaluate, names
from unpin.exact.number import NoWholeMultiple, Number, sign
from unpin.model.values import Quantity
from unpin.read.context import Context, Item
from unpin.read.phrases import Amount
from unpin.read.pieces import KEYWORDS
from unpin.read.report import Dropped, nearest
from unpin.read.synonyms import MIDDLES, SENSES

SINGLE = {s: u for s, u in BY_SPELLING.items() if s.isalpha() or s == "°"}
"""Units that are one word; products and quotients of them make the others."""

SPELLED = {
    **dict.fromkeys(("meter", "metre"), "m"),
    **dict.fromkeys(("millimeter", "millimetre"), "mm"),
    **dict.fromkeys(("centimeter", "centimetre"), "cm"),
    **dict.fromkeys(("newton",), "N"),
    **dict.fromkeys(("kilonewton",), "kN"),
    **dict.fromkeys(("foot", "feet"), "ft"),
    **dict.fromkeys(("inch", "inche"), "in"),
    **dict.fromkeys(("pound",), "lb"),
    **dict.fromkeys(("kilogram", "kilogramme"), "kg"),
    **dict.fromkeys(("ton", "tonne"), "t"),
}
"""Units written out, without the plural s: not taken, but understood."""

_SHOWN = ("m", "mm", "cm", "ft", "in", "N", "kN", "lb", "kip", "kg", "slug", "deg")
"""Units that a hint lists."""

_HALF = Fraction(1, 2)
_SECOND = Dimension(length=_HALF, force=-_HALF, mass=_HALF)  # a second squared is a metre times a kilogram by a newton
ROOM = 20
NAMES = {**DIMENSION_NAMES, PRESSURE: "pressure"}


def quantity(known: Context, item: Item, amount: Amount, wanted: Dimension | tuple[Dimension, ...]) -> Quantity:
    """An amount that must have one of the wanted dimensions; a bare number takes the file's unit of the first. Dropped,
    after a remark, where it has not or cannot be worked out."""
    dimensions = wanted if isinstance(wanted, tuple) else (wanted,)
    value, dimension = measure(known, item, amount)
    written = item.text[amount.start : amount.end].strip()
    letter = amount.expression.name if isinstance(amount.expression, Name) and amount.expression.name in known.letters else ""
    unit = _unit_of(known, item, amount)
    if dimension == NUMBER and NUMBER not in dimensions and dimensions[0] in known.shown:
        shown = known.shown[dimensions[0]]
        # Nought is nought in every unit.
        known.bare = known.bare or dimensions[0] != ANGLE and sign(value) != 0
        if letter:
            known.letter_kinds.setdefault(letter, dimensions[0])
        return Quantity(value * shown.factor, dimensions[0], written, letter, shown.symbol)
    if dimension not in dimensions:
        raise item.drop(
            "read.dimension", amount, text=written[:40], found=(_name(dimension),), wanted=tuple(_name(d) for d in dimensions)
        )
    return Quantity(value, dimension, written, letter, unit.symbol if unit else "")


def measure(known: Context, item: Item, amount: Amount) -> tuple[Number, Dimension]:
    """Value in SI and dimension of an amount; bare numbers stay bare."""
    values: dict[str, Number] = {}
    dimensions: dict[str, Dimension] = {}
    for name in names(amount.expression):
        if name.name in known.sought or name.name in known.letters:
            known.refer(item, name, "letters")
        if name.name in known.sought:
            known.used_letters.add(name.name)
            raise item.drop("read.sought_elsewhere", name, name=name.name, hint="hint.sought")
        if name.name in known.letters:
            letter = known.letters[name.name].value
            known.used_letters.add(name.name)
            if letter is None:
                raise Dropped()
            values[name.name], dimensions[name.name] = letter.value, letter.dimension
        elif name.name in SINGLE:
            values[name.name], dimensions[name.name] = SINGLE[name.name].factor, SINGLE[name.name].dimension
        elif name.name == "s":
            values["s"], dimensions["s"] = Fraction(1), _SECOND
        elif name.name in known.broken or "letters" in known.lost:
            raise Dropped()
        elif name.name in known.points:
            known.used.add(name.name)
            if item.text[amount.end :].split()[:1] == ["at"]:
                raise item.drop("read.point_no_size", name, name=name.name, hint="hint.letter_value")
            raise item.drop("read.at_missing", name, name=name.name, hint="hint.at_missing")
        else:
            long = [k for k in KEYWORDS if len(name.name) > 2 and len(k) > 3]
            near = SPELLED.get(name.name.lower().rstrip("s")) or SENSES.get(name.name) or nearest(name.name, [*known.letters, *SINGLE, *long])
            near = "midpoint" if name.name in MIDDLES else near
            if len(name.name) == 1 and near.lower() != name.name.lower():
                near = ""  # every letter is a little like some unit
            after_number = item.text[: name.start].rstrip()[-1:].isdigit()
            near = "kip" if name.name == "k" and after_number else near
            hint = "hint.nearest" if near else "hint.letter_value" if len(name.name) == 1 else "hint.units" if after_number else ""
            units = tuple(s for s in SINGLE if s in _SHOWN)
            raise item.drop("read.unknown_letter", name, name=name.name[:40], nearest=near, units=units, hint=hint)
    try:
        dimension = _dimension(amount.expression, dimensions, item)
        return evaluate(amount.expression, values), dimension
    except NoWholeMultiple:
        raise item.drop("read.letter_angle", amount, hint="hint.letter_angle") from None
    except CannotEvaluate as fault:
        raise item.drop(f"read.{fault.code}", fault) from None


def _dimension(e: Expression, known: Mapping[str, Dimension], item: Item) -> Dimension:
    if isinstance(e, Literally):
        return NUMBER
    if isinstance(e, Name):
        return known[e.name]
    inner = [_dimension(o, known, item) for o in e.operands]
    if e.operation in ("+", "-"):
        if inner[0] != inner[1]:
            raise item.drop("read.unlike", e, first=(_name(inner[0]),), second=(_name(inner[1]),), hint="hint.unit_on_each")
        return inner[0]
    if e.operation == "*":
        return inner[0] * inner[1]
    if e.operation == "/":
        return inner[0] / inner[1]
    if e.operation in ("sin", "cos", "tan"):
        if inner[0] not in (NUMBER, ANGLE):
            angle = e.operands[0]
            raise item.drop(
                "read.dimension",
                angle,
                text=item.text[angle.start : angle.end][:40],
                found=(_name(inner[0]),),
                wanted=("@want.dimension.angle",),
            )
        return NUMBER
    if e.operation == "^":
        return _times(inner[0], _whole(e.operands[1]))
    return inner[0] if e.operation == "neg" else _times(inner[0], _HALF)


def _whole(e: Expression) -> Fraction:
    """A written-out power; others are refused where they are worked out or leave the dimension wrong."""
    if isinstance(e, Apply) and e.operation == "neg":
        return -_whole(e.operands[0])
    return e.value if isinstance(e, Literally) and e.value <= ROOM else Fraction(1)


def _times(d: Dimension, power: Fraction) -> Dimension:
    return Dimension(*(x * power for x in (d.length, d.force, d.mass, d.angle)))


def _name(dimension: Dimension) -> str:
    return f"@want.dimension.{NAMES.get(dimension, 'other')}"


def _unit_of(known: Context, item: Item, amount: Amount) -> Unit | None:
    """The unit the author wrote after a number, or that of the one letter."""
    if isinstance(amount.expression, Name) and amount.expression.name in known.letters:
        value = known.letters[amount.expression.name].value
        return BY_SPELLING.get(value.unit) if value else None
    words = [n for n in names(amount.expression)]
    if not words or any(n.name in known.letters for n in words):
        return None
    return unit_named(item.text[words[0].start : amount.end])


def unit_named(text: str) -> Unit | None:
    """A unit by any of its spellings, or by the product it is (`kN m`, `N / mm`, `ft·lb`)."""
    text = " ".join(text.split())
    if text in BY_SPELLING:
        return BY_SPELLING[text]
    squeezed = text.replace(" / ", "/").replace(" * ", "*").replace(" · ", "·").replace(" ^ ", "^")
    return BY_SPELLING.get(squeezed) or BY_SPELLING.get(squeezed.replace("-", "·")) or BY_SPELLING.get(squeezed.replace("-", " "))


def all_spellings() -> list[str]:
    return [s for u in UNITS for s in (u.symbol, *u.spellings)]
