"""The format of a house style file, stated once: its entries, what each may say, and what holds where it is left out.

From here come the checks, the JSON Schema and the reference page.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import Any, Literal

from unpin.base.record import record
from unpin.model.house import EXAMPLES

Shape = Literal["choice", "whole", "text", "units", "language", "names"]


@record
class Entry:
    """`choices`: what may be said, with what it means for `model.house.House`; `least`, `most`: of a whole number. `field`: the
    field of a `House` that it fills, its name where that is the same."""

    name: str
    shape: Shape
    doc: str
    example: str
    default: str
    choices: Mapping[str, Any] = field(default_factory=dict, hash=False)
    least: int = 0
    most: int = 0
    field: str = ""


ENTRIES: tuple[Entry, ...] = (
    Entry("language", "language", "The language of everything that is printed, remarks too.", "language: en", "English"),
    Entry("figures", "whole", "Significant figures of results.", "figures: 4", "3", least=2, most=8),
    Entry("decimals", "whole", "Decimal places of results, instead of significant figures.", "decimals: 2", "significant figures",
          least=0, most=6, field="places"),
    Entry("leading one", "choice", "Whether a result that begins with a 1 has one figure more.", "leading one: as any other",
          "one more figure", {"one more figure": True, "as any other": False}, field="leading_one"),
    Entry("decimal sign", "choice", "What stands between whole numbers and decimals.", "decimal sign: comma", "that of the language",
          {"point": ".", "comma": ","}, field="decimal"),
    Entry("units", "units", "Units of the answers, where the problem names none; bare numbers of a problem keep theirs.",
          "units: kN, m", "those of the problem"),
    Entry("units stand", "choice", "Whether every term of a sum has its unit or only the result.", "units stand: behind results",
          "in every term", {"in every term": True, "behind results": False}, field="unit_in_terms"),
    Entry("moments", "choice", "The turn that counts as positive in a sum; couples to be found are drawn that way.",
          "moments: clockwise", "anticlockwise", {"anticlockwise": 1, "clockwise": -1}),
    Entry("x", "choice", "The way that counts as positive in a horizontal sum.", "x: left", "right", {"right": 1, "left": -1}),
    Entry("y", "choice", "The way that counts as positive in a vertical sum.", "y: down", "up", {"up": 1, "down": -1}),
    Entry("names", "names", "Names of forces, each by an example: A and B are the ends of a link, A the point of a reaction or a couple, "
          "B that of a roller, C that of a pin. What stands after `_` is set below.",
          "names: {link: S_AB, reaction: \"H_A, V_A\", roller: R_B}", "F_AB; A_x, A_y; B_y or R_B; M_A; C_x, C_y; A"),
    Entry("heading", "text", "A line above the title of every page.", "heading: Statics I", "none"),
    Entry("credit", "text", "A line at the foot of every page.", "credit: Course of N. N.", "none"),
    Entry("colours", "choice", "Light or dark pages; PDF and LaTeX are always light, to be printed.", "colours: light",
          "as the reader has it", {"as the reader has it": "reader", "light": "light", "dark": "dark"}),
    Entry("paper", "choice", "The size of a printed page.", "paper: Letter", "A4",
          {"A4": "a4", "Letter": "us-letter", "Legal": "us-legal"}),
)

BY_NAME = {e.name: e for e in ENTRIES}

NAMES: Mapping[str, tuple[int, str, str]] = {
    "link": (1, "the force in a link or two-force member", "F_AB"),
    "reaction": (2, "the two parts of a reaction at a pin or built-in end", "A_x, A_y"),
    "roller": (1, "the one force of a roller, contact or guide", "R_B"),
    "couple": (1, "the couple of a built-in end", "M_A"),
    "pin": (2, "the two parts of the force of a pin between members", "C_x, C_y"),
    "resultant": (1, "the size of a reaction or pin force", "A"),
}
"""For each kind of name: how many names it wants, what it names, and the program's own."""

assert NAMES.keys() == EXAMPLES.keys()


def json_schema() -> dict[str, Any]:
    """The file as JSON Schema 2020-12."""
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", "title": "House style", "type": "object",
            "properties": {e.name: {"description": e.doc, **_shape(e)} for e in ENTRIES}, "additionalProperties": False}


def _shape(e: Entry) -> dict[str, Any]:
    if e.shape == "choice":
        return {"enum": list(e.choices)}
    if e.shape == "whole":
        return {"type": "integer", "minimum": e.least, "maximum": e.most}
    if e.shape == "names":
        return {"type": "object", "additionalProperties": False,
                "properties": {name: {"description": doc, "type": "string"} for name, (_, doc, _) in NAMES.items()}}
    return {"type": "string"}
