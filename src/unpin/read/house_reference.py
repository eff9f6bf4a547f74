"""The reference page and the JSON Schema of the house style file, written from `read.house_schema`."""

from __future__ import annotations

import json

from unpin.read.house_file import NAME
from unpin.read.house_schema import ENTRIES, NAMES, Entry, json_schema

_HEAD = f"""# The house style file

The habits of a teacher or a course, said once: a short YAML file called `{NAME}`. This page lists every entry. It is written by
`python tools/docs.py`; do not edit it. [House style](../learn/house-style.md) shows it at work.

The file is looked for in the folder of the problem, then in the folders above it, up to the one the command is started in; `--house FILE`
names another, `--house none` none. A note says which was used. What the problem file says of figures and units goes before the house
style, and options of the command go before both. Every entry may be left out.

A whole file:

```yaml
language: en
decimals: 2
decimal sign: comma
units: kN, m
units stand: behind results
moments: clockwise
names: {{link: S_AB, reaction: "H_A, V_A", roller: R_B, couple: M_A}}
heading: Statics I
credit: Course of N. N.
```

## Entries
"""


def house_reference() -> str:
    """The page in Markdown."""
    rows = [("kind", "what it names", "how many", "left out")]
    rows += [(name, doc, "two, with a comma between them" if count == 2 else "one", f"`{usual}`") for name, (count, doc, usual) in NAMES.items()]
    return "\n".join([_HEAD, *map(_entry, ENTRIES), _NAMES, _table(rows)])


_NAMES = """## Names

A name is given by an example, in which A, B or C stand for the points of the problem: with `link: S_AB` the force in a link from D to E is
S with DE below. What stands after `_` is set below the letter. In the same place several forces keep what tells them apart, the member they
act on. Should two forces of a problem come out with the same name, that kind of name is left as the program has it, and a warning says so.
Loads and cords have the letters that the problem file gives them.
"""


def _entry(e: Entry) -> str:
    said = {"choice": " or ".join(f"`{c}`" for c in e.choices), "whole": f"a whole number from {e.least} to {e.most}", "text": "one line",
            "units": "units with commas between them", "language": "the code of a language", "names": "names by kind, see below"}[e.shape]
    usual = f"`{e.default}`" if e.default in e.choices else e.default
    return f"### {e.name}\n\n{e.doc} (*{said}*; left out: {usual}.)\n\n```yaml\n{e.example}\n```\n"


def _table(rows: list[tuple[str, ...]]) -> str:
    lines = [rows[0], tuple("---" for _ in rows[0]), *rows[1:]]
    return "\n".join("| " + " | ".join(line) + " |" for line in lines) + "\n"


def house_schema_text() -> str:
    return json.dumps(json_schema(), indent=2, ensure_ascii=False) + "\n"
