"""The files of the page: kept for good by a browser under an address that holds for just these bytes, asked for at once by the first page."""

import re

from asking import Desk
from test_page_modules import WEB, imports, modules

from unpin.workbench.edition import Edition


def reachable():
    """What the main module needs, found by another reading of the imports."""
    found, todo = set(), [WEB / "main.js"]
    while todo:
        path = todo.pop()
        if path not in found:
            found.add(path)
            todo += imports(path)
    return {p.relative_to(WEB).as_posix() for p in found}


def test_the_first_page_has_just_the_modules_fetched_that_will_be_needed(tmp_path):
    page = Desk(tmp_path).get("/")

    early = re.findall(r'<link rel="modulepreload" href="/web/(\w+)/([^"]+)">', page.text)
    assert sorted(name for _, name in early) == sorted(reachable())
    assert {edition for edition, _ in early} == {Edition().name}
    assert page.headers["cache-control"] == "no-store" and "unsafe" not in page.headers["content-security-policy"]


def test_what_belongs_to_the_edition_is_kept_and_what_names_none_is_not(tmp_path):
    desk, name = Desk(tmp_path), Edition().name

    kept = desk.get(f"/web/{name}/acts/saving.js")
    assert kept.content == (WEB / "acts" / "saving.js").read_bytes()
    assert "immutable" in kept.headers["cache-control"] and kept.headers["content-type"].startswith("text/javascript")
    assert "content-security-policy" in kept.headers
    bare = desk.get("/web/acts/saving.js")
    assert bare.text == f'export * from "/web/{name}/acts/saving.js";\n' and bare.headers["cache-control"] == "no-store"
    for wrong in (f"/web/{'0' * 16}/main.js", f"/web/{name}/{name}/main.js", f"/web/{name}/", f"/web/{name}/nothing.js", f"/web/{name}/../app.py", f"/web/{name}/%2e%2e/app.py"):
        assert desk.get(wrong).status_code == 404, wrong


def test_an_edition_has_another_name_when_a_byte_is_another(monkeypatch):
    from unpin.workbench import edition

    first, found = Edition(), edition._found

    def changed(place, path):
        for name, data in found(place, path):
            yield name, data + b" " if name == "words.js" else data

    monkeypatch.setattr(edition, "_found", changed)
    assert Edition().name != first.name and len(first.name) == 16
    assert set(modules()) >= {WEB / m for m in first.modules() if not m.startswith("lib/")}
