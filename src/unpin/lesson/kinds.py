"""What a part is called where it is spoken of: member arm, disc pulley, block sack. One pass over a finished tree, so that the
phrases need not carry the problem about."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, replace
from typing import TypeVar

from unpin.lesson import nodes
from unpin.lesson.nodes import Text
from unpin.model.problem import Problem

Tree = TypeVar("Tree")


def with_kinds(tree: Tree, problem: Problem) -> Tree:
    """The same node, section or lesson with every disc and block called what it is."""
    kinds = {p.name: p.kind for p in problem.parts if p.kind != "member"}
    return _mended(tree, kinds) if kinds else tree


def _mended(item, kinds: Mapping[str, str]):
    if isinstance(item, tuple):
        return tuple(_mended(i, kinds) for i in item)
    if isinstance(item, Text):
        kind = kinds.get(item.arguments.get("name")) if item.code == "thing.member" else None
        return Text(f"thing.{kind}" if kind else item.code, {k: _mended(v, kinds) for k, v in item.arguments.items()})
    if type(item).__module__ != nodes.__name__:
        return item
    return replace(item, **{f.name: _mended(getattr(item, f.name), kinds) for f in fields(item) if f.name != "figure"})
