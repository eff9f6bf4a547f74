"""A lesson in the format that the ending of a file's name asks for, and its figures beside it where the format holds none."""

from __future__ import annotations

import re
from pathlib import Path

from unpin.lesson.nodes import Lesson
from unpin.output import SameFile, same, save, sweep

ENDINGS = (".html", ".pdf", ".md", ".tex")
_FIGURE = {".md": "svg", ".tex": "pdf"}


def publish(lesson: Lesson, name: str, sources: tuple[str, ...] = ()) -> None:
    """Write the lesson under `name`; as Markdown or LaTeX its figures go to a folder beside it, in which figures of an earlier run
    that are not of this lesson are removed. `sources` are never overwritten (SameFile). OSError when something cannot be written."""
    ending = Path(name).suffix.lower()
    text, pictures = made(lesson, ending, folder_of(name))
    for source in sources:
        if same(name, source):
            raise SameFile(name)
    if ending in _FIGURE:
        folder = Path(name).parent / folder_of(name)
        folder.mkdir(exist_ok=True)
        for picture, data in pictures.items():
            save(str(folder / picture), data)
        sweep(folder, re.compile(rf"figure-\d+\.{_FIGURE[ending]}"), set(pictures))
    save(name, text)


def folder_of(name: str) -> str:
    """`out-figures` for out.md, without the signs that a path in Markdown or LaTeX cannot hold."""
    return re.sub(r"[^\w.-]", "-", Path(name).stem) + "-figures"


def made(lesson: Lesson, ending: str, folder: str) -> tuple[bytes, dict[str, bytes]]:
    """The file, and what belongs into the folder beside it."""
    if ending == ".html":
        from unpin.render import html

        return html.write(lesson).encode(), {}
    if ending == ".pdf":
        from unpin.render import pdf

        return pdf.write(lesson), {}
    if ending == ".md":
        from unpin.render import markdown

        return markdown.write(lesson, folder).encode(), markdown.pictures(lesson)
    from unpin.render import latex

    return latex.write(lesson, folder).encode(), latex.pictures(lesson)

