"""A name changed wherever it stands: where it is given and in every phrase that means it."""

from __future__ import annotations

import re

from unpin.base.diagnostic import Diagnostic
from unpin.read.edits.edit import Edit, apply
from unpin.read.edits.entries import Unfit
from unpin.read.edits.layout import Unreadable
from unpin.read.edits.places import Page, Spot, page
from unpin.read.edits.revision import Revision, finish, refusal, revising
from unpin.read.pieces import KEYWORDS, is_name
from unpin.read.reader import Reading
from unpin.read.references import Reference
from unpin.read.report import nearest


@revising
def rename(text: str, old: str, new: str, kind: str = "", faulty: bool = False) -> Revision:
    """Another name for a point, member, link, disc, block, cord or letter. `kind`: the section that gives the name, needed where a
    letter and something else share it. Names made of it (a link B-D in a list is called BD) follow. What is left alone: the title,
    the text for the student and remarks; where the old name stands in the first two, a note says so."""
    p = page(text)
    kind = _kind(p, old, kind)
    if not is_name(new):
        raise refusal("read.name", (kind, old), "hint.reserved" if new in KEYWORDS else "hint.name", name=new[:40])
    mine = p.known(kind, old)
    if any(r.made for r in mine):
        raise refusal("edit.named_by_points", (kind, old), "edit.cure.named_by_points", name=old)
    taken = [r for r in p.reading.references if r.declares and r.name == new and (r.kind == "letters") == (kind == "letters")]
    if taken and new != old:
        raise refusal("read.name_taken", (kind, old), place=mine[0].scalar.place, name=new, line=taken[0].scalar.place.line)
    edits = _edits(p, [(r, new) for r in mine])
    edits |= _followers(p, edits)
    names = {(kind, old): new} | {(r.kind, r.name): r2.name for r, r2 in _made(p, edits) if r.name != r2.name}
    revision = finish(p, edits, None, faulty=faulty, notes=_still_said(p, old))
    if _meanings(revision.reading, {}) != _meanings(p.reading, names):
        raise refusal("edit.other_meaning", (kind, old), name=new[:40])
    return revision


def _kind(p: Page, old: str, kind: str) -> str:
    kinds = [k for k in p.kinds(old) if kind in ("", k)]
    if not kinds:
        known = {r.name for r in p.reading.references if r.declares and kind in ("", r.kind)}
        near = nearest(old, sorted(known))
        raise refusal("edit.no_name", hint="hint.nearest" if near else "", name=old[:40], nearest=near)
    if len(kinds) > 1:
        raise refusal("edit.two_kinds", hint="edit.cure.two_kinds", name=old, kinds=tuple(kinds))
    return kinds[0]


def _edits(p: Page, renamed: list[tuple[Reference, str]]) -> set[Edit]:
    out = set()
    for reference, name in renamed:
        if (edit := p.renamed(reference, name)) is None:
            raise Unfit
        out.add(edit)
    return out


def _followers(p: Page, edits: set[Edit]) -> set[Edit]:
    """The edits of phrases that mean something by a name made of the one that changes."""
    renamed = []
    for before, after in _made(p, edits):
        if before.name != after.name:
            renamed += [(r, after.name) for r in p.known(before.kind, before.name) if not r.declares]
    return _edits(p, renamed)


def _made(p: Page, edits: set[Edit]) -> list[tuple[Reference, Reference]]:
    """Each name that is made of others, as it was and as it is after some edits."""
    try:
        after = page(apply(p.text, edits))
    except Unreadable:
        raise Unfit from None
    old, new = ([r for r in q.reading.references if r.made] for q in (p, after))
    return list(zip(old, new)) if len(old) == len(new) else []


def _meanings(reading: Reading, names: dict[tuple[str, str], str]) -> list[tuple]:
    """What every name means, in the order of reading, with some names put for others."""
    return [(r.kind, names.get((r.kind, r.name), r.name), r.declares, r.made) for r in reading.references]


def _still_said(p: Page, old: str) -> tuple[Diagnostic, ...]:
    word = re.compile(rf"(?<!\w){re.escape(old)}(?![\w'])")
    out = []
    for section in ("title", "text"):
        s = p.section(section)
        if s >= 0 and word.search(p.top.entries[s].value.text):
            place = p.told(Spot(s, -1)).place
            out.append(Diagnostic("note", "edit.still_said", place, section, {"name": old}))
    return tuple(out)
