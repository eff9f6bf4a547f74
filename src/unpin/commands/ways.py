"""The ways to a solution: routes, or the sums worth taking on a body."""

from __future__ import annotations

import sys
from argparse import Namespace

from unpin.commands.problem import bodies, problem_of, worked_out
from unpin.commands.stop import FAULTY, SOLVED, Stop
from unpin.commands.writing import print_data


def run(chosen: Namespace) -> int:
    """Tell the routes, or the sums on one body; returns the exit status."""
    problem, _ = problem_of(chosen)
    worked = worked_out(problem)
    from unpin.lesson import ways
    from unpin.lesson.nodes import Section, Text
    from unpin.lesson.sheet import sheet_for
    from unpin.render.terminal import section

    sheet = sheet_for(problem, worked.values or {})
    if chosen.body:
        from unpin.route.choices import choices

        found = choices(worked.structure, bodies(worked.structure, chosen.body))
        if chosen.json:
            from unpin.render import json as data

            print_data(data.choices(found, worked.structure))
            return SOLVED
        nodes = ways.of_body(found, worked.structure, sheet)
    elif worked.recommended is None:
        raise Stop(FAULTY, "unsound", file=chosen.file)
    elif chosen.json:
        from unpin.render import json as data

        print_data(data.ways(worked, chosen.tongue))
        return SOLVED
    else:
        nodes = ways.overview(worked, sheet)
    from unpin.lesson.kinds import with_kinds

    sys.stdout.write(section(with_kinds(Section("ways", "ways", Text("title.ways_all"), tuple(nodes)), problem), chosen.tongue))
    return SOLVED
