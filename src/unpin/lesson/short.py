"""The short form of a lesson, for groups that know the way: the plan, each body with its diagram, sums and results, the answers, and
the check in one line."""

from __future__ import annotations

from dataclasses import replace

from unpin.lesson.nodes import Block, Boxed, Drawing, Lesson, Node, Paragraph, Section, Table, Text, Working, walk

_LINES = ("write", "result")


def short(lesson: Lesson) -> Lesson:
    """The same lesson in short. One without a solution comes back as it is: its reasons are all there is."""
    if not any(s.kind == "check" for s in lesson.sections):
        return lesson
    kept = [_section(s) for s in lesson.sections if s.kind in ("problem", "plan", "body", "found", "answers", "check")]
    return replace(lesson, sections=tuple(s for s in kept if s.children))


def _section(section: Section) -> Section:
    nodes = list(walk(section.children))
    if section.kind == "problem":
        children = [n for n in section.children if isinstance(n, Drawing) or isinstance(n, Block) and n.name == "find"]
    elif section.kind == "plan":
        children = [n for n in section.children if isinstance(n, Block)] + [n for n in section.children if isinstance(n, Paragraph)][:1]
    elif section.kind == "answers":
        children = [n for n in nodes if isinstance(n, Boxed | Table)]
    elif section.kind == "check":
        children = [_checked(n) for n in nodes if isinstance(n, Paragraph) and n.text.code == "check.intro"]
        children = children or [Paragraph(Text("short.confirmed"))]
    else:
        return in_short(section)
    return replace(section, children=tuple(children))


def in_short(section: Section) -> Section:
    """The chapter of a body: its diagram, each sum as it is written, and what it gives."""
    return replace(section, children=tuple(made for n in walk(section.children) for made in _worked(n)))


def _worked(node: Node) -> list[Node]:
    if isinstance(node, Drawing):
        return [node]
    if isinstance(node, Working):
        lines = tuple(line for line in node.lines if line.name in _LINES)
        # Results that stand by themselves need no header.
        header = node.header if any(line.name == "write" for line in lines) else None
        return [replace(node, header=header, lines=lines)] if lines else []
    return []


def _checked(intro: Paragraph) -> Paragraph:
    return Paragraph(Text("short.check", dict(intro.text.arguments)))
