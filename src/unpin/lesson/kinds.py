"""What a part is called where it is spoken of: member arm, disc pulley, block sack. One pass over a finished tree, so that the
phrases need not carry the problem about."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, replace
from typing import TypeVar

from unpin.lesson import nodes
from unpin.lesson.formula import letter
from unpin.lesson.isolate import joints
from unpin.lesson.nodes import Listing, Text
from unpin.model.problem import Problem

Tree = TypeVar("Tree")


def with_kinds(tree: Tree, problem: Problem) -> Tree:
    """The same node, section or lesson with every disc and block called what it is."""
    kinds = {p.name: "block" if p.kind == "box" else p.kind for p in problem.parts if p.kind != "member"}
    kinds.update({letter(name): "joint" for name in joints(problem)})
    return _mended(tree, kinds) if kinds else tree


def _code(text: Text, kinds: Mapping) -> str:
    if text.code == "thing.member":
        kind = kinds.get(text.arguments.get("name"))
    elif text.code == "thing.pin":
        kind = kinds.get(text.arguments.get("point"))
    elif text.code == "thing.pins_together":
        return "thing.joints_together" if all(p in kinds for p in text.arguments["points"].items) else text.code
    else:
        return text.code
    return f"thing.{kind}" if kind else text.code


def _group(text: Text, kinds: Mapping) -> Text:
    """Several parts together: one with its discs, or members, discs and blocks each called what it is."""
    names = text.arguments["members"].items
    discs = tuple(n for n in names if kinds.get(n) == "disc")
    rest = [n for n in names if n not in discs]
    if all(kinds.get(n, "member") == "member" for n in names):
        return text
    if len(rest) == 1 and discs and kinds.get(rest[0], "member") == "member":
        return Text("thing.with_discs", {"body": Text("thing.member", {"name": rest[0]}),
                                         "discs": Listing(discs), "count": len(discs)})
    return Text("thing.things", {"things": Listing(tuple(Text(f"thing.{kinds.get(n, 'member')}", {"name": n}) for n in names))})


def _mended(item, kinds: Mapping):
    if isinstance(item, tuple):
        return tuple(_mended(i, kinds) for i in item)
    if isinstance(item, Text) and item.code == "thing.group":
        return _group(item, kinds)
    if isinstance(item, Text):
        return Text(_code(item, kinds), {k: _mended(v, kinds) for k, v in item.arguments.items()})
    if type(item).__module__ != nodes.__name__:
        return item
    return replace(item, **{f.name: _mended(getattr(item, f.name), kinds) for f in fields(item) if f.name != "figure"})
