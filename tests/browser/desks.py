"""A desk that is really served, and a hand on its page: press, draw, type, as a teacher would."""

import threading
import time
from contextlib import contextmanager

ADDRESS = "127.0.0.1"


@contextmanager
def served(folder, language="en", engine=None):
    """The address of a desk over a folder, on a free port, until the end of the block. `engine`: who answers, else this process."""
    import uvicorn

    from unpin.workbench.app import desk
    from unpin.workbench.folder import Folder
    from unpin.workbench.serve import door_of_desk

    door = door_of_desk()
    door.bind((ADDRESS, 0))
    port = door.getsockname()[1]
    app = desk(Folder(folder), (f"{ADDRESS}:{port}", f"localhost:{port}"), language, engine)
    server = uvicorn.Server(uvicorn.Config(app, log_level="error", access_log=False, lifespan="on", timeout_graceful_shutdown=1))
    thread = threading.Thread(target=server.run, kwargs={"sockets": [door]}, daemon=True)
    thread.start()
    until = time.monotonic() + 10
    while not server.started and time.monotonic() < until:
        time.sleep(0.01)
    yield f"http://{ADDRESS}:{port}/"
    server.should_exit = True
    thread.join(5)
    door.close()


class Hand:
    """What a teacher does on the page. Places are in metres, as the figure has them."""

    def __init__(self, page, address, folder):
        self.page, self.address, self.folder = page, address, folder
        self.faults = []
        page.on("pageerror", lambda e: self.faults.append(str(e)))

    def open(self, name, act="state"):
        self.page.goto(f"{self.address}?file={name}#{act}")
        self.page.wait_for_selector("header nav")
        self.settle()
        return self

    def empty(self, name):
        self.page.goto(self.address)
        self.page.fill("#called", name)
        self.page.press("#called", "Enter")
        self.page.wait_for_selector("#sheet")
        self.settle()
        return self

    def settle(self):
        """Nothing is asked of the server any more, and everything is painted."""
        self.page.evaluate("""async () => { const { asking } = await import('/web/net.js'); const frame = () => new Promise((r) => requestAnimationFrame(r));
            for (let calm = 0; calm < 4; calm = asking.count ? 0 : calm + 1) { await frame(); await new Promise((r) => setTimeout(r, 12)); } }""")
        return self

    def saved(self):
        """What is on disk, once everything is saved."""
        self.page.evaluate("""async () => { const { store } = await import('/web/store.js');
            for (let k = 0; k < 400; k++) { const s = store.get(); if (s.doc && s.doc.onDisk === s.history.text) return; await new Promise((r) => setTimeout(r, 20)); } throw new Error('never saved'); }""")
        return (self.folder / self.state("doc")["name"]).read_text("utf-8")

    def spot(self, x, y):
        """Pixels of a place in metres."""
        return self.page.evaluate(
            """async ([x, y]) => { const { store } = await import('/web/store.js'); const v = store.get().view;
               const b = document.getElementById('sheet').getBoundingClientRect(); return [b.left + v.x + v.k * x, b.top + v.y - v.k * y]; }""", [x, y])

    def press(self, x, y):
        self.page.mouse.click(*self.spot(x, y))
        return self.settle()

    def stroke(self, *places):
        spots = [self.spot(*p) for p in places]
        mouse = self.page.mouse
        mouse.move(*spots[0])
        mouse.down()
        for s in spots[1:]:
            mouse.move(*s, steps=6)
        mouse.up()
        return self.settle()

    def say(self, start):
        """Choose the saying that begins so."""
        found = self.page.locator(".sayings button").filter(has=self.page.locator(".phrase", has_text=start))
        assert found.count(), f"{start!r} is not among {self.page.locator('.sayings').all_inner_texts()}"
        self.page.wait_for_timeout(260)  # a list that has just changed is not pressed
        found.first.click()
        return self.settle()

    def over(self, phrase):
        """Type over the phrase in the sentence, and mean it."""
        self.page.fill("#line", phrase)
        self.page.press("#line", "Enter")
        return self.settle()

    def keys(self, *keys):
        for key in keys:
            self.page.keyboard.press(key)
            self.settle()
        return self

    def type_line(self, line):
        """A new sentence by keyboard alone, from the sheet."""
        self.page.focus("#sheet")
        self.page.keyboard.press("/")
        self.page.wait_for_selector("#line:focus")
        if len(line) < 500:
            self.page.keyboard.type(line)
        else:
            self.page.keyboard.insert_text(line)  # nobody types so much: it is pasted
        self.settle()
        self.page.keyboard.press("Enter")
        return self.settle()

    def text(self):
        return self.page.evaluate("async () => (await import('/web/store.js')).store.get().history.text")

    def state(self, key):
        return self.page.evaluate("async (k) => (await import('/web/store.js')).store.get()[k]", key)

    def answers(self):
        """The answers at the foot as (name, number) in words."""
        self.keys("Escape")
        return [" ".join(t.split()) for t in self.page.locator("#sentence .answers li").all_inner_texts()]
