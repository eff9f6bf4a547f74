"""The one door to the typesetter: our fonts only, no date, nothing fetched, the same bytes each time."""

from __future__ import annotations

import base64
import re
from collections.abc import Mapping
from pathlib import Path
from tempfile import TemporaryDirectory


class TypesetterMissing(Exception):
    """The library that makes PDF and PNG is not installed."""


def compile_document(source: str, pictures: Mapping[str, str], form: str, ppi: float = 300) -> bytes:
    """Typst source with its pictures (name to SVG) as `pdf` or `png` bytes (of the first page). PDF is PDF/UA-1."""
    return _compiled(source, pictures, form, ppi)[0]


def pages(source: str, pictures: Mapping[str, str], ppi: float = 300) -> list[bytes]:
    """Every page as PNG."""
    return _compiled(source, pictures, "png", ppi)


def in_lines(source: str, pictures: Mapping[str, str], standing: Mapping[str, str]) -> list[bytes]:
    """Every page as SVG that needs nothing beside it, at any size without a dot. `standing`: the pictures as they stand alone, with
    their typefaces inside: a page of ours takes those in, where the typesetter knows the typefaces by name."""
    inside = {_as_data(text): _as_data(standing[name]) for name, text in pictures.items()}
    return [_ADDRESS.sub(lambda m: inside.get(m[0], m[0]), page.decode()).encode() for page in _compiled(source, pictures, "svg", 72)]


_ADDRESS = re.compile(r"data:image/svg\+xml;base64,[A-Za-z0-9+/=]+")


def _as_data(text: str) -> str:
    return f"data:image/svg+xml;base64,{base64.b64encode(text.encode()).decode()}"


def dots(data: bytes, kind: str, across: int) -> bytes:
    """A picture (`kind` png or jpg) decoded, set upright and written as PNG, `across` dots wide. ValueError when it cannot be read."""
    source = f'#set page(width: auto, height: auto, margin: 0pt, fill: none)\n#image("picture.{kind}", width: {across}pt)\n'
    with TemporaryDirectory() as folder:  # what is given to the typesetter by name must be text
        Path(folder, f"picture.{kind}").write_bytes(data)
        Path(folder, "main.typ").write_text(source, "utf-8")
        try:
            return _made(str(Path(folder, "main.typ")), "png", 72)[0]
        except RuntimeError as fault:
            raise ValueError(kind) from fault


def _compiled(source: str, pictures: Mapping[str, str], form: str, ppi: float) -> list[bytes]:
    return _made({"main.typ": source.encode(), **{name: text.encode() for name, text in pictures.items()}}, form, ppi)


def _made(files: str | dict[str, bytes], form: str, ppi: float) -> list[bytes]:
    try:
        import typst
    except ImportError as error:
        raise TypesetterMissing from error
    from unpin.draw.fonts import opentype_folder

    fonts = typst.Fonts(include_system_fonts=False, include_embedded_fonts=False, font_paths=[str(opentype_folder())])
    options = {"pdf_standards": "ua-1", "timestamp": 0} if form == "pdf" else {"ppi": ppi}
    try:
        made = typst.compile(files, format=form, font_paths=fonts, **options)
    except typst.TypstError as error:
        if form != "pdf" or "could not be displayed with" not in f"{error.message}":
            raise
        # A sign that our fonts do not hold: it is shown as a box, and the file no longer says that it can be read by everybody.
        made = typst.compile(files, format=form, font_paths=fonts, timestamp=0)
    return made if isinstance(made, list) else [made]
