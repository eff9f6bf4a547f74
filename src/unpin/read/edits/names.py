"""A name changed wherever it stands: where it is given and in every phrase that means it."""

from __future__ import annotations

import re

from unpin.base.diagnostic import Diagnostic
from unpin.exact.expression import FUNCTIONS
from unpin.read.edits.edit import Edit, apply
from unpin.read.edits.entries import Unfit
from unpin.read.edits.places import Page, Spot, page
from unpin.read.edits.revision import Revision, finish, refusal, revising
from unpin.read.pieces import KEYWORDS, is_name
from unpin.read.quantities import SINGLE
from unpin.read.reader import Reading, read_text
from unpin.read.references import Reference
from unpin.read.report import nearest


@revising
def rename(text: str, old: str, new: str, kind: str = "", faulty: bool = False) -> Revision:
    """Another name for a point, member, link, disc, block, cord or letter. `kind`: the section that gives the name, needed where a
    letter and something else share it (not for a cord and the letter of its tension, which are renamed together). Names made of it (a
    link B-D in a list is called BD) follow. What is left alone: the title, the text for the student and remarks; where the old name
    stands in the first two, a note says so."""
    p = page(text)
    kind = _kind(p, old, kind)
    if not is_name(new):
        raise refusal("read.name", (kind, old), "hint.reserved" if new in KEYWORDS else "hint.name", name=new[:40])
    if kind == "letters" and (new in SINGLE and new != "m" or new in FUNCTIONS):
        raise refusal("read.letter_unit", (kind, old), "hint.letter_unit", name=new)
    kinds = _one_name(p, kind, old)
    mine = [r for k in kinds for r in p.known(k, old)]
    if any(r.made for r in mine):
        raise refusal("edit.named_by_points", (kind, old), "edit.cure.named_by_points", name=old)
    taken = [r for r in p.reading.references if r.declares and r.name == new and (len(kinds) > 1 or (r.kind == "letters") == (kind == "letters"))]
    if taken and new != old:
        raise refusal("read.name_taken", (kind, old), place=mine[0].scalar.place, name=new, line=taken[0].scalar.place.line)
    edits = _edits(p, [(r, new) for r in mine])
    made = _made(p, edits)
    edits |= _edits(p, [(r, name) for (k, was), name in made.items() for r in p.known(k, was) if not r.declares])
    names = {(k, old): new for k in kinds} | made
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
    if len(kinds) > 1 and set(kinds) != set(_CORD_AND_LETTER):
        raise refusal("edit.two_kinds", hint="edit.cure.two_kinds", name=old, kinds=tuple(kinds))
    return kinds[0]


_CORD_AND_LETTER = ("cords", "letters")
"""A cord is called by the letter of its tension; where that letter has a value the two are one name."""


def _one_name(p: Page, kind: str, old: str) -> tuple[str, ...]:
    both = kind in _CORD_AND_LETTER and set(_CORD_AND_LETTER) <= set(p.kinds(old))
    return _CORD_AND_LETTER if both else (kind,)


def _edits(p: Page, renamed: list[tuple[Reference, str]]) -> set[Edit]:
    out = set()
    for reference, name in renamed:
        if (edit := p.renamed(reference, name)) is None:
            raise Unfit
        out.add(edit)
    return out


def _made(p: Page, edits: set[Edit]) -> dict[tuple[str, str], str]:
    """The names made of others that some edits change: what they are called afterwards."""
    if not any(r.made for r in p.reading.references):
        return {}
    after = read_text(apply(p.text, edits))
    old, new = ([r for r in q.references if r.made] for q in (p.reading, after))
    if len(old) != len(new):
        return {}
    return {(a.kind, a.name): b.name for a, b in zip(old, new) if a.name != b.name}


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
