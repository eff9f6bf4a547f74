"""The page's own modules: the pure ones in Node, the imports between layers, and the types that the comments give."""

import json
import os
import re
import shutil
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
WEB = ROOT / "src" / "unpin" / "workbench" / "web"
LAYERS = ["lib", "types", "kernels", "net", "words", "store", "acts", "gestures", "views", "main"]
"""From the bottom up; a module imports its own layer and those below."""
LONGEST = 400


def modules():
    return sorted(p for p in WEB.rglob("*.js") if p.parent.name != "lib")


def layer(path: Path) -> str:
    return path.relative_to(WEB).parts[0].removesuffix(".js")


def imports(path: Path):
    for target in re.findall(r"""^import .*?from ["'](.+?)["'];$""", path.read_text("utf-8"), flags=re.M):
        yield (path.parent / target).resolve()


def missing(what: str):
    if os.environ.get("CI"):
        pytest.fail(f"the automatic run needs {what}")
    pytest.skip(f"this test needs {what}")


@pytest.mark.parametrize("path", modules(), ids=lambda p: str(p.relative_to(WEB)))
def test_a_module_of_the_page_imports_only_layers_below_it(path):
    for target in imports(path):
        assert target.is_file(), f"{path.name} imports {target}"
        assert LAYERS.index(layer(target)) <= LAYERS.index(layer(path)), f"{path.name} imports {target.name}"


@pytest.mark.parametrize("path", [p for p in modules() if layer(p) == "kernels"], ids=lambda p: p.name)
def test_a_kernel_knows_no_document_no_store_and_no_net(path):
    text = re.sub(r"/\*.*?\*/|//[^\n]*", "", path.read_text("utf-8"), flags=re.S)

    assert not re.search(r"\b(document|window|fetch|localStorage|store|performance|Date)\b", text)


def test_only_one_module_fetches():
    assert [p.name for p in modules() if re.search(r"\bfetch\(|XMLHttpRequest|WebSocket|sendBeacon|EventSource", p.read_text("utf-8"))] == ["net.js"]


def test_markup_comes_in_through_one_door():
    doors = [p.name for p in modules() if re.search(r"innerHTML|outerHTML|insertAdjacentHTML|document\.write|unsafeHTML|createContextualFragment", p.read_text("utf-8"))]
    parsers = {p.name for p in modules() if "DOMParser" in p.read_text("utf-8")}

    assert not doors
    assert parsers <= {"markup.js", "apart.js", "shapes.js"}, "these take text or measures of it only"


def test_no_module_of_the_page_is_long():
    assert not {p.name: n for p in modules() if (n := len(p.read_text("utf-8").splitlines())) > LONGEST}


def test_every_sentence_of_the_page_stands_in_the_catalogue():
    from unpin.words.sentences import catalogue

    known = {k.removeprefix("page.") for k in catalogue("desk", "en") if k.startswith("page.")}
    known |= {k.removesuffix(".one").removesuffix(".other") for k in known}
    used = {k for p in modules() for k in re.findall(r"""\bsay\(\s*["']([\w.-]+)["']""", p.read_text("utf-8"))}

    assert not used - known


def test_no_sentence_stands_in_the_code_of_the_views():
    """Text between tags of a template is always a placeholder, a sign, or nothing."""
    for path in (p for p in modules() if layer(p) == "views"):
        for template in re.findall(r"html`(.*?)`", path.read_text("utf-8"), flags=re.S):
            bare = re.sub(r"\$\{[^}]*\}?|<[^>]*>|=>.*", " ", template)
            assert not re.search(r">\s*[A-Z][a-z]+ [a-z]+", bare), f"{path.name}: {bare.strip()[:80]}"


def test_the_kernels_do_what_their_tables_say():
    node = shutil.which("node")
    if not node:
        missing("Node")
    run = subprocess.run([node, "--experimental-default-type=module", "--no-warnings", "--test", str(Path(__file__).parent / "page")],
                         capture_output=True, text=True, env={**os.environ, "KERNELS": str(WEB / "kernels")}, timeout=120)

    assert run.returncode == 0, run.stdout[-4000:] + run.stderr[-1000:]


def test_the_types_in_the_comments_hold(tmp_path):
    homes = [os.environ.get("NODE_MODULES", ""), str(ROOT / "node_modules"), str(Path.home() / "node_modules")]
    compiler = next((p for h in filter(None, homes) if (p := Path(h) / "typescript" / "bin" / "tsc").is_file()), None)
    if compiler is None or not shutil.which("node"):
        missing("Node and TypeScript (npm install typescript, or NODE_MODULES)")
    settings = {"compilerOptions": {"checkJs": True, "allowJs": True, "strict": True, "noEmit": True, "target": "es2022", "module": "esnext", "moduleResolution": "bundler",
                                    "lib": ["es2022", "dom", "dom.iterable"], "types": [], "skipLibCheck": True}, "include": [str(WEB / "**/*.js")], "exclude": [str(WEB / "lib")]}
    (tmp_path / "tsconfig.json").write_text(json.dumps(settings))
    run = subprocess.run(["node", str(compiler), "-p", str(tmp_path / "tsconfig.json")], capture_output=True, text=True, timeout=300)

    assert run.returncode == 0, run.stdout[-6000:]
