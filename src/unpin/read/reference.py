"""The reference page and the JSON Schema of the format, written from `read.schema` and `read.forms`.

python -m unpin.read.reference [folder]        writes problem-file.md and problem.schema.json, by default to docs/reference
"""

from __future__ import annotations

import json
import sys
from pathlib import Path

from unpin.base.units import UNITS
from unpin.model.kinds import KINDS
from unpin.read.forms import FORMS
from unpin.read.pieces import KEYWORDS
from unpin.read.quantities import NAMES
from unpin.read.schema import MOST, SECTIONS, Section, json_schema

_HEAD = """# The problem file

A problem is one short YAML file: a few sections, and in them short phrases that read aloud. This page lists every section
and every phrase. It is written by `python -m unpin.read.reference`; do not edit it.

Everything is read as plain text by the rules below: `3:4`, `on` or `1e3` mean nothing else to YAML here. A name may stand
once only. Anchors, aliases and tags are refused. Within `[ ]` and `{ }` a comma starts a new entry, so a phrase that holds a
comma wants quotes there.

A complete file:

```yaml
title: Market stall
units: m, N
points: {O: [0, 0], B: O up 1.2, C: O up 2.4, A: O up 3, D: C right 1.6, E: C right 2.4}
members: {post: O B C A, arm: C D E}
links: [B-D]
supports: {O: pin, A: roller pushes right}
loads: [300 N at E right 3 down 4]
find: [A, B-D, C on arm]
```

## Sections
"""

_KINDS = {
    "amount": (
        "Amounts",
        "Wherever a length, a force, an angle or a number is wanted. Numbers are exact: 0.1 is one tenth. "
        "Write decimals with a point. No sign of multiplication is needed in `2a`, `1/2 a` or `3 kN m`; between two "
        "letters it is: `P*a`.",
    ),
    "letter": (
        "Letters",
        "Under the letter. An angle may be a whole multiple of a letter, or a sum of such and numbers: `90 deg - theta`, `2theta + 10 deg`. "
        "What is found with letters is printed with the conditions under which it holds.",
    ),
    "point": (
        "Points",
        "A construction uses points made above it. A row has its names before one colon: `C E G I: every 4 right from A`.",
    ),
    "direction": ("Directions", "Wherever DIRECTION stands in another phrase. AXIS is right, left, up or down."),
    "member": (
        "Members",
        "A member is rigid and goes straight from each point to the next; it is bent where they are not in line.",
    ),
    "link": (
        "Links",
        "A link with a name of its own goes under the name: `links: {stay: B-D}`. Where a link ends in the ground, put a "
        "pin there under `supports`; or, where only its direction is known, make it a support: `E: link at 30 deg`.",
    ),
    "disc": ("Discs", "Under the name of the disc."),
    "block": ("Blocks", "Under the name of the block."),
    "cord": (
        "Cords",
        "Under the letter of the tension. A cord has one tension from end to end and turns its discs without friction. "
        "An end at a point of a member is tied to it, at a shared pin to the pin, at any other point to the ground. A load on "
        "such a point, or a third cord that ends there, makes a knot of it.",
    ),
    "joining": ("Pins", "Under the name of the shared point."),
    "contact": ("Contacts", "Under the name of the point. Members that touch are not pinned there."),
    "slot": (
        "Slots",
        "Under the name of the point. The two are not pinned there: the slot pushes the pin square to itself, drawn upwards (to the "
        "right from an upright slot), and the sign of the result tells which face is pressed. What else acts at the point acts on "
        "the member with the pin.",
    ),
    "collar": ("Collars", "Under the name of the point. The two are not pinned there."),
    "support": ("Supports", "Under the name of the point."),
    "load": ("Loads", "A load at a point that members share acts on the pin, unless the phrase says `on` which member."),
    "asked": ("What is asked", "Where several members meet, say on which: `C on arm`."),
    "sum": ("Sums", "Your own route, one sum a line."),
}


def reference() -> str:
    """The page in Markdown."""
    out = [_HEAD]
    out += [_section(s) for s in SECTIONS]
    out.append("## Phrases\n")
    for kind, (title, lead) in _KINDS.items():
        out.append(f"### {title}\n\n{lead}\n")
        rows = [(f"`{f.form}`", f.meaning, f"`{f.example}`") for f in FORMS if f.kind == kind]
        out.append(_table(("form", "meaning", "example"), rows))
    out.append("## Units\n\nA bare number is in the unit of `units`; a bare angle is in degrees.\n")
    out.append(_table(("kind", "units"), _units()))
    out.append(
        "## Names\n\nA name is a letter, then letters, digits, `_` or `'`. A letter with a value may not be named like a "
        "unit. These words have a meaning of their own and cannot be names: " + ", ".join(sorted(KEYWORDS)) + ".\n"
    )
    out.append("## Kinds of support and connection\n")
    out.append(
        _table(
            ("kind", "forces", "pushes only"),
            [(k.name, ", ".join(k.pushes), "yes" if k.push_only else "no") for k in KINDS.values()],
        )
    )
    return "\n".join(out).replace("|…", "…")


def _section(s: Section) -> str:
    facts = [f"*{s.shape}*"]
    if s.needed:
        facts.append("needed" if s.needed == s.name else "at least one of " + ", ".join(s.needed.split("|")))
    if s.unit:
        facts.append(f"bare numbers are a {s.unit}" if s.unit != "acceleration" else "bare numbers are in m/s² or ft/s²")
    if s.default:
        facts.append(f"left out: {s.default}")
    if s.name in MOST:
        facts.append(f"at most {MOST[s.name]}")
    return f"### {s.name}\n\n{s.doc} ({'; '.join(facts)}.)\n\n```yaml\n{s.example}\n```\n"


def _table(head: tuple[str, ...], rows: list[tuple[str, ...]]) -> str:
    lines = [head, tuple("---" for _ in head), *(tuple(cell.replace("|", "\\|") for cell in row) for row in rows)]
    return "\n".join("| " + " | ".join(line) + " |" for line in lines) + "\n"


def _units() -> list[tuple[str, str]]:
    rows = []
    for dimension, name in NAMES.items():
        said = [u.symbol + (f" ({', '.join(u.spellings)})" if u.spellings else "") for u in UNITS if u.dimension == dimension]
        if said:
            rows.append((name, ", ".join(said)))
    return rows


def schema_text() -> str:
    return json.dumps(json_schema(), indent=2, ensure_ascii=False) + "\n"


def main(folder: str = "docs/reference") -> None:
    target = Path(folder)
    target.mkdir(parents=True, exist_ok=True)
    (target / "problem-file.md").write_text(reference(), "utf-8")
    (target / "problem.schema.json").write_text(schema_text(), "utf-8")


if __name__ == "__main__":
    main(*sys.argv[1:2])
