"""The problem that a command is given: read in the house style, its remarks told, worked out, and made a lesson."""

from __future__ import annotations

import os
import sys
from argparse import Namespace
from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from unpin.commands.stop import DEFECT, FAULTY, MISUSE, UNWRITTEN, Stop
from unpin.commands.writing import print_data

if TYPE_CHECKING:  # each command imports what it needs when it runs
    from pathlib import Path

    from unpin.base.diagnostic import Diagnostic
    from unpin.lesson.nodes import Lesson
    from unpin.model.action import Structure
    from unpin.model.house import House
    from unpin.model.problem import Problem
    from unpin.read.reader import Reading
    from unpin.route.worked import Worked


def problem_of(chosen: Namespace) -> tuple[Problem, tuple[Diagnostic, ...]]:
    """The problem and the remarks on it, or the end when it has faults."""
    reading = reading_of(chosen)
    if not reading.sound:
        if getattr(chosen, "json", False):
            print_data({"format": "unpin remarks", "version": 1, "diagnostics": list(as_data(reading.diagnostics, chosen.tongue))})
        raise Stop(FAULTY)
    return reading.problem, reading.diagnostics


def reading_of(chosen: Namespace) -> Reading:
    """What the file says; remarks go to standard error unless data was asked for."""
    from unpin.read import read_file, read_text

    house, remarks = _house(chosen)
    if chosen.file == "-":
        reading = read_text(sys.stdin.buffer.read().decode("utf-8", "replace"), "-")
    else:
        reading = read_file(chosen.file if os.path.exists(chosen.file) else _example(chosen.file))
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


def _example(name: str) -> str | Path:
    """The file of the bundled example with this name; the name itself where there is none."""
    from unpin import bundled

    return bundled.path_of(name) or name


def _house(chosen: Namespace) -> tuple[House, tuple[Diagnostic, ...]]:
    """The house style and the remarks on it; of a sheet each remark once. From here on the command speaks its language."""
    from unpin.houses import style_for

    house, remarks = style_for("-" if chosen.file == "-" or not os.path.exists(chosen.file) else chosen.file, chosen.house)
    chosen.tongue = chosen.language or house.language or chosen.tongue
    seen = chosen.__dict__.setdefault("told", set())
    fresh = tuple(d for d in remarks if d.is_error or repr(d) not in seen)
    seen.update(map(repr, remarks))
    return house, fresh


def _near_example(d: Diagnostic, said: str) -> Diagnostic:
    """The remark that a file is not there, with the example that may have been meant."""
    if d.code != "read.no_file" or os.path.dirname(said):
        return d
    from unpin import bundled
    from unpin.read.report import nearest

    near = nearest(os.path.splitext(said)[0], bundled.names())
    return replace(d, arguments={**d.arguments, "nearest": near}, hint="hint.example") if near else d


def _remark(diagnostics: Sequence[Diagnostic], language: str) -> None:
    if diagnostics:
        from unpin.words.remarks import render

        for d in diagnostics:
            print(render(d, language), file=sys.stderr)


def as_data(diagnostics: Sequence[Diagnostic], language: str) -> tuple[dict, ...]:
    """Remarks as plain records, each with its sentence and hint in a language."""
    if not diagnostics:
        return ()
    from unpin.render.json import remarks
    from unpin.words.remarks import hint, sentence

    return remarks(diagnostics, lambda d: (sentence(d, language), hint(d, language)))


def worked_out(problem: Problem) -> Worked:
    """The problem solved and proved; the end with status 3 where the proof fails."""
    from unpin import api
    from unpin.base.diagnostic import Defect

    try:
        return api.solve(problem)
    except Defect as defect:
        raise Stop(DEFECT, "defect", what=", ".join(map(str, defect.args[-1]))) from defect


def lesson_of(worked: Worked, chosen: Namespace, drawn: bool) -> Lesson:
    """The solution as the command asks for it: its route, its figures, short or faded."""
    from unpin import api

    if chosen.route == "own" and worked.recommended is not None and worked.wanted is None:
        raise Stop(MISUSE, "no_route")
    short, fade = chosen.short and not getattr(chosen, "json", False), getattr(chosen, "fade", 0)
    return api.explain(worked, chosen.figures, chosen.route, drawn, short, fade)


def on_picture(problem: Problem, chosen: Namespace) -> Problem:
    """The problem with the picture beneath that was asked for, if any."""
    if not chosen.beneath:
        if chosen.mark:
            raise Stop(MISUSE, "beneath.alone")
        return problem
    from unpin.pictures import Unfit, marked
    from unpin.render.typeset import TypesetterMissing

    try:
        with open(chosen.beneath, "rb") as file:
            data = file.read()
        return replace(problem, beneath=marked(problem, data, chosen.mark, chosen.faded / 100))
    except OSError as fault:
        raise Stop(MISUSE, "beneath.unread", file=chosen.beneath, reason=fault.strerror or str(fault)) from fault
    except Unfit as unfit:
        raise Stop(MISUSE, f"beneath.{unfit.code}", file=chosen.beneath, **unfit.arguments) from unfit
    except TypesetterMissing as missing:
        raise Stop(UNWRITTEN, "no_library", name="typst") from missing


def bodies(structure: Structure, said: str) -> list[str]:
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
