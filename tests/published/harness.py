"""Published worked examples: solve each transcribed problem and compare with what its author printed.

Every example is two files: `problems/ID.yaml`, a problem file with our own statement, and `records/ID.toml`, the facts:
source, printed answers, and the author's number of sums where the two counts can be compared.
"""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from decimal import Decimal
from pathlib import Path

from unpin.base.units import BY_SPELLING
from unpin.exact.number import approx
from unpin.model.answer import Component
from unpin.read import read_file
from unpin.route.work import work

HERE = Path(__file__).parent
SOLVED = 1e-3
"""How far, in relation, ours may be from what the author's own numbers give when solved again."""


@dataclass(frozen=True)
class Compared:
    """One printed answer beside ours, in the author's unit."""

    name: str
    printed: str
    ours: float | None
    unit: str
    sense: str
    our_sense: str
    agrees: bool
    wrong: str = ""


@dataclass(frozen=True)
class Case:
    name: str
    record: dict
    answers: tuple[Compared, ...]
    fewest: int | None
    recommended: int | None
    lower: int | None
    proved: bool
    faults: tuple[str, ...]
    first_body: str = ""
    first_centre: str = ""

    @property
    def begins_alike(self) -> bool | None:
        """Whether our route begins with the author's free body and, where the author takes moments on it, about the author's point;
        None where the record does not say how the author begins."""
        if "author_first_body" not in self.record:
            return None
        centre = self.record.get("author_first_centre", "")
        return self.first_body == self.record["author_first_body"] and (not centre or self.first_centre == centre)

    @property
    def begins_with_body(self) -> bool | None:
        return None if "author_first_body" not in self.record else self.first_body == self.record["author_first_body"]

    @property
    def author(self) -> int | None:
        return self.record.get("authors_sums")

    @property
    def shorter(self) -> bool:
        """Our fewest sums are no more than the author's, or the record says why not."""
        return self.author is None or self.fewest is not None and self.fewest <= self.author or "exception" in self.record


def names() -> list[str]:
    return sorted(p.stem for p in (HERE / "records").glob("*.toml"))


def component_name(c: Component) -> str:
    """`A_x`, `F_BD`, `M_A`, `C_x on arm`; the size of a resultant is the letter alone."""
    return c.symbol.base + (f"_{c.symbol.sub}" if c.symbol.sub else "") + (f" on {c.symbol.on}" if c.symbol.on else "")


def last_figure(printed: str) -> float:
    """One unit of the last printed figure: 0.1 for 12.5, 1 for 480, 0.01 for 3.10."""
    return float(Decimal(1).scaleb(Decimal(printed).as_tuple().exponent))


def compare(answer: dict, components: dict[str, Component]) -> Compared:
    """Ours beside the author's: within one unit of the last printed figure, and within a thousandth of the value that the
    author's own numbers give (`solved`), the sense and, where printed, the angle as well."""
    c = components.get(answer["ours"])
    if c is not None and answer.get("wrong"):
        return compare_wrong(answer, c)
    if c is None:
        return Compared(answer["ours"], answer["printed"], None, answer["unit"], answer.get("sense", ""), "", False)
    value = abs(approx(c.value / BY_SPELLING[answer["unit"]].factor))
    solved = abs(answer.get("solved", 0))
    close = not solved or abs(value - solved) <= SOLVED * solved
    if not answer.get("rounded_by_author"):
        close = close and abs(value - abs(float(answer["printed"]))) <= last_figure(answer["printed"]) * 1.0000001
    sense = answer.get("sense", "")
    right = not sense or sense == c.sense or value < last_figure(answer["printed"])
    turned = "angle" not in answer or (c.angle is not None and same_angle(c.angle, answer["angle"]))
    return Compared(answer["ours"], answer["printed"], value, answer["unit"], sense, c.sense, close and right and turned)


def compare_wrong(answer: dict, c: Component) -> Compared:
    """An answer that the record says is printed wrongly: ours is what the author's own numbers give, with its true sense, and is
    *not* what is printed, in size or in `printed_sense`."""
    value = abs(approx(c.value / BY_SPELLING[answer["unit"]].factor))
    solved = abs(value - abs(answer["solved"])) <= SOLVED * abs(answer["solved"])
    same = abs(value - abs(float(answer["printed"]))) < last_figure(answer["printed"]) * 0.4999999
    differs = not same or ("printed_sense" in answer and answer["printed_sense"] != c.sense)
    right = answer.get("sense", "") in ("", c.sense)
    return Compared(answer["ours"], answer["printed"], value, answer["unit"], answer.get("sense", ""), c.sense,
                    solved and differs and right, answer["wrong"])


def same_angle(ours: float, printed: str) -> bool:
    """Degrees anticlockwise from the right, within one unit of the last printed figure, full turns aside."""
    apart = (ours - float(printed)) % 360
    return min(apart, 360 - apart) <= last_figure(printed) * 1.0000001


def run(name: str) -> Case:
    record = tomllib.loads((HERE / "records" / f"{name}.toml").read_text("utf-8"))
    reading = read_file(HERE / "problems" / f"{name}.yaml")
    faults = tuple(d.code for d in reading.diagnostics if d.is_error)
    if faults or reading.problem is None:
        return Case(name, record, (), None, None, None, False, faults)
    worked = work(reading.problem)
    components = {component_name(c): c for a in worked.answers for c in a.components}
    compared = tuple(compare(a, components) for a in record["answer"])
    return Case(name, record, compared, worked.fewest and worked.fewest.count, worked.recommended and worked.recommended.count,
                worked.fewest and worked.fewest.lower, bool(worked.proof and worked.proof.passed), (), *beginning(worked.recommended))


def beginning(route) -> tuple[str, str]:
    """The first free body of a route, and the point of the first moment sum on it ("" for none, @ for a point without a name)."""
    if route is None or not route.steps:
        return "", ""
    sums = [e for s in route.steps for e in s.equations]
    body = sums[0].body.name
    centres = [e.functional.point or "@" for e in sums if e.functional.kind == "about" and e.body.name == body]
    return body, centres[0] if centres else ""
