"""A piece of a page shut off from the page around it: styles that reach only into it, and names that nothing else bears."""

from __future__ import annotations

import hashlib
import re

SHUT = "unpin-shown"
"""The class of the element around a piece."""

_BLOCK = re.compile(r"\s*(?:/\*.*?\*/\s*)*([^{}]+)\{", re.DOTALL)
_WHOLE = {"html", "body", ":root"}

# How hosts of notebooks mark their own colours, above whatever they show: by an attribute or a class (from memory).
_HOST_DARK = ('[data-jp-theme-light="false"]', ".vscode-dark")
_HOST_LIGHT = ('[data-jp-theme-light="true"]', ".vscode-light")


def scoped(style: str, scope: str) -> str:
    """A style sheet in which every rule holds inside `scope` only; what is said of the page itself is said of the scope. The colours are
    those of the host where it says which it has. Rules for printing are left out."""
    rules = "".join(_rules(style, scope))
    light, dark = _inks(style)
    hosts = f"{_of(_HOST_LIGHT, scope)}{{{light}}}\n{_of(_HOST_DARK, scope)}{{color-scheme:dark;{dark}}}\n"
    own = f'{scope}[data-colours="light"]{{{light}}}\n{scope}[data-colours="dark"]{{color-scheme:dark;{dark}}}\n'
    return f"{rules}{hosts}{own}{scope}{{margin:0;padding:1rem;max-width:66rem}}\n{scope} summary{{cursor:pointer;font-weight:700}}\n"


def named_apart(content: str) -> str:
    """The content with its own beginning before every id and what refers to one. The beginning comes from the content, so that the same
    content is always the same text."""
    mark = "u" + hashlib.sha256(content.encode()).hexdigest()[:10] + "-"
    content = re.sub(r'(\s(?:id|aria-labelledby|aria-describedby)=")([^"]+)"', lambda m: f'{m[1]}{mark}{m[2]}"', content)
    content = re.sub(r'(\shref="#)([^"]+)"', lambda m: f'{m[1]}{mark}{m[2]}"', content)
    return re.sub(r"url\(#([^)]+)\)", lambda m: f"url(#{mark}{m[1]})", content)


def _of(hosts: tuple[str, ...], scope: str) -> str:
    return ",".join(f"{host} {scope}:not([data-colours])" for host in hosts)


def _inks(style: str) -> tuple[str, str]:
    """The declarations of the light and of the dark colours."""
    found = re.findall(r"((?:\s*--[\w-]+:[^;{}]+;)+)", style)
    return "color-scheme:light;" + " ".join(found[0].split()), " ".join(found[1].split())


def _rules(style: str, scope: str):
    place = 0
    while found := _BLOCK.match(style, place):
        head, start = found[1].strip(), found.end()
        end = _closing(style, start)
        body = style[start:end]
        place = end + 1
        if head.startswith("@media"):
            if "print" not in head:
                yield f"{head}{{{''.join(_rules(body, scope))}}}\n"
        elif not head.startswith("@"):
            yield f"{', '.join(_within(s.strip(), scope) for s in head.split(','))}{{{body}}}\n"


def _within(selector: str, scope: str) -> str:
    """A selector held inside the scope."""
    first = re.match(r":root|[\w-]+", selector)
    if first and first[0] in _WHOLE:
        return scope + selector[len(first[0]):]
    return f"{scope} {selector}"


def _closing(text: str, start: int) -> int:
    """Where the block that begins at `start` ends."""
    depth = 1
    for place in range(start, len(text)):
        depth += {"{": 1, "}": -1}.get(text[place], 0)
        if not depth:
            return place
    raise ValueError(text[start:start + 40])
