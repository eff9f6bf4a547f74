"""The routes of the desk; each reads its request, makes one call and gives plain data back."""

from __future__ import annotations

import asyncio
import json
from collections.abc import Callable
from contextlib import asynccontextmanager
from typing import Any

from unpin.words.sentences import catalogue, say
from unpin.workbench.beneath import Pictures
from unpin.workbench.edition import KINDS, Edition
from unpin.workbench.engine import Call, Engine
from unpin.workbench.folder import Folder, Refused
from unpin.workbench.guard import Guard, TooLarge
from unpin.workbench.jobs import Jobs
from unpin.workbench.questions import Reply, answered, questions, written

GRACE = 0.5
"""Seconds for which the work for a window that has gone goes on: what ends by then need not be stopped, which costs a new process."""


def desk(folder: Folder, hosts: tuple[str, ...], language: str = "en", engine: Engine | None = None):
    """The server as an ASGI application over one folder. `hosts`: `name:port` that requests may be addressed to. `engine`: who answers
    what needs the engine; without one it is answered in this process."""
    from starlette.applications import Starlette
    from starlette.concurrency import run_in_threadpool
    from starlette.requests import Request
    from starlette.responses import JSONResponse, Response
    from starlette.routing import Route

    jobs = Jobs()

    def answer(made: Any):
        if isinstance(made, Reply):
            made = (made.body, made.kind, made.more)
        if isinstance(made, tuple):
            body, kind, more = made
            return Response(body, media_type=kind, headers=dict(more))
        return JSONResponse(made)

    def wording(code: str, **more: object) -> str:
        return say(f"desk.fault.{code}", language, **more) if f"fault.{code}" in catalogue("desk", language) else say("desk.fault.other", language)

    def refusal(refused: Refused):
        told = {k: v for k, v in refused.more.items() if k in ("text", "stamp", "what")}
        return JSONResponse({"ok": False, "code": refused.code, "message": wording(refused.code, **refused.more), **told}, refused.status)

    def route(path: str, do: Callable[[dict[str, Any], Call], Any], method: str = "POST") -> Route:
        async def handle(request: Request):
            try:
                data = dict(request.query_params) | dict(request.path_params)
                if method == "POST":
                    data |= _record(await request.body())
                call = Call()
                work = asyncio.ensure_future(run_in_threadpool(do, data, call))
                gone = asyncio.ensure_future(_gone(request))
                await asyncio.wait((work, gone), return_when=asyncio.FIRST_COMPLETED)
                if gone.done() and not (await asyncio.wait((work,), timeout=GRACE))[0]:
                    call.call_off()
                gone.cancel()
                return answer(await work)
            except TooLarge:
                return refusal(Refused("too_large", 413))
            except Refused as refused:
                return refusal(refused)
            except (KeyError, TypeError, ValueError, IndexError, OverflowError, RecursionError) as fault:
                return refusal(Refused("request", 400, what=type(fault).__name__))
            except Exception as fault:
                return refusal(Refused("defect", 500, what=type(fault).__name__))

        return Route(path, handle, methods=[method])

    async def lost(request, fault):
        return JSONResponse({"ok": False, "code": "no_page", "message": wording("no_page")}, getattr(fault, "status_code", 404))

    edition = Edition()

    async def page(request: Request):
        """A file of the page: in hand already, so that no thread is waited for."""
        try:
            return answer(edition.file(request.path_params["path"]) if request.path_params else edition.first())
        except Refused as refused:
            return refusal(refused)

    routes = [Route("/", page), Route("/web/{path:path}", page)]
    routes += [route(path, do, method) for path, method, do in _routes(folder, jobs, language, engine)]

    @asynccontextmanager
    async def life(app):
        if engine:
            engine.start()
        yield
        jobs.close()
        if engine:
            engine.close()

    app = Starlette(routes=routes, exception_handlers={404: lost, 405: lost}, lifespan=life)
    return Guard(app, hosts, lambda code: say(code, language))


async def _gone(request) -> None:
    """Returns when nobody waits for the reply any more."""
    while (await request.receive())["type"] != "http.disconnect":
        pass


def _record(body: bytes) -> dict[str, Any]:
    found = json.loads(body or b"{}")
    if not isinstance(found, dict):
        raise ValueError
    return found


def _routes(folder: Folder, jobs: Jobs, language: str, engine: Engine | None):
    """Path, method, and what to do with the request as a record."""
    pictures = Pictures()
    known = questions(folder, language)

    def asked(path: str) -> Callable[[dict[str, Any], Call], Any]:
        def do(d, call):
            d = {**d, "picture": pictures.named(str(d.get("beneath") or ""))}  # ours in any case: what a request says of one is not looked at
            return engine.answer(path, d, call) if engine else answered(known, path, d)

        return do

    def alone(do: Callable[[dict[str, Any]], Any]) -> Callable[[dict[str, Any], Call], Any]:
        return lambda d, call: do(d)

    def example(d):
        from unpin import bundled

        source = bundled.path_of(str(d["example"]))
        if source is None:
            raise Refused("no_file", 404)
        text = source.read_text("utf-8")
        name = _free(folder, source.name)
        return {"ok": True, "name": name, "text": text, "stamp": folder.save(name, text, None)}

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

    quick = [
        ("/faces.css", "GET", lambda d: (_faces(), KINDS[".css"], {"Cache-Control": "private, max-age=86400"})),
        ("/words", "GET", lambda d: {"ok": True, "language": language, "words": catalogue("desk", language)}),
        ("/folder", "GET", lambda d: _listed(folder)),
        ("/file", "GET", file),
        ("/stamp", "GET", lambda d: {"ok": True, "stamp": folder.stamp(str(d["name"]))}),
        ("/save", "POST", lambda d: {"ok": True, "stamp": folder.save(str(d["name"]), written(d), d.get("stamp"))}),
        ("/copy", "POST", example),
        ("/route", "POST", lambda d: {"ok": True, "job": jobs.start(written(d), str(d.get("kind", "recommended")), language)}),
        ("/route", "GET", found),
        ("/route/cancel", "POST", cancel),
        ("/beneath", "POST", lambda d: {"ok": True, "key": pictures.take(d)}),
    ]
    taught = asked("/teach")
    return [
        *((path, method, alone(do)) for path, method, do in quick),
        *((path, "POST", asked(path)) for path in known),
        ("/teach", "GET", lambda d, call: taught({**d, "text": folder.read(str(d["name"])).text}, call)),
    ]


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
