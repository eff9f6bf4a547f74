"""The server as a program: on the loopback address only, and nothing is lost when it is killed."""

import json
import os
import re
import signal
import socket
import subprocess
import sys
import threading
import time
import urllib.error
import urllib.request
from http.client import HTTPException
from pathlib import Path

import pytest

OLD, NEW = "title: old\n" + "# a remark\n" * 3000, "title: new\n" + "# another remark\n" * 3000


@pytest.fixture
def served(tmp_path):
    """The address of a desk over an empty folder, the folder, and the process."""
    process = subprocess.Popen([sys.executable, "-m", "unpin", "desk", str(tmp_path), "--quiet"], stdout=subprocess.PIPE, text=True)
    line = process.stdout.readline()
    yield re.search(r"http://127\.0\.0\.1:(\d+)", line)[0], tmp_path, process
    process.kill()
    process.wait()
    process.stdout.close()


def send(address, path, data):
    request = urllib.request.Request(address + path, json.dumps(data).encode(), {"Content-Type": "application/json"})
    with urllib.request.urlopen(request, timeout=10) as reply:
        return json.load(reply)


def test_nobody_on_the_network_reaches_it(served):
    address, _, _ = served
    port = int(address.rpartition(":")[2])
    others = {info[4][0] for info in socket.getaddrinfo(socket.gethostname(), None, socket.AF_INET)} - {"127.0.0.1", "127.0.1.1"}

    assert urllib.request.urlopen(address + "/folder", timeout=10).status == 200
    table = Path("/proc/net/tcp")
    listening = table.read_text() if table.exists() else ""
    heard = {line.split()[1] for line in listening.splitlines()[1:] if line.split()[3] == "0A" and line.split()[1].endswith(f":{port:04X}")}
    assert heard <= {f"0100007F:{port:04X}"}
    for other in others:
        with pytest.raises(OSError):
            socket.create_connection((other, port), timeout=2)


@pytest.mark.parametrize("wait", [0.0, 0.002, 0.005, 0.01, 0.02, 0.04, 0.08])
def test_a_server_that_is_killed_while_it_saves_leaves_a_whole_file(served, wait):
    address, folder, process = served
    stamp = send(address, "/save", {"name": "a.yaml", "text": OLD, "stamp": None})["stamp"]

    def keep_saving():
        mine, texts = stamp, [NEW, OLD]
        for k in range(1000):
            try:
                mine = send(address, "/save", {"name": "a.yaml", "text": texts[k % 2], "stamp": mine})["stamp"]
            except (OSError, ValueError, HTTPException):
                return

    saving = threading.Thread(target=keep_saving)
    saving.start()
    time.sleep(wait)
    os.kill(process.pid, signal.SIGKILL)
    saving.join(20)

    assert (folder / "a.yaml").read_text("utf-8") in (OLD, NEW)


def test_what_a_killed_server_left_behind_is_no_problem_file(served):
    """A half-written file beside the real one has a hidden name, which the folder does not list."""
    address, folder, _ = served
    (folder / ".a.yaml.x1y2").write_text("title: ha")

    listed = json.load(urllib.request.urlopen(address + "/folder", timeout=10))

    assert listed["files"] == []


def test_two_windows_that_save_at_once_do_not_lose_either_silently(served):
    address, _, _ = served
    stamp = send(address, "/save", {"name": "a.yaml", "text": "title: 0", "stamp": None})["stamp"]
    outcomes = []

    def window(number):
        try:
            send(address, "/save", {"name": "a.yaml", "text": f"title: {number}", "stamp": stamp})
            outcomes.append((number, "saved"))
        except urllib.error.HTTPError as refused:
            outcomes.append((number, json.load(refused)["code"]))

    threads = [threading.Thread(target=window, args=(n,)) for n in range(1, 9)]
    for t in threads:
        t.start()
    for t in threads:
        t.join(20)

    saved = [n for n, how in outcomes if how == "saved"]
    assert len(saved) == 1 and [how for _, how in outcomes if how != "saved"] == ["changed"] * 7
    assert json.load(urllib.request.urlopen(address + "/file?name=a.yaml", timeout=10))["text"] == f"title: {saved[0]}"


def test_what_the_server_says_is_sent_at_once_and_does_not_wait_for_the_other_side():
    import asyncio

    from unpin.workbench.serve import door_of_desk

    sent_at_once = []

    async def asked():
        async def reply(_, writer):
            sent_at_once.append(writer.get_extra_info("socket").getsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY))
            writer.close()

        door = door_of_desk()
        door.bind(("127.0.0.1", 0))
        async with await asyncio.start_server(reply, sock=door):
            reader, writer = await asyncio.open_connection(*door.getsockname())
            await reader.read()
            writer.close()

    asyncio.run(asked())

    assert sent_at_once and all(sent_at_once)


def test_what_is_needed_for_the_first_problem_is_there_before_it_is_opened():
    told = "import sys; from unpin.workbench.serve import warm; warm(); import gc; print(gc.get_freeze_count() > 0, *(m in sys.modules for m in ('parsy', 'unpin.draw.svg', 'unpin.statics.solve')))"

    run = subprocess.run([sys.executable, "-c", told], capture_output=True, text=True, timeout=60)

    assert run.stdout.split() == ["True"] * 4
