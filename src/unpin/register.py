"""A folder of problems as a list: what each is made of, what it teaches, how many sums it takes; easy ones first.

Nothing of it is typed: every entry is read off the solved problem. Files that have faults, or that cannot be solved, are listed last with
what is wrong with them.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import asdict
from pathlib import Path
from typing import Any

from unpin.base.diagnostic import Diagnostic
from unpin.base.record import record
from unpin.words.sentences import say

ENDINGS = (".md", ".html")
PROBLEM = ".yaml"


@record
class Entry:
    """One problem. `members`, `links`, `discs`, `blocks`: how many of each; `kinds`, `concepts`: codes of the catalogue `index`; `sums`:
    of the route that its lesson follows, `fewest` the fewest there are; `bodies`: free bodies drawn; `minutes`: our estimate
    (lesson.effort). `faults`: diagnostics of a faulty file; `solved` False with none of them: unsound for what it asks."""

    file: str
    title: str = ""
    members: int = 0
    links: int = 0
    discs: int = 0
    blocks: int = 0
    kinds: tuple[str, ...] = ()
    concepts: tuple[str, ...] = ()
    sums: int = 0
    fewest: int = 0
    bodies: int = 0
    minutes: int = 0
    solved: bool = False
    faults: tuple[Diagnostic, ...] = ()


def files_of(folder: str | Path) -> list[Path]:
    """The problem files of a folder, by name. NotADirectoryError when it is none."""
    if not Path(folder).is_dir():
        raise NotADirectoryError(20, "", str(folder))
    return sorted(p for p in Path(folder).iterdir() if p.suffix == PROBLEM and p.is_file())


def index(folder: str | Path) -> tuple[Entry, ...]:
    """Every problem of a folder from easy to hard: by minutes, then sums, then name; those that cannot be solved last."""
    return tuple(sorted(map(entry, files_of(folder)), key=lambda e: (not e.solved, e.minutes, e.sums, e.file)))


def entry(path: Path) -> Entry:
    """The entry of one file."""
    from unpin import api
    from unpin.lesson.build import chosen_route
    from unpin.lesson.concepts import bodies, concepts, kinds_of_connection
    from unpin.lesson.effort import minutes
    from unpin.read import read_file

    reading = read_file(path)
    if not reading.sound:
        return Entry(path.name, faults=tuple(d for d in reading.diagnostics if d.is_error))
    worked = api.solve(reading.problem)
    problem = worked.problem
    kinds = ["block" if p.kind == "box" else p.kind for p in problem.parts]
    count = {kind: kinds.count(kind) for kind in ("member", "disc", "block")}
    made = {"title": problem.title, "members": count["member"], "discs": count["disc"], "blocks": count["block"],
            "links": sum(c.kind == "link" for c in problem.connections), "kinds": kinds_of_connection(worked)}
    if worked.recommended is None or worked.proof is None or not all(a.found for a in worked.answers):
        return Entry(path.name, **made)
    route = chosen_route(worked, "")
    return Entry(path.name, **made, concepts=concepts(worked, route), sums=route.count, fewest=worked.fewest.count,
                 bodies=len(bodies(route)), minutes=minutes(route), solved=True)


def parts_of(e: Entry, language: str = "en") -> str:
    """2 members, 1 link."""
    return ", ".join(say(f"index.{name}", language, count=n) for name in ("members", "links", "discs", "blocks") if (n := getattr(e, name)))


def named(kind: str, codes: Iterable[str], language: str = "en") -> str:
    return ", ".join(say(f"index.{kind}.{code}", language) for code in codes)


def faults_of(e: Entry, language: str = "en") -> list[str]:
    """What is wrong with a file, a line each; empty for one that is solved."""
    from unpin.words.remarks import render

    if e.solved:
        return []
    return [render(d, language) for d in e.faults] or [say("index.unsound", language)]


def as_text(entries: Iterable[Entry], language: str = "en") -> str:
    """Plain text, 80 columns: a line with the numbers, below it what the problem teaches."""
    from textwrap import wrap

    out = [say("index.head", language)]
    for e in entries:
        name = e.file.removesuffix(PROBLEM)
        if e.solved:
            out.append(f"\n{say('index.line', language, file=name, minutes=e.minutes, sums=e.sums, bodies=e.bodies)}")
            about = [e.title, parts_of(e, language), named("kind", e.kinds, language), named("concept", e.concepts, language)]
        else:
            out.append(f"\n{say('index.fault_line', language, file=name)}")
            about = faults_of(e, language)
        out += [line for text in about if text for line in wrap(text, 80, initial_indent="  ", subsequent_indent="    ", break_on_hyphens=False)]
    return "\n".join(out) + "\n"


def as_markdown(entries: Iterable[Entry], language: str = "en", link: str = "{}") -> str:
    """A table. `link`: where a file is found from the page, {} its name."""
    from urllib.parse import quote

    from unpin.render.markdown import escaped

    rows = [_head(language), ["---"] * 7]
    for e in entries:
        file = f"[{escaped(e.file.removesuffix(PROBLEM))}]({link.format(quote(e.file))})"
        cells = _cells(e, language)
        rows.append([f"{file}<br>{escaped(cells[0])}" if cells[0] else file, *map(escaped, cells[1:])])
    return "\n".join("| " + " | ".join(row) + " |" for row in rows) + "\n"


def as_page(entries: Iterable[Entry], language: str = "en") -> str:
    """One self-contained HTML page with the table."""
    from html import escape

    head = "".join(f'<th scope="col">{escape(cell)}</th>' for cell in _head(language))
    rows = "".join(f'<tr><th scope="row">{escape(e.file.removesuffix(PROBLEM))}<br><small>{escape(cells[0])}</small></th>'
                   + "".join(f"<td>{escape(cell)}</td>" for cell in cells[1:]) + "</tr>\n" for e in entries for cells in [_cells(e, language)])
    title = escape(say("index.title", language))
    return (f'<!doctype html>\n<html lang="{language}"><head><meta charset="utf-8"><title>{title}</title>\n<style>{_STYLE}</style></head>\n'
            f"<body><h1>{title}</h1>\n<p>{escape(say('index.rule', language))}</p>\n<table><thead><tr>{head}</tr></thead>\n"
            f"<tbody>{rows}</tbody></table></body></html>\n")


_STYLE = """body{font:16px/1.45 serif;margin:2rem auto;max-width:75rem;padding:0 1rem}table{border-collapse:collapse;width:100%}
th,td{border:1px solid #888;padding:.35rem .5rem;text-align:left;vertical-align:top;font-weight:normal}thead th{font-weight:bold}"""


def _head(language: str) -> list[str]:
    return [say(f"index.column.{name}", language) for name in ("problem", "minutes", "sums", "bodies", "parts", "kinds", "concepts")]


def _cells(e: Entry, language: str) -> list[str]:
    if not e.solved:
        return [e.title, "", "", "", parts_of(e, language), named("kind", e.kinds, language), " ".join(faults_of(e, language))]
    return [e.title, str(e.minutes), str(e.sums), str(e.bodies), parts_of(e, language), named("kind", e.kinds, language),
            named("concept", e.concepts, language)]


def as_data(entries: Iterable[Entry], language: str = "en") -> dict[str, Any]:
    """Plain data; docs/reference/index.schema.json says what each field holds."""
    from unpin.render.json import remarks
    from unpin.words.remarks import hint, sentence

    told = []
    for e in entries:
        faults = remarks(e.faults, lambda d: (sentence(d, language), hint(d, language))) if e.faults else ()
        told.append({**{k: v for k, v in asdict(e).items() if k != "faults"}, "kinds": list(e.kinds), "concepts": list(e.concepts),
                     "diagnostics": list(faults)})
    return {"format": "unpin index", "version": 1, "problems": told}
