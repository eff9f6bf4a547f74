"""Formulas in words, for a voice: "sum of moments about A", not "sigma M sub A"."""

from __future__ import annotations

from unpin.lesson.formula import Amount, Formula, Function, Header, Letter, Over, Product, Raised, Relation, Root, Signed, Squared, Sum
from unpin.words.sentences import catalogue, say


def write(formula: Formula, language: str = "en") -> str:
    return _Voice(language).say(formula)


class _Voice:
    def __init__(self, language: str):
        self.language = language

    def _word(self, code: str, **arguments: object) -> str:
        return say(f"speech.{code}", self.language, **arguments)

    def say(self, formula: Formula) -> str:
        match formula:
            case Amount(printed):
                return self._amount(printed) if printed.shape is None else self.say(formula.opened)
            case Letter(base, sub, on):
                name = self._word("letter", base=base, sub=sub) if sub else base
                return self._word("on", name=name, part=on) if on else name
            case Function(name, of, _):
                return self._word(f"function.{name}", of=self.say(of))
            case Over(top, bottom):
                return self._word("over", top=self.say(top), bottom=self.say(bottom))
            case Root(of):
                return self._word("root", of=self.say(of))
            case Squared(of):
                return self._word("squared", of=self.say(of))
            case Raised(of, power):
                return self._word("raised", of=self.say(of), power=power)
            case Product(factors):
                return self._word("times").join(self.say(f) for f in factors)
            case Signed(sign, of, _):
                return self._word("minus", of=self.say(of)) if sign < 0 else self.say(of)
            case Sum(terms, continued):
                return self._sum(terms, continued)
            case Relation(left, right, sign):
                return self._word({"=": "equals", "≠": "unequal"}.get(sign, "about"), left=self.say(left), right=self.say(right))
            case Header(kind, sub, arrow):
                sense = self._word(f"arrow.{_NAMES.get(arrow, 'along')}")
                return self._word(f"header.{kind}", sub=sub, sense=sense)
        raise TypeError(f"no spoken form for {type(formula).__name__}")

    def _amount(self, printed) -> str:
        number = printed.digits.replace("\u202f", "")
        words = catalogue("speech", self.language)
        named = words.get(f"unit.{printed.unit}", printed.unit)
        if number == "1":
            named = words.get(f"one.{printed.unit}", named)
        text = f"{number} {named}".strip()
        return self._word("minus", of=text) if printed.sign < 0 else text

    def _sum(self, terms: tuple[Signed, ...], continued: bool = False) -> str:
        out = []
        for k, term in enumerate(terms):
            text = self.say(term.of)
            code = "less" if term.sign < 0 else "plus"
            out.append(self._word(code, of=text) if k or continued else (self._word("minus", of=text) if term.sign < 0 else text))
        return " ".join(out)


_NAMES = {"→": "right", "←": "left", "↑": "up", "↓": "down", "↺": "anticlockwise", "↻": "clockwise"}
