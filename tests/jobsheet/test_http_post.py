"""One POST to receivers of every temper: a clear answer each time, and never longer than the deadline."""

import socket
import ssl
import subprocess

import pytest

from tests.jobsheet.receivers import answers, chatters, closes_early, hangs, receiver, talks_nonsense
from triage.jobsheet import http_post
from triage.jobsheet.http_post import NotDelivered, post

SHORT = 0.3
LATE = "The receiver did not answer in time."
CLOSED = "The receiver cannot be reached or closed the connection early."


@pytest.fixture
def anywhere(settings):
    settings.TRIAGE_WEBHOOK_NETWORKS = "any"


def failure(url, deadline=SHORT):
    with pytest.raises(NotDelivered) as failed:
        post(url, {"webhook-id": "msg_1"}, b"{}", deadline)
    return str(failed.value), failed.value.permanent


@pytest.mark.usefixtures("anywhere")
def test_what_is_posted_arrives_as_it_was():
    with receiver() as box:
        post(box.url, {"webhook-id": "msg_1", "Content-Type": "application/json"}, '{"é":1}'.encode())
    ((headers, body),) = box.requests
    assert headers[""] == "POST /hook?x=1 HTTP/1.1"
    assert headers["host"] == box.url.split("/")[2]
    assert (headers["webhook-id"], headers["content-type"]) == ("msg_1", "application/json")
    assert body == '{"é":1}'.encode()


@pytest.mark.usefixtures("anywhere")
@pytest.mark.parametrize(
    ("behave", "data"),
    [
        (answers(500), ("The receiver answered 500.", False)),
        (answers(404), ("The receiver answered 404.", False)),
        (answers(410), ("The receiver answered 410: it wants no more messages.", True)),
        (answers(302, extra="Location: http://127.0.0.1:1/\r\n"),
         ("The receiver answered 302, and redirects are not followed.", False)),
        (answers(100), (CLOSED, False)),
        (closes_early, (CLOSED, False)),
        (talks_nonsense, (CLOSED, False)),
        (hangs, (LATE, False)),
        (chatters, (LATE, False)),
    ],
    ids=["500", "404", "gone", "redirect", "only 100", "closes early", "nonsense", "hangs", "chatters"],
)  # fmt: skip
def test_a_receiver_that_does_not_take_it(behave, data):
    with receiver(behave) as box:
        if data == (CLOSED, False) or "answered" in data[0]:
            assert failure(box.url, 20) == data
        else:
            assert failure(box.url) == data
        assert len(box.requests) == 1


@pytest.mark.usefixtures("anywhere")
def test_a_port_where_nobody_listens():
    with socket.create_server(("127.0.0.1", 0)) as server:
        port = server.getsockname()[1]
    assert failure(f"http://127.0.0.1:{port}/") == (CLOSED, False)


def test_a_private_address_is_never_tried_again():
    with receiver() as box:
        sentence, permanent = failure(box.url.replace("http:", "https:"))
        assert (sentence.split(".")[0], permanent) == ("This address leads into a private network", True)
        assert box.requests == []


def test_a_name_that_is_checked_and_then_answers_otherwise_gains_nothing(monkeypatch):
    """DNS rebinding: the first look-up says a public address, every later one this machine."""
    looked_up, connected = [], []

    def answer(host, port, **_told):
        looked_up.append(host)
        address = "8.8.8.8" if len(looked_up) == 1 else "127.0.0.1"
        return [(socket.AF_INET, socket.SOCK_STREAM, 6, "", (address, port))]

    def connect(address, **_told):
        connected.append(address)
        raise ConnectionRefusedError

    monkeypatch.setattr(socket, "getaddrinfo", answer)
    monkeypatch.setattr(http_post.socket, "create_connection", connect)
    assert failure("https://hooks.example/") == (CLOSED, False)
    assert (looked_up, connected) == (["hooks.example"], [("8.8.8.8", 443)])


def test_a_name_nobody_knows(monkeypatch):
    def unknown(*_told, **_more):
        raise socket.gaierror

    monkeypatch.setattr(socket, "getaddrinfo", unknown)
    assert failure("https://hooks.example/") == ("The name of the receiver was not found.", False)


@pytest.fixture(scope="module")
def certificate(tmp_path_factory):
    """A certificate for `localhost` that nobody signed but itself."""
    folder = tmp_path_factory.mktemp("certificate")
    text = "req -x509 -newkey rsa:2048 -nodes -days 2 -subj /CN=localhost -addext subjectAltName=DNS:localhost"
    files = ["-keyout", folder / "key.pem", "-out", folder / "cert.pem"]
    subprocess.run(["openssl", *text.split(), *files], check=True, capture_output=True)
    return folder


@pytest.fixture
def https_receiver(certificate):
    context = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    context.load_cert_chain(certificate / "cert.pem", certificate / "key.pem")

    def secured(connection):
        return context.wrap_socket(connection, server_side=True)

    with receiver(secured=secured) as box:
        box.url = box.url.replace("http://127.0.0.1", "https://localhost")
        yield box


@pytest.mark.usefixtures("anywhere")
def test_a_certificate_nobody_vouches_for_is_refused(https_receiver):
    assert failure(https_receiver.url, 20) == ("The receiver's certificate is not valid.", False)
    assert https_receiver.requests == []


@pytest.mark.usefixtures("anywhere")
def test_with_a_good_certificate_it_arrives(https_receiver, certificate, monkeypatch):
    trusting = ssl.create_default_context(cafile=certificate / "cert.pem")
    monkeypatch.setattr(http_post.ssl, "create_default_context", lambda: trusting)
    post(https_receiver.url, {"webhook-id": "msg_1"}, b"{}", 20)
    assert https_receiver.requests[0][1] == b"{}"


@pytest.mark.usefixtures("anywhere")
def test_the_deadline_holds_inside_tls_too(https_receiver, certificate, monkeypatch):
    trusting = ssl.create_default_context(cafile=certificate / "cert.pem")
    monkeypatch.setattr(http_post.ssl, "create_default_context", lambda: trusting)
    https_receiver.behave = chatters
    assert failure(https_receiver.url, 1.0) == (LATE, False)
