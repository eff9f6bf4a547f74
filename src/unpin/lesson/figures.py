"""The figures of a lesson. Stub until drawn."""

from __future__ import annotations

from unpin.lesson.nodes import Node
from unpin.lesson.sheet import Sheet
from unpin.route.worked import Worked


class Studio:
    def __init__(self, worked: Worked, sheet: Sheet):
        self.worked = worked

    def problem(self) -> tuple[Node, ...]:
        return ()

    def motion(self) -> tuple[Node, ...]:
        return ()

    def free_body(self, body) -> tuple[Node, ...]:
        return ()

    def final(self) -> tuple[Node, ...]:
        return ()
