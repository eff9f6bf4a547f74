"""The directions in which what is touched may point, where its phrase says one: the same phrase with each of the plain ones."""

from __future__ import annotations

from typing import Any

from unpin.read.edits import change
from unpin.read.forms import FORMS
from unpin.read.schema import BY_NAME
from unpin.words.sentences import say
from unpin.workbench.editing import edited
from unpin.workbench.folder import Refused
from unpin.workbench.turning import turned

DIRECTIONS = (("down", ""), ("up", ""), ("right", ""), ("left", ""), ("at 30 deg", "angle"), ("right 3 down 4", "slope"))
"""Directions that are offered, plainest first, and the word for those that are no word themselves."""


def named(way: str, word: str, language: str) -> str:
    """What a direction is called where it is offered."""
    return say(f"desk.way.{word}", language) if word else way


def directions(text: str, id: str, language: str = "en", phrase: str = "") -> list[dict[str, Any]]:
    """For each direction the whole phrase of a thing with it, and where it stands in that; none where the phrase says no direction.
    `phrase`: one that is typed and not yet meant, instead of its own."""
    from unpin.workbench.looking import things_of

    thing = next((t for t in things_of(text) if t["id"] == id), None)
    kind = BY_NAME[thing["section"]].phrase if thing and thing["section"] in BY_NAME else ""
    if not kind or kind == "point":
        return []
    if phrase and phrase != thing["phrase"]:
        typed = change(text, thing["section"], thing["key"], phrase)
        return directions(typed.text, id, language) if typed.made else []
    out = []
    for way, word in DIRECTIONS:
        made = _with(text, thing, kind, way)
        if made and made != thing["phrase"]:
            start = made.index(way)
            out.append({"phrase": made, "means": named(way, word, language), "span": [start, start + len(way)]})
    return out


def _with(text: str, thing: dict[str, Any], kind: str, way: str) -> str:
    """The phrase of a thing with that direction, in the place of its own or, where a form has one after it, behind it; "" where none can be."""
    if thing["what"] == "load":
        try:
            after = edited(text, [{"do": "turn", "id": thing["id"], "way": way}])["text"]
        except Refused:
            return ""
        from unpin.workbench.looking import things_of

        return next((t["phrase"] for t in things_of(after) if t["id"] == thing["id"]), "")
    longer = (f.form.replace("DIRECTION", way) for f in FORMS if f.kind == kind and f.form.startswith(f"{thing['phrase']} ") and f.form.endswith(" DIRECTION"))
    return next((p for p in (*turned(thing["phrase"], way, kind), *longer) if change(text, thing["section"], thing["key"], p).made), "")
