"""Start the desk on the loopback address and nowhere else."""

from __future__ import annotations

import socket
from collections.abc import Callable
from importlib.util import find_spec
from pathlib import Path

from unpin.output import sweep_unfinished
from unpin.words.sentences import say
from unpin.workbench.folder import Folder

LOOPBACK = "127.0.0.1"


class CannotOpen(Exception):
    """The desk cannot be opened: `code` and `arguments` of the sentence that says why."""

    def __init__(self, code: str, **arguments: object):
        self.code, self.arguments = code, arguments
        super().__init__(code)


def run(folder: str | Path, port: int = 0, language: str = "en", ready: Callable[[str], None] = lambda address: None) -> None:
    """Serve a folder until the program is stopped. `port` 0: any free one. `ready` is told the address once it is open.

    Raises CannotOpen when a library is missing, the folder is none, or the port is taken."""
    for library in ("uvicorn", "starlette"):
        if find_spec(library) is None:
            raise CannotOpen("no_library", name=library)
    import uvicorn

    from unpin.workbench.app import desk
    from unpin.workbench.engine import Engine

    try:
        opened = Folder(folder)
    except NotADirectoryError as fault:
        raise CannotOpen("no_folder", folder=str(folder)) from fault
    sweep_unfinished(opened.path)
    with door_of_desk() as door:
        door.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            door.bind((LOOPBACK, port))
        except (OSError, OverflowError) as fault:
            raise CannotOpen("no_port", port=port, reason=getattr(fault, "strerror", "") or str(fault)) from fault
        number = door.getsockname()[1]
        hosts = (f"{LOOPBACK}:{number}", f"localhost:{number}")
        app = desk(opened, hosts, language, Engine(opened.path, language))
        settings = uvicorn.Config(app, log_level="critical", access_log=False, lifespan="on", timeout_graceful_shutdown=2)
        door.listen(64)
        ready(f"http://{LOOPBACK}:{number}/")
        uvicorn.Server(settings).run(sockets=[door])


def door_of_desk() -> socket.socket:
    """A socket to listen on, not yet bound. It says that it speaks TCP: only then are replies sent without waiting for the other side's
    word, which costs up to 40 ms where a reply comes in two pieces."""
    return socket.socket(socket.AF_INET, socket.SOCK_STREAM, socket.IPPROTO_TCP)


def announce(address: str, folder: str, language: str = "en", browser: bool = True) -> None:
    """Say where the desk is, and open it in the browser."""
    print(say("cli.desk_open", language, folder=folder, address=address), flush=True)
    if browser:
        import webbrowser

        webbrowser.open(address)
