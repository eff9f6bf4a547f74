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
from concurrent.futures import ThreadPoolExecutor
from http.client import HTTPException
from pathlib import Path

import pytest

SMALL = "points: {A: [0, 0], B: [1, 0]}\nmembers: {beam: A B}\nsupports: {A: fixed}\nloads: [5 N at B down]\n"
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
    (folder / ".unpin-x1y2z3_4.part").write_text("title: ha")

    listed = json.load(urllib.request.urlopen(address + "/folder", timeout=10))

    assert listed["files"] == []


def test_what_killed_saves_left_behind_is_swept_when_the_folder_is_opened_and_nothing_else(tmp_path):
    old = time.time() - 2 * 86400
    others = tmp_path / "others"
    others.mkdir()
    (others / "kept").write_text("kept")
    (tmp_path / ".unpin-aaaaaaaa.part").write_text("title: ha")
    stays = {".unpin-bbbbbbbb.part": "young", ".unpin-notes.part": "another name", ".a.yaml.swp": "an editor's", ".hidden": "hidden", "unpin-cccccccc.part": "seen",
             ".unpin-dddddddd.part.yaml": "longer"}
    for name, text in stays.items():
        (tmp_path / name).write_text(text)
    for name in [".unpin-aaaaaaaa.part", *stays]:
        os.utime(tmp_path / name, (old, old))
    os.utime(tmp_path / ".unpin-bbbbbbbb.part")
    (tmp_path / ".unpin-eeeeeeee.part").symlink_to(others / "kept")
    os.utime(tmp_path / ".unpin-eeeeeeee.part", (old, old), follow_symlinks=False)
    (tmp_path / ".unpin-ffffffff.part").mkdir()
    os.utime(tmp_path / ".unpin-ffffffff.part", (old, old))
    before = {p.name for p in tmp_path.iterdir()}

    process = subprocess.Popen([sys.executable, "-m", "unpin", "desk", str(tmp_path), "--quiet"], stdout=subprocess.PIPE, text=True)
    process.stdout.readline()
    process.kill()
    process.wait()
    process.stdout.close()

    assert before - {p.name for p in tmp_path.iterdir()} == {".unpin-aaaaaaaa.part"}
    assert (others / "kept").read_text() == "kept"


def test_a_save_that_is_killed_half_way_leaves_a_name_that_is_swept(tmp_path):
    """The name is the one that a save really takes."""
    from unpin.output import sweep_unfinished

    dies = "import os, signal, sys; os.fsync = lambda _: os.kill(os.getpid(), signal.SIGKILL); from unpin.output import save; save(sys.argv[1], b'half')"
    subprocess.run([sys.executable, "-c", dies, str(tmp_path / "a.yaml")], timeout=60, check=False)
    left = [p.name for p in tmp_path.iterdir()]

    assert len(left) == 1 and sweep_unfinished(tmp_path) == []
    assert sweep_unfinished(tmp_path, age=0) == left and not list(tmp_path.iterdir())


def test_of_fifty_saves_at_once_that_began_from_one_text_exactly_one_is_kept(served):
    address, _, _ = served
    stamp = send(address, "/save", {"name": "a.yaml", "text": "title: 0", "stamp": None})["stamp"]
    outcomes = []

    def window(number):
        try:
            send(address, "/save", {"name": "a.yaml", "text": f"title: {number}", "stamp": stamp})
            outcomes.append((number, "saved"))
        except urllib.error.HTTPError as refused:
            outcomes.append((number, json.load(refused)["code"]))

    threads = [threading.Thread(target=window, args=(n,)) for n in range(1, 51)]
    for t in threads:
        t.start()
    for t in threads:
        t.join(20)

    saved = [n for n, how in outcomes if how == "saved"]
    assert len(saved) == 1 and [how for _, how in outcomes if how != "saved"] == ["changed"] * 49
    assert json.load(urllib.request.urlopen(address + "/file?name=a.yaml", timeout=10))["text"] == f"title: {saved[0]}"


def test_a_disk_that_is_full_refuses_with_a_word_and_leaves_what_was_there(tmp_path):
    resource = pytest.importorskip("resource")
    process = subprocess.Popen([sys.executable, "-m", "unpin", "desk", str(tmp_path), "--quiet"], stdout=subprocess.PIPE, text=True,
                               preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (10_000, 10_000)))
    address = re.search(r"http://127\.0\.0\.1:(\d+)", process.stdout.readline())[0]
    try:
        stamp = send(address, "/save", {"name": "a.yaml", "text": "title: kept", "stamp": None})["stamp"]
        for path, data in (("/save", {"name": "a.yaml", "text": OLD, "stamp": stamp}), ("/publish", {"name": "a.yaml", "text": SMALL, "ending": ".html", "save": True})):
            with pytest.raises(urllib.error.HTTPError) as refused:
                send(address, path, data)
            assert refused.value.code == 507 and json.load(refused.value)["code"] == "not_saved"
        assert [p.name for p in tmp_path.iterdir()] == ["a.yaml"] and (tmp_path / "a.yaml").read_text() == "title: kept"
        assert send(address, "/look", {"text": SMALL})["sound"]
    finally:
        process.kill()
        process.wait()
        process.stdout.close()


def test_a_folder_that_is_taken_away_is_told_and_may_come_back(served):
    address, folder, _ = served
    away = folder.rename(folder.with_name("away"))

    with pytest.raises(urllib.error.HTTPError) as listed:
        urllib.request.urlopen(address + "/folder", timeout=10)
    with pytest.raises(urllib.error.HTTPError) as saved:
        send(address, "/save", {"name": "a.yaml", "text": "title: x", "stamp": None})
    away.rename(folder)

    assert json.load(listed.value)["code"] == "no_folder" and json.load(saved.value)["code"] == "not_saved"
    assert send(address, "/save", {"name": "a.yaml", "text": "title: x", "stamp": None})["stamp"]


@pytest.mark.parametrize("sent", [b"GET http://evil.example/folder HTTP/1.1\r\nHost: evil.example\r\n\r\n", b"GET /folder HTTP/1.1\r\n\r\n", b"GET /folder HTTP/1.0\r\n\r\n",
                                  b"GET /folder HTTP/1.1\r\nHost: HERE\r\nHost: evil.example\r\n\r\n", b"PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n", b"\x16\x03\x01\x02\x00hello\r\n\r\n",
                                  b"GET /folder HTTP/1.1\r\nHost: HERE\r\nX: " + b"a" * 200_000 + b"\r\n\r\n",
                                  b"GET /folder HTTP/1.1\r\nHost: evil.example\r\nUpgrade: websocket\r\nConnection: Upgrade\r\nSec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==\r\nSec-WebSocket-Version: 13\r\n\r\n"])
def test_a_raw_request_that_is_not_addressed_to_the_desk_gets_nothing_of_it(served, sent):
    address, folder, _ = served
    (folder / "secret.yaml").write_text("title: hidden words")
    host = address.removeprefix("http://")
    with socket.create_connection(host.split(":"), timeout=10) as door:
        door.sendall(sent.replace(b"HERE", host.encode()))
        door.shutdown(socket.SHUT_WR)
        try:
            told = b"".join(iter(lambda: door.recv(65536), b""))
        except ConnectionError:
            told = b"HTTP/1.1 400"

    assert b"hidden words" not in told and told.split(b" ")[1] in (b"400", b"403", b"421")
    assert b"hidden words" in urllib.request.urlopen(address + "/folder", timeout=10).read()


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

    with ThreadPoolExecutor(1) as pool:  # tests in a browser leave a loop running in this thread
        pool.submit(lambda: asyncio.run(asked())).result()

    assert sent_at_once and all(sent_at_once)


def test_what_is_needed_for_the_first_problem_is_there_before_it_is_opened():
    told = "import sys; from unpin.workbench.answering import warm; warm(); import gc; print(gc.get_freeze_count() > 0, *(m in sys.modules for m in ('parsy', 'unpin.draw.svg', 'unpin.statics.solve')))"

    run = subprocess.run([sys.executable, "-c", told], capture_output=True, text=True, timeout=60)

    assert run.stdout.split() == ["True"] * 4
