"""
One Chromium for all browser tests. Without it they skip with a word; in the automatic run its absence is a failure. `SLOW=6 make browser`
runs every page on a processor that is six times slower: a test that passes only on a fast machine is found so.
"""

import os
import shutil

import pytest


def pytest_collection_modifyitems(items):
    """In the automatic run a browser test that fails is run once more: the summary counts such reruns, a true fault fails twice."""
    if os.environ.get("CI"):
        for item in items:
            if "chromium" in item.fixturenames:
                item.add_marker(pytest.mark.flaky(reruns=1))


SLOW = float(os.environ.get("SLOW", 1))


def _missing(what: str):
    if os.environ.get("CI"):
        pytest.fail(f"the automatic run needs {what}")
    pytest.skip(f"browser tests need {what}")


class _Slowed:
    """A browser whose pages run slower, new windows of theirs as well."""

    def __init__(self, browser):
        self._browser = browser

    def new_context(self, **options):
        context = self._browser.new_context(**options)
        context.on("page", lambda page: context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOW}))
        return context

    def __getattr__(self, name):
        return getattr(self._browser, name)


@pytest.fixture(scope="session")
def chromium():
    try:
        from playwright.sync_api import sync_playwright
    except ImportError:
        _missing("the library playwright")
    path = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")
    if not path:
        _missing("Chromium (apt-get install chromium)")
    quiet = ["--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"]
    with sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=path, args=quiet)
        yield _Slowed(browser) if SLOW > 1 else browser
        browser.close()


@pytest.fixture
def page(chromium):
    context = chromium.new_context(viewport={"width": 900, "height": 1200})
    made = context.new_page()
    yield made
    context.close()


@pytest.fixture
def hand(chromium, tmp_path):
    """A hand on the page of a desk that is really served, over an empty folder."""
    from desks import Hand, served

    context = chromium.new_context(viewport={"width": 1280, "height": 800})
    with served(tmp_path) as address:
        made = Hand(context.new_page(), address, tmp_path)
        yield made
        assert not made.faults
        context.close()


@pytest.fixture
def phone(chromium, tmp_path):
    """The same on a telephone held upright, with fingers."""
    from desks import Hand, served

    context = chromium.new_context(viewport={"width": 390, "height": 844}, has_touch=True, is_mobile=True, device_scale_factor=2)
    with served(tmp_path) as address:
        made = Hand(context.new_page(), address, tmp_path)
        yield made
        assert not made.faults
        context.close()
