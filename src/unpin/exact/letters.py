"""The letters of one problem: what the numbers in which letters stay letters are made of.

Generators are of these kinds. letter: a load, a length. angle: a letter angle in degrees, as it stands in `2 theta`. half: the
tangent of half a letter angle, in which sine and cosine are rational and every common factor is seen. turn: the same of a given
angle. digits: a number of the fourth rung. nested: the root of what is itself a sum of roots. The last three are numbers or
functions of which the polynomials do not know everything: where they occur, equality is also asked at a generic point.
"""

from __future__ import annotations

from dataclasses import field
from decimal import Decimal
from fractions import Fraction
from typing import Any, Literal

from unpin.base.record import open_record
from unpin.base.units import NUMBER, Dimension
from unpin.exact import quotient as q
from unpin.exact.digits import CONTEXT, Digits, digits_cos, digits_sin
from unpin.exact.lettered import Lettered
from unpin.exact.ratio import Ratio
from unpin.exact.surd import Surd, prime_factors, split_square

Kind = Literal["letter", "angle", "half", "turn", "digits", "nested"]
LOOSE = ("turn", "digits", "nested")
ROOM = 24
"""Generators beside the letters: given angles and numbers of the fourth rung that meet a letter. A problem of many angles has more."""
PER_ANGLE = 3
"""What a given angle may need: a cosine, a sine and a number of its own that a sum with others makes."""
MOST_TURNS = 4


class NoRoom(OverflowError):
    """More numbers without a short exact form meet letters than the ring of a problem holds."""


@open_record
class Generator:
    """`name` of the letter (of its angle, for half); `drawn` at the size of the figure; `made` what a constant or nested root is. `parts`: an
    angle of which halves are taken stands in two parts, and the generators are those of its half."""

    kind: Kind
    name: str
    drawn: Digits
    dimension: Dimension = NUMBER
    made: Any = None
    parts: int = 1


@open_record
class Letters:
    """The letters of one problem: generators, radicands, what was taken for positive because it is so as drawn, and
    the file's units of length, force and mass."""

    ring: Any
    generators: list[Generator] = field(default_factory=list)
    radicands: list[Any] = field(default_factory=list)
    positive: list[Any] = field(default_factory=list)
    units: dict[str, Fraction] = field(default_factory=dict)

    @classmethod
    def of(cls, count: int, angles: int = 0) -> Letters:
        """Room for `count` letters beside so many given angles. Room costs time: every product is over all generators."""
        return cls(q.context(2 * count + max(ROOM, PER_ANGLE * angles)))

    # Generators.

    def letter(self, name: str, drawn: Fraction, dimension: Dimension) -> Lettered:
        """A new letter with the size it is drawn with, SI."""
        return self._new(Generator("letter", name, Digits.of(drawn), dimension))

    def angle(self, name: str, drawn: Fraction, dimension: Dimension, parts: int = 1) -> Lettered:
        """A new letter for an angle, in degrees; its sine and cosine come with it, and with two `parts` those of its half."""
        found = self._new(Generator("angle", name, Digits.of(drawn / parts), dimension, parts=parts))
        self._new(Generator("half", name, _half_tangent(drawn / parts), parts=parts))
        return found * parts

    def parts_of(self, name: str) -> int:
        """In how many parts a letter angle stands."""
        return next((g.parts for g in self.generators if g.kind == "half" and g.name == name), 1)

    def _new(self, made: Generator) -> Lettered:
        if len(self.generators) >= self.ring.nvars():
            raise NoRoom("more numbers beside letters than there is room for")
        self.generators.append(made)
        return self.element({(): (self.ring.gen(len(self.generators) - 1), self.ring.constant(1))})

    def _index(self, kind: Kind, name: str) -> int | None:
        return next((k for k, g in enumerate(self.generators) if g.kind == kind and g.name == name), None)

    def gen(self, index: int) -> Lettered:
        return self.element({(): (self.ring.gen(index), self.ring.constant(1))})

    def circle(self, kind: Kind, name: str) -> tuple[Any, Any]:
        """Cosine and sine of an angle, from the tangent of its half."""
        t = self.gen(self._index(kind, name))
        below = t * t + 1
        return (1 - t * t) / below, 2 * t / below

    def constant(self, x: Digits) -> Lettered:
        """A number that has no exact form, as a generator of its own."""
        have = next((k for k, g in enumerate(self.generators) if g.kind == "digits" and g.drawn == x), None)
        return self.gen(have) if have is not None else self._new(Generator("digits", f"#{len(self.generators)}", x))

    def nested(self, x: Lettered) -> Lettered:
        """The root of a number that holds roots."""
        have = next((k for k, g in enumerate(self.generators) if g.kind == "nested" and g.made == x), None)
        if have is not None:
            return self.gen(have)
        from unpin.exact.homogeneous import dimension_of

        d = dimension_of(x) or (0, 0, 0)
        return self._new(Generator("nested", f"#{len(self.generators)}", x.__digits__().sqrt(), Dimension(*(k / 2 for k in d)), x))

    def scale(self, name: str) -> Fraction:
        """What one of the file's units is of the dimension of a letter, SI."""
        d = next(g.dimension for g in self.generators if g.name == name and g.kind in ("letter", "angle"))
        mine = self.units
        return mine.get("length", 1) ** int(d.length) * mine.get("force", 1) ** int(d.force) * mine.get("mass", 1) ** int(d.mass) * Fraction(1)

    # Elements.

    def element(self, terms: dict[tuple[int, ...], q.Quotient]) -> Any:
        """The lowest rung that holds a sum: letters may have dropped out."""
        terms = {k: v for k, v in terms.items() if v[0] != 0}
        plain = {k: q.as_fraction(v) for k, v in terms.items()}
        numeric = all(v is not None for v in plain.values()) and all(isinstance(self.radicands[r], int) for k in terms for r in k)
        if not numeric:
            return Lettered(self, terms)
        surd: dict[int, Fraction] = {}
        for k, v in plain.items():
            d = 1
            for r in k:
                d *= self.radicands[r]
            surd[d] = v
        return Surd._make(surd)

    def parts(self, x: object) -> dict[tuple[int, ...], q.Quotient] | None:
        """Any exact number as a sum of roots over this ring."""
        if isinstance(x, Lettered):
            if x.letters is not self:
                raise TypeError("numbers of two problems")
            return x.sums
        if isinstance(x, (int, Fraction)):
            return {(): q.of_fraction(self.ring, Fraction(x))} if x else {}
        if isinstance(x, Surd):
            return {self.key(prime_factors(d)): q.of_fraction(self.ring, c) for d, c in x.terms.items()}
        if isinstance(x, Ratio):
            turns = {g.name for g in self.generators if g.kind == "turn"} | {f"{g[1]}" for p in (x.top, x.bottom) for m in p for g, _ in m if g[0] != "root"}
            # Each angle of a sum doubles what stands below it: beyond a few, sines and cosines are numbers of their own.
            return self.parts(self.constant(Digits.of(x)) if len(turns) > MOST_TURNS else self._ratio(x.top) / self._ratio(x.bottom))
        if isinstance(x, Digits):
            return self.parts(self.constant(x))
        return None

    def _ratio(self, polynomial) -> Any:
        total: Any = Fraction(0)
        for monomial, c in polynomial.items():
            part: Any = c
            for (name, argument), power in monomial:
                if name == "root":
                    part = part * Surd._make({int(argument): Fraction(1)}) ** power
                    continue
                known = f"{argument}"
                if self._index("turn", known) is None:
                    self._new(Generator("turn", known, _half_tangent(argument), made=argument))
                part = part * self.circle("turn", known)[0 if name == "cos" else 1] ** power
            total = total + part
        return total

    def key(self, radicands: list[Any]) -> tuple[int, ...]:
        """Numbers of radicands, each a prime or an irreducible polynomial that is positive as drawn."""
        out = []
        for r in radicands:
            known = [k for k, have in enumerate(self.radicands) if type(have) is type(r) and have == r]
            if not known:
                self.radicands.append(r)
            out.append(known[0] if known else len(self.radicands) - 1)
        return tuple(sorted(out))

    def root(self, x: Lettered) -> Any:
        """√x for what is not negative as drawn."""
        if set(x.sums) != {()}:
            return self.nested(x)
        top, bottom = x.sums[()]
        constant, factors = (top * bottom).factor()
        outside, inside = self.ring.constant(1), []
        number = int(constant)
        for f, power in factors:
            if self.value(f) < 0:
                f = -f
                number *= -1 if power % 2 else 1
            outside *= f ** (power // 2)
            if power // 2:
                self._take(f)
            if power % 2:
                inside.append(f)
        if number < 0:
            raise ValueError("square root of a negative number")
        square, rest = split_square(number)
        return self.element({self.key([*prime_factors(rest), *inside]): q.lowest(outside * square, bottom)})

    def take(self, x: Lettered) -> None:
        """Note that a number counts as positive or negative because it is so as drawn: a length along an axis."""
        if set(x.sums) == {()}:
            for f, power in (x.sums[()][0] * x.sums[()][1]).factor()[1]:
                if int(power) % 2:
                    self._take(f if self.value(f) > 0 else -f)

    def _take(self, f: Any) -> None:
        if f not in self.positive and q.generators_in(f):
            self.positive.append(f)

    # Values.

    def value(self, p: Any, at: list[Decimal] | None = None) -> Decimal:
        """A polynomial as drawn, or with other values of the generators."""
        at = at or [g.drawn.value for g in self.generators]
        total = Decimal(0)
        for powers, c in p.terms():
            part = Decimal(int(c))
            for k, power in enumerate(powers):
                if power:
                    part = CONTEXT.multiply(part, CONTEXT.power(at[k], int(power)))
            total = CONTEXT.add(total, part)
        return total

    def generic(self) -> list[Decimal]:
        """A point at which nothing holds by chance; what has no letter keeps its value."""
        out: list[Decimal] = []
        for k, g in enumerate(self.generators):
            if g.kind in ("turn", "digits"):
                out.append(g.drawn.value)
            elif g.kind == "nested":
                out.append(CONTEXT.sqrt(g.made.at(out).copy_abs()))
            else:
                out.append(CONTEXT.divide(Decimal(1000003 + 7919 * k * k + 104729 * k), Decimal(999983 - 1299709 * k + 15485863 * (k + 1))))
        return out

    def holds_letters(self, p: Any) -> bool:
        return any(self.generators[k].kind not in ("turn", "digits") for k in q.generators_in(p))

    def is_loose(self, p: Any) -> bool:
        return any(self.generators[k].kind in LOOSE for k in q.generators_in(p))


def _half_tangent(degrees: Fraction) -> Digits:
    return digits_sin(Digits.of(degrees)) / (digits_cos(Digits.of(degrees)) + 1)
