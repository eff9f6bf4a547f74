"""Opening the desk: every file of it is asked for once, and a second time none."""

BEAM = "points: {A: [0, 0], B: [2, 0]}\nmembers: {AB: A B}\nsupports: {A: fixed}\nloads: [5 N at B down]\n"
ASKED = "() => performance.getEntriesByType('resource').filter((e) => new URL(e.name).pathname.startsWith('/web/')).map((e) => [new URL(e.name).pathname, e.transferSize])"


def test_a_second_opening_asks_for_none_of_the_files_and_no_module_is_there_twice(hand):
    (hand.folder / "beam.yaml").write_text(BEAM)
    told = []
    hand.page.on("console", lambda m: told.append(m.text))
    address = f"{hand.address}?file=beam.yaml#state"
    hand.page.goto(address)
    hand.page.locator(".handle").first.wait_for(state="attached")
    first = hand.page.evaluate(ASKED)
    hand.page.goto("about:blank")
    hand.page.goto(address)
    hand.page.locator(".handle").first.wait_for(state="attached")
    second = hand.page.evaluate(ASKED)

    assert len(first) == len({path for path, _ in first}) > 50, "each once, the early ones and those that are imported"
    assert sorted(path for path, _ in second) == sorted(path for path, _ in first)
    assert [path for path, size in second if size] == []
    same = "async ([a, b]) => (await import(a)).store === (await import(b)).store"
    store = next(path for path, _ in first if path.endswith("/store.js"))
    assert hand.page.evaluate(same, [store, "/web/store.js"])
    assert not [t for t in told if "preload" in t or "Content Security" in t]
