"""Joint after joint of a large truss, in short: nobody reads the same reasons fifty times."""

from __future__ import annotations

from dataclasses import replace

from unpin.lesson.nodes import Block, Node, Paragraph, Section, Text, Working, walk
from unpin.lesson.short import in_short

FROM = 20
"""With more joints than that all but the first few are told in short."""
IN_FULL = 3


def shortened(sections: list[Section]) -> list[Section]:
    """Chapters of bodies, all but the first joints in short; as they are where joints are few."""
    joints = [k for k, s in enumerate(sections) if _is_joint(s)]
    if len(joints) <= FROM:
        return sections
    told = set(joints[IN_FULL:])
    out = [in_short(s) if k in told else s for k, s in enumerate(sections)]
    first = joints[IN_FULL]
    # The diagram stays the first of its chapter, the remark stands before the sums.
    children: tuple[Node, ...] = (Paragraph(Text("joints.short")), *out[first].children)
    out[first] = replace(out[first], children=children)
    return out


def _is_joint(section: Section) -> bool:
    """One pin by itself: its diagram and force sums of its own, found one at a time or together."""
    works = [n for n in walk(section.children) if isinstance(n, Working) and n.header is not None]
    counts = [n for n in section.children if isinstance(n, Block) and n.name == "count"]
    return len(counts) == 1 and bool(works) and all(w.body.startswith("pin ") for w in works)
