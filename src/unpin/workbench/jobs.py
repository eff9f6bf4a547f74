"""Searches that may take long, in a process of their own; a new one calls off the one before, and each can be called off."""

from __future__ import annotations

import json
import subprocess
import sys
import threading
from collections.abc import Mapping
from itertools import count
from time import monotonic
from typing import Any

KEPT = 16
"""Results that are kept until they are asked for."""
UNASKED = 60.0
"""After so many seconds in which nobody has asked for its result a search is called off: its window has been closed."""


def program(module: str) -> list[str]:
    """The command that runs a module of ours. What lies in the folder that the desk is opened in is never run: it is not on the path."""
    return [sys.executable, "-P", "-m", module]


class Jobs:
    """At most one search at a time: nobody waits for the route of a figure that has changed."""

    def __init__(self, unasked: float = UNASKED) -> None:
        self._unasked = unasked
        self._asked = monotonic()
        self._number = count(1)
        self._state: dict[str, Mapping[str, Any]] = {}
        self._running: tuple[str, subprocess.Popen] | None = None
        self._lock = threading.Condition()

    def start(self, text: str, kind: str, language: str) -> str:
        """Begin a search; returns its name."""
        process = subprocess.Popen(program("unpin.workbench.search"), stdin=subprocess.PIPE, stdout=subprocess.PIPE,
                                   stderr=subprocess.DEVNULL)
        with self._lock:
            job = str(next(self._number))
            self._call_off()
            self._state[job] = {"ok": True, "job": job, "state": "running"}
            for old in list(self._state)[:-KEPT]:
                del self._state[old]
            self._running = (job, process)
            self._asked = monotonic()
        request = json.dumps({"text": text, "kind": kind, "language": language}).encode()
        threading.Thread(target=self._wait, args=(job, process, request), daemon=True).start()
        return job

    def _wait(self, job: str, process: subprocess.Popen, request: bytes) -> None:
        try:
            result = json.loads(self._found(job, process, request))
        except (OSError, ValueError):
            result = {"ok": False, "code": "search"}
        with self._lock:
            if self._state.get(job, {}).get("state") == "running":
                self._state[job] = {**result, "job": job, "state": "done"}
            if self._running and self._running[0] == job:
                self._running = None
            self._lock.notify_all()

    def _found(self, job: str, process: subprocess.Popen, request: bytes) -> bytes:
        sent: bytes | None = request
        while True:
            try:
                return process.communicate(sent, timeout=self._unasked / 4)[0]
            except subprocess.TimeoutExpired:
                sent = None  # what was begun to be sent is sent on
                with self._lock:
                    left = monotonic() - self._asked > self._unasked
                if left:
                    self.cancel(job)

    def cancel(self, job: str) -> None:
        with self._lock:
            if self._running and self._running[0] == job:
                self._call_off()
                self._lock.notify_all()

    def _call_off(self) -> None:
        if self._running:
            job, process = self._running
            process.kill()
            self._state[job] = {"ok": True, "job": job, "state": "cancelled"}
            self._running = None

    def result(self, job: str, seconds: float) -> Mapping[str, Any] | None:
        """What has become of a job, after at most so many seconds; None for one that was never begun."""
        with self._lock:
            self._asked = monotonic()
            self._lock.wait_for(lambda: self._state.get(job, {}).get("state") != "running", timeout=seconds)
            self._asked = monotonic()
            return self._state.get(job)

    def close(self) -> None:
        with self._lock:
            self._call_off()
