"""Small reference pages read off the program: the calls from Python, the cost of a step, every remark about a file."""

from __future__ import annotations

import inspect
import re

_NOTE = "This page is written by `python tools/docs.py`; do not edit it."


def costs() -> str:
    """The table of costs with its reasons, which stand as remarks beside the numbers."""
    from unpin.route import cost

    source = inspect.getsource(cost)
    found = {name: (number, reason) for name, number, reason in re.findall(r"^    (\w+): int = (\d+)  # (.+)$", source, re.M)}
    defaults = {name: getattr(cost.DEFAULT, name) for name in cost.CostTable.__dataclass_fields__}
    if set(found) != set(defaults):
        raise ValueError("a cost without its reason")
    head = ("# What a step of the recommended way costs\n\n"
            f"In hundredths of a plain sum. Of all ways to the answer the recommended one has the least total. {_NOTE}\n\n"
            "The numbers are ours (common practice, no source): they were set so that the recommended ways of published examples read like their "
            "authors' ways.\n\n| what | cost | why |\n| --- | --- | --- |\n")
    return head + "".join(f"| {name.replace('_', ' ')} | {defaults[name]} | {reason} |\n" for name, (_, reason) in found.items())


def python() -> str:
    """Every public call with its signature and docstring."""
    import unpin

    out = ["# The calls from Python\n", f"Whatever the command does, one of these calls does. {_NOTE}\n",
           "```python\nimport unpin\n\nworked = unpin.solve(unpin.load(\"awning.yaml\"))\nprint(unpin.as_text(unpin.explain(worked)))\n```\n"]
    for name in unpin.__all__:
        call = getattr(unpin, name)
        signature = re.sub(r"(: |-> )'([^']*)'", r"\1\2", str(inspect.signature(call)))
        out.append(f"## {name}\n\n```python\nunpin.{name}{signature}\n```\n\n{inspect.getdoc(call)}\n")
    return "\n".join(out)


def remarks() -> str:
    """Every sentence that is said of a file, by its code in the data, and every cure."""
    from unpin.words.sentences import catalogue

    words = catalogue("diagnostics")
    out = ["# Every remark about a file\n", "A remark says where (`file:line:column`), how bad (error, warning or note), in what, what was found and what was wanted; "
           f"a line below it may hold the cure. What stands in `{{ }}` is filled in. As data (`--json`) it carries the code. {_NOTE}\n"]
    for title, beginning in (("Of a problem file", "read."), ("Of a house style", "house."), ("Of a change", "edit."), ("Cures", "hint.")):
        rows = [(code, text) for code, text in words.items() if code.startswith(beginning)]
        out += [f"## {title}\n", "| code | in words |", "| --- | --- |", *(f"| `{code}` | {_cell(text)} |" for code, text in rows), ""]
    return "\n".join(out)


def _cell(text: str) -> str:
    return text.replace("|", "\\|").replace("<", "&lt;").replace("\n", " ") or "(nothing more)"


def pages() -> dict[str, str]:
    return {"costs.md": costs(), "python.md": python(), "remarks.md": remarks()}
