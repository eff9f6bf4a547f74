"""The engine beside the server: questions are answered in processes of their own, so that one that takes too long, takes all the
memory or falls can be ended, and the desk goes on."""

from __future__ import annotations

import pickle
import subprocess
import threading
from pathlib import Path
from typing import Any

from unpin.workbench.folder import Refused
from unpin.workbench.jobs import program
from unpin.workbench.questions import Reply

MOST = 2
"""Processes: while one works on something long, the other answers what is asked in between."""
SECONDS, LONG_SECONDS = 30.0, 120.0
"""After so long a question is called off: everything else, and whole handouts."""
MEMORY = 3 << 30
"""Bytes that a process may fill."""
LONG = ("/publish", "/teach")


class Call:
    """One question on its way. It can be called off, from any thread, at any time."""

    def __init__(self) -> None:
        self.off = ""
        self._process: subprocess.Popen | None = None
        self._lock = threading.Lock()

    def call_off(self, why: str = "dropped") -> None:
        """End the work on it. `why`: code of the sentence that says so."""
        with self._lock:
            self.off = self.off or why
            if self._process:
                self._process.kill()

    def begin(self, process: subprocess.Popen) -> None:
        with self._lock:
            if self.off:
                raise Refused(self.off, 503)
            self._process = process

    def end(self) -> None:
        with self._lock:
            self._process = None


class Engine:
    """Answers for one folder in one language. `seconds`, `long_seconds`: how long a question, a handout may take; `memory`: bytes
    that a process may fill, where the machine can bound it."""

    def __init__(self, folder: Path, language: str = "en", seconds: float = SECONDS, long_seconds: float = LONG_SECONDS, memory: int = MEMORY):
        self._command = [*program("unpin.workbench.answering"), str(folder), language, str(memory)]
        self.seconds, self.long_seconds = seconds, long_seconds
        self._free: list[subprocess.Popen] = []
        self._all: set[subprocess.Popen] = set()
        self._changed = threading.Condition()
        self._closed = False

    def start(self) -> None:
        """A first process, which makes itself ready while nothing is asked yet."""
        with self._changed:
            self._more()

    def answer(self, path: str, data: dict[str, Any], call: Call | None = None) -> Reply:
        """The reply to one question; waits for it. Refused as the question refuses; `too_long` when its time is over, `engine` when
        its process fell, and as the call was called off."""
        call = call or Call()
        timer = threading.Timer(self.long_seconds if path in LONG else self.seconds, call.call_off, ("too_long",))
        timer.daemon = True
        timer.start()
        try:
            process = self._taken(call)
            try:
                call.begin(process)
                pickle.dump((path, data), process.stdin)
                process.stdin.flush()
                kind, found = pickle.load(process.stdout)
            except (OSError, EOFError, pickle.UnpicklingError) as fault:
                call.call_off("engine")
                raise Refused(call.off, 503) from fault
            finally:
                call.end()
                self._back(process, ended=bool(call.off))
        finally:
            timer.cancel()
        if kind == "refused":
            code, status, more = found
            raise Refused(code, status, **more)
        return found

    def close(self) -> None:
        """End everything; whoever still waits for a reply is refused."""
        with self._changed:
            self._closed = True
            for process in self._all:
                process.kill()
            while self._free:
                self._bury(self._free.pop())
            self._changed.notify_all()

    def _more(self) -> None:
        process = subprocess.Popen(self._command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL)
        self._all.add(process)
        self._free.insert(0, process)
        self._changed.notify()

    def _taken(self, call: Call) -> subprocess.Popen:
        """The process that answered last, if it is free: it remembers what the text says."""
        with self._changed:
            while True:
                if call.off or self._closed:
                    raise Refused(call.off or "engine", 503)
                if self._free:
                    process = self._free.pop()
                    if process.poll() is None:
                        return process
                    self._bury(process)
                elif len(self._all) < MOST:
                    self._more()
                else:
                    self._changed.wait(0.1)

    def _back(self, process: subprocess.Popen, ended: bool) -> None:
        """`ended`: it was told to end, perhaps a moment ago."""
        with self._changed:
            if ended or self._closed or process.poll() is not None:
                self._bury(process)
            else:
                self._free.append(process)
            if not self._all and not self._closed:
                self._more()
            self._changed.notify()

    def _bury(self, process: subprocess.Popen) -> None:
        """Let go of a process that nobody talks to."""
        process.kill()
        process.wait()
        self._all.discard(process)
        for pipe in (process.stdin, process.stdout):
            try:
                pipe.close()
            except OSError:
                pass  # what was still to be written has nobody who reads it
