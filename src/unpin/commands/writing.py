"""What a command writes: data, or a file whole or not at all."""

from __future__ import annotations

import sys
from pathlib import Path

from unpin.commands.stop import MISUSE, UNWRITTEN, Stop


def ending_of(name: str, allowed: tuple[str, ...]) -> str:
    ending = Path(name).suffix.lower()
    if ending not in allowed:
        raise Stop(MISUSE, "ending", file=name, endings=", ".join(allowed))
    return ending


def publish_as(lesson, name: str, sources: tuple[str, ...]) -> None:
    from unpin.publish import publish

    written(name, lambda: typeset(lambda: publish(lesson, name, sources)))


def save_as(name: str, data: bytes, source: str) -> None:
    from unpin.output import save

    written(name, lambda: save(name, data, source))


def written(name: str, write) -> None:
    from unpin.output import SameFile

    try:
        write()
    except SameFile as same:
        raise Stop(MISUSE, "same_file", file=name) from same
    except OSError as fault:
        raise Stop(UNWRITTEN, "not_written", file=name, reason=fault.strerror or str(fault)) from fault


def typeset(make):
    from unpin.render.typeset import TypesetterMissing

    try:
        return make()
    except TypesetterMissing as missing:
        raise Stop(UNWRITTEN, "no_library", name="typst") from missing


def print_data(data: dict) -> None:
    import json

    sys.stdout.write(json.dumps(data, ensure_ascii=False, indent=2) + "\n")
