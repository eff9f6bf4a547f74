"""Other names for the things of a text, and what follows from them."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import count
from typing import Any

from unpin.read.edits import Revision, rename
from unpin.read.reader import read_text


def names_in(text: str) -> set[str]:
    """Every name that stands for something, or is used, in a text."""
    return {r.name for r in read_text(text).references}


def renamed(text: str, act: Mapping[str, Any]) -> tuple[Revision, list[str]]:
    """Another name for a thing by its `id` or `name`: `to`; with `swap` the point that has that name gets this one's. The id that it has then."""
    old = str(act["id"]).partition(" ")[2] if "id" in act else str(act["name"])
    to = str(act["to"])
    made = [f"{str(act.get('id', '')).partition(' ')[0]} {to}"]
    if act.get("swap"):
        between = next(n for n in (f"P{k}" for k in count(1)) if n not in names_in(text))
        for was, becomes in ((to, between), (old, to), (between, old)):
            revision = rename(text, was, becomes, "points", faulty=True)
            if not revision.made:
                return revision, []
            revision = _followed(text, revision)
            text = revision.text
        return revision, made
    revision = rename(text, old, to, faulty=True)
    if revision.made:
        revision = _followed(text, revision)
    return revision, made


def _followed(text: str, revision: Revision) -> Revision:
    """A member that the desk has called by its points, all or the first and the last, keeps to that when one of them is renamed."""
    before, after = (read_text(t).problem for t in (text, revision.text))
    if before is None or after is None:
        return revision
    now = {p.name: p.points for p in after.parts}
    for part in before.parts:
        ends = next((k for k in (slice(None), slice(None, None, max(len(part.points) - 1, 1))) if part.name == "".join(part.points[k])), None)
        name = "".join(now.get(part.name, ())[ends]) if ends is not None else part.name
        if name not in (part.name, "") and name not in names_in(revision.text):
            more = rename(revision.text, part.name, name, "members", faulty=True)
            revision = more if more.made else revision
    return revision
