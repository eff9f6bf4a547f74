"""The how-to pages, one for each kind, made from the facts of the kinds, the grammar, and a small complete problem each (howto.toml).

The figures, the sentences of the lesson and the answers are the program's own.
"""

from __future__ import annotations

import re
import tomllib
from pathlib import Path

DATA = tomllib.loads((Path(__file__).parent / "howto.toml").read_text("utf-8"))
WORDS = DATA.pop("words")


def pages() -> dict[str, str]:
    """Path of each page and figure, relative to docs/howto, and its text."""
    made: dict[str, str] = {}
    for name, entry in DATA.items():
        drawn = _Worked(entry)
        made[f"{name}.md"] = _page(name, entry, drawn)
        made[f"figures/{name}-problem.svg"] = drawn.problem()
        made[f"figures/{name}-body.svg"] = drawn.body()
    rows = [f"- [{entry['title']}]({name}.md)" for name, entry in DATA.items()]
    made["README.md"] = f"# {WORDS['index']}\n\n{WORDS['index_lead']} {WORDS['note']}\n\n" + "\n".join(rows) + "\n"
    return made


class _Worked:
    """The problem of a page, solved, with what is shown of it."""

    def __init__(self, entry: dict):
        import unpin
        from unpin.lesson.figures import Studio
        from unpin.lesson.sheet import sheet_for
        from unpin.statics.isolate import isolate

        self.entry = entry
        self.worked = unpin.solve(unpin.loads(entry["file"]))
        self.sheet = sheet_for(self.worked.problem, self.worked.values)
        self.studio = Studio(self.worked, self.sheet)
        self.free = isolate(self.worked.structure, [n.strip() for n in entry["body"].split("+")])

    def problem(self) -> str:
        return self._picture(self.studio.problem())

    def body(self) -> str:
        return self._picture(self.studio.free_body(self.free))

    def _picture(self, nodes) -> str:
        from unpin.render.picture import svg

        return svg(nodes[0], fonts="name")

    def said(self) -> list[str]:
        """Sentences of the lesson about the place that the page is about, or about the whole body."""
        from unpin.lesson.isolate import choose
        from unpin.lesson.kinds import with_kinds
        from unpin.lesson.nodes import Bullets
        from unpin.render.maths.sentence import written

        block = with_kinds(choose(self.free, self.worked.structure, self.sheet, set()), self.worked.problem)
        items = [written(t, "en", capital=True) for n in block.children if isinstance(n, Bullets) for t in n.items]
        at = self.entry["at"].replace("-", "")
        return [_plain(i) for i in items if not at or re.search(rf"\b(?:[Aa]t|with|[Ll]ink) {at}\b", i)]

    def answers(self) -> list[str]:
        """The lines of the answers as the command prints them."""
        from unpin.lesson.nodes import Boxed, Section, Text
        from unpin.lesson.outcome import answers
        from unpin.render.terminal import section

        boxes = tuple(n for n in answers(self.worked, self.sheet) if isinstance(n, Boxed))
        text = section(Section("answers", "answers", Text("title.answers"), boxes))
        return [_plain(m) for m in re.findall(r"^│ (\S+ = .*?) *│$", text, re.M)]


def _plain(text: str) -> str:
    """With common spaces between a number and its unit."""
    return re.sub("[\u202f\u2009\u00a0]", " ", text)


def _page(name: str, entry: dict, drawn: _Worked) -> str:
    title = entry["title"]
    out = [f"# {title}", entry["lead"], f"![{WORDS['problem_alt']}](figures/{name}-problem.svg)", f"## {WORDS['write']}", WORDS["file"],
           f"```yaml {name}.yaml\n{entry['file'].strip()}\n```", WORDS["forms"], _forms(entry["phrases"])]
    if "kind" in entry:
        out += [f"## {WORDS['carries']}", _carries(entry["kind"])]
    shown = "\n…\n".join(drawn.answers())
    out += [f"## {WORDS['body']}", f"![{WORDS['body_alt']}](figures/{name}-body.svg)", WORDS["says"],
            "\n".join(f"- {s}" for s in drawn.said()), WORDS["answer"], f"```console\n$ unpin solve {name}.yaml\n…\n{shown}\n…\n```",
            f"## {WORDS['wrong']}", f"{entry['mistake']} {WORDS['based'].format(basis=entry['basis'].rstrip('.'))}", f"*{WORDS['note']}*"]
    return "\n\n".join(out) + "\n"


def _forms(wanted: list[str]) -> str:
    rows = ["| form | meaning | example |", "| --- | --- | --- |"]
    for f in chosen(wanted):
        rows.append("| " + " | ".join(cell.replace("|", "\\|") for cell in (f"`{f.form}`", f.meaning, f"`{f.example}`")) + " |")
    return "\n".join(rows)


def chosen(wanted: list[str]) -> list:
    """The rows of the grammar that begin as said: `support:roller` is every form of a support that begins with roller."""
    from unpin.read.forms import FORMS

    pairs = [tuple(w.split(":", 1)) for w in wanted]
    return [f for f in FORMS if any(f.kind == kind and f.form.startswith(start) for kind, start in pairs)]


def _carries(kind: str) -> str:
    from unpin.model.kinds import KINDS

    facts = KINDS[kind]
    forces = _listed([WORDS["forces"][p] for p in facts.pushes])
    motions = _listed([WORDS["motions"][f] for f in facts.freedoms]) or WORDS["none"]
    line = WORDS["carries_line"].format(forces=forces, motions=motions)
    return f"{line} {WORDS['push' if facts.push_only else 'both']}"


def _listed(items: list[str]) -> str:
    return " and ".join([", ".join(items[:-1]), items[-1]] if len(items) > 1 else items)
