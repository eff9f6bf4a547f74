"""The figures of a lesson: which are shown, how they are lettered and described. `Studio` makes them; it draws nothing when
the lesson is for a format without pictures."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from unpin.base.units import FORCE
from unpin.exact.number import sign
from unpin.lesson import bars, phrases
from unpin.lesson.nodes import Drawing, Listing, Node, Text, sentences
from unpin.lesson.sheet import Sheet
from unpin.lesson.soundness import shown_freedom
from unpin.model.action import FreeBody
from unpin.model.equation import Equation
from unpin.model.findings import Freedom
from unpin.route.worked import Worked
from unpin.statics.isolate import isolate

CROWD = 30
"""With more links than that their forces are told by the table of all bars, or those asked for alone are drawn: nobody could read the rest."""
PIECES = 24
"""With more bodies than that the structure is not drawn taken apart: each is drawn by itself when its turn comes."""


class Studio:
    """Makes the drawings of one lesson, each under an id of its own. `drawn` False: captions only are skipped too; `centres`
    False: diagrams are drawn as if no sum had been chosen yet."""

    def __init__(self, worked: Worked, sheet: Sheet, drawn: bool = True, centres: bool = True):
        self.worked, self.sheet, self.drawn, self.centres = worked, sheet, drawn, centres
        self.count = 0

    def named(self, which: str, bodies: Sequence[str] = ()) -> tuple[Node, ...]:
        """The figure of a name, problem, apart, final, motion, or body: these bodies of the structure cut loose together. Empty where there is
        none to draw. ValueError where the bodies do not hang together."""
        if which == "body":
            return self.free_body(isolate(self.worked.structure, bodies))
        if which == "motion" and not self.worked.soundness.freedoms:
            return ()
        made: Callable[[], tuple[Node, ...]] = {"problem": self.problem, "apart": self.apart, "final": self.final, "motion": self.motion}[which]
        return made()

    def problem(self) -> tuple[Node, ...]:
        if not self.drawn:
            return ()
        from unpin.draw.figure import problem_figure
        from unpin.lesson import labels

        w = self.worked
        return self._made("problem", "", Text("caption.problem"),
                          problem_figure(w.apart, labels.of_problem(w.problem, w.apart, self.sheet)))

    def apart(self) -> tuple[Node, ...]:
        if not self.drawn or not 2 <= len(self.worked.structure.bodies) <= PIECES:
            return ()
        from unpin.draw.figure import apart_figure
        from unpin.lesson import labels

        w = self.worked
        return self._made("apart", "", Text("caption.apart"),
                          apart_figure(w.structure, labels.of_bodies_apart(w.problem, w.structure, self.sheet)))

    def motion(self, turn: int = 0) -> tuple[Node, ...]:
        """A motion that is left free; `turn`: which, counted from the one that is told."""
        if not self.drawn:
            return ()
        from unpin.draw.figure import motion_figure
        from unpin.lesson import labels

        w = self.worked
        return self._made("motion", "", Text("caption.motion"),
                          motion_figure(w.apart, _the_way_loads_push(shown_freedom(w.soundness, turn)), labels.of_problem(w.problem, w.apart, self.sheet)))

    def free_body(self, body: FreeBody, equations: Sequence[Equation] = ()) -> tuple[Node, ...]:
        """The body's diagram; with the moment centres of its sums marked, and the arms when there is just one."""
        if not self.drawn:
            return ()
        from unpin.draw.figure import free_body_figure
        from unpin.lesson import labels

        w = self.worked
        equations = tuple(equations) if self.centres else ()
        centres = list(dict.fromkeys(e.functional.point or e.functional.at for e in equations if e.functional.kind == "about"))
        centre = centres[0] if len(centres) == 1 else None
        lettering = labels.of_bodies(w.problem, w.structure, self.sheet)
        caption = Text("caption.body", {"body": phrases.free_body(body)})
        if centre is not None:
            about = next(e.functional for e in equations if e.functional.kind == "about")
            letter = phrases.letter_like(self.sheet.centre(about))
            lettering = replace(lettering, labels={**lettering.labels, "centre": labels.label(letter)})
            caption = Text("caption.body_centre", {**caption.arguments, "centre": letter})
        also = ()
        if len(centres) > 1:
            about = {e.functional.point or e.functional.at: phrases.letter_like(self.sheet.centre(e.functional))
                     for e in equations if e.functional.kind == "about"}
            also = tuple((c, () if isinstance(c, str) else labels.label(about[c])) for c in centres)
            caption = Text("caption.body_centres", {**caption.arguments, "centres": Listing(tuple(about[c] for c in centres))})
        # Other sums take components of the force, or no moment at all, so one sum's distances are those of the figure.
        levers = {t.action.id: f.value for e in equations for t in e.terms for f in t.factors if f.axis == "square"}
        figure = free_body_figure(body, w.structure, lettering, centre=centre, levers=levers, also=also)
        return self._made("body", body.name, caption, figure)

    def final(self) -> tuple[Node, ...]:
        if not self.drawn:
            return ()
        from unpin.draw.figure import final_figure
        from unpin.lesson import labels

        w = self.worked
        values = w.values or {}
        if not all(u.id in values for u in w.structure.unknowns):
            return ()
        lettering = labels.of_result(w.problem, w.structure, self.sheet, values)
        crowded = sum(u.axial for u in w.structure.unknowns) > CROWD
        if crowded:
            told = {c.unknown for a in w.answers for c in a.components} if not bars.tabled(w) else set()
            unread = {u.id for u in w.structure.unknowns if u.axial and u.drives == "connection"} - told
            lettering = replace(lettering, labels={k: v for k, v in lettering.labels.items() if k not in unread})
        figure = final_figure(w.structure, lettering, values)
        axial = any(fact.code == "axial" for fact in figure.facts())
        many = axial and labels.many_axial(w.structure)
        caption = Text("caption.final_axial" if axial else "caption.final")
        if crowded and bars.tabled(w):
            caption = Text("caption.final_table")
        elif many:
            caption = Text("caption.final_axial_many", {"unit": self.sheet.units[FORCE].symbol})
        return self._made("final", "", caption, figure)

    def _made(self, which: str, subject: str, caption: Text, figure) -> tuple[Node, ...]:
        from unpin.draw.items import crowded
        from unpin.lesson.describe import describe

        if any(crowded(piece) for piece in figure.pieces):
            caption = sentences(caption, Text("caption.left_out"))
        self.count += 1
        return (Drawing(f"figure-{self.count}", which, subject, caption, describe(figure, self.worked.problem, self.sheet), figure),)


def _the_way_loads_push(freedom: Freedom) -> Freedom:
    """The motion in the sense in which the loads do positive work."""
    if sign(freedom.work) >= 0:
        return freedom
    return replace(freedom, twists={b: tuple(-c for c in t) for b, t in freedom.twists.items()}, work=-freedom.work)
