"""The command: arguments to calls, errors to lines, and an exit status.

0 solved; 1 the problem has faults or is unsound for what it asks; 2 wrong use; 3 a defect of the program; 4 a library is
missing or the output could not be written. Each command imports what it needs when it runs.
"""

from __future__ import annotations

import argparse
import importlib
import os
import sys
from dataclasses import replace
from pathlib import Path

from unpin.words.sentences import say

SOLVED, FAULTY, MISUSE, DEFECT, UNWRITTEN = 0, 1, 2, 3, 4


class Stop(Exception):
    """Ends the command with a message for standard error and a status."""

    def __init__(self, status: int, code: str = "", **arguments: object):
        self.status, self.code, self.arguments = status, code, arguments
        super().__init__(code)

    def message(self, language: str) -> str:
        return say(f"cli.{self.code}", language, **self.arguments) if self.code else ""


def main(arguments: list[str] | None = None) -> int:
    """Run one command; returns the exit status."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(encoding="utf-8", errors="backslashreplace")
    from unpin import options

    language = options.language_asked(sys.argv[1:] if arguments is None else arguments)
    chosen = parser(language).parse_args(arguments)
    chosen.language = chosen.language or chosen.first_language
    chosen.tongue = chosen.language or language
    try:
        status = chosen.run(chosen)
        sys.stdout.flush()
        return status
    except Stop as stop:
        if stop.code:
            print(stop.message(chosen.tongue), file=sys.stderr)
        return stop.status
    except BrokenPipeError:
        # The reader of our output has gone; so do we, without a second complaint at exit.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return UNWRITTEN
    except KeyboardInterrupt:
        return 130
    except Exception as fault:  # the last door: no traceback reaches a teacher
        if os.environ.get("UNPIN_TRACE"):
            raise
        print(say("cli.unexpected", chosen.tongue, what=f"{type(fault).__name__}: {fault}"), file=sys.stderr)
        return DEFECT


def parser(language: str = "en") -> argparse.ArgumentParser:
    """Every command with its help, bound to what it does."""
    from unpin import options

    return options.parser({"solve": _solve, "check": _check, "ways": _ways, "draw": _draw, "handout": _handout, "sheet": _sheet,
                           "desk": _later("desk", "open_desk"), "examples": _examples, "rename": _later("amend", "rename"),
                           "index": _later("register", "run"), "handouts": _later("handouts", "run")}, language)


def _reading(chosen):
    """What the file says; remarks go to standard error unless data was asked for."""
    from unpin import bundled
    from unpin.read import read_file, read_text

    house, remarks = _house(chosen)
    if chosen.file == "-":
        reading = read_text(sys.stdin.buffer.read().decode("utf-8", "replace"), "-")
    else:
        example = None if os.path.exists(chosen.file) else bundled.path_of(chosen.file)
        reading = read_file(example or chosen.file)
        reading = replace(reading, diagnostics=tuple(_near_example(d, chosen.file) for d in reading.diagnostics))
    if any(d.is_error for d in remarks):
        reading = replace(reading, problem=None)
    if reading.sound:
        from unpin.houses import put_on

        problem, clashes = put_on(reading.problem, house, chosen.language)
        reading, remarks = replace(reading, problem=problem), (*remarks, *clashes)
    reading = replace(reading, diagnostics=(*remarks, *reading.diagnostics))
    if not getattr(chosen, "json", False):
        _remark(reading.diagnostics, chosen.tongue)
    return reading


def _house(chosen):
    """The house style and the remarks on it; of a sheet each remark once. From here on the command speaks its language."""
    from unpin.houses import style_for

    house, remarks = style_for("-" if chosen.file == "-" or not os.path.exists(chosen.file) else chosen.file, chosen.house)
    chosen.tongue = chosen.language or house.language or chosen.tongue
    seen = chosen.__dict__.setdefault("told", set())
    fresh = tuple(d for d in remarks if d.is_error or repr(d) not in seen)
    seen.update(map(repr, remarks))
    return house, fresh


def _near_example(d, said: str):
    """The remark that a file is not there, with the example that may have been meant."""
    if d.code != "read.no_file" or os.path.dirname(said):
        return d
    from unpin import bundled
    from unpin.read.report import nearest

    near = nearest(Path(said).stem, bundled.names())
    return replace(d, arguments={**d.arguments, "nearest": near}, hint="hint.example") if near else d


def _remark(diagnostics, language: str) -> None:
    if diagnostics:
        from unpin.words.remarks import render

        for d in diagnostics:
            print(render(d, language), file=sys.stderr)


def _as_data(diagnostics, language: str) -> tuple[dict, ...]:
    if not diagnostics:
        return ()
    from unpin.render.json import remarks
    from unpin.words.remarks import hint, sentence

    return remarks(diagnostics, lambda d: (sentence(d, language), hint(d, language)))


def _problem(chosen):
    """The problem, or the end when it has faults."""
    reading = _reading(chosen)
    if not reading.sound:
        if getattr(chosen, "json", False):
            _print_data({"format": "unpin remarks", "version": 1, "diagnostics": list(_as_data(reading.diagnostics, chosen.tongue))})
        raise Stop(FAULTY)
    return reading.problem, reading.diagnostics


def _worked(problem):
    from unpin import api
    from unpin.base.diagnostic import Defect

    try:
        return api.solve(problem)
    except Defect as defect:
        raise Stop(DEFECT, "defect", what=", ".join(map(str, defect.args[-1]))) from defect


def _lesson(worked, chosen, drawn: bool):
    from unpin import api

    if chosen.route == "own" and worked.recommended is not None and worked.wanted is None:
        raise Stop(MISUSE, "no_route")
    short, fade = chosen.short and not getattr(chosen, "json", False), getattr(chosen, "fade", 0)
    return api.explain(worked, chosen.figures, chosen.route, drawn, short, fade)


def _solve(chosen) -> int:
    problem, diagnostics = _problem(chosen)
    worked = _worked(problem)
    lesson = _lesson(worked, chosen, drawn=False)
    if chosen.json:
        from unpin.lesson.build import chosen_route
        from unpin.lesson.sheet import sheet_for
        from unpin.render.json import write

        route = chosen_route(worked, chosen.route) if worked.recommended else None
        sys.stdout.write(write(worked, lesson, sheet_for(problem, worked.values or {}, chosen.figures), _as_data(diagnostics, chosen.tongue), route))
    else:
        from unpin.render.terminal import write as write_text

        sys.stdout.write(write_text(lesson))
    return SOLVED if lesson.solved else FAULTY


def _check(chosen) -> int:
    """Faults of the file, then the four statements about the problem."""
    problem, diagnostics = _problem(chosen)
    from unpin import api
    from unpin.lesson.build import sound_section
    from unpin.render.terminal import section

    worked = api.check(problem)
    found = worked.soundness
    if chosen.json:
        from unpin.render.json import soundness

        _print_data({"format": "unpin check", "version": 1, "soundness": soundness(worked, sound_section(worked), chosen.tongue),
                     "diagnostics": list(_as_data(diagnostics, chosen.tongue))})
    else:
        sys.stdout.write(section(sound_section(worked), chosen.tongue))
    return SOLVED if found.solvable else FAULTY


def _ways(chosen) -> int:
    problem, _ = _problem(chosen)
    worked = _worked(problem)
    from unpin.lesson import ways
    from unpin.lesson.nodes import Section, Text
    from unpin.lesson.sheet import sheet_for
    from unpin.render.terminal import section

    sheet = sheet_for(problem, worked.values or {})
    if chosen.body:
        from unpin.route.choices import choices

        found = choices(worked.structure, _bodies(worked.structure, chosen.body))
        if chosen.json:
            from unpin.render import json as data

            _print_data(data.choices(found, worked.structure))
            return SOLVED
        nodes = ways.of_body(found, worked.structure, sheet)
    elif worked.recommended is None:
        raise Stop(FAULTY, "unsound", file=chosen.file)
    elif chosen.json:
        from unpin.render import json as data

        _print_data(data.ways(worked, chosen.tongue))
        return SOLVED
    else:
        nodes = ways.overview(worked, sheet)
    from unpin.lesson.kinds import with_kinds

    sys.stdout.write(section(with_kinds(Section("ways", "ways", Text("title.ways_all"), tuple(nodes)), problem), chosen.tongue))
    return SOLVED


def _bodies(structure, said: str) -> list[str]:
    """Names of bodies from `arm`, `post + arm`, `C` for its pin, `whole`."""
    known = [b.name for b in structure.bodies]
    if said == "whole":
        return known
    names = []
    for name in (n.strip() for n in said.split("+")):
        found = name if name in known else f"pin {name}"
        if found not in known:
            raise Stop(MISUSE, "no_body", name=name, names=", ".join(known))
        names.append(found)
    return names


def _draw(chosen) -> int:
    ending = _ending(chosen.output, (".svg", ".png"))
    which = chosen.which or ("body" if chosen.body else "problem")
    if which == "body" and not chosen.body:
        raise Stop(MISUSE, "body_needs_name")
    problem, _ = _problem(chosen)
    drawing = _drawing(problem, which, chosen)
    from unpin.render import picture

    tongue = chosen.tongue
    made = picture.svg(drawing, language=tongue).encode() if ending == ".svg" else _typeset(lambda: picture.png(drawing, tongue))
    _save(chosen.output, made, chosen.file)
    return SOLVED


def _drawing(problem, which: str, chosen):
    from unpin import api
    from unpin.lesson.figures import Studio
    from unpin.lesson.sheet import sheet_for
    from unpin.statics.isolate import isolate

    worked = _worked(problem) if which in ("final", "body") else api.check(problem)
    studio = Studio(worked, sheet_for(problem, worked.values or {}))
    if which == "body":
        nodes = studio.free_body(isolate(worked.structure, _bodies(worked.structure, chosen.body)))
    elif which == "motion":
        nodes = studio.motion() if worked.soundness.freedoms else ()
    else:
        nodes = getattr(studio, which)()
    if not nodes:
        raise Stop(FAULTY, "not_drawn", name=which)
    return nodes[0]


def _handout(chosen) -> int:
    from unpin.publish import ENDINGS

    _ending(chosen.output, ENDINGS)
    problem, _ = _problem(chosen)
    lesson = _lesson(_worked(problem), chosen, drawn=True)
    _publish(lesson, chosen.output, (chosen.file,))
    return SOLVED if lesson.solved else FAULTY


def _sheet(chosen) -> int:
    """A sheet of problems; nothing is written while one of them is faulty or not fully solved."""
    from unpin import api
    from unpin.lesson.paper import misfit
    from unpin.publish import ENDINGS

    _ending(chosen.output, ENDINGS)
    if chosen.marks and len(chosen.marks) != len(chosen.files):
        raise Stop(MISUSE, "marks", count=len(chosen.files), given=len(chosen.marks))
    several, faulty = [], []
    for file in chosen.files:
        chosen.file = file
        try:
            worked = _worked(_problem(chosen)[0])
            if worked.proof is None or not all(a.found for a in worked.answers):
                raise Stop(FAULTY, "unsound", file=file)
            several.append(worked)
        except Stop as stop:  # the other files are still looked at, so that all faults are told at once
            faulty.append(stop)
    if faulty:
        print(*(f"{stop.message(chosen.tongue)}\n" for stop in faulty[:-1] if stop.code), sep="", end="", file=sys.stderr)
        raise faulty[-1]
    if chosen.marks and (wrong := misfit(several, chosen.marks)) is not None:
        parts = {"number": wrong + 1, "file": chosen.files[wrong], "count": len(several[wrong].problem.asked), "given": len(chosen.marks[wrong])}
        raise Stop(MISUSE, "marks_of_parts", **parts)
    _publish(api.paper(several, chosen.title, chosen.marks, chosen.answers, chosen.figures), chosen.output, tuple(chosen.files))
    return SOLVED


def _publish(lesson, name: str, sources: tuple[str, ...]) -> None:
    from unpin.publish import publish

    _written(name, lambda: _typeset(lambda: publish(lesson, name, sources)))


def _save(name: str, data: bytes, source: str) -> None:
    from unpin.output import save

    _written(name, lambda: save(name, data, source))


def _written(name: str, write) -> None:
    from unpin.output import SameFile

    try:
        write()
    except SameFile as same:
        raise Stop(MISUSE, "same_file", file=name) from same
    except OSError as fault:
        raise Stop(UNWRITTEN, "not_written", file=name, reason=fault.strerror or str(fault)) from fault


def _typeset(make):
    from unpin.render.typeset import TypesetterMissing

    try:
        return make()
    except TypesetterMissing as missing:
        raise Stop(UNWRITTEN, "no_library", name="typst") from missing


def _ending(name: str, allowed: tuple[str, ...]) -> str:
    ending = Path(name).suffix.lower()
    if ending not in allowed:
        raise Stop(MISUSE, "ending", file=name, endings=", ".join(allowed))
    return ending


def _later(module: str, name: str):
    """A command that lives in a module of its own, imported when it runs."""
    return lambda chosen: getattr(importlib.import_module(f"unpin.{module}"), name)(chosen)


def _examples(chosen) -> int:
    from unpin import bundled

    if chosen.name and bundled.path_of(chosen.name) is None:
        raise Stop(MISUSE, "no_example", name=chosen.name, names=", ".join(bundled.names()))
    names = [chosen.name] if chosen.name else bundled.names()
    if chosen.copy:
        from unpin.output import copy

        try:
            copy([bundled.path_of(n) for n in names], Path(chosen.copy))
        except FileExistsError as there:
            raise Stop(UNWRITTEN, "exists", file=there.filename) from there
        except OSError as fault:
            raise Stop(UNWRITTEN, "not_written", file=chosen.copy, reason=fault.strerror or str(fault)) from fault
    elif chosen.name:
        sys.stdout.write(bundled.path_of(chosen.name).read_text("utf-8"))
    else:
        for name in names:
            print(f"{name:20} {bundled.title_of(name)}".rstrip())
    return SOLVED


def _print_data(data: dict) -> None:
    import json

    sys.stdout.write(json.dumps(data, ensure_ascii=False, indent=2) + "\n")
