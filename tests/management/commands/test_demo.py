"""One command shows the site; Ctrl-C ends all of it."""

import os
import re
import signal
import socket
import urllib.request
from pathlib import Path

import pytest

from tests.running_demo import demo, free_port, words_until_up

GOODBYE = "Stopped. Nothing is left running and no file is left behind.\n"


def processes_of_session(session):
    """Processes still alive in the demo's session."""
    alive = []
    for status in Path("/proc").glob("[0-9]*/stat"):
        try:
            state, _, _, member = status.read_text().rpartition(") ")[2].split()[:4]
        except FileNotFoundError:
            continue
        if int(member) == session and state != "Z":
            alive.append(status.parent.name)
    return alive


def test_it_prints_an_address_for_each_audience_and_each_opens(tmp_path):
    port = free_port()
    with demo(port, tmp_path) as process:
        text = words_until_up(process)
        addresses = re.findall(r"^  (\w[^:]*): (http\S+)$", "\n".join(text), re.MULTILINE)
        assert dict(addresses) == {
            "Householder": f"http://127.0.0.1:{port}/",
            "Booking page of an invented firm": f"http://localhost:{port}/booking-page/",
            "The same, when the check asks whom to call itself": f"http://localhost:{port}/booking-page/in-the-frame/",
            "The same in a plain frame, without a script": f"http://localhost:{port}/booking-page/plain-frame/",
            "Call page of the firm’s agent": f"http://127.0.0.1:{port}/desk/call/",
            "Desk of the firm": f"http://127.0.0.1:{port}/desk/",
        }
        for audience, address in addresses:
            with urllib.request.urlopen(address, timeout=10) as response:
                assert response.status == 200
                assert audience.startswith(("Call", "Desk")) or "Set-Cookie" not in response.headers
        people = re.findall(r"^    sign in as (\w+) with \S{12}$", "\n".join(text), re.MULTILINE)
        assert people == ["owner", "repairer", "agent"]


@pytest.mark.parametrize("ending", [signal.SIGINT, signal.SIGTERM, signal.SIGHUP])
@pytest.mark.parametrize("whole_group", [True, False], ids=["terminal", "one process"])
def test_every_polite_end_leaves_no_process_and_no_file(tmp_path, ending, whole_group):
    with demo(free_port(), tmp_path) as process:
        words_until_up(process)
        assert list(tmp_path.iterdir())
        (os.killpg if whole_group else os.kill)(process.pid, ending)
        said, _ = process.communicate(timeout=20)
        assert processes_of_session(process.pid) == []
    assert (process.returncode, said) == (0, GOODBYE)
    assert list(tmp_path.iterdir()) == []


def test_it_can_be_started_again_on_the_same_port_at_once(tmp_path):
    port = free_port()
    for _ in range(2):
        with demo(port, tmp_path) as process:
            assert "The oven fault check is running." in words_until_up(process)
            process.send_signal(signal.SIGINT)
            said, _ = process.communicate(timeout=20)
            assert (process.returncode, said) == (0, GOODBYE)


def test_a_taken_port_is_one_sentence_with_the_remedy(tmp_path):
    with socket.create_server(("127.0.0.1", 0)) as other:
        port = other.getsockname()[1]
        with demo(port, tmp_path) as process:
            said, _ = process.communicate(timeout=20)
    assert process.returncode == 2
    assert said == (
        f"Port {port} is taken by another program; choose another one: python3 manage.py demo --port 8000\n"
    )
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("port", ["0", "65536", "http", "-1"])
def test_a_port_that_cannot_be_is_refused(tmp_path, port):
    with demo(port, tmp_path) as process:
        said, _ = process.communicate(timeout=20)
    assert process.returncode == 2
    assert "--port" in said
