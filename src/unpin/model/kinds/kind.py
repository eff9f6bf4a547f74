"""What a connection kind states: the forces it can carry and, separately, the motions it leaves free.

Both are lists of tokens; `wrench_of` and `twist_of` turn them into wrenches and twists. The mechanics knows no kind by name but
the pin, which bodies that meet make, and the link, which is no body; drawings and words do, for each kind looks and is called
its own way. A test shows each kind's forces and freedoms reciprocal: no force does work in a freedom, and the two together
fill the plane.
"""

from __future__ import annotations

from typing import Literal

from unpin.base.record import record
from unpin.model import directions
from unpin.model.problem import Connection
from unpin.model.space import Wrench, couple, force_at, slide, square_to, turn_about
from unpin.model.values import Direction, Vector

Push = Literal["right", "up", "normal", "line", "couple"]
Free = Literal["turn", "turn_far", "slide"]


@record
class Kind:
    """Facts of one kind.

    `pushes`: one unknown each, on the first part: along +x, along +y, along the connection's direction, along the line
    from its first point to its second, or a couple. `freedoms`: what the first part can still do relative to the
    second: turn about the first point, turn about the second point, slide square to the direction. `stops`: codes of
    the motions it stops, in the words of a lesson. `push_only`: the force cannot pull. `ends`: points it acts at.
    `axial`: tension positive. `symbol`: id of its drawing. `support`: may join a part to the ground; `between`: may join two.
    `said`: what it is called among the supports of a file, where not by its name. `track`: its direction is said along it, not across. `owned`: the
    second part has the slot or the rod, the first slides in it or on it. `of_point`: the kind that is left of it where it holds
    a body of no size, which no couple can turn. `either_way`: it looks as if it could only push, so that it also pulls is assumed
    aloud, and a pull is pointed out.
    """

    name: str
    pushes: tuple[Push, ...]
    freedoms: tuple[Free, ...]
    stops: tuple[str, ...]
    symbol: str
    ends: int = 1
    push_only: bool = False
    axial: bool = False
    needs_direction: bool = False
    support: bool = True
    between: bool = True
    said: tuple[str, ...] | None = None
    track: bool = False
    owned: bool = False
    of_point: str = ""
    either_way: bool = False

    @property
    def phrases(self) -> tuple[str, ...]:
        return (self.name,) if self.said is None else self.said


def push_direction(push: Push, connection: Connection, at: dict[str, Vector]) -> Direction | None:
    """The direction of one unknown on the first part; None for a couple."""
    if push == "right":
        return directions.X
    if push == "up":
        return directions.Y
    if push == "normal":
        return connection.direction
    if push == "line" and connection.direction is not None:
        return connection.direction
    if push == "line":
        first, second = connection.points
        return connection.direction or directions.line((first, second), at[first], at[second])
    return None


def wrench_of(push: Push, connection: Connection, at: dict[str, Vector]) -> Wrench:
    """Unit wrench (force per length of its direction vector) of one unknown on the first part."""
    direction = push_direction(push, connection, at)
    if direction is None:
        return couple(directions.ONE)
    return force_at(at[connection.points[0]], direction.vector)


def twist_of(free: Free, connection: Connection, at: dict[str, Vector]) -> Wrench:
    """Twist of the first part relative to the second that the connection allows."""
    if free == "turn":
        return turn_about(at[connection.points[0]])
    if free == "turn_far":
        return turn_about(at[connection.points[1]])
    return slide(square_to(connection.direction.vector))


def release_of(push: Push, connection: Connection, at: dict[str, Vector]) -> Wrench:
    """The one motion of the first part in which this push does work and the connection's other pushes do none."""
    if push == "couple":
        return turn_about(at[connection.points[0]])
    return slide(push_direction(push, connection, at).vector)
