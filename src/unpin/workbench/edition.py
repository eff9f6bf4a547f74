"""The files of the page in one edition: as they were when the desk was started, under an address that holds for just these bytes.

What has such an address may be kept by a browser for good, so that a second opening asks for none of it; the first page of the desk names
the edition, and is never kept. Which modules it will need is read from what they import.
"""

from __future__ import annotations

import hashlib
import re
from importlib.resources import files
from posixpath import dirname, join, normpath, splitext

from unpin.workbench.folder import Refused

ROOM = "unpin.workbench"
KINDS = {".html": "text/html; charset=utf-8", ".js": "text/javascript; charset=utf-8", ".css": "text/css; charset=utf-8", ".svg": "image/svg+xml",
         ".txt": "text/plain; charset=utf-8"}
FOR_GOOD = {"Cache-Control": "private, max-age=31536000, immutable"}
FIRST, MAIN = "index.html", "main.js"
_IMPORT = re.compile(r"""^(?:import|export)\b[^"';]*?["'](\.{1,2}/[^"']+)["'];""", re.M)

File = tuple[bytes, str, dict[str, str]]
"""Bytes, what they are, and what more the head of the reply says."""


class Edition:
    """`name`: changes with any byte of any file."""

    def __init__(self) -> None:
        self._files = dict(sorted(_found(files(ROOM).joinpath("web"), "")))  # "web" is no package: below one, each Python joins paths alike
        told = hashlib.sha256()
        for path, data in self._files.items():
            told.update(f"{path}\0{len(data)}\0".encode() + data)
        self.name = told.hexdigest()[:16]

    def modules(self) -> list[str]:
        """Every module that the page needs, each after the one that first asks for it."""
        found = [MAIN]
        for path in found:
            text = self._files[path].decode("utf-8")
            wanted = (normpath(join(dirname(path), target)) for target in _IMPORT.findall(text))
            found += [w for w in dict.fromkeys(wanted) if w not in found]
        return found

    def first(self) -> File:
        """The first page; it has every module fetched at once, where one would else be asked for by the other."""
        text = self._files[FIRST].decode("utf-8").replace('="/web/', f'="/web/{self.name}/')
        early = "".join(f'<link rel="modulepreload" href="/web/{self.name}/{path}">\n' for path in self.modules())
        return text.replace("</head>", f"{early}</head>").encode(), KINDS[".html"], {}

    def file(self, path: str) -> File:
        """A file by its address below /web. A module that is asked for without an edition leads to the one in it, so that no page ever
        holds two of one. Refused where there is none."""
        edition, _, rest = path.partition("/")
        kept = edition == self.name
        data, kind = self._files.get(rest if kept else path), KINDS.get(splitext(path)[1])
        if data is None or kind is None:
            raise Refused("no_page", 404)
        if kept:
            return data, kind, FOR_GOOD
        return (f'export * from "/web/{self.name}/{path}";\n'.encode() if path.endswith(".js") else data), kind, {}


def _found(place, path: str):
    for entry in place.iterdir():
        below = f"{path}/{entry.name}".lstrip("/")
        if entry.is_dir():
            yield from _found(entry, below)
        elif splitext(entry.name)[1] in KINDS:
            yield below, entry.read_bytes()
