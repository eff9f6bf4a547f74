"""Structures of any size for the growth benchmark: irregular frames, regular and irregular trusses. One seed, one structure."""

from __future__ import annotations

from random import Random

from unpin.model.problem import Problem
from unpin.read import read_text


def frame(parts: int, seed: int = 1) -> Problem:
    """A determinate frame of so many members, each held to what stands by two pins of its neighbour and itself (a dyad) or by a pin and
    a link; the force of one pin is asked."""
    chance = Random(f"frame {seed}")
    at: dict[str, tuple[int, int]] = {}
    members: list[list[str]] = []
    links, supports = [], []

    def point(prefix: str) -> str:
        while True:
            x, y = chance.randint(0, 6 * parts), chance.randint(1, 40)
            if (x, y) not in at.values():
                name = f"{prefix}{len(at)}"
                at[name] = (x, y)
                return name

    def ground() -> str:
        name = f"G{len(at)}"
        at[name] = (3 * len(at), -2)
        supports.append(f"{name}: pin")
        return name

    def somewhere() -> str:
        return chance.choice(chance.choice(members)) if members and chance.random() < 0.8 else ground()

    members.append([ground(), point("P"), point("P"), point("P")])
    links.append((members[0][-1], ground()))
    while len(members) < parts:
        first = somewhere()
        if chance.random() < 0.4 and len(members) + 1 < parts:
            second = somewhere()
            top = point("P")
            if second != first:
                members.append([first, point("P"), top])
                members.append([top, point("P"), second])
        else:
            new = [first, point("P"), point("P")]
            other = somewhere()
            if other not in new:
                links.append((new[-1], other))
                members.append(new)
    text = "title: Irregular frame\npoints:\n" + "".join(f"  {n}: [{x}, {y}]\n" for n, (x, y) in at.items())
    text += "members:\n" + "".join(f"  m{k}: {' '.join(m)}\n" for k, m in enumerate(members))
    text += f"links: [{', '.join(f'{a}-{b}' for a, b in links)}]\nsupports:\n" + "".join(f"  {s}\n" for s in supports)
    text += "loads:\n" + "".join(f"  - {100 + k} N at {m[1]} on m{k} down\n" for k, m in enumerate(members))
    last = members[len(members) // 2]
    return _read(text + f"find: [{last[0]} on m{len(members) // 2}]\n")


def bridge(bars: int, find: str = "everything") -> Problem:
    """A footway on triangles, of at least so many bars (a multiple of four less one); `find`: what is asked, or `middle` for a bar."""
    return _read(bridge_text(bars, find))


def bridge_text(bars: int, find: str = "everything") -> str:
    panels = max(2, (bars + 1) // 4)
    middle = panels // 2
    text = f"title: Footway of {4 * panels - 1} bars\nunits: m, kN\npoints:\n"
    text += "".join(f"  L{k}: [{4 * k}, 0]\n" for k in range(panels + 1)) + "".join(f"  U{k}: [{4 * k + 2}, 3]\n" for k in range(panels))
    text += f"links:\n  - {'-'.join(f'L{k}' for k in range(panels + 1))}\n  - {'-'.join(f'U{k}' for k in range(panels))}\n"
    text += f"  - {'-'.join(f'L{k}-U{k}' for k in range(panels))}-L{panels}\nsupports: {{L0: pin, L{panels}: roller}}\nloads:\n"
    text += "".join(f"  - {10 + k % 3} kN at L{k} down\n" for k in range(1, panels))
    return text + f"find: [{f'L{middle}-U{middle}' if find == 'middle' else find}]\n"


def mast(bars: int, find: str = "everything", seed: int = 1) -> Problem:
    """A crooked truss: each new pin stands on two bars from the ends of one of the bars before."""
    chance = Random(f"mast {seed}")
    at = [(0, 0), (4, 0), (2, 3)]
    ends = [(0, 1), (1, 2), (0, 2)]
    while len(ends) + 2 <= bars:
        a, b = chance.choice(ends[-6:])
        x, y = chance.randint(-20, 40), chance.randint(1, 40)
        (ax, ay), (bx, by) = at[a], at[b]
        if (bx - ax) * (y - ay) != (by - ay) * (x - ax) and (x, y) not in at:
            at.append((x, y))
            ends += [(a, len(at) - 1), (b, len(at) - 1)]
    text = f"title: Crooked mast of {len(ends)} bars\nunits: m, kN\npoints:\n" + "".join(f"  N{k}: [{x}, {y}]\n" for k, (x, y) in enumerate(at))
    text += f"links: [{', '.join(f'N{a}-N{b}' for a, b in ends)}]\nsupports: {{N0: pin, N1: roller}}\nloads:\n"
    text += "".join(f"  - {5 + k} kN at N{k} down\n  - 7 kN at N{k} right\n" for k in range(2, len(at), 3))
    middle = ends[len(ends) // 2]
    return _read(text + f"find: [{f'N{middle[0]}-N{middle[1]}' if find == 'middle' else find}]\n")


def _read(text: str) -> Problem:
    reading = read_text(text)
    if reading.problem is None or any(d.is_error for d in reading.diagnostics):
        raise AssertionError([(d.code, d.arguments) for d in reading.diagnostics])
    return reading.problem
