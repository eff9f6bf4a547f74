"""The questions of the page that need the engine, each from a record to a reply: what is seen of a text, changes, phrases, sums, files."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from time import perf_counter
from typing import Any

from unpin.base.record import record
from unpin.model.house import PLAIN, House
from unpin.workbench import crossings, directions, editing, hand, lengths, looking, publishing, readings, sayings
from unpin.workbench.folder import Folder, Refused

JSON = "application/json"
LARGEST_SCALE = 1e9
"""pt per metre: a figure of microns fills a screen."""

Question = Callable[[dict[str, Any]], Any]


@record
class Reply:
    """What is sent back: its bytes, what they are, and what more its head says."""

    body: bytes
    kind: str
    more: Mapping[str, str]


def answered(known: Mapping[str, Question], path: str, data: dict[str, Any]) -> Reply:
    """The reply to one question. Refused where it is not granted, or where it is no question (400)."""
    began = perf_counter()
    try:
        made = known[path](data)
        if isinstance(made, tuple):
            return Reply(*made)
        body = json.dumps(made, ensure_ascii=False, allow_nan=False, separators=(",", ":")).encode()
    except (LookupError, TypeError, ValueError, OverflowError) as fault:
        raise Refused("request", 400, what=type(fault).__name__) from fault
    return Reply(body, JSON, {"Server-Timing": f"engine;dur={1000 * (perf_counter() - began):.1f}"})


def questions(folder: Folder, language: str = "en") -> dict[str, Question]:
    """Each question by its path. A picture to lie beneath comes in the record as `picture`, checked already."""

    def wanted(d: dict[str, Any]) -> publishing.Wanted:
        return publishing.wanted(d, folder, language, d.get("picture"))

    def look(d: dict[str, Any]) -> dict[str, Any]:
        scale = float(d.get("scale") or 0)
        if not 0 <= scale <= LARGEST_SCALE:
            raise ValueError("scale")
        seen = looking.look(written(d), str(d.get("name", "")), scale, tuple(d.get("want") or ("figure",)), language, _style(folder), int(d.get("freedom") or 0))
        return {**seen, "since": d.get("since")}

    def edit(d: dict[str, Any]) -> dict[str, Any]:
        """The acts done; with `look`, what is then to be seen, in the same reply."""
        made = editing.edited(written(d), d["acts"], language)
        return {**made, "look": look({**d["look"], "text": made["text"]})} if d.get("look") else made

    def completed(d: dict[str, Any]) -> dict[str, Any]:
        options = readings.completions(written(d), str(d["section"]), str(d["phrase"]), int(d["at"]), language)
        return {"ok": True, "options": options, "directions": _directions(d, language)}

    def published(d: dict[str, Any]) -> Any:
        w = wanted(d)
        if d.get("save"):
            return {"ok": True, "file": publishing.saved(w, folder)}
        if d.get("page"):
            body, pages = publishing.page(w, int(d["page"]))
            return body, publishing.TYPES[".svg"], {"X-Pages": str(pages), "Content-Security-Policy": _framed(".svg")}
        body, kind = publishing.preview(w)
        return body, kind, {"Content-Security-Policy": _framed(w.ending), "X-Frame-Options": "SAMEORIGIN"}

    def taught(d: dict[str, Any]) -> Any:
        body, kind = publishing.preview(wanted({**d, "ending": ".html"}))
        return body, kind, {"Content-Security-Policy": _framed(".html")}

    return {
        "/look": look,
        "/edit": edit,
        "/sayings": lambda d: {"ok": True, "sayings": _pins(d) + sayings.sayings(written(d), d["touched"]), "directions": _directions(d, language)},
        "/length": lambda d: lengths.asked(written(d), str(d["id"])),
        "/read": lambda d: {"ok": True, **readings.read(written(d), str(d["line"]), d.get("touched") or (), language)},
        "/complete": completed,
        "/body": lambda d: hand.isolated(written(d), d["bodies"], d.get("sums") or (), language, _style(folder)),
        "/hand": lambda d: hand.hand(written(d), d["sums"], language, _style(folder)),
        "/publish": published,
        "/teach": taught,
    }


def _directions(d: dict[str, Any], language: str) -> list[dict[str, Any]]:
    """Directions that the one thing that is touched may have instead of its own."""
    touched = d.get("touched") or ()
    return directions.directions(written(d), str(touched[0]), language, str(d.get("phrase") or "")) if len(touched) == 1 else []


def _pins(d: dict[str, Any]) -> list[dict[str, Any]]:
    """What would pin members that cross: those that are touched, or lie beneath the hand at a place."""
    at = [float(c) for c in d["at"]] if d.get("at") else None
    return crossings.pins(written(d), d["touched"], d.get("under") or (), at, float(d.get("near") or 0))


def _style(folder: Folder) -> House:
    """The house style of the folder; while it has faults the figure stays up without it."""
    try:
        return publishing.house_of(folder)
    except Refused:
        return PLAIN


def written(d: dict[str, Any]) -> str:
    """The text of a record, which must be one."""
    text = d["text"]
    if not isinstance(text, str):
        raise TypeError
    return text


def _framed(ending: str) -> str:
    """What a published page may do when it is shown here: what its own policy allows, in a frame of ours. Its scripts and styles are
    named there by their hash."""
    if ending == ".html":
        return "frame-ancestors 'self'; object-src 'none'; connect-src 'none'; form-action 'none'; base-uri 'none'"
    return "default-src 'none'; style-src 'unsafe-inline'; font-src data:; frame-ancestors 'self'"
