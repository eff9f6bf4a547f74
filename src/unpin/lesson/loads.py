"""Loads in words: in full where they are given, in short where a body carries them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from itertools import pairwise

from unpin.base.units import ACCELERATION, STANDARD_GRAVITY
from unpin.exact.number import Number, sign
from unpin.lesson.formula import Amount, Formula, Product, Relation, letter
from unpin.lesson.nodes import Listing, Text
from unpin.lesson.phrases import letter_like, thing, toward, worked_toward
from unpin.lesson.sheet import Sheet
from unpin.model.problem import Load, Problem, Stretch
from unpin.model.values import Quantity
from unpin.statics.loads import run_of

Loads = tuple[Load, ...]
"""Loads that came from one phrase of the file and follow each other without a jump: one load to its author."""


def gathered(loads: Iterable[Load]) -> list[Loads]:
    """Loads with the pieces of a spread load that crosses from part to part put together again, in the order of the file."""
    groups: list[list[Load]] = []
    for load in loads:
        if groups and _continues(groups[-1][-1], load):
            groups[-1].append(load)
        else:
            groups.append([load])
    return [tuple(g) for g in groups]


def _continues(before: Load, after: Load) -> bool:
    if before.kind != "spread" or after.kind != "spread" or before.place is None:
        return False
    if (before.place, before.written, before.name) != (after.place, after.written, after.name):
        return False
    last, first = before.stretches[-1], after.stretches[0]
    return last.end == first.start and last.end_intensity.value == first.start_intensity.value


def given(loads: Loads, problem: Problem, sheet: Sheet) -> Text:
    """A load as its author gave it, on its part."""
    item = loads[0]
    where = {"point": letter_like(item.point), "part": thing(item.part) if item.part else ""}
    on = "_on" if item.part else ""
    if item.kind == "weight" and item.part and _own_weight(item):
        on = "_of"
    if item.kind == "spread":
        return _spread("load", loads, sheet)
    if item.kind == "couple":
        size = named(item.name, item.magnitude, sheet, size_only=True) if item.magnitude else multiple(item, sheet)
        return Text("load.couple" if item.magnitude else "load.couple_asked", {"size": size, "sense": _turn(item), **where})
    if item.magnitude is None:
        size = multiple(item, sheet)
        if item.part and _own_weight(item):
            return Text("load.weight_asked", {**where, "size": size})
    else:
        size = named(item.name, item.magnitude, sheet)
    if item.kind == "weight" and item.mass is not None:
        mass = sheet.given(item.mass, own_unit=True)
        return Text(f"load.mass{on}", {**where, "mass": mass, "size": size, "g": gravity(problem.gravity, sheet)})
    if item.kind == "weight":
        return Text(f"load.weight{on}", {**where, "size": size})
    asked = "" if item.magnitude else "_asked"
    return Text(f"load.force{on}{asked}", {**where, "size": size, "toward": toward(item.direction, sheet)})


def _own_weight(item: Load) -> bool:
    return any(f"{word} of {item.part}" in item.written for word in ("weight", "mass"))


def carried(loads: Loads, sheet: Sheet) -> Text:
    """The same in short, on a body that was named already."""
    item = loads[0]
    if item.kind == "spread":
        return _spread("carried", loads, sheet)
    label = item.name or (item.magnitude.letter if item.magnitude else "")
    size = multiple(item, sheet) if item.magnitude is None else letter(label) if label else named(
        "", item.magnitude, sheet, size_only=item.kind == "couple")
    if item.kind == "couple":
        return Text("carried.couple", {"size": size, "sense": _turn(item)})
    if item.kind == "weight":
        return Text("carried.weight", {"size": size, "point": letter_like(item.point)})
    return Text("carried.force", {"size": size, "point": letter_like(item.point), "toward": worked_toward(item.direction, sheet)})


def _turn(item: Load) -> Text:
    way = sign(item.magnitude.value if item.magnitude else item.multiple)
    return Text("sense.anticlockwise" if way >= 0 else "sense.clockwise")


def multiple(item: Load, sheet: Sheet) -> Formula:
    """An unknown load by its letter: P, 2P."""
    return times(item.multiple, item.name, sheet)


def times(of: Number, name: str, sheet: Sheet) -> Formula:
    """A letter that is to be found, so many times."""
    size = abs(of)
    return letter(name) if size == 1 else Product((sheet.whole(size), letter(name)))


def gravity(quantity: Quantity | None, sheet: Sheet) -> Formula:
    quantity = quantity or Quantity(STANDARD_GRAVITY["si"], ACCELERATION, unit="m/s²")
    return sheet.given(quantity, own_unit=True)


def named(name: str, quantity: Quantity, sheet: Sheet, size_only: bool = False) -> Formula:
    """`P = 300 N` for a load with a letter, `300 N` for one without."""
    amount = sheet.given(quantity, own_unit=True)
    if size_only:
        amount = Amount(amount.printed.size, amount.source)
    label = name or quantity.letter
    # A letter without a value is not said to be itself.
    return Relation(letter(label), amount) if label and amount.shape != letter(label) else amount


def _spread(table: str, loads: Loads, sheet: Sheet) -> Text:
    found = runs(tuple(s for load in loads for s in load.stretches))
    parts = {load.part for load in loads}
    common = {"toward": toward(loads[0].direction, sheet), "per": Text(f"per.{found[0].per}"),
              "where": Text("load.on", {"part": thing(loads[0].part)}) if len(parts) == 1 else Text("load.nowhere")}
    asked = "_asked" if table == "load" and loads[0].sought else ""
    if len(found) > 1:
        return Text(f"{table}.spread_runs{asked}", {**common, "runs": Listing(tuple(_run("load.run", r, sheet) for r in found))})
    one = _run(f"{table}.spread", found[0], sheet)
    return Text(one.code + asked, {**common, **one.arguments})


def _run(code: str, run: Stretch, sheet: Sheet) -> Text:
    ends = {"start": _end(run, True, sheet), "end": _end(run, False, sheet)}
    if run.start_intensity.value == run.end_intensity.value:
        return Text(f"{code}_even", {**ends, "size": intensity(run.start_intensity, sheet)})
    return Text(f"{code}_varying", {**ends, "first": intensity(run.start_intensity, sheet), "last": intensity(run.end_intensity, sheet)})


def runs(stretches: tuple[Stretch, ...]) -> list[Stretch]:
    """Neighbouring stretches over which the intensity changes at one rate, as one."""
    out = [stretches[0]]
    for before, s in pairwise(stretches):
        if before.end == s.start and before.end_intensity.value == s.start_intensity.value and _rate(before) == _rate(s):
            out[-1] = replace(out[-1], end=s.end, end_name=s.end_name, end_intensity=s.end_intensity)
        else:
            out.append(s)
    return out


def _rate(s: Stretch):
    return (s.end_intensity.value - s.start_intensity.value) / run_of(s)


def intensity(quantity: Quantity, sheet: Sheet) -> Formula:
    if sign(quantity.value) == 0:
        return sheet.ratio(quantity.value)
    return times(quantity.value, quantity.letter, sheet) if quantity.sought else named("", quantity, sheet)


def _end(stretch: Stretch, start: bool, sheet: Sheet):
    name, at = (stretch.start_name, stretch.start) if start else (stretch.end_name, stretch.end)
    if name:
        return letter_like(name)
    return Text("place", {"x": sheet.length(at[0]), "y": sheet.length(at[1])})
