"""What a teacher must notice before the answers: contacts that have opened, rollers that have to pull, cords that would have to push."""

from __future__ import annotations

from collections.abc import Iterator

from unpin.exact.number import sign
from unpin.lesson import cords, phrases, soundness
from unpin.lesson.isolate import kind_of
from unpin.lesson.nodes import Listing, Text
from unpin.lesson.sheet import Sheet
from unpin.model.kinds import KINDS
from unpin.model.problem import GROUND
from unpin.route.worked import Worked


def notices(worked: Worked, sheet: Sheet) -> tuple[Text, ...]:
    """Each in a sentence, in this order, with the words of the worked solution; none where every sense is as it must be."""
    return tuple(_all(worked, sheet))


def _all(worked: Worked, sheet: Sheet) -> Iterator[Text]:
    if worked.opened:
        yield soundness.told_opened(worked.opened, worked.soundness, sheet)
    if worked.values is None:
        return
    for u in worked.structure.unknowns:
        action = worked.structure.action(u.actions[0])
        pulls = u.id in worked.values and sign(worked.values[u.id]) < 0
        if pulls and GROUND in (action.on, action.by) and action.kind == "force" and KINDS[kind_of(action, worked.structure)].either_way:
            yield Text("result.held_down", {"point": phrases.letter_like(action.point)})
    if slack := cords.slack(worked.structure, worked.values):
        yield Text("answer.slack", {"letters": Listing(tuple(slack))})
