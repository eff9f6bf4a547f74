"""All bars of a truss at once: a table with each force, whether it pulls or pushes, and what shows a bar without a force."""

from __future__ import annotations

from unpin.base.units import FORCE
from unpin.lesson import phrases
from unpin.lesson.formula import Relation
from unpin.lesson.isolate import ends, member_kind
from unpin.lesson.nodes import Table, Text
from unpin.lesson.sheet import Sheet, symbol
from unpin.lesson.statement import own_name
from unpin.model.action import Unknown
from unpin.route.worked import Worked

_MARKED = ("tension", "compression", "zero")

FROM = 4
"""Fewer bars than that are answers by themselves."""


def tabled(worked: Worked) -> tuple[Unknown, ...]:
    """The links and two-force members that a table shows, in the order of the file: all there are, when all are asked for; else none."""
    bars = tuple(u for u in worked.structure.unknowns if u.axial and u.drives == "connection")
    asked = senses(worked)
    return bars if len(bars) >= FROM and all(u.id in asked and u.id in (worked.values or {}) for u in bars) else ()


def senses(worked: Worked) -> dict[str, str]:
    """The true sense of every force in a link that is asked for, as a code, by its unknown."""
    return {c.unknown: c.sense for a in worked.answers if a.found and a.asked.kind in ("everything", "link") for c in a.components if c.unknown}


def table(worked: Worked, sheet: Sheet, id: str = "bars") -> tuple[Table, ...]:
    """The table of `tabled`, or nothing. Tension is positive; a row says it in words besides."""
    bars = tabled(worked)
    if not bars:
        return ()
    seen = {u: insight for insight in worked.structure.zero for u in insight.finds}
    rows, ways = [], senses(worked)
    for u in bars:
        if u.id in seen:
            sense = Text(f"bars.{seen[u.id].rule}", {"point": phrases.letter_like(seen[u.id].subject)})
        else:
            sense = Text(f"bars.{ways[u.id]}" if ways[u.id] in _MARKED else f"sense.{ways[u.id]}")
        rows.append((_name(u, worked), Relation(symbol(u.symbol), sheet.result(worked.values[u.id], FORCE, u.id)), sense))
    heads = (Text("bars.bar"), Text("bars.force"), Text("bars.sense"))
    return (Table(id, Text("bars.caption", {"count": len(bars)}), heads, tuple(rows)),)


def _name(bar: Unknown, worked: Worked) -> Text:
    """A link by its ends, and by the name its author gave it; a member by its name."""
    if member_kind(worked.structure, bar.source) == "member":
        return Text("bars.member", {"name": bar.source})
    a, b = (phrases.letter_like(p) for p in ends(worked.structure, bar.id))
    link = next((c for c in worked.problem.connections if c.name == bar.source), None)
    if link is not None and own_name(link):
        return Text("bars.named", {"name": link.name, "a": a, "b": b})
    return Text("member.ends", {"a": a, "b": b})
