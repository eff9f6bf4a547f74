"""What holds for the whole file: units, gravity, figures, and the letters with their values."""

from __future__ import annotations

from dataclasses import replace

from unpin.base.units import ACCELERATION, ANGLE, BY_SPELLING, DIMENSION_NAMES, FORCE, LENGTH, MASS, MOMENT, NUMBER, PER_VOLUME, PRESSURE, SPREAD, Unit
from unpin.model.problem import Letter
from unpin.model.values import Quantity
from unpin.read import lettered
from unpin.read.context import Context, Item, shown_units
from unpin.read.phrases import Amount, LetterSaid, Word
from unpin.read.quantities import SINGLE, SPELLED, all_spellings, measure, quantity, unit_named
from unpin.read.report import nearest
from unpin.read.skeleton import Skeleton, attempt
from unpin.read.sought import SIGNS
from unpin.read.tree import Scalar


def figures(page: Skeleton) -> int:
    said = page.text("figures")
    if not said:
        return 0
    if not said.isascii() or not said.isdigit() or not 2 <= int(said[:9]) <= 8:
        page.report.error("read.figures", page.sections["figures"][1].place, ("figures",), text=said[:40], least=2, most=8)
        return 0
    return int(said)


def units(page: Skeleton, known: Context) -> None:
    chosen: list[Unit] = []
    if "units" in page.sections:
        item = page.scalar("units", "", page.sections["units"][1])
        start = 0
        for piece in item.text.split(",") if item else ():
            unit = unit_named(piece)
            span = Word(piece.strip(), start + len(piece) - len(piece.lstrip()), start + len(piece.rstrip()))
            if unit is None:
                near = SPELLED.get(piece.strip().lower().rstrip("s")) or nearest(piece.strip(), all_spellings())
                page.report.error(
                    "read.unknown_unit",
                    item.place(span.start, span.end),
                    ("units",),
                    name=span.text[:40],
                    nearest=near,
                    hint="hint.nearest" if near else "",
                )
            elif unit.dimension in {u.dimension for u in chosen}:
                other = next(u for u in chosen if u.dimension == unit.dimension)
                page.report.error(
                    "read.unit_twice", item.place(span.start, span.end), ("units",), first=other.symbol, second=unit.symbol
                )
            else:
                chosen.append(unit)
            start += len(piece) + 1
        mass = next((u for u in chosen if u.dimension == MASS), None)
        if mass and not any(u.dimension == FORCE for u in chosen):
            found = item.text.index(next(s for s in (mass.symbol, *mass.spellings) if s in item.text))
            page.report.error(
                "read.mass_unit", item.place(found, found + 2), ("units",), name=mass.symbol, hint="hint.mass_unit"
            )
    known.shown = shown_units(chosen)


def gravity(page: Skeleton, known: Context) -> None:
    if "gravity" in page.sections:
        item = page.scalar("gravity", "", page.sections["gravity"][1])
        unit = BY_SPELLING["ft/s²" if known.unit(LENGTH).system == "us" else "m/s²"]
        known.shown[ACCELERATION] = unit
        if item:
            known.gravity = attempt(_acceleration, known, item)
        del known.shown[ACCELERATION]


def _acceleration(known: Context, item: Item) -> Quantity:
    return quantity(known, item, item.phrase("amount"), ACCELERATION)


def letters(page: Skeleton, known: Context) -> None:
    entries = list(page.named("letters"))
    for name, key, node in entries:
        path = ("letters", name)
        if name in SINGLE and not (name == "m" and isinstance(node, Scalar) and node.text.split()[:2] == ["a", "mass"]) or name in ("s", "sqrt", "sin", "cos", "tan", "pin"):
            page.report.error("read.letter_unit", key.place, path, name=name, hint="hint.letter_unit")
            known.broken.add(name)
            continue
        if isinstance(node, Scalar) and not node.text.strip():
            page.report.error("read.letter_open", key.place, path, name=name, hint="hint.letter_open")
            known.letters[name] = Letter(name, None, place=key.place)
            continue
        known.declare("letters", name, key, 0, len(name))
        item = page.scalar("letters", name, node)
        if item and item.text.strip().lower() in SIGNS:
            known.sought[name] = ""
            known.places[name] = key.place
            continue
        said = attempt(item.phrase, "letter") if item else None
        if isinstance(said, LetterSaid):
            if known.free is None:
                lettered.begin(known, len(entries))
            made = attempt(lettered.open_letter, known, item, name, said)
        else:
            value = attempt(letter, known, item, said) if said else None
            made = value and Letter(name, value, written=item.text, place=key.place)
        if made is None:
            known.broken.add(name)
        else:
            known.letters[name] = made
    lettered.end(known)


def letter(known: Context, item: Item, said: Amount) -> Quantity:
    _, dimension = measure(known, item, said)
    kept = (NUMBER, LENGTH, FORCE, MOMENT, SPREAD, PRESSURE, PER_VOLUME, MASS, ANGLE, ACCELERATION)
    if dimension not in kept:
        raise item.drop(
            "read.dimension",
            said,
            text=item.text[:40],
            found=("@want.dimension.other",),
            wanted=tuple(f"@want.dimension.{DIMENSION_NAMES[d]}" for d in (LENGTH, FORCE, ANGLE)),
        )
    found = quantity(known, item, said, dimension)
    return Quantity(found.value, found.dimension, found.written, "", found.unit)


def typed_letters(known: Context) -> tuple[Letter, ...]:
    """The letters that are used; one that holds a bare number has the unit that its use gave it."""

    def typed(letter: Letter) -> Letter:
        if letter.name not in known.letter_kinds:
            return letter
        dimension, value = known.letter_kinds[letter.name], letter.value
        unit = known.unit(dimension)
        return replace(letter, value=replace(value, value=value.value * unit.factor, dimension=dimension, unit=unit.symbol))

    return tuple(typed(letter) for letter in known.letters.values() if letter.name in known.used_letters)
