"""Imports point one way, modules stay short, and ARCHITECTURE.md names every room."""

import ast
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "src" / "unpin"

MAY_IMPORT = {
    "base": set(),
    "exact": {"base"},
    "model": {"base", "exact"},
    "words": {"base", "exact"},
    "read": {"base", "exact", "model"},
    "statics": {"base", "exact", "model"},
    "draw": {"base", "exact", "model"},
    "route": {"base", "exact", "model", "statics"},
    "lesson": {"base", "exact", "model", "words", "statics", "route", "draw"},
    "render": {"base", "exact", "model", "words", "statics", "route", "lesson", "draw"},
}
MAY_IMPORT["workbench"] = {*MAY_IMPORT["render"], "render", "read", "api", "bundled", "houses", "lock", "output", "pictures", "publish"}
EDGE = {"amend", "cli", "commands", "handouts", "houses", "lock", "notebook", "api", "__init__", "__main__", "bundled", "options", "output", "pictures", "publish", "register"}
"""The edge of the house: arguments to calls, and the small public interface. These may import every room."""

HEAVY = {"typst", "mpmath", "numpy", "sympy", "flint", "fontTools", "yaml", "jsonschema", "starlette", "uvicorn"}
"""Libraries that cost at start-up or are not always needed: imported inside the function that needs them."""

LONGEST = 400


def modules():
    return sorted(PACKAGE.rglob("*.py"))


def room_of(path: Path) -> str:
    first = path.relative_to(PACKAGE).parts[0]
    return first.removesuffix(".py")


def imports(path: Path):
    """(module, whether it is at module level) of every import."""
    tree = ast.parse(path.read_text("utf-8"))
    top = set(map(id, tree.body))
    for node in ast.walk(tree):
        names = [a.name for a in node.names] if isinstance(node, ast.Import) else [node.module] if isinstance(node, ast.ImportFrom) and node.module else []
        for name in names:
            yield name, id(node) in top


@pytest.mark.parametrize("path", modules(), ids=lambda p: str(p.relative_to(PACKAGE)))
def test_a_room_imports_only_rooms_it_may(path):
    room = room_of(path)
    if room in EDGE:
        return
    allowed = MAY_IMPORT[room] | {room}

    for name, _ in imports(path):
        parts = name.split(".")
        if parts[0] == "unpin" and len(parts) > 1:
            assert parts[1] in allowed, f"{room} imports {name}"


@pytest.mark.parametrize("path", [p for p in modules() if "unpin/render/" in p.as_posix()], ids=lambda p: p.name)
def test_a_format_imports_no_other_format(path):
    formats = {p.stem for p in (PACKAGE / "render").glob("*.py")} - {"__init__"}
    others = formats - {path.stem} - {"picture", "typeset", "page", "style"}
    if path.stem not in formats:
        return

    used = {name.split(".")[2] for name, _ in imports(path) if name.startswith("unpin.render.") and len(name.split(".")) == 3}

    assert not used & others


def test_no_two_files_of_tests_have_one_name():
    # Without packages of their own, two of one name cannot be collected together.
    names = [p.name for p in (ROOT / "tests").rglob("test_*.py")]

    assert len(names) == len(set(names)), sorted(n for n in names if names.count(n) > 1)


@pytest.mark.parametrize("path", modules(), ids=lambda p: str(p.relative_to(PACKAGE)))
def test_heavy_libraries_are_imported_where_they_are_needed(path):
    for name, at_top in imports(path):
        assert not (at_top and name.split(".")[0] in HEAVY), f"{path.name} imports {name} at the top"


def test_no_module_is_long():
    written = [*modules(), *(p for ending in ("js", "css", "typ") for p in PACKAGE.rglob(f"*.{ending}") if "lib" not in p.parts)]
    long = {str(p.relative_to(PACKAGE)): n for p in written if (n := len(p.read_text("utf-8").splitlines())) > LONGEST}

    assert not long


def test_architecture_names_every_room():
    text = (ROOT / "ARCHITECTURE.md").read_text("utf-8")
    rooms = {p.name for p in PACKAGE.iterdir() if p.is_dir() and p.name != "__pycache__"}

    named = set(re.findall(r"^\| `(\w+)`", text, flags=re.M))

    assert named == rooms
