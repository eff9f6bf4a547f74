"""What a command writes: data, or a file whole or not at all."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable
from typing import TYPE_CHECKING, TypeVar

from unpin.commands.stop import MISUSE, UNWRITTEN, Stop

if TYPE_CHECKING:
    from unpin.lesson.nodes import Lesson

Made = TypeVar("Made")


def ending_of(name: str, allowed: tuple[str, ...]) -> str:
    """The ending of the name of an output, or the end where a command does not write it."""
    ending = os.path.splitext(name)[1].lower()
    if ending not in allowed:
        raise Stop(MISUSE, "ending", file=name, endings=", ".join(allowed))
    return ending


def publish_as(lesson: Lesson, name: str, sources: tuple[str, ...]) -> None:
    """A lesson in the form that the name of the output ends with; never over one of its sources."""
    from unpin.publish import publish

    written(name, lambda: typeset(lambda: publish(lesson, name, sources)))


def save_as(name: str, data: bytes, source: str) -> None:
    """Bytes under a name; never over their source."""
    from unpin.output import save

    written(name, lambda: save(name, data, source))


def written(name: str, write: Callable[[], object]) -> None:
    """Do `write`, and end with what kept it from being done."""
    from unpin.output import SameFile

    try:
        write()
    except SameFile as same:
        raise Stop(MISUSE, "same_file", file=name) from same
    except OSError as fault:
        raise Stop(UNWRITTEN, "not_written", file=name, reason=fault.strerror or str(fault)) from fault


def typeset(make: Callable[[], Made]) -> Made:
    """What the typesetter makes, or the end with status 4 where it is missing."""
    from unpin.render.typeset import TypesetterMissing

    try:
        return make()
    except TypesetterMissing as missing:
        raise Stop(UNWRITTEN, "no_library", name="typst") from missing


def print_data(data: dict) -> None:
    """As JSON on standard output."""
    import json

    sys.stdout.write(json.dumps(data, ensure_ascii=False, indent=2) + "\n")
