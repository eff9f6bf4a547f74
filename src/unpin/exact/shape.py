"""A number with letters as a textbook prints it: an expression of `exact.expression`, chosen by a stated rule.

Everything is one product of powers over another: common factors cancelled, roots of what is irreducible on the side where they
are fewer, half angles turned back into sines and cosines, a sine over a cosine into a tangent. A sum is multiplied out only where
that has fewer terms ((l - a)(l + a) is l² - a²). Of two forms of a sum of sines and cosines the one with fewer terms stands. Sums
begin with a term that is added, then go by the order of the letters in the file; a product has number, forces, lengths, functions.
"""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import Any

from unpin.base.units import Dimension
from unpin.exact import circular
from unpin.exact import quotient as q
from unpin.exact.circular import Symbol, Terms
from unpin.exact.digits import CONTEXT
from unpin.exact.expression import Expression
from unpin.exact.homogeneous import homogeneous
from unpin.exact.lettered import Lettered
from unpin.exact.letters import Letters
from unpin.exact.surd import prime_factors, split_square
from unpin.exact.writer import Writer, added, content, number, product, raised


def shape(x: Lettered, dimension: Dimension, factor: Fraction = Fraction(1)) -> tuple[int, Expression, bool]:
    """Sign as drawn, the size as an expression, and whether measured numbers stand in it: these are in the units of the file, the
    whole is a number of `factor`. Numbers are not rounded here."""
    letters = x.letters
    measured = not homogeneous(x, dimension)
    way = 1 if float(x) >= 0 else -1
    (top, bottom), inside = common(x if way > 0 else -x)
    made = _Product(letters, measured)
    made.polynomial(top, Fraction(1))
    made.polynomial(bottom, Fraction(-1))
    if len(inside) == 1:
        ((key, one),) = inside.items()
        made.polynomial(one, Fraction(1))
        for r in key:
            made.under_root(letters.radicands[r])
    else:
        made.roots(inside)
    return way, made.written(dimension, factor), measured


def common(x: Lettered) -> tuple[tuple[Any, Any], dict[tuple[int, ...], Any]]:
    """The number as (top / bottom) times a sum of polynomial √radicand without a common factor."""
    top, bottom = None, None
    for n, d in x.sums.values():
        top = n if top is None else top.gcd(n)
        bottom = d if bottom is None else bottom * (d / bottom.gcd(d))
    return (top, bottom), {k: (n / top) * (bottom / d) for k, (n, d) in x.sums.items()}


def inequality(letters: Letters, inside: dict[tuple[int, ...], Any]) -> tuple[Expression, Expression]:
    """A sum of polynomial √radicand that is positive as drawn, as what is greater and what is less; measured numbers in the units of the file."""
    made = _Product(letters, False)
    if len(inside) > 1:
        made.roots(inside)
        parts = [made.part(k, p) for k, p in made.rooted]
    else:
        (p,) = inside.values()
        terms = made.trigonometric(p)[0]
        shared = made.shared(terms) if len(terms) > 1 else {s: k for m in terms for s, k in m if s[0] == "letter"}
        terms = {tuple((s, k - shared.get(s, 0)) for s, k in m if k > shared.get(s, 0)): v for m, v in terms.items()}
        common_number = content(terms.values())
        sized = {m: v * product(letters.scale(s[1]) ** k for s, k in m if s[0] == "letter") for m, v in terms.items()}
        writer = Writer(letters, len({sized[m] / terms[m] for m in terms}) > 1)
        terms, common_number = (sized, content(sized.values())) if writer.measured else (terms, common_number)
        if max(abs(v / common_number) for v in terms.values()) > 1000 * LARGEST:
            common_number = abs(terms[writer.ordered(terms)[0]])
            writer.measured = True
        parts = [(1 if terms[m] > 0 else -1, writer.monomial(m, abs(terms[m]) / common_number)) for m in writer.ordered(terms)]
    return tuple(added([(1, e) for way, e in parts if way == side] or [(1, number(Fraction(0)))]) for side in (1, -1))


LARGEST = 1000
"""Whole numbers above this in a sum give way to decimals."""


def _square(x: Fraction) -> Fraction:
    """The largest square in a number, so that nothing but it leaves a root."""
    top, bottom = split_square(x.numerator)[0], split_square(x.denominator)
    return Fraction(top, bottom[0] * (bottom[1] if bottom[1] != 1 else 1)) ** 2


class _Product:
    """Powers of polynomials, then of symbols and sums of them."""

    def __init__(self, letters: Letters, measured: bool):
        self.letters, self.measured = letters, measured
        self.number = Fraction(1)
        self.factors: list[list[Any]] = []
        self.sums: list[tuple[Terms, Fraction]] = []
        self.symbols: dict[Symbol, Fraction] = {}
        self.rooted: list[tuple[tuple[int, ...], Any]] = []
        self.degrees: dict[str, tuple[Fraction, dict[tuple[int, ...], int]]] = {}

    # What goes in.

    def polynomial(self, p: Any, power: Fraction) -> None:
        constant, factors = p.factor()
        for f, times in factors:
            if self.letters.value(f) < 0:
                f = -f
            self._add(f, power * int(times))
        self.number *= Fraction(abs(int(constant))) ** int(power)

    def under_root(self, r: Any) -> None:
        if isinstance(r, int):
            half = Fraction(1, 2)
            while self.number.denominator % r == 0:
                self.number, half = self.number * r, half - 1
            self._symbol(("number", r), half)
        else:
            self._add(r, Fraction(1, 2))

    def roots(self, inside: dict[tuple[int, ...], Any]) -> None:
        """A sum of polynomial √radicand. One power of C for each half angle goes before it all, the least that leaves none inside."""
        self.rooted = sorted(inside.items())
        for k in sorted({k for p in (*inside.values(), *self._under(inside)) for k in self._halves(p)}):
            name, t = self.letters.generators[k].name, self.letters.ring.gen(k)
            whole: dict[tuple[int, ...], Fraction] = {}
            for key, p in inside.items():
                half = sum(((circular.degree(circular.plain(r, self.letters), name) + 1) // 2 for r in self._under({key: p})), 0)
                whole[key] = Fraction(half, 2)
            need = {key: (circular.degree(circular.plain(p, self.letters), name) + 1) // 2 for key, p in inside.items()}
            power = max(need[key] + whole[key] for key in inside)
            self.degrees[name] = power, {key: int(power - whole[key]) for key in inside}
            self._add(1 + t * t, power)

    def _under(self, inside: dict[tuple[int, ...], Any]) -> list[Any]:
        return [r for key in inside for r in (self.letters.radicands[i] for i in key) if not isinstance(r, int)]

    def _add(self, f: Any, power: Fraction) -> None:
        for have in self.factors:
            if have[0] == f:
                have[1] += power
                return
        self.factors.append([f, power])

    def _symbol(self, s: Symbol, power: Fraction) -> None:
        self.symbols[s] = self.symbols.get(s, Fraction(0)) + power

    # Turned into symbols.

    def _merged(self) -> list[list[Any]]:
        """Factors multiplied out where that has fewer terms, and odd ones of half angles taken together."""
        left, out = [list(f) for f in self.factors if f[1]], []
        while left:
            f, power = left.pop(0)
            best = None
            for k, (g, other) in enumerate(left):
                if other == power and len(f) > 1 and len(g) > 1:
                    gain = self._gain(f, g)
                    if gain > 0 and (best is None or gain > best[0]):
                        best = (gain, k)
            if best:
                g, _ = left.pop(best[1])
                left.insert(0, [f * g, power])
            else:
                out.append([f, power])
        return out

    def _gain(self, f: Any, g: Any) -> int:
        """How many terms a product saves; nothing for factors of one half angle that mean sine and cosine by themselves."""
        halves = [self._halves(p) for p in (f, g)]
        if not any(halves):
            return len(f) + len(g) - len(f * g)
        if self._special(f) or self._special(g) or not all(halves):
            return 0
        apart = sum(len(self.trigonometric(p)[0]) for p in (f, g))
        return apart - len(self.trigonometric(f * g)[0])

    def _halves(self, p: Any) -> list[int]:
        return [k for k in sorted(q.generators_in(p)) if self.letters.generators[k].kind == "half"]

    def _special(self, p: Any) -> str:
        """t, 1 + t, 1 - t or 1 + t² of one angle, "" for anything else."""
        halves = self._halves(p)
        if len(halves) != 1 or len(q.generators_in(p)) != 1:
            return ""
        t = self.letters.ring.gen(halves[0])
        return next((name for name, form in (("t", t), ("+", 1 + t), ("-", 1 - t), ("C", 1 + t * t)) if p == form), "")

    def trigonometric(self, p: Any) -> tuple[Terms, dict[str, int]]:
        """Terms in sines and cosines, and the power of C of each angle that goes with them."""
        terms, powers = circular.plain(p, self.letters), {}
        for k in self._halves(p):
            name = self.letters.generators[k].name
            m = (circular.degree(terms, name) + 1) // 2
            terms, powers[name] = circular.opened(terms, name, m), m
        for name in powers:
            terms = circular.shortest(terms, name, self.letters.parts_of(name))
        return circular.added(terms), powers

    def _in_symbols(self) -> None:
        special: dict[tuple[str, str], Fraction] = {}
        for f, power in self._merged():
            kind = self._special(f)
            if kind:
                name = self.letters.generators[self._halves(f)[0]].name
                special[name, kind] = special.get((name, kind), Fraction(0)) + power
                continue
            terms, rest = self.trigonometric(f)
            for name, m in rest.items():
                special[name, "C"] = special.get((name, "C"), Fraction(0)) + m * power
            self._terms(terms, power)
        for name in sorted({n for n, _ in special}):
            self._angle(name, *(special.get((name, kind), Fraction(0)) for kind in "t+-C"))

    def _terms(self, terms: Terms, power: Fraction) -> None:
        """A sum to a power: its common factor apart, a lone term among the symbols."""
        shared = self.shared(terms)
        for s, k in shared.items():
            self._symbol(s, k * power)
        rest = {tuple((s, k - shared.get(s, 0)) for s, k in m if k > shared.get(s, 0)): v for m, v in terms.items()}
        if len(rest) == 1:
            (value,) = rest.values()
            self._number(abs(value), power)
            return
        shared_number = content(rest.values())
        if max(abs(v) for v in rest.values()) > 10**12 * shared_number:
            shared_number = Fraction(1)  # Of numbers with fifty digits nothing is common.
        self._number(shared_number, power)
        rest = {m: v / shared_number for m, v in rest.items()}
        self.sums.append((rest, power))

    @staticmethod
    def shared(terms: Terms) -> dict[Symbol, int]:
        """The symbols that every term holds, with their powers."""
        out = dict(next(iter(terms)))
        for m in terms:
            have = dict(m)
            out = {s: min(k, have[s]) for s, k in out.items() if s in have}
        return out

    def _number(self, value: Fraction, power: Fraction) -> None:
        if power.denominator == 1:
            self.number *= value ** int(power)
            return
        whole = int(power - Fraction(1, 2))
        self.number *= value ** whole
        top = value.numerator * value.denominator
        if top > 10**60:
            # A number of fifty digits: its root is one too.
            self.number *= Fraction(CONTEXT.sqrt(CONTEXT.divide(Decimal(value.numerator), Decimal(value.denominator))))
            return
        self.number /= value.denominator
        square, rest = split_square(top)
        self.number *= square
        for prime in prime_factors(rest):
            self._symbol(("number", prime), Fraction(1, 2))

    def _angle(self, name: str, t: Fraction, plus: Fraction, minus: Fraction, c: Fraction) -> None:
        """Powers of t, 1 + t, 1 - t and C of one angle as sines and cosines."""
        angle = ((name, 1),)
        cosine, sine, one = {((("cos", angle), 1),): Fraction(1)}, {((("sin", angle), 1),): Fraction(1)}, {(): Fraction(1)}
        self._number(Fraction(1, 2), t)
        c += t
        # (1 + t)(1 - t) = C cos θ; of (1 + t)/(1 - t) the one below goes into the cosine.
        both = min(plus, minus, key=abs) if plus * minus > 0 else min(plus, minus)
        both = both if plus * minus else Fraction(0)
        plus, minus, c = plus - both, minus - both, c + both
        self._symbol(("cos", angle), both)
        for power, way in ((plus, 1), (minus, -1)):
            whole = Fraction(int(power / 2))
            if whole:
                self.sums.append(({**one, **{k: way * v for k, v in sine.items()}}, whole))
                c += whole
            left = power - 2 * whole
            if left and c.denominator == 2 and abs(left) == 1:
                # Under a root with C it is (1 + t)² = C (1 + sin).
                self.sums.append(({**one, **{k: way * v for k, v in sine.items()}}, left / 2))
                c += left / 2
            elif left:
                # One half angle is left over: (1 + t) = C (1 + cos + sin)/2.
                self.sums.append(({**one, **cosine, **{k: way * v for k, v in sine.items()}}, power - 2 * whole))
                self._number(Fraction(1, 2), power - 2 * whole)
                c += power - 2 * whole
        while t * c > 0 and abs(t) >= 2 and abs(c) >= 1:
            step = 1 if t > 0 else -1
            t, c = t - 2 * step, c - step
            self.sums.append(({**one, **{k: -v for k, v in cosine.items()}}, Fraction(step)))
            self._number(Fraction(2), Fraction(step))
        self._symbol(("sin", angle), t)
        if c:
            self._number(Fraction(2), c)
            self.sums.append(({**one, **cosine}, -c))

    def _tangents(self) -> None:
        for kind, angle in list(self.symbols):
            if kind != "sin":
                continue
            s, c = self.symbols[kind, angle], self.symbols.get(("cos", angle), Fraction(0))
            if s * c < 0 and s.denominator == c.denominator == 1:
                shared = min(abs(s), abs(c)) * (1 if s > 0 else -1)
                self.symbols[kind, angle], self.symbols["cos", angle] = s - shared, c + shared
                self._symbol(("tan", angle), shared)

    def _wholes(self) -> None:
        """sin (α/2) cos (α/2) is sin α / 2."""
        for kind, angle in list(self.symbols):
            if kind != "sin" or len(angle) != 1 or angle[0][1] != 1 or self.letters.parts_of(angle[0][0]) != 2:
                continue
            s, c = self.symbols[kind, angle], self.symbols.get(("cos", angle), Fraction(0))
            if s * c > 0 and s.denominator == c.denominator == 1:
                shared = min(abs(s), abs(c)) * (1 if s > 0 else -1)
                self.symbols[kind, angle], self.symbols["cos", angle] = s - shared, c - shared
                self._symbol(("sin", ((angle[0][0], 2),)), shared)
                self._number(Fraction(1, 2), shared)

    # Written down.

    def written(self, dimension: Dimension | None, factor: Fraction) -> Expression:
        self._in_symbols()
        self._wholes()
        self._tangents()
        for s, k in self.symbols.items():
            if s[0] == "number":
                whole = int(k) if k >= 0 else -int(-k)
                self.number, self.symbols[s] = self.number * Fraction(s[1]) ** whole, k - whole
        if self.measured and dimension is not None:
            self._scaled(dimension, factor)
        writer = Writer(self.letters, self.measured)
        top, bottom = [], []
        roots: dict[int, list[Expression]] = {1: [], -1: []}
        items: list[tuple[Any, Fraction, Expression]] = [(writer.rank(s), k, writer.symbol(s)) for s, k in self.symbols.items() if k]
        items += [((1.5,), k, writer.sum(t)) for t, k in self.sums if k]
        if self.rooted:
            items.append(((1.6,), Fraction(1), added(sorted((self.part(k, p) for k, p in self.rooted), key=lambda part: part[0] < 0))))
        for _, k, e in sorted(items, key=lambda i: i[0]):
            way = 1 if k > 0 else -1
            whole = abs(k) - Fraction(1, 2) if k.denominator == 2 else abs(k)
            if whole:
                (top if way > 0 else bottom).append(raised(e, int(whole)))
            if k.denominator == 2:
                roots[way].append(e)
        for way, side in ((1, top), (-1, bottom)):
            side += writer.roots(roots[way])
        return writer.quotient(self.number, top, bottom)

    def part(self, key: tuple[int, ...], p: Any) -> tuple[int, Expression]:
        """Sign as drawn and size of one polynomial times a root, without the power of C that stands before the sum."""
        inner = _Product(self.letters, self.measured)
        way = 1 if self.letters.value(p) >= 0 else -1
        terms = circular.plain(way * p, self.letters)
        for name, (power, mine) in self.degrees.items():
            terms = circular.shortest(circular.opened(terms, name, mine[key]), name, self.letters.parts_of(name))
            t = self.letters.ring.gen(next(k for k, g in enumerate(self.letters.generators) if g.kind == "half" and g.name == name))
            inner._add(1 + t * t, mine[key] - power)
        inner._terms(circular.added(terms), Fraction(1))
        for r in key:
            inner.under_root(self.letters.radicands[r])
        return way, inner.written(None, Fraction(1))

    def _scaled(self, dimension: Dimension, factor: Fraction) -> None:
        """Measured numbers in the units of the file: each letter stands for so many of its unit."""
        scale = self.letters.scale
        self.number /= factor
        for s, k in self.symbols.items():
            if s[0] == "letter" and k.denominator == 1:
                self.number *= scale(s[1]) ** int(k)
        sums = []
        for terms, k in self.sums:
            sized = {m: v * product(scale(s[1]) ** n for s, n in m if s[0] == "letter") for m, v in terms.items()}
            # Whole numbers where the typed ones allow it, else the first term stands alone.
            lead = content(sized.values())
            if max(v.denominator for v in (v / lead for v in sized.values())) != 1 or max(abs(v / lead) for v in sized.values()) > LARGEST:
                lead = abs(sized[Writer(self.letters, True).ordered(sized)[0]])
            lead = lead if k.denominator == 1 else _square(lead)
            self._number(lead, k)
            sums.append(({m: v / lead for m, v in sized.items()}, k))
        self.sums = sums
