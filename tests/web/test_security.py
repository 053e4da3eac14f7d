"""What an attacker tries on every address: forms without their token, sent twice at once, faults that tell too much.

Numbers in brackets are of OWASP ASVS 4.0.3 (numbers from memory). Log-in, guessing, sessions, the Host header and
redirects are tried in test_log_in; sheets that do harm in test_sheets_hostile; photos in test_photos.
"""

import hashlib
import io
import re
import sqlite3
import stat
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from datetime import timedelta
from pathlib import Path
from threading import Barrier

import pytest
from flask import Flask
from flask.sessions import SecureCookieSessionInterface

from sourcing.actions.desk import Desk
from sourcing.actions.jobs import all_jobs
from sourcing.web.app import MOST_BYTES
from tests.web.addresses import QUERIES, addresses
from tests.web.orders_world import counter_with_order
from tests.web.world import NOW, PASSWORDS, QUOTED, ROLES, TAKEN_IN, Browser, counter, logged_in


@pytest.fixture(scope="module")
def still(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Flask]:
    """A counter that no test of this module changes."""
    with counter_with_order(Path(tmp_path_factory.mktemp("still"))) as made:
        yield made


def contents(app: Flask) -> list[str]:
    """All that is kept, but what counts log-ins and look-ups."""
    with sqlite3.connect(app.config["sourcing.store"].shown) as one:
        dump = [line for line in one.iterdump() if not re.search(r'"(log_ins|part_lookups|sqlite_sequence)"', line)]
    one.close()
    return dump


def test_no_form_does_anything_without_its_token(still: Flask) -> None:
    """Every address that takes a form: 400, nothing done (4.2.2). The customer's page has no session to abuse: what
    it asks for is the secret in its address, and the origin is checked as everywhere."""
    owner, before = logged_in(still, "owner"), contents(still)
    forms = [one for one in addresses(still) if "POST" in one.methods and not one.endpoint.startswith("customer.")]
    assert len(forms) > 40
    for one in forms:
        assert owner.client.post(one.path, data={"once": "x"}).status_code == 400, one.path
        assert owner.client.post(one.path, data={"once": "x", "csrf_token": "made.up"}).status_code == 400, one.path
    assert contents(still) == before


def test_no_form_is_taken_from_another_site(still: Flask) -> None:
    """Even with a good token; also on the customer's page, and from a frame without an origin."""
    owner = logged_in(still, "owner")
    good = owner.hidden("/my-password", "/my-password")["csrf_token"]
    for one in addresses(still):
        if "POST" not in one.methods:
            continue
        for origin in ("https://elsewhere.example", "null", "http://localhost:1"):
            answer = owner.client.post(one.path, data={"csrf_token": good}, headers={"Origin": origin})
            assert answer.status_code == 403, f"{origin}: {one.path}"


def test_every_answer_tells_the_browser_to_be_careful(still: Flask) -> None:
    """Also what is refused, not there, or a file (14.4.1 to 14.4.7)."""
    browsers = [logged_in(still, "owner"), logged_in(still, "technician"), Browser(still)]
    for one in addresses(still):
        if "GET" not in one.methods:
            continue
        asked = one.path + QUERIES.get(one.endpoint, "")
        for browser in browsers if one.endpoint.endswith("file") else browsers[:1]:
            headers = browser.client.get(asked).headers
            policy = headers["Content-Security-Policy"]
            assert policy.startswith("default-src 'none'") and "frame-ancestors" in policy, asked
            assert "unsafe" not in re.sub(r"style-src[^;]*", "", policy), asked
            assert headers["X-Content-Type-Options"] == "nosniff" and headers["Cache-Control"] == "no-store", asked
            assert headers["Referrer-Policy"] == "same-origin" and "X-Powered-By" not in headers, asked
            assert "charset" in headers["Content-Type"] or "text" not in headers["Content-Type"], asked


def test_files_of_the_program_are_kept_by_the_browser(still: Flask) -> None:
    """They have nothing of the shop in them; one asked for by its own hash is never asked for again."""
    browser = Browser(still)
    named = re.findall(r"/static/counter\.css\?v=\w+", browser.get("/log-in"))[0]
    for address, is_for_ever in (("/static/counter.css", False), (named, True), (f"{named}0", False)):
        with browser.client.get(address) as answer:
            told = answer.headers["Cache-Control"]
            assert "max-age" in told and ("immutable" in told) == is_for_ever, address


@pytest.mark.parametrize("name", ["../app.py", "%2e%2e/app.py", "..%5capp.py", "a%00.css"])
def test_no_path_leads_out_of_the_programs_files(still: Flask, name: str) -> None:
    """Path traversal (12.3.1)."""
    assert Browser(still).client.get(f"/static/{name}").status_code == 404


def test_a_method_no_page_has_is_refused(still: Flask) -> None:
    """Neither PUT nor DELETE nor TRACE does anything (14.5.1)."""
    owner = logged_in(still, "owner")
    for method in ("PUT", "DELETE", "PATCH", "TRACE"):
        assert owner.client.open(f"/jobs/{QUOTED}", method=method).status_code in (400, 405), method


@pytest.mark.parametrize("role", ["owner", "technician", "customer"])
def test_a_fault_tells_nothing_of_the_program(
    tmp_path: Path, role: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """No trace, path or version; the trace is in a file only the shop's computer can read, without secrets (7.4.1)."""
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path))
    with counter(tmp_path) as app:
        browser = Browser(app) if role == "customer" else logged_in(app, role)
        page = "/q/" + "S" * 43 if role == "customer" else f"/jobs/{QUOTED}"
        broken = "customer.open_link" if role == "customer" else "jobs.whole_job"

        def fails(*_: object) -> object:
            raise RuntimeError("told to nobody")

        monkeypatch.setattr(f"sourcing.web.views.{broken}", fails)
        answer = browser.client.get(page)
    assert answer.status_code == 500
    for word in ("Traceback", "RuntimeError", "told to nobody", "/work", ".py", "Werkzeug", "Flask", "Python"):
        assert word not in answer.text + str(answer.headers), word
    (kept,) = tmp_path.glob("sourcing-fault-*")
    assert stat.S_IMODE(kept.stat().st_mode) == 0o600
    told = kept.read_text() + capsys.readouterr().out
    cookie = browser.client.get_cookie("counter")
    secrets = [*PASSWORDS.values(), "S" * 43, *([cookie.value] if cookie else [])]
    assert "told to nobody" in told and not [one for one in secrets if one in told]


def test_the_same_form_sent_twice_at_once_is_one_deed(tmp_path: Path) -> None:
    """Two threads, one moment: one job (11.1.6)."""
    with counter(tmp_path) as app:
        first, second = logged_in(app, "clerk"), logged_in(app, "clerk")
        hidden, other = (one.hidden("/jobs/new", "/jobs/new") for one in (first, second))
        together, before = Barrier(2), len(all_jobs(_desk(app)))

        def send(browser: Browser, token: str) -> tuple[int, str]:
            together.wait(20)
            answer = browser.client.post("/jobs/new", data={**hidden, "csrf_token": token, **NEW_JOB})
            return answer.status_code, answer.location

        with ThreadPoolExecutor(2) as pool:
            sent = list(pool.map(send, (first, second), (hidden["csrf_token"], other["csrf_token"])))
        assert (303, "/jobs/2026-0005") in sent  # the other is led there too, or told that the first is in hand
        assert all(one in ((303, "/jobs/2026-0005"), (409, None)) for one in sent), sent
        assert len(all_jobs(_desk(app))) == before + 1


NEW_JOB = {"name": "Maud Tilbrook", "title": "Grease the drive", "hours": "0.2", "complaint": "It squeals."}


def _desk(app: Flask) -> Desk:
    return Desk(store=app.config["sourcing.store"], at=app.config["sourcing.counter"].clock(), who="a test")


def test_what_is_larger_than_the_counter_takes_is_refused(still: Flask) -> None:
    """Before it is read (12.1.1)."""
    clerk = logged_in(still, "clerk")
    length = {"CONTENT_LENGTH": str(MOST_BYTES + 1), "CONTENT_TYPE": "multipart/form-data; boundary=x"}
    answer = clerk.client.post("/sheets", input_stream=io.BytesIO(b"--x"), environ_overrides=length)
    assert answer.status_code == 413 and "64 MB" in answer.text


@pytest.mark.parametrize(
    "content",
    [
        b'<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"/>',
        b"<html><script>alert(1)</script></html>",
        b"GIF89a/*<script>alert(1)</script>*/=1;",
        b"%PDF-1.7 <script>",
        b"\xff\xd8\xff\xe0<?php echo 1; ?>",
    ],
)
def test_what_only_looks_like_a_photo_is_refused(still: Flask, content: bytes) -> None:
    """Whatever its name says (12.2.1)."""
    page = f"/jobs/{TAKEN_IN}/new-photo"
    technician = logged_in(still, "technician")
    fields = {**technician.hidden(page, page), "photo": (io.BytesIO(content), "../../photo.jpg")}
    answer = technician.client.post(page, data=fields, content_type="multipart/form-data")
    assert answer.status_code == 409, answer.status


def test_cookies_are_kept_from_scripts_and_other_sites(still: Flask) -> None:
    """HttpOnly and SameSite always; Secure and __Host- where the counter is reached by https (3.4.1 to 3.4.4)."""
    browser = Browser(still)
    name = ROLES["clerk"]
    fields = {**browser.hidden("/log-in", "/log-in"), "name": name, "password": PASSWORDS[name]}
    (cookie,) = browser.client.post("/log-in", data=fields).headers.getlist("Set-Cookie")
    assert "HttpOnly" in cookie and "SameSite=Lax" in cookie and "Path=/" in cookie and "Domain" not in cookie


def test_an_outward_counter_by_https_has_secure_cookies(tmp_path: Path) -> None:
    """And tells browsers to come by https only (9.1.1)."""
    with counter(tmp_path, outward="https://counter.wickenby.example") as app:
        at = {"base_url": "https://counter.wickenby.example"}
        answer = app.test_client().get("/log-in", **at)
        (cookie,) = answer.headers.getlist("Set-Cookie")
    assert cookie.startswith("__Host-") and "Secure" in cookie and "HttpOnly" in cookie
    assert "max-age" in answer.headers["Strict-Transport-Security"]


def test_a_log_in_not_used_for_twelve_hours_is_over(tmp_path: Path) -> None:
    """And one that is used goes on (3.3.2)."""
    with counter(tmp_path) as app:
        clerk, setup = logged_in(app, "clerk"), app.config["sourcing.counter"]
        for hours, status in ((11, 200), (22, 200), (35, 302)):
            app.config["sourcing.counter"] = replace(setup, clock=lambda at=hours: NOW + timedelta(hours=at, minutes=1))
            assert clerk.status("/jobs") == status, hours


def test_nothing_in_the_store_logs_anybody_in(still: Flask) -> None:
    """Passwords are Argon2id hashes with a salt each (2.4.1), of a log-in only its hash is kept."""
    browser = logged_in(still, "owner")
    cookie, signed = browser.client.get_cookie("counter"), SecureCookieSessionInterface().get_signing_serializer(still)
    assert cookie and signed
    secret = signed.loads(cookie.value)["_user_id"]
    with sqlite3.connect(still.config["sourcing.store"].shown) as one:
        kept = [row for row in one.execute("select password from people")]
        whole = "\n".join(one.iterdump())
    one.close()
    assert len({password for (password,) in kept}) == len(ROLES)
    assert all(re.match(r"\$argon2id\$v=19\$m=\d+,t=\d+,p=\d+\$[^$]{22,}\$", password) for (password,) in kept)
    assert hashlib.sha256(secret.encode()).hexdigest() in whole
    assert not [one for one in (*PASSWORDS.values(), secret) if one in whole]
