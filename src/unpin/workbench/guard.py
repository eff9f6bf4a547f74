"""Who may ask, and what every reply carries: pages of this server on the loopback address, nobody else.

A page elsewhere cannot read or write through us: requests must name our own host (a name that is rebound to 127.0.0.1 is not
ours), must come from our own origin, and must be JSON where they change something (which a form cannot send). Replies forbid
scripts, styles and frames that are not ours.
"""

from __future__ import annotations

import json
from collections.abc import Collection

LARGEST = 24 * 1024 * 1024
"""Bytes of a request: a scanned figure, generously."""

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; font-src 'self' data:; connect-src 'self'; "
    "frame-src 'self' blob:; frame-ancestors 'self'; base-uri 'none'; form-action 'none'"
)

HEADERS = (
    (b"content-security-policy", POLICY.encode()),
    (b"x-content-type-options", b"nosniff"),
    (b"referrer-policy", b"no-referrer"),
    (b"cross-origin-opener-policy", b"same-origin"),
    (b"cross-origin-resource-policy", b"same-origin"),
    (b"cache-control", b"no-store"),
)


def faulty(code: str, status: int, message: str):
    """The one shape of a refusal: ok, code, message, and the status of the reply."""
    from starlette.responses import JSONResponse

    return JSONResponse({"ok": False, "code": code, "message": message}, status)


class Guard:
    """Wraps the application. `hosts`: what the Host header may say, with the port; empty until the port is known lets any
    loopback name pass. Refusals are worded by `say`."""

    def __init__(self, app, hosts: Collection[str], say):
        self.app, self.hosts, self.say = app, frozenset(h.lower() for h in hosts), say

    async def __call__(self, scope, receive, send) -> None:
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        refusal = self._refusal(scope)
        if refusal:
            code, status = refusal
            await self._refuse(send, code, status)
            return
        size = 0

        async def counted():
            nonlocal size
            message = await receive()
            size += len(message.get("body", b""))
            if size > LARGEST:
                raise TooLarge
            return message

        begun = False

        async def armed(message):
            nonlocal begun
            if message["type"] == "http.response.start":
                begun = True
                there = {k for k, _ in message.get("headers", ())}
                message = {**message, "headers": [*message.get("headers", ()), *(h for h in HEADERS if h[0] not in there)]}
            await send(message)

        try:
            await self.app(scope, counted, armed)
        except TooLarge:
            if not begun:
                await self._refuse(send, "too_large", 413)

    def _refusal(self, scope) -> tuple[str, int] | None:
        def every(name: bytes) -> list[str]:
            return [v.decode("latin-1").strip().lower() for k, v in scope["headers"] if k.lower() == name]

        if len(host := every(b"host")) != 1 or host[0] not in self.hosts:
            return "host", 421
        ours = {f"http://{h}" for h in self.hosts}
        if any(o and o not in ours for o in every(b"origin")) or any(s and s not in ("same-origin", "none") for s in every(b"sec-fetch-site")):
            return "origin", 403
        for length in every(b"content-length"):
            if not (length.isascii() and length.isdigit()) or len(length) > 20 or int(length) > LARGEST:
                return "too_large", 413
        if scope["method"] not in ("GET", "HEAD"):
            # Every browser names the origin of such a request; a program of the user's own may leave it out.
            if [kind.partition(";")[0].strip() for kind in every(b"content-type")] != ["application/json"]:
                return "not_json", 415
        return None

    async def _refuse(self, send, code: str, status: int) -> None:
        body = json.dumps({"ok": False, "code": code, "message": self.say(f"desk.fault.{code}")}).encode()
        await send({"type": "http.response.start", "status": status, "headers": [(b"content-type", b"application/json"), *HEADERS]})
        await send({"type": "http.response.body", "body": body})


class TooLarge(Exception):
    """A request grew beyond what is read."""
