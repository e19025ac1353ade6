"""Two hosts on this machine: network namespaces, each with its own addresses and its own line to this one.

It takes the right to make them (root, as a rule). Where that is refused, two addresses of this machine stand for them.
"""

import os
import subprocess
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass

NETWORK = "10.213.{number}"
NEIGHBOURS = "10.213.0.0/16"
HOSTS = (1, 2)


class NotAllowed(Exception):
    """This machine does not let us make networks; the message is its own."""


@dataclass(frozen=True)
class Place:
    """Where a host is reached, where it reaches the database, and the command that puts a program on it."""

    address: str
    database: str = "127.0.0.1"
    inside: tuple[str, ...] = ()


@contextmanager
def two_hosts():
    """What kind of hosts they are, in words, and where they are."""
    with ExitStack() as stack:
        try:
            kind, places = "network namespaces", [_namespace(stack, number) for number in HOSTS]
        except NotAllowed as reason:
            kind, places = f"two addresses of this machine, for {reason}", [Place("127.0.0.2"), Place("127.0.0.3")]
        yield kind, places


def name_of(number):
    return f"oven-bench-{os.getpid()}-{number}"


def _namespace(stack, number):
    _ip("netns", "add", name_of(number))
    stack.callback(_ip, "netns", "delete", name_of(number))
    _connect(number)
    network = NETWORK.format(number=number)
    return Place(f"{network}.2", f"{network}.1", ("ip", "netns", "exec", name_of(number)))


def _connect(number):
    """A line that goes when its host goes."""
    near, far = f"ovb{os.getpid() % 100_000}n{number}", f"ovb{os.getpid() % 100_000}f{number}"
    _ip("link", "add", near, "type", "veth", "peer", "name", far, "netns", name_of(number))
    _ip("address", "add", f"{NETWORK.format(number=number)}.1/24", "dev", near)
    _ip("link", "set", near, "up")
    _ip("-n", name_of(number), "address", "add", f"{NETWORK.format(number=number)}.2/24", "dev", far)
    _ip("-n", name_of(number), "link", "set", far, "up")
    _ip("-n", name_of(number), "link", "set", "lo", "up")


def _ip(*words):
    try:
        done = subprocess.run(["ip", *words], check=False, capture_output=True, text=True)
    except FileNotFoundError as missing:
        raise NotAllowed("There is no program called ip here. On Debian: apt-get install iproute2.") from missing
    if done.returncode:
        raise NotAllowed(f"`ip {' '.join(words)}` was refused: {done.stderr.strip()}")
