"""Write the generated pages of docs/reference and docs/howto: `python tools/docs.py`. With --check nothing is written, and a page that
is not up to date ends the run with 1.

problem-file.md and problem.schema.json come from the reader's own tables, solution.md from the schemas of what is printed as data,
command.md from the parser of the command, house-style.md and house-style.schema.json from the tables of the house style.
"""

from __future__ import annotations

import argparse
import json
import os
import sys
from pathlib import Path

ROOT = Path(__file__).parents[1]
sys.path.insert(0, str(Path(__file__).parent))
FOLDER = ROOT / "docs" / "reference"
SCHEMAS = ("solution", "check", "ways", "index")

_SOLUTION_HEAD = """# Solutions as data

Every command with `--json` prints one JSON document. This page explains each field. It is written by `python tools/docs.py` from
the schemas beside it ([solution](solution.schema.json), [check](check.schema.json), [ways](ways.schema.json), [index](index.schema.json)); do not edit it.

An answer has a magnitude and a true sense: `value` is never negative, `sense` says which way the force acts. `worked` is the same
number with the sign of the sums, negative where the force acts against its arrow as drawn.
"""

_COMMAND_HEAD = """# The command

This page is written by `python tools/docs.py` from the help of the command; do not edit it.
"""


def pages() -> dict[str, str]:
    """Name of every generated page, and its text."""
    from unpin.read.house_reference import house_reference, house_schema_text
    from unpin.read.reference import reference, schema_text

    made = {"problem-file.md": reference(), "problem.schema.json": schema_text(), "solution.md": solution(), "command.md": command(),
            "house-style.md": house_reference(), "house-style.schema.json": house_schema_text()}
    import howto
    import references

    return {**made, "examples.md": examples(), **references.pages(), **pictures(), **{f"../howto/{name}": text for name, text in howto.pages().items()}}


def pictures() -> dict[str, str]:
    """The figures that the README shows, drawn by the program itself."""
    import unpin
    from unpin.lesson.figures import Studio
    from unpin.lesson.sheet import sheet_for
    from unpin.render.picture import svg

    worked = unpin.solve(unpin.load(ROOT / "examples" / "market-awning.yaml"))
    studio = Studio(worked, sheet_for(worked.problem, worked.values, 0))
    drawn = {"problem": studio.problem(), "arm": studio.free_body(worked.recommended.steps[-1].equations[0].body)}
    return {f"awning-{name}.svg": svg(nodes[0]) for name, nodes in drawn.items()}


_EXAMPLES_HEAD = """# The examples

`unpin examples` lists the problems that come with the program, `unpin solve NAME` solves one, and `unpin examples NAME` prints its file to
start from. The table is what `unpin index examples` finds out about them; it is written by `python tools/docs.py`, do not edit it.

{rule}
The rule for the minutes is ours (common practice, no source). "Sums" are those of the route that the lesson follows.
"""


def examples() -> str:
    """The bundled problems from easy to hard, and the code of each idea in the data."""
    from unpin import bundled, register
    from unpin.lesson.concepts import CODES
    from unpin.words.sentences import say

    entries = register.index(bundled.folder())
    shown = {c for e in entries for c in e.concepts}
    rows = ["| code | in words | examples |", "| --- | --- | --- |"]
    for code in CODES:
        found = [f"{e.file.removesuffix(register.PROBLEM)}" for e in entries if code in e.concepts]
        rows.append(f"| `{code}` | {say(f'index.concept.{code}')} | {', '.join(found) if code in shown else 'none yet'} |")
    return "\n".join([_EXAMPLES_HEAD.format(rule=say("index.rule")), register.as_markdown(entries, link="../../examples/{}"),
                      "## Examples for an idea\n", *rows]) + "\n"


def solution() -> str:
    """The fields of all documents, from their schemas."""
    out = [_SOLUTION_HEAD]
    for name in SCHEMAS:
        schema = json.loads((FOLDER / f"{name}.schema.json").read_text("utf-8"))
        out.append(f"## {schema['title']}\n\n{schema['description']}\n")
        for document in schema.get("oneOf", [schema]):
            if document is not schema:
                out.append(f"{document['description']}\n")
            out.append(_table(document))
        for title, part in schema.get("$defs", {}).items():
            if part["type"] == "object":
                out.append(f"### {title}\n")
                out.append(_table(part))
    return "\n".join(out)


def _table(document: dict) -> str:
    rows = ["| field | holds | meaning |", "| --- | --- | --- |"]
    rows += [f"| {' | '.join(cell.replace('|', chr(92) + '|') for cell in row)} |" for row in _fields(document, "")]
    return "\n".join(rows) + "\n"


def _fields(document: dict, path: str):
    """(field, kind, meaning) of a field and of what lies within it."""
    needed = document.get("required", ())
    for name, part in document["properties"].items():
        label = f"`{path}{name}`"
        inner, steps = _unfold(part)
        yield label, _kind(part) + ("" if name in needed else ", may be left out"), part["description"]
        if "properties" in inner:
            yield from _fields(inner, f"{path}{name}{steps}.")


def _unfold(part: dict) -> tuple[dict, str]:
    """What a list or a nullable field holds, with [] for each list on the way."""
    steps = ""
    while True:
        if "oneOf" in part:
            part = next(p for p in part["oneOf"] if p.get("type") != "null")
        elif "items" in part:
            part, steps = part["items"], steps + "[]"
        else:
            return part, steps


def _kind(part: dict) -> str:
    if "const" in part:
        return f"`{json.dumps(part['const'])}`"
    if "enum" in part:
        return ", ".join("null" if v is None else f"`{v}`" for v in part["enum"])
    if "oneOf" in part:
        return " or ".join(_kind(p) for p in part["oneOf"])
    if "$ref" in part:
        return part["$ref"].rpartition("/")[2]
    if part.get("type") == "array":
        return f"list of {_kind(part['items'])}"
    kind = part["type"]
    return " or ".join(kind) if isinstance(kind, list) else kind


def command() -> str:
    """The help of every command, as it is printed."""
    os.environ["COLUMNS"] = "96"
    from unpin.cli import parser

    top = parser()
    groups = [a for a in top._actions if isinstance(a, argparse._SubParsersAction)]
    out = [_COMMAND_HEAD, f"```text\n{top.format_help()}```\n"]
    for name, sub in groups[0].choices.items():
        out.append(f"## unpin {name}\n\n```text\n{sub.format_help()}```\n")
    return "\n".join(out)


def main() -> int:
    arguments = argparse.ArgumentParser(description=__doc__)
    arguments.add_argument("--check", action="store_true", help="only compare")
    check = arguments.parse_args().check
    stale = []
    for name, text in pages().items():
        target = FOLDER / name
        if not target.exists() or target.read_text("utf-8") != text:
            stale.append(name)
            if not check:
                target.parent.mkdir(parents=True, exist_ok=True)
                target.write_text(text, "utf-8", newline="\n")
    for name in stale:
        print(f"docs/reference/{name} {'is not up to date: run tools/docs.py' if check else 'written'}")
    return 1 if check and stale else 0


if __name__ == "__main__":
    sys.exit(main())
