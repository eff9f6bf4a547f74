"""The page when the server is killed, when the engine is at something for too long, and when the browser has no room left: it goes on."""

import signal
import socket
import subprocess
import sys
import time

import pytest

BEAM = "title: T0\npoints: {A: [0, 0], B: [1, 0]}\nmembers: {beam: A B}\nsupports: {A: fixed}\nloads: [5 N at B down]\n"
ENDLESS = (f"letters: {{{', '.join(f't{k}: an angle' for k in range(20))}}}\npoints:\n" + "".join(
    f"  B{k}: {f'1 from B{k - 1} at 3 t{k}' if k else '[0, 0]'}\n  T{k}: 1 from B{k} at t{k}\n" for k in range(20)) + "links: ["
    + ", ".join([f"B{k}-T{k}" for k in range(20)] + [f"{a}{k - 1}-{b}{k}" for k in range(1, 20) for a, b in ("BB", "TT", "BT")])
    + "]\nsupports: {B0: pin, B19: roller}\nloads: [5 kN at T10 down]\n")
"""Twenty letter angles in a row: nobody waits for the end of that."""
WRITER = """async () => { const { write } = await import('/web/acts/editing.js'); const { save } = await import('/web/acts/saving.js');
    window.put = (text) => { void write(text); void save(); }; }"""
STATE = "async (key) => (await import('/web/store.js')).store.get()[key]"


def until(what, seconds=30):
    end = time.monotonic() + seconds
    while not what() and time.monotonic() < end:
        time.sleep(0.1)
    return what()


@pytest.fixture
def killable(tmp_path):
    """Starts a desk over the folder, always at the same address."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    running = []

    def start():
        process = subprocess.Popen([sys.executable, "-m", "unpin", "desk", str(tmp_path), "--quiet", "--port", str(port)], stdout=subprocess.PIPE, text=True)
        running.append(process)
        assert "http" in process.stdout.readline()
        return process

    yield start, f"http://127.0.0.1:{port}/"
    for process in running:
        process.kill()
        process.wait()
        process.stdout.close()


def test_two_windows_lose_nothing_when_the_server_is_killed_again_and_again_while_they_save(chromium, killable, tmp_path):
    start, address = killable
    process = start()
    windows, faults = {}, []
    for name in ("a.yaml", "b.yaml"):
        (tmp_path / name).write_text(BEAM)
        windows[name] = chromium.new_context().new_page()
        windows[name].on("pageerror", lambda fault: faults.append(str(fault)))
        windows[name].goto(f"{address}?file={name}#state")
        windows[name].wait_for_selector("header nav")
        windows[name].evaluate(WRITER)

    for k in range(1, 61):
        for name, window in windows.items():
            window.evaluate("(text) => window.put(text)", BEAM.replace("T0", f"{name} {k}"))
        if k % 15 == 7:
            process.send_signal(signal.SIGKILL)
            process.wait()
            for name in windows:
                assert (tmp_path / name).read_text("utf-8") in {BEAM, *(BEAM.replace("T0", f"{name} {n}") for n in range(k + 1))}
            process = start()

    for name in windows:
        assert until(lambda name=name: (tmp_path / name).read_text("utf-8") == BEAM.replace("T0", f"{name} 60")), (tmp_path / name).read_text("utf-8")
        assert until(lambda name=name: windows[name].evaluate(STATE, "kept") == "saved")
        assert windows[name].evaluate(STATE, "clash") is None
    windows["a.yaml"].goto(address)
    windows["a.yaml"].wait_for_selector(".folder li")
    shown = windows["a.yaml"].evaluate(STATE, "folder")["files"]
    assert [f["name"] for f in shown] == ["a.yaml", "b.yaml"] and not faults
    for window in windows.values():
        window.context.close()


@pytest.fixture
def patient(chromium, tmp_path):
    """A hand on a desk with an engine of its own, and that engine."""
    from desks import Hand, served

    from unpin.workbench.engine import Engine

    context, engine = chromium.new_context(viewport={"width": 1280, "height": 800}), Engine(tmp_path)
    with served(tmp_path, engine=engine) as address:
        made = Hand(context.new_page(), address, tmp_path)
        yield made, engine
        assert not made.faults
        context.close()


def test_a_text_that_would_take_for_ever_is_overtaken_by_the_next_one(patient):
    hand, _ = patient
    (hand.folder / "a.yaml").write_text(BEAM)
    hand.open("a.yaml")

    began = time.monotonic()
    hand.page.evaluate("async (text) => { const { write } = await import('/web/acts/editing.js'); void write(text); }", ENDLESS)
    hand.page.wait_for_timeout(500)
    hand.page.evaluate("async (text) => { const { write } = await import('/web/acts/editing.js'); await write(text); }", BEAM.replace("T0", "at last"))
    took = time.monotonic() - began

    assert hand.state("look")["title"] == "at last" and took < 15
    assert hand.state("notice") == "" and hand.saved().startswith("title: at last")


def test_what_the_engine_gives_up_is_told_and_the_text_is_saved_and_can_be_changed(patient):
    hand, engine = patient
    (hand.folder / "a.yaml").write_text(BEAM)
    hand.open("a.yaml")
    engine.seconds = 2
    hand.page.evaluate("async (text) => { const { write } = await import('/web/acts/editing.js'); void write(text); }", ENDLESS)

    assert until(lambda: "too long" in hand.state("notice"))
    assert "too long" in hand.page.locator("body").inner_text()
    assert hand.saved() == ENDLESS
    engine.seconds = 60
    hand.keys("Control+z")
    assert until(lambda: (hand.state("look") or {}).get("title") == "T0") and hand.saved() == BEAM


def test_a_browser_without_room_still_saves_every_change(hand):
    (hand.folder / "a.yaml").write_text(BEAM)
    hand.open("a.yaml")
    hand.page.evaluate("""() => { for (const drawer of [localStorage, sessionStorage]) for (let size = 1 << 20; size; size >>= 4)
        try { for (let k = 0; ; k++) drawer.setItem(`fill ${size} ${k}`, 'x'.repeat(size)); } catch { continue; } }""")

    hand.page.evaluate("async (text) => { const { write } = await import('/web/acts/editing.js'); await write(text); }", BEAM.replace("T0", "no room"))

    assert hand.saved().startswith("title: no room")
    hand.keys("Control+z")
    assert hand.saved() == BEAM


def test_a_save_whose_answer_was_lost_is_no_change_by_somebody_else(hand):
    (hand.folder / "a.yaml").write_text(BEAM)
    hand.open("a.yaml")
    lost = []

    def lose(route):
        lost.append(route.fetch())
        route.abort()

    hand.page.route("**/save", lose, times=1)
    write = "async (text) => { const { write } = await import('/web/acts/editing.js'); await write(text); }"
    hand.page.evaluate(write, BEAM.replace("T0", "first"))
    assert until(lambda: hand.page.wait_for_timeout(50) or lost)
    hand.page.evaluate(write, BEAM.replace("T0", "second"))

    assert until(lambda: hand.page.wait_for_timeout(50) or (hand.folder / "a.yaml").read_text("utf-8").startswith("title: second"), 15)
    assert hand.state("clash") is None
