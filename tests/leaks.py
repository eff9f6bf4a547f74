"""What a reader could find in a published lesson, by eye, by ear or in the bytes; and what a faded one must not hold."""

from __future__ import annotations

import io
import re
import subprocess
from dataclasses import fields
from functools import cache

import pikepdf

import unpin
from unpin.lesson.formula import Amount, Letter
from unpin.lesson.nodes import drawings
from unpin.render.picture import svg

_GEOMETRY = re.compile(r'\s(?:d|x|y|x1|x2|y1|y2|cx|cy|r|points|transform|viewBox|width|height|font-size|stroke-[a-z]+|dx|dy)="[^"]*"')


def found(tree, kind) -> set:
    """Every formula of a kind in a tree of a lesson, in its texts and workings."""
    if isinstance(tree, kind):
        return {tree}
    if isinstance(tree, (tuple, list)):
        return set().union(*(found(t, kind) for t in tree))
    if hasattr(tree, "items"):
        items = tree.items
        return found(tuple(items()) if callable(items) else items, kind)
    if not hasattr(tree, "__dataclass_fields__"):
        return set()
    return set().union(*(found(getattr(tree, f.name), kind) for f in fields(tree) if f.name != "figure"))


def values(lesson) -> set[str]:
    """Digits of every number of a lesson that has three or more of them."""
    digits = {a.printed.digits for a in found(lesson, Amount)}
    return {plain(d) for d in digits if len(re.sub(r"\D", "", d).lstrip("0")) >= 3}


def dimensions(lesson) -> set[str]:
    """Digits of the distances and of the given loads that stand on the figures of a lesson: a diagram may show an arm before a sum uses it,
    and a couple in the unit in which its sum will count it."""
    shown = [svg(d) for d in drawings(lesson)]
    marks = [m for text in shown for m in re.findall(r'<text class="(?:dimension|slope)".*?</text>', text, re.S)]
    marks += [m for text in shown for m in re.findall(r'data-action="load\d+"[^>]* aria-label="([^"]*)"', text)]
    return {d for mark in marks for d in re.findall(r"\d[\d.]*", plain(re.sub(r"<[^>]*>", "", mark)))}


def symbols(lesson) -> set[tuple[str, str]]:
    """(letter, what stands below it) of every quantity symbol that has something below."""
    return {(x.base, x.sub) for x in found(lesson, Letter) if x.sub}


def plain(text: str) -> str:
    """Without thin spaces, and with one kind of minus."""
    return re.sub("[\u202f\u2009\u00a0]", "", text).replace("−", "-")


def of_page(html: str) -> str:
    """Text, names and data of a page or a drawing: everything but its style sheet, the script that every page has, and the places
    of lines."""
    return plain(_GEOMETRY.sub("", re.sub(r'(?s)<style>.*?</style>|xmlns="[^"]*"', "", html.replace(_script(), ""))))


@cache
def _script() -> str:
    """The script of a page that says next to nothing, which is that of every page."""
    empty = unpin.as_page(unpin.explain(unpin.check(unpin.loads("points: {A: [0, 0], B: [1, 0]}\nmembers: {bar: A B}")), drawn=False))
    return re.findall(r"(?s)<script>.*?</script>", empty)[-1]


def of_pdf(data: bytes, tmp_path) -> str:
    """Text layer, alternatives, names and metadata of a PDF."""
    shown = "\n".join(of_pdf_pages(data, tmp_path))
    told = []
    with pikepdf.open(io.BytesIO(data)) as document:
        for item in document.objects:
            told += [str(v) for v in _strings(item)]
        told.append(document.Root.Metadata.read_bytes().decode())
    return plain(" ".join([shown, *told]))


def of_pdf_pages(data: bytes, tmp_path) -> list[str]:
    """The text of each page of a PDF."""
    file = tmp_path / "leak.pdf"
    file.write_bytes(data)
    shown = subprocess.run(["pdftotext", "-layout", str(file), "-"], capture_output=True, text=True, check=True).stdout
    return shown.split("\f")[:-1]


def _strings(item, depth: int = 0):
    if isinstance(item, pikepdf.String):
        yield item
    elif isinstance(item, pikepdf.Array):
        for inner in item:
            if not getattr(inner, "is_indirect", False):
                yield from _strings(inner, depth + 1)
    elif isinstance(item, (pikepdf.Dictionary, pikepdf.Stream)):
        for key, inner in item.items():
            if key not in ("/ID", "/W", "/Widths") and not getattr(inner, "is_indirect", False):
                yield from _strings(inner, depth + 1)


def holds_value(text: str, digits: str) -> bool:
    return re.search(rf"(?<![\d.]){re.escape(digits)}(?!\d|\.\d)", text) is not None


def holds_symbol(text: str, base: str, sub: str) -> bool:
    """As mathematics of any format, as an id, or spoken."""
    forms = (f"{base}_{sub}", f"{base} {sub}", f"{base}_{{{sub}}}", f"{base}_{{\\mathit{{{sub}}}}}",
             f"<mi>{base}</mi><mi>{sub}</mi>", f"<mi>{base}</mi><mrow><mi>{sub}</mi>")
    return any(re.search(rf"(?<![A-Za-z]){re.escape(form)}(?![A-Za-z])", text) for form in forms)
