"""The routes of the desk; each reads its request, makes one call and gives plain data back."""

from __future__ import annotations

import json
from collections.abc import Callable
from contextlib import asynccontextmanager
from importlib.resources import files
from pathlib import PurePosixPath
from time import perf_counter
from typing import Any

from unpin.model.house import PLAIN, House
from unpin.words.sentences import catalogue, say
from unpin.workbench import editing, hand, looking, publishing, readings, sayings, ways
from unpin.workbench.beneath import Pictures
from unpin.workbench.folder import Folder, Refused
from unpin.workbench.guard import Guard
from unpin.workbench.jobs import Jobs

ROOM = "unpin.workbench"
KINDS = {".html": "text/html; charset=utf-8", ".js": "text/javascript; charset=utf-8", ".css": "text/css; charset=utf-8", ".svg": "image/svg+xml",
         ".txt": "text/plain; charset=utf-8"}


def desk(folder: Folder, hosts: tuple[str, ...], language: str = "en"):
    """The server as an ASGI application over one folder. `hosts`: `name:port` that requests may be addressed to."""
    from starlette.applications import Starlette
    from starlette.concurrency import run_in_threadpool
    from starlette.requests import Request
    from starlette.responses import JSONResponse, Response
    from starlette.routing import Route

    jobs = Jobs()

    def answer(made: Any, seconds: float):
        if isinstance(made, tuple):
            body, kind, more = made
            return Response(body, media_type=kind, headers=more)
        return JSONResponse(made, headers={"Server-Timing": f"engine;dur={1000 * seconds:.1f}"})

    def wording(code: str, **more: object) -> str:
        return say(f"desk.fault.{code}", language, **more) if f"fault.{code}" in catalogue("desk", language) else say("desk.fault.other", language)

    def refusal(refused: Refused):
        told = {k: v for k, v in refused.more.items() if k in ("text", "stamp")}
        return JSONResponse({"ok": False, "code": refused.code, "message": wording(refused.code, **refused.more), **told}, refused.status)

    def route(path: str, do: Callable[[dict[str, Any]], Any], method: str = "POST") -> Route:
        async def handle(request: Request):
            try:
                data = dict(request.query_params) | dict(request.path_params)
                if method == "POST":
                    data |= _record(await request.body())
                began = perf_counter()
                made = await run_in_threadpool(do, data)
                return answer(made, perf_counter() - began)
            except Refused as refused:
                return refusal(refused)
            except (KeyError, TypeError, ValueError, IndexError) as fault:
                return JSONResponse({"ok": False, "code": "request", "message": wording("request"), "what": type(fault).__name__}, 400)

        return Route(path, handle, methods=[method])

    async def lost(request, fault):
        return JSONResponse({"ok": False, "code": "no_page", "message": wording("no_page")}, getattr(fault, "status_code", 404))

    routes = [route(path, do, method) for path, method, do in _routes(folder, jobs, language)]

    @asynccontextmanager
    async def life(app):
        yield
        jobs.close()

    app = Starlette(routes=routes, exception_handlers={404: lost, 405: lost}, lifespan=life)
    return Guard(app, hosts, lambda code: say(code, language))


def _record(body: bytes) -> dict[str, Any]:
    found = json.loads(body or b"{}")
    if not isinstance(found, dict):
        raise ValueError
    return found


def _routes(folder: Folder, jobs: Jobs, language: str):
    """Path, method, and what to do with the request as a record."""
    pictures = Pictures()

    def wanted(d, **more):
        return publishing.wanted({**d, **more}, folder, language, pictures.named(str(d.get("beneath") or "")))

    def look(d):
        seen = looking.look(_text(d), str(d.get("name", "")), float(d.get("scale") or 0), tuple(d.get("want") or ("figure",)), language,
                            _style(folder), int(d.get("freedom") or 0))
        return {**seen, "since": d.get("since")}

    def edit(d):
        """The acts done; with `look`, what is then to be seen, in the same reply."""
        made = editing.edited(_text(d), d["acts"], language)
        return {**made, "look": look({**d["look"], "text": made["text"]})} if "look" in d else made

    def example(d):
        from unpin import bundled

        source = bundled.path_of(str(d["example"]))
        if source is None:
            raise Refused("no_file", 404)
        text = source.read_text("utf-8")
        name = _free(folder, source.name)
        return {"ok": True, "name": name, "text": text, "stamp": folder.save(name, text, None)}

    def completed(d):
        options = readings.completions(_text(d), str(d["section"]), str(d["phrase"]), int(d["at"]), language)
        return {"ok": True, "options": options, "ways": _ways(d, language)}

    def published(d):
        w = wanted(d)
        if d.get("save"):
            return {"ok": True, "file": publishing.saved(w, folder)}
        if d.get("page"):
            body, pages = publishing.page(w, int(d["page"]))
            return body, "image/png", {"X-Pages": str(pages)}
        body, kind = publishing.preview(w)
        return body, kind, {"Content-Security-Policy": _framed(w.ending), "X-Frame-Options": "SAMEORIGIN"}

    def file(d):
        found = folder.read(str(d["name"]))
        return {"ok": True, "name": found.name, "text": found.text, "stamp": found.stamp}

    def found(d):
        result = jobs.result(str(d["job"]), min(20.0, float(d.get("seconds", 20))))
        if result is None:
            raise Refused("no_job", 404)
        if not result.get("ok"):
            raise Refused(str(result.get("code")), 422)
        return result

    def cancel(d):
        jobs.cancel(str(d["job"]))
        return {"ok": True}

    return [
        ("/", "GET", lambda d: _web("index.html")),
        ("/web/{path:path}", "GET", lambda d: _web(str(d["path"]))),
        ("/faces.css", "GET", lambda d: (_faces(), KINDS[".css"], {"Cache-Control": "private, max-age=86400"})),
        ("/words", "GET", lambda d: {"ok": True, "language": language, "words": catalogue("desk", language)}),
        ("/folder", "GET", lambda d: _listed(folder)),
        ("/file", "GET", file),
        ("/stamp", "GET", lambda d: {"ok": True, "stamp": folder.stamp(str(d["name"]))}),
        ("/save", "POST", lambda d: {"ok": True, "stamp": folder.save(str(d["name"]), str(d["text"]), d.get("stamp"))}),
        ("/copy", "POST", example),
        ("/look", "POST", look),
        ("/edit", "POST", edit),
        ("/sayings", "POST", lambda d: {"ok": True, "sayings": sayings.sayings(_text(d), d["touched"]), "ways": _ways(d, language)}),
        ("/read", "POST", lambda d: {"ok": True, **readings.read(_text(d), str(d["line"]), d.get("touched") or (), language)}),
        ("/complete", "POST", completed),
        ("/body", "POST", lambda d: hand.isolated(_text(d), d["bodies"], d.get("sums") or (), language, _style(folder))),
        ("/hand", "POST", lambda d: hand.hand(_text(d), d["sums"], language, _style(folder))),
        ("/route", "POST", lambda d: {"ok": True, "job": jobs.start(_text(d), str(d.get("kind", "recommended")), language)}),
        ("/route", "GET", found),
        ("/route/cancel", "POST", cancel),
        ("/beneath", "POST", lambda d: {"ok": True, "key": pictures.take(d)}),
        ("/publish", "POST", published),
        ("/teach", "POST", lambda d: _page(wanted(d, ending=".html"))),
        ("/teach", "GET", lambda d: _page(wanted(d, ending=".html", text=folder.read(str(d["name"])).text))),
    ]


def _ways(d: dict[str, Any], language: str) -> list[dict[str, Any]]:
    """Directions that the one thing that is touched may have instead of its own."""
    touched = d.get("touched") or ()
    return ways.ways(_text(d), str(touched[0]), language, str(d.get("phrase") or "")) if len(touched) == 1 else []


def _style(folder: Folder) -> House:
    """The house style of the folder; while it has faults the figure stays up without it."""
    try:
        return publishing.house_of(folder)
    except Refused:
        return PLAIN


def _text(d: dict[str, Any]) -> str:
    text = d["text"]
    if not isinstance(text, str):
        raise TypeError
    return text


def _page(w: publishing.Wanted):
    body, kind = publishing.preview(w)
    return body, kind, {"Content-Security-Policy": _framed(".html")}


def _framed(ending: str) -> str:
    """What a published page may do when it is shown here: what its own policy allows, in a frame of ours. Its scripts and styles are
    named there by their hash."""
    if ending == ".html":
        return "frame-ancestors 'self'; object-src 'none'; connect-src 'none'; form-action 'none'; base-uri 'none'"
    return "default-src 'none'; style-src 'unsafe-inline'; font-src data:; frame-ancestors 'self'"


def _web(path: str) -> tuple[bytes, str, dict[str, str]]:
    """A file of the page. Only plain names below the folder of the page are looked up."""
    parts = PurePosixPath(path).parts
    kind = KINDS.get(PurePosixPath(path).suffix)
    if kind is None or not parts or any(p in ("..", ".", "/") or p.startswith(".") or "\\" in p or ":" in p for p in parts):
        raise Refused("no_page", 404)
    place = files(ROOM).joinpath("web", *parts)  # "web" is no package: below one, each Python joins paths alike
    if not place.is_file():
        raise Refused("no_page", 404)
    return place.read_bytes(), kind, {}


def _faces() -> bytes:
    from unpin.render import html

    return html.typefaces().encode()


def _listed(folder: Folder) -> dict[str, Any]:
    from unpin import bundled

    listed = [{"name": n, "title": _title(folder, n)} for n in folder.names()]
    return {"ok": True, "name": folder.path.name, "files": listed, "examples": [{"name": n, "title": bundled.title_of(n)} for n in bundled.names()]}


def _title(folder: Folder, name: str) -> str:
    try:
        text = folder.read(name).text
    except Refused:
        return ""
    line = next((x for x in text.splitlines() if x.startswith("title:")), "")
    return line.removeprefix("title:").strip().strip("\"'")[:200]


def _free(folder: Folder, name: str) -> str:
    """The name, with a number where it is taken."""
    stem, dot, ending = name.rpartition(".")
    taken = set(folder.names())
    k = 1
    while name in taken:
        k += 1
        name = f"{stem}-{k}{dot}{ending}"
    return name
