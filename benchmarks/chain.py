"""A frame of any number of parts for the growth benchmark: each member pinned to the one before, propped by a link or a sloped roller."""

from __future__ import annotations

from unpin.read import read_text


def chain(parts: int):
    """A determinate frame with so many members, links and rollers on slopes; the first reaction and pin are asked."""
    points = ["P0: [0, 0]"]
    members, links, supports, loads = [], [], ["P0: pin"], []
    for k in range(parts):
        points.append(f"P{k + 1}: [{2 * (k + 1)}, {(k + 1) % 2}]")
        points.append(f"Q{k}: [{2 * k + 1}, {'1/2' if k % 2 else '3/2'}]")
        members.append(f"m{k}: P{k} Q{k} P{k + 1}")
        loads.append(f"{100 + k} N at Q{k} down")
        if k % 3 == 2:
            supports.append(f"P{k + 1}: roller on slope right 2 up 1")
        else:
            points.append(f"G{k}: [{2 * k + 1.5}, -2]")
            links.append(f"Q{k}-G{k}")
            supports.append(f"G{k}: pin")
    text = "points:\n" + "".join(f"  {p}\n" for p in points) + "members:\n" + "".join(f"  {m}\n" for m in members)
    text += f"links: [{', '.join(links)}]\nsupports:\n" + "".join(f"  {s}\n" for s in supports)
    text += "loads:\n" + "".join(f"  - {x}\n" for x in loads) + "find: [P0, P1 on m0]\n"
    reading = read_text(text)
    if reading.problem is None or any(d.is_error for d in reading.diagnostics):
        raise AssertionError([d.code for d in reading.diagnostics])
    return reading.problem
