"""Everything the command line writes, from the page: a preview first, then a file beside the problem."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

from unpin import publish
from unpin.base.record import record
from unpin.lesson.nodes import Lesson
from unpin.model.beneath import Beneath
from unpin.model.house import PLAIN, House
from unpin.read.reader import read_text
from unpin.words.sentences import languages
from unpin.workbench.folder import Folder, Refused

TYPES = {".html": "text/html; charset=utf-8", ".pdf": "application/pdf", ".md": "text/plain; charset=utf-8", ".tex": "text/plain; charset=utf-8",
         ".svg": "image/svg+xml", ".png": "image/png"}
FIGURES = (".svg", ".png")
SEEN = (".html", *FIGURES)
"""Forms that are read on a screen, in colours of their own."""
WHICH = ("problem", "apart", "body", "final", "motion")
WHOLE = "whole"
COLOURS = ("", "reader", "light", "dark")


@record
class Wanted:
    """What is to be published of a text: see `unpin handout` and `unpin draw`. `language`, `colours`: "" for those of the house style."""

    text: str
    name: str
    ending: str
    which: str = "problem"
    body: tuple[str, ...] = ()
    short: bool = False
    fade: int = 0
    route: str = ""
    figures: int = 0
    house: House = PLAIN
    language: str = ""
    beneath: Beneath | None = None
    colours: str = ""


def wanted(data: dict[str, Any], folder: Folder | None = None, language: str = "", beneath: Beneath | None = None) -> Wanted:
    """A request as a value, in the house style that lies in the `folder`, if any, and else in the `language` of the desk, on the picture
    that was asked for. Where the colours are the reader's, those of the `reader` who looks at it in the desk. Refused where it asks for what
    there is not, or where the house style has faults."""
    house = house_of(folder) if folder else PLAIN
    if spoken := str(data.get("language") or ""):
        house = replace(house, language=spoken)
    made = Wanted(str(data["text"]), str(data.get("name") or "problem.yaml"), str(data.get("ending", ".html")), str(data.get("which") or "problem"),
                  tuple(map(str, data.get("body") or ())), bool(data.get("short")), int(data.get("fade") or 0), str(data.get("route") or ""),
                  int(data.get("figures") or 0), house, language, beneath, str(data.get("colours") or ""))
    looks = str(data.get("reader") or "")
    good = made.ending in TYPES and made.which in WHICH and 0 <= made.fade <= 6 and made.route in ("", "recommended", "fewest", "own")
    if not good or made.figures not in (0, *range(2, 9)) or made.short and made.fade or not {made.colours, looks} <= set(COLOURS) or spoken not in ("", *languages()):
        raise Refused("output", 400)
    chosen = made.colours or house.colours
    return replace(made, house=replace(house, colours=looks if looks and chosen == "reader" else chosen))


def house_of(folder: Folder) -> House:
    """The house style that lies in a folder. Refused where it has faults."""
    from unpin.houses import style_for

    found, remarks = style_for(folder.path / "problem.yaml", "", folder.path)
    if any(d.is_error for d in remarks):
        raise Refused("style", 422)
    return found


def lesson(w: Wanted) -> Lesson:
    from unpin import api

    worked = _worked(w)
    try:
        return api.explain(worked, w.figures, w.route, True, w.short, w.fade)
    except ValueError as fault:
        raise Refused("output", 422) from fault


def _worked(w: Wanted):
    from unpin import api
    from unpin.houses import put_on

    reading = read_text(w.text, w.name)
    if not reading.sound:
        raise Refused("faulty", 422)
    problem = put_on(reading.problem, w.house, "" if w.house.language else w.language)[0]
    return api.solve(replace(problem, beneath=w.beneath))


def preview(w: Wanted) -> tuple[bytes, str]:
    """The bytes of the file, and what they are."""
    if w.ending in FIGURES:
        return _picture(w), TYPES[w.ending]
    made, _ = publish.made(lesson(w), w.ending, publish.folder_of(w.name))
    return made, TYPES[w.ending]


def page(w: Wanted, number: int) -> tuple[bytes, int]:
    """One page of the PDF as SVG, counted from 1, and how many there are."""
    from unpin.render import pdf

    found = pdf.in_lines(lesson(w))
    if not 1 <= number <= len(found):
        raise Refused("output", 404)
    return found[number - 1], len(found)


def _picture(w: Wanted) -> bytes:
    from unpin.lesson.figures import Studio
    from unpin.lesson.sheet import sheet_for
    from unpin.render import picture

    worked = _worked(w)
    studio = Studio(worked, sheet_for(worked.problem, worked.values or {}, w.figures))
    names = tuple(b.name for b in worked.structure.bodies)
    body = names if w.body == (WHOLE,) else w.body
    if w.which == "body" and (not body or not set(body) <= set(names)):
        raise Refused("body", 422)
    try:
        nodes = studio.named(w.which, body)
    except ValueError as apart:
        raise Refused("body", 422) from apart
    if not nodes:
        raise Refused("not_drawn", 422)
    return picture.made(nodes[0], w.ending, studio.sheet.language, worked.problem.house.colours)


def saved(w: Wanted, folder: Folder) -> str:
    """Write the file beside the problem, under its name, with what sets it apart from another of its form; the name it has."""
    from unpin.output import save

    folder.place(w.name)
    stem = Path(w.name).stem + {0: "", **{n: f"-faded-{n}" for n in range(1, 7)}}[w.fade] + ("-short" if w.short else "")
    if w.ending in FIGURES:
        stem += "" if w.which == "problem" else f"-{w.which}" + "".join(f"-{b.replace(' ', '-')}" for b in w.body)
    stem += f"-{w.house.language}" if w.house.language not in ("", w.language) else ""
    stem += f"-{w.house.colours}" if w.ending in SEEN and w.house.colours != "reader" else ""
    target = folder.output(f"{stem}{w.ending}", tuple(TYPES))
    try:
        if w.ending in FIGURES:
            save(str(target), _picture(w))
        else:
            publish.publish(lesson(w), str(target))
    except OSError as fault:
        raise Refused("not_saved", 507, reason=fault.strerror or str(fault)) from fault
    return target.name
