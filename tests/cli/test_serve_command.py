"""`sourcing serve`: one command, and the counter answers; it stops when told to and says why it can't start."""

import signal
import socket
import subprocess
import sys
import urllib.request
from pathlib import Path

import pytest

from tests.cli.running import in_a_process


def free_port() -> int:
    """A port nobody listens at."""
    with socket.socket() as one:
        one.bind(("127.0.0.1", 0))
        return int(one.getsockname()[1])


@pytest.mark.skipif(sys.platform == "win32", reason="there Ctrl+C goes to a whole group of processes")
def test_one_command_serves_the_first_visit_until_ctrl_c(tmp_path: Path) -> None:
    """From an empty folder to the owner's first page; only this computer is listened to, and no code is asked for."""
    port = free_port()
    heard = "import signal; signal.signal(signal.SIGINT, signal.default_int_handler)"  # also where tests run with &
    start = f"{heard}; from sourcing.cli.main import run; run()"
    command = [sys.executable, "-u", "-c", start, "serve", "--database", "shop.db", "--port", str(port)]
    with subprocess.Popen(command, cwd=tmp_path, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True) as running:
        assert running.stdout is not None and running.stderr is not None
        assert running.stdout.readline() == f"The counter is at http://127.0.0.1:{port} (stop it with Ctrl+C).\n"
        with urllib.request.urlopen(f"http://127.0.0.1:{port}/") as answer:
            assert answer.url.endswith("/first-visit") and "Code for the first log-in" not in answer.read().decode()
        running.send_signal(signal.SIGINT)
        try:
            rest, wrong = running.communicate(timeout=20)
        finally:
            running.kill()
    assert (rest, wrong, running.returncode) == ("Stopped.\n", "", 0)
    assert (tmp_path / "shop.db").exists()


def test_a_port_in_use_is_told_in_one_sentence(tmp_path: Path) -> None:
    """Not as a traceback."""
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]
        code, out, wrong = in_a_process(tmp_path, "serve", "--port", str(port))
    assert (code, out) == (1, "")
    assert f"can't be served at 127.0.0.1:{port}" in wrong and "Traceback" not in wrong
