"""Whatever a text asks of the engine, the desk goes on: what takes too long or too much is stopped with a word."""

import json
import os
import re
import socket
import subprocess
import sys
import threading
import time
import urllib.request
from pathlib import Path

import pytest

from unpin.workbench.engine import Call, Engine
from unpin.workbench.folder import Refused

BEAM = "points: {A: [0, 0], B: [1, 0]}\nmembers: {beam: A B}\nsupports: {A: fixed}\nloads: [5 N at B down]\n"


def strip(panels, upright, along):
    """A strip of bars, each point made from the one before, so that every angle stands in every coordinate after it."""
    points = "".join(f"  B{k}: {along(k) if k else '[0, 0]'}\n  T{k}: {upright(k)}\n" for k in range(panels))
    bars = [f"B{k}-T{k}" for k in range(panels)] + [f"{a}{k - 1}-{b}{k}" for k in range(1, panels) for a, b in ("BB", "TT", "BT")]
    return f"points:\n{points}links: [{', '.join(bars)}]\nsupports: {{B0: pin, B{panels - 1}: roller}}\nloads: [5 kN at T{panels // 2} down]\n"


LETTERED = f"letters: {{{', '.join(f't{k}: an angle' for k in range(20))}}}\n" + strip(20, lambda k: f"1 from B{k} at t{k}", lambda k: f"1 from B{k - 1} at 3 t{k}")
"""Twenty letter angles in a row: more than any machine can hold."""


@pytest.fixture
def engine(tmp_path):
    made = Engine(tmp_path, memory=400 << 20)
    yield made
    made.close()


def seen(engine, text=BEAM, call=None):
    return json.loads(engine.answer("/look", {"text": text}, call).body)


def test_what_takes_too_long_is_stopped_and_the_next_question_is_answered(engine):
    assert seen(engine)["sound"]

    engine.seconds = 0.3
    began = time.monotonic()
    with pytest.raises(Refused) as refused:
        seen(engine, LETTERED)
    took = time.monotonic() - began
    engine.seconds = 60

    assert (refused.value.code, refused.value.status) == ("too_long", 503)
    assert took < 10
    assert seen(engine)["sound"]


def test_what_fills_the_memory_falls_alone(engine):
    pytest.importorskip("resource")
    engine.seconds = 300
    with pytest.raises(Refused) as refused:
        seen(engine, LETTERED)

    assert refused.value.code == "engine"
    assert seen(engine)["sound"]


def test_a_question_that_nobody_waits_for_is_stopped_and_another_one_goes_past_it(engine):
    seen(engine)
    call, told = Call(), []

    def ask():
        try:
            seen(engine, LETTERED, call)
        except Refused as refused:
            told.append(refused.code)

    asking = threading.Thread(target=ask)
    asking.start()
    besides = seen(engine)["sound"]
    call.call_off()
    asking.join(10)

    assert besides and told == ["dropped"]


def test_many_questions_at_once_get_each_its_own_reply(engine):
    out = {}

    def ask(k):
        out[k] = seen(engine, f"title: T{k}\n{BEAM}")["title"]

    threads = [threading.Thread(target=ask, args=(k,)) for k in range(24)]
    for one in threads:
        one.start()
    for one in threads:
        one.join(60)

    assert out == {k: f"T{k}" for k in range(24)}


@pytest.fixture
def served(tmp_path):
    """A desk opened from within its own folder, in which lie modules with the names of libraries that it needs."""
    for name in ("yaml", "json", "parsy", "unpin", "pickle", "uvicorn"):
        (tmp_path / f"{name}.py").write_text("open('ran', 'w').close()\n")
    code = "import sys; from unpin.cli import main; sys.exit(main(sys.argv[1:]))"
    process = subprocess.Popen([sys.executable, "-P", "-c", code, "desk", ".", "--quiet"], stdout=subprocess.PIPE, text=True, cwd=tmp_path)
    yield re.search(r"http://127\.0\.0\.1:(\d+)", process.stdout.readline())[0], tmp_path, process
    process.kill()
    process.wait()
    process.stdout.close()


def send(address, path, data, timeout=60):
    request = urllib.request.Request(address + path, json.dumps(data).encode(), {"Content-Type": "application/json"})
    with urllib.request.urlopen(request, timeout=timeout) as reply:
        return json.load(reply)


def children(process):
    return set(Path(f"/proc/{process.pid}/task/{process.pid}/children").read_text().split()) | {
        child for task in Path(f"/proc/{process.pid}/task").iterdir() for child in (task / "children").read_text().split()}


def until(what, seconds=20):
    end = time.monotonic() + seconds
    while not what() and time.monotonic() < end:
        time.sleep(0.05)
    return what()


def test_what_lies_in_the_folder_is_never_run(served):
    address, folder, _ = served

    assert send(address, "/look", {"text": BEAM})["sound"]
    job = send(address, "/route", {"text": BEAM})["job"]
    json.load(urllib.request.urlopen(f"{address}/route?job={job}", timeout=60))
    assert not (folder / "ran").exists()


def begun(address):
    """A window that has asked for a long piece of work and waits."""
    body = json.dumps({"text": LETTERED}).encode()
    host = address.removeprefix("http://")
    door = socket.create_connection(host.split(":"))
    door.sendall(f"POST /look HTTP/1.1\r\nHost: {host}\r\nContent-Type: application/json\r\nContent-Length: {len(body)}\r\n\r\n".encode() + body)
    return door


@pytest.mark.skipif(not Path("/proc/self/task").exists(), reason="counts the children of a process by /proc")
def test_a_window_that_goes_away_stops_the_work_that_was_done_for_it(served):
    address, _, process = served
    send(address, "/look", {"text": BEAM})
    before = children(process)
    with begun(address):
        time.sleep(0.5)

    assert until(lambda: not before & children(process))
    assert send(address, "/look", {"text": BEAM})["sound"]


@pytest.mark.skipif(not Path("/proc/self/task").exists(), reason="counts the children of a process by /proc")
def test_nothing_goes_on_when_the_server_is_killed_in_the_middle_of_work(served):
    address, _, process = served
    send(address, "/look", {"text": BEAM})
    mine = children(process)
    with begun(address):
        time.sleep(0.3)
        process.kill()
        process.wait()

    assert mine
    assert until(lambda: not any(os.path.exists(f"/proc/{one}") and "answering" in Path(f"/proc/{one}/cmdline").read_text() for one in mine))


def test_a_search_whose_result_nobody_asks_for_any_more_is_called_off():
    from unpin.workbench.jobs import Jobs

    jobs = Jobs(unasked=1.0)
    job = jobs.start(LETTERED, "fewest", "en")
    process = jobs._running[1]

    assert until(lambda: process.poll() is not None)
    assert jobs.result(job, 0)["state"] == "cancelled"


def test_a_search_that_is_asked_for_goes_on_to_its_end():
    from unpin.workbench.jobs import Jobs

    jobs = Jobs(unasked=0.2)
    job = jobs.start(BEAM, "recommended", "en")

    assert until(lambda: jobs.result(job, 0.05)["state"] == "done")
