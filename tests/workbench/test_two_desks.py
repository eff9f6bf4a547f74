"""Two desks over one folder, each a program of its own: nobody's text is overwritten, whatever the moment."""

import json
import re
import signal
import subprocess
import sys
import threading
import time
import urllib.error
import urllib.request

import pytest

from unpin import lock
from unpin.amend import amend
from unpin.read.edits import rename
from unpin.workbench.folder import Folder, Refused

ROUNDS = 40


@pytest.fixture
def desks(tmp_path):
    """The addresses of two desks over one folder, and the folder."""
    command = [sys.executable, "-m", "unpin", "desk", str(tmp_path), "--quiet"]
    processes = [subprocess.Popen(command, stdout=subprocess.PIPE, text=True) for _ in range(2)]
    yield [re.search(r"http://127\.0\.0\.1:(\d+)", p.stdout.readline())[0] for p in processes], tmp_path
    for p in processes:
        p.kill()
        p.wait()
        p.stdout.close()


def save(address, text, stamp):
    """The stamp of what was saved, or the refusal."""
    data = json.dumps({"name": "a.yaml", "text": text, "stamp": stamp}).encode()
    try:
        with urllib.request.urlopen(urllib.request.Request(f"{address}/save", data, {"Content-Type": "application/json"}), timeout=30) as reply:
            return json.load(reply)
    except urllib.error.HTTPError as refused:
        return json.load(refused)


def test_of_two_desks_that_save_at_one_moment_one_is_told_what_the_other_wrote(desks):
    addresses, folder = desks
    stamp = save(addresses[0], "title: start", None)["stamp"]
    for turn in range(ROUNDS):
        start, said = threading.Barrier(2), {}

        def window(k, turn=turn, stamp=stamp, start=start, said=said):
            start.wait()
            said[k] = save(addresses[k], f"title: {turn} of desk {k}", stamp)

        threads = [threading.Thread(target=window, args=(k,)) for k in (0, 1)]
        for t in threads:
            t.start()
        for t in threads:
            t.join(60)
        kept = [k for k in (0, 1) if said[k]["ok"]]
        assert len(kept) == 1, f"round {turn}: both were told that their text is on disk"
        assert (folder / "a.yaml").read_text() == f"title: {turn} of desk {kept[0]}" == said[1 - kept[0]]["text"]
        stamp = said[kept[0]]["stamp"]
    assert [p.name for p in folder.iterdir()] == ["a.yaml"], "a lock leaves nothing behind"


HOLDING = "import sys, time; from pathlib import Path; from unpin.lock import alone\nwith alone(Path(sys.argv[1])):\n    print('held', flush=True); time.sleep(600)"


@pytest.fixture
def holder(tmp_path):
    """A program that is in the middle of a save in the folder and comes to no end."""
    pytest.importorskip("fcntl")
    process = subprocess.Popen([sys.executable, "-c", HOLDING, str(tmp_path)], stdout=subprocess.PIPE, text=True)
    assert process.stdout.readline() == "held\n"
    yield process
    process.kill()
    process.wait()
    process.stdout.close()


def test_a_desk_that_is_killed_in_the_middle_of_a_save_keeps_nobody_out(tmp_path, holder):
    folder, saved = Folder(tmp_path), []
    saving = threading.Thread(target=lambda: saved.append(folder.save("a.yaml", "title: x", None)))
    saving.start()
    time.sleep(0.3)
    assert not saved and not (tmp_path / "a.yaml").exists(), "it waits for its turn"

    holder.send_signal(signal.SIGKILL)
    saving.join(10)

    assert saved and (tmp_path / "a.yaml").read_text() == "title: x"
    assert [p.name for p in tmp_path.iterdir()] == ["a.yaml"]


def test_a_command_that_gives_another_name_reads_the_file_only_when_it_is_its_turn(tmp_path, holder):
    path = tmp_path / "a.yaml"
    path.write_text("points: {A: [0, 0], B: [1, 0]}\n")
    renaming = threading.Thread(target=lambda: amend(str(path), lambda text: rename(text, "B", "K")))
    renaming.start()
    time.sleep(0.3)
    path.write_text("points: {A: [0, 0], B: [2, 0]}\n")  # what the holder of the turn writes

    holder.kill()
    renaming.join(10)

    assert path.read_text() == "points: {A: [0, 0], K: [2, 0]}\n"


def test_a_turn_that_never_comes_is_told_and_nothing_is_written(tmp_path, holder, monkeypatch):
    monkeypatch.setattr(lock.alone.__wrapped__, "__defaults__", (0.1,))

    with pytest.raises(Refused) as refused:
        Folder(tmp_path).save("a.yaml", "title: x", None)

    assert refused.value.code == "busy" and not list(tmp_path.iterdir())


def test_where_the_system_has_no_such_lock_a_file_is_saved_all_the_same(tmp_path, monkeypatch):
    fcntl = pytest.importorskip("fcntl")

    def cannot(*_):
        raise OSError(37, "No locks available")

    monkeypatch.setattr(fcntl, "flock", cannot)
    assert Folder(tmp_path).save("a.yaml", "title: x", None)
