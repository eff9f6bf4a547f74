"""The program that answers questions for the engine: one after the other from standard input, each reply to standard output."""

from __future__ import annotations

import os
import pickle
import signal
import sys
import threading
import time
from typing import Any


def main(folder: str, language: str, memory: int) -> None:
    replies = os.fdopen(os.dup(sys.stdout.fileno()), "wb")
    os.dup2(sys.stderr.fileno(), sys.stdout.fileno())  # nothing that a library prints comes between replies
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # the server ends us
    end_with_parent()
    bounded(memory)
    from unpin.workbench.folder import Folder
    from unpin.workbench.questions import questions

    known = questions(Folder(folder), language)
    warm(language)
    while True:
        try:
            path, data = pickle.load(sys.stdin.buffer)
        except EOFError:
            return
        pickle.dump(reply(known, path, data), replies)
        replies.flush()


def reply(known: Any, path: str, data: dict[str, Any]) -> tuple[str, Any]:
    """("made", the reply) or ("refused", (code, status, more)): a defect of our own is a refusal too, for the desk goes on."""
    from unpin.workbench.folder import Refused
    from unpin.workbench.questions import answered

    try:
        return "made", answered(known, path, data)
    except Refused as refused:
        return "refused", (refused.code, refused.status, refused.more)
    except (MemoryError, RecursionError):
        return "refused", ("engine", 503, {})
    except Exception as defect:
        return "refused", ("defect", 500, {"what": type(defect).__name__})


def bounded(memory: int) -> None:
    """No more than so many bytes of data, where the machine knows such a bound."""
    try:
        import resource
    except ImportError:
        return
    hard = resource.getrlimit(resource.RLIMIT_DATA)[1]
    resource.setrlimit(resource.RLIMIT_DATA, (memory if hard == resource.RLIM_INFINITY else min(memory, hard), hard))


def warm(language: str = "en") -> None:
    """Look at an example, so that everything the engine needs is read from disk before the first problem is opened; what then stays
    for good is no longer gone through by the collector of unused memory."""
    import gc

    from unpin import bundled
    from unpin.workbench.looking import look

    for name in bundled.names()[:1]:
        look(bundled.path_of(name).read_text("utf-8"), language=language)
    gc.collect()
    gc.freeze()


def end_with_parent() -> None:
    """When the server is gone, however it went, nobody waits for a reply."""
    parent = os.getppid()

    def watch() -> None:
        while os.getppid() == parent:
            time.sleep(0.5)
        os._exit(0)

    threading.Thread(target=watch, daemon=True).start()


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2], int(sys.argv[3]))
