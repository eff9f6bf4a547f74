"""The teaching view of a page: the lesson told an idea at a time. Here are its frame and the list of its ideas; what an idea shows is taken
from the page itself, where each node has its number, so nothing stands in the page twice."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from html import escape

from unpin.base.record import record
from unpin.lesson.board import LEAD, Idea, Told
from unpin.lesson.ideas import told
from unpin.lesson.nodes import Bullets, Lesson, Text, Working, walk
from unpin.words.sentences import catalogue, say

_STEPS = {"given": "given", "find": "find", "body": "body", "diagram": "diagram", "count": "count", "sum": "sum", "header": "sum", "write": "write",
          "substitute": "substitute", "collect": "collect", "solve": "solve", "result": "result", "answer": "answer", "check": "check",
          "inspection": "inspection"}
"""Kinds of idea and the step name they go under."""

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
    own: list[Text] = []
    for idea in found.ideas:
        for shown in (*idea.shows, *idea.aside, *((idea.question,) if idea.question else ())):
            if shown != LEAD and id(shown) not in marks:
                marks[id(shown)] = len(marks) + 1
                if isinstance(shown, Text) and id(shown) not in standing:
                    own.append(shown)
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
    data = json.dumps({"scenes": [[s.section.id, s.figure.id if s.figure else ""] for s in view.told.scenes],
                       "ideas": [_idea(i, before, view.marks) for before, i in zip((None, *view.told.ideas), view.told.ideas)], "words": _words(language)},
                      ensure_ascii=False, separators=(",", ":"))
    keys = "".join(_key(name, language) for name in _KEYS)
    return f"""<div id="teach" role="dialog" aria-modal="true" aria-label="{_word("name", language)}" tabindex="-1" hidden>
<div class="t-head"><p class="t-title">{title}</p><p class="t-step" data-t="step"></p>
<label><span class="t-unseen">{_word("go", language)}</span><select data-t="go"></select></label><p class="t-count" data-t="count"></p></div>
<div class="t-board" data-t="board"><div class="t-drawn" data-t="drawn"></div><div class="t-said" data-t="said"></div>
<svg class="t-ink" data-t="ink" viewBox="0 0 1000 1000" preserveAspectRatio="none" aria-hidden="true"></svg></div>
<div class="t-keys" role="toolbar" aria-label="{_word("keys", language)}">{keys}</div>
<div class="t-unseen" data-t="live" aria-live="polite"></div>
</div>
<div id="notes" role="main" hidden>
<h1 class="n-title">{title}</h1>
<div class="n-head"><p class="n-clock" data-n="clock" role="timer">00:00</p><button type="button" data-n="run">{_word("start", language)}</button>
<button type="button" data-n="zero">{_word("zero", language)}</button><p class="t-count" data-n="count"></p><p data-n="step"></p></div>
<div class="n-now" data-n="pane" tabindex="0"><h2>{_word("say", language)}</h2><p class="n-cue" data-n="cue"></p><div data-n="now"></div></div>
<div class="n-foot"><h2>{_word("then", language)}</h2><div class="n-next" data-n="then"></div>
<div class="t-keys">{_key("back", language)}{_key("next", language)}{_key("ask", language)}</div></div>
</div>
<ol id="teach-own" hidden>{own}</ol>
<div id="teach-told" hidden>{escape(data, quote=False)}</div>
"""


def _key(name: str, language: str) -> str:
    pressed = ' aria-pressed="false"' if name in ("ask", "pen", "erase") else ""
    return f'<button type="button" data-do="{name}" title="{_word(f"{name}_key", language)}"{pressed}>{_word(name, language)}</button>'


def _word(name: str, language: str) -> str:
    return escape(say(f"lesson.teach.{name}", language))


def _words(language: str) -> dict[str, object]:
    """What the script fills in: step names, what to say to a kind of idea, and a few labels."""
    all_words = catalogue("lesson", language)
    steps = {kind: all_words[f"step.{name}"] for kind, name in _STEPS.items()}
    cues = {k.removeprefix("teach.cue."): v for k, v in all_words.items() if k.startswith("teach.cue.")}
    labels = {k: all_words[f"teach.{k}"] for k in ("of", "start", "pause", "end", "asked")}
    return {"steps": steps, "cues": cues, **labels}


def _idea(idea: Idea, before: Idea | None, marks: Mapping[int, int]) -> dict[str, object]:
    """Kind, scene, pieces, arrows, lit, terms, question, aside; what is empty is left out, and a kind or scene that is that of the idea before."""
    said: dict[str, object] = {"k": idea.kind, "s": idea.scene, "p": [0 if x == LEAD else marks[id(x)] for x in idea.shows],
                               "a": list(idea.arrows), "l": list(idea.lit), "t": idea.terms,
                               "q": marks[id(idea.question)] if idea.question else 0, "n": [marks[id(x)] for x in idea.aside]}
    if before is not None and before.kind == idea.kind:
        del said["k"]
    if before is not None and before.scene == idea.scene:
        del said["s"]
    return {k: v for k, v in said.items() if v}
