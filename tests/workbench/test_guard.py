"""Only pages of the desk itself may ask, and every reply forbids what is not ours."""

import pytest
from asking import HOST


@pytest.mark.parametrize("host", ["evil.example", "evil.example:8123", "127.0.0.1", "127.0.0.1:80", "[::1]:8123", "", "127.0.0.1:8123.evil.example", "localhost.:8123", "127.1:8123", "0.0.0.0:8123",
                                  "[::ffff:127.0.0.1]:8123", "127.0.0.1:8123@evil.example"])
def test_a_name_that_is_not_the_desks_own_is_refused_even_when_it_leads_here(desk, host):
    reply = desk.get("/folder", headers={"host": host})

    assert (reply.status_code, reply.json()["code"]) == (421, "host")


@pytest.mark.parametrize("origin", ["http://evil.example", "null", "https://127.0.0.1:8123", "http://127.0.0.1:9", "http://localhost", "http://127.0.0.1:8123.evil.example"])
@pytest.mark.parametrize("method, path", [("GET", "/file?name=sack-crane.yaml"), ("POST", "/save")])
def test_another_origin_can_neither_read_nor_write(desk, origin, method, path):
    reply = desk.ask(method, path, {"origin": origin, "content-type": "application/json"}, content=b"{}")

    assert (reply.status_code, reply.json()["code"]) == (403, "origin")


@pytest.mark.parametrize("name, foreign, own", [("host", "evil.example", HOST), ("origin", "http://evil.example", f"http://{HOST}"), ("sec-fetch-site", "cross-site", "same-origin")])
@pytest.mark.parametrize("turn", [1, -1])
def test_a_foreign_head_is_not_hidden_by_a_second_one_of_the_same_name(desk, name, foreign, own, turn):
    reply = desk.get("/folder", headers=[("host", HOST)] * (name != "host") + [(name, foreign), (name, own)][::turn])

    assert reply.status_code in (403, 421)


def test_the_case_of_the_own_name_does_not_matter(desk):
    assert desk.get("/folder", headers={"host": "LocalHost:8123"}).status_code == 200


@pytest.mark.parametrize("site", ["cross-site", "same-site", "Cross-Site"])
def test_a_request_that_a_browser_marks_as_foreign_is_refused(desk, site):
    assert desk.get("/file", headers={"sec-fetch-site": site}, name="sack-crane.yaml").status_code == 403


@pytest.mark.parametrize("kind", ["", "text/plain", "application/x-www-form-urlencoded", "multipart/form-data; boundary=x", "application/jsonp", "application/json, text/plain"])
def test_what_a_form_could_send_changes_nothing(desk, kind):
    before = (desk.folder / "sack-crane.yaml").read_bytes()

    reply = desk.ask("POST", "/save", {"content-type": kind}, content=b'{"name":"sack-crane.yaml","text":"","stamp":null}')

    assert reply.status_code == 415
    assert (desk.folder / "sack-crane.yaml").read_bytes() == before


def test_its_own_page_may_ask(desk):
    assert desk.get("/folder", headers={"origin": f"http://{HOST}", "sec-fetch-site": "same-origin"}).status_code == 200


@pytest.mark.parametrize("path", ["/folder", "/nothing", "/file?name=none.yaml"])
def test_every_reply_forbids_foreign_scripts_styles_and_frames(desk, path):
    headers = desk.ask("GET", path).headers

    policy = dict(p.strip().split(" ", 1) for p in headers["content-security-policy"].split(";"))
    assert policy["default-src"] == "'none'" and policy["script-src"] == "'self'" and policy["style-src"] == "'self'"
    assert policy["frame-ancestors"] == "'self'" and policy["connect-src"] == "'self'"
    assert headers["x-content-type-options"] == "nosniff" and headers["cache-control"] == "no-store"
    assert "access-control-allow-origin" not in headers


def test_a_request_beyond_bounds_is_refused_before_it_is_read(desk):
    from unpin.workbench.guard import LARGEST

    told = desk.ask("POST", "/look", {"content-type": "application/json", "content-length": str(LARGEST + 1)}, content=b"")
    sent = desk.ask("POST", "/look", {"content-type": "application/json"}, content=b" " * (LARGEST + 1))

    assert told.status_code == sent.status_code == 413


def test_a_request_that_does_not_say_how_long_it_is_is_read_no_further_than_the_bound(desk):
    from unpin.workbench.guard import LARGEST

    read = []

    async def endless():
        for _ in range(2 * LARGEST // 2**20):
            read.append(2**20)
            yield b" " * 2**20

    reply = desk.ask("POST", "/look", {"content-type": "application/json"}, content=endless())

    assert (reply.status_code, reply.json()["code"]) == (413, "too_large")
    assert sum(read) <= LARGEST + 2**20


@pytest.mark.parametrize("body", [b"[]", b"1", b"{", b'{"text": 3}', b'{"text": null}', b"{}", b'{"text": "\\ud800"}', b"\xff", b"[" * 100_000, b'{"text":' * 100_000,
                                  b'{"text": "a", "scale": NaN}', b'{"text": "a", "scale": 1e308}', b'{"text": "a", "freedom": Infinity}', b'{"text": "", "scale": ' + b"9" * 5000 + b"}"])
@pytest.mark.parametrize("path", ["/look", "/edit", "/sayings", "/read", "/complete", "/body", "/hand", "/publish", "/save", "/copy"])
def test_a_broken_request_gets_a_refusal_and_no_traceback(desk, path, body):
    reply = desk.ask("POST", path, {"content-type": "application/json"}, content=body)

    assert reply.status_code in (200, 400, 404, 422)
    assert reply.json()["ok"] is (reply.status_code == 200)


def test_a_method_or_page_that_is_not_there_is_told_in_the_same_shape(desk):
    for reply in (desk.get("/nothing"), desk.ask("DELETE", "/file", {"content-type": "application/json"}), desk.get("/web/../app.py"), desk.get("/web/%2e%2e/app.py"),
                  desk.get(f"/web/{'a' * 300}.js"), desk.get(f"/web/{'a/' * 3000}x.js"), desk.get("/web/%00.js"), desk.get("/web//etc/x.txt")):
        assert reply.status_code in (404, 405)
        assert reply.json()["ok"] is False and reply.json()["message"]
