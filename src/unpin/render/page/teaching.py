"""The teaching view of a page: the lesson told an idea at a time. Here are its frame and the list of its ideas; what an idea shows is taken
from the page itself, where each node has its number, so nothing stands in the page twice."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from html import escape

from unpin.base.record import record
from unpin.lesson.board import LEAD, Told
from unpin.lesson.ideas import told
from unpin.lesson.nodes import Bullets, Lesson, Text, Working, walk
from unpin.lesson.stations import STATIONS
from unpin.words.sentences import catalogue, say

_KEYS = ("back", "next", "ask", "pen", "erase", "clear", "second", "leave")


@record
class View:
    """The ideas; `marks`: number by `id` of what they show; `own`: texts that stand nowhere else on the page."""

    told: Told
    marks: Mapping[int, int]
    own: tuple[Text, ...]

    @property
    def lead(self) -> str:
        """The attribute of the author's paragraphs."""
        return ' data-i="0"' if any(LEAD in i.shows for i in self.told.ideas) else ""


def view(lesson: Lesson) -> View:
    """The view of a lesson. Numbers count from 1 in the order in which things are first shown; 0 is the problem in its author's words."""
    found = told(lesson)
    standing = {id(x) for x in _standing(lesson)}
    marks: dict[int, int] = {}
    own: dict[Text, int] = {}
    for idea in found.ideas:
        for shown in (*idea.shows, *idea.aside, *(t for t in (idea.question, idea.place) if t)):
            if shown != LEAD and id(shown) not in marks:
                number = len(marks) + 1
                if isinstance(shown, Text) and id(shown) not in standing:
                    # The same question is asked of many bodies.
                    number = own.setdefault(shown, number)
                marks[id(shown)] = number
    return View(found, marks, tuple(own))


def _standing(lesson: Lesson):
    """Everything on the page that can have a number."""
    for section in lesson.sections:
        for node in walk(section.children):
            yield node
            if isinstance(node, Bullets):
                yield from node.items
            elif isinstance(node, Working):
                yield from (node.header, *node.lines)


def opener(language: str) -> str:
    """The button in the head of the page; it shows itself only where a script can answer it."""
    return f'<p class="teach-open"><button type="button" id="teach-open" hidden>{_word("open", language)}</button></p>\n'


def stage(view: View, phrase: Callable[[Text], str], title: str, language: str) -> str:
    """The frame, hidden until it is opened; the window with what to say; the list of ideas. `phrase` writes a text, `title` is escaped."""
    own = "".join(f'<li data-i="{view.marks[id(t)]}">{phrase(t)}</li>' for t in view.own)
    stations = [name for name in STATIONS if any(i.station == name for i in view.told.ideas)]
    data = json.dumps({**_ideas(view, stations), "end": view.told.end, "words": _words(view, language)}, ensure_ascii=False, separators=(",", ":"))
    way = "".join(f"<li><span>{_word(f'station.{name}', language)}</span></li>" for name in stations)
    keys = "".join(_key(name, language) for name in _KEYS)
    return f"""<div id="teach" role="dialog" aria-modal="true" aria-label="{_word("name", language)}" tabindex="-1" hidden>
<div class="t-head"><p class="t-title">{title}</p><select class="t-go" aria-label="{_word("go", language)}"></select><p class="t-step"></p><p class="t-found"></p></div>
<ol class="t-way" aria-label="{_word("way", language)}">{way}</ol>
<div class="t-board"><div class="t-drawn"></div><div class="t-said"></div>
<svg class="t-ink" viewBox="0 0 1000 1000" preserveAspectRatio="none" aria-hidden="true"></svg></div>
<div class="t-keys" role="toolbar" aria-label="{_word("keys", language)}">{keys}</div>
<p class="t-shut" role="status"></p>
<div class="t-live" aria-live="polite"></div>
</div>
<div id="notes" role="main" hidden>
<h1>{title}</h1>
<div class="n-head"><p class="n-clock" role="timer">00:00</p><button class="n-run">{_word("start", language)}</button>
<button class="n-zero">{_word("zero", language)}</button><p class="n-step"></p><p class="n-found"></p></div>
<div class="n-pane" tabindex="0"><h2>{_word("say", language)}</h2><p class="n-cue"></p><div class="n-now"></div></div>
<div class="n-foot"><h2>{_word("then", language)}</h2><div class="n-then"></div>
<div class="t-keys n-keys"></div></div>
</div>
<ol id="teach-own" hidden>{own}</ol>
<div id="teach-told" hidden>{escape(data, quote=False)}</div>
"""


def _key(name: str, language: str) -> str:
    return f'<button data-do="{name}" title="{_word(f"{name}_key", language)}">{_word(name, language)}</button>'


def _word(name: str, language: str) -> str:
    return escape(say(f"lesson.teach.{name}", language))


def _words(view: View, language: str) -> dict[str, object]:
    """What the script fills in: what each kind of idea is and what to say to it, and a few labels."""
    all_words = catalogue("lesson", language)
    kinds = {*(i.kind for i in view.told.ideas), "write", "asking"}
    groups = {group: {k: all_words[f"teach.{group}.{k}"] for k in sorted(kinds) if f"teach.{group}.{k}" in all_words} for group in ("now", "cue")}
    return {**groups, **{k: all_words[f"teach.{k}"] for k in ("found", "next", "more", "start", "pause", "end", "asked", "shut")}}


_STAYS = ("s", "o", "w", "f")
"""What is that of the idea before where an idea does not say it; with its kind."""


def _ideas(view: View, stations: list[str]) -> dict[str, object]:
    """`ids`: of arrows, which ideas name by their place in it. `scenes`: chapter and figure of each, where they are not those of the
    scene before; - for no figure. `ideas`: of each its kind and then numbers after a letter: scene, station (o), the sum in hand (w),
    unknowns found (f), pieces (p), arrows (a), lit (l), terms (t), question (q), aside (n). What is empty or stays is left out, and pieces
    that are just the next one: things are numbered as they are first shown."""
    ids = list(dict.fromkeys(a for i in view.told.ideas for a in (*i.arrows, *i.lit)))
    scenes, lines, chapter, drawn = [], [], "", ""
    for s in view.told.scenes:
        new = (s.section.id, s.figure.id if s.figure else "-")
        scenes.append("" if new == (chapter, drawn) else new[0] if new[1] == drawn else " ".join(new))
        chapter, drawn = new
    kind, stays, shown = "", dict.fromkeys(_STAYS, 0), 0
    for i in view.told.ideas:
        pieces = [0 if x == LEAD else view.marks[id(x)] for x in i.shows]
        said: dict[str, list[int]] = {
            "s": [i.scene], "o": [stations.index(i.station)], "w": [view.marks[id(i.place)] if i.place else 0], "f": [i.found],
            "p": [] if pieces == [shown + 1] else pieces or [-1], "a": [ids.index(a) for a in i.arrows], "l": [ids.index(a) for a in i.lit],
            "t": [i.terms] if i.terms else [], "q": [view.marks[id(i.question)]] if i.question else [], "n": [view.marks[id(x)] for x in i.aside]}
        words = [f"{k}{','.join(map(str, v))}" for k, v in said.items() if (v[0] != stays[k] if k in _STAYS else v)]
        lines.append(" ".join(([i.kind] if i.kind != kind else []) + words))
        kind, stays = i.kind, {k: said[k][0] for k in _STAYS}
        shown = max([shown, *pieces, *said["q"], *said["n"], *said["w"]])
    return {"ids": ids, "scenes": ";".join(scenes), "ideas": ";".join(lines)}
