"""Two hosts on this machine: network namespaces, each with its own addresses and its own line to this one.

It takes the right to make them (root, as a rule). Where that is refused, the reason is told and nothing is left behind.
"""

import os
import subprocess
from contextlib import ExitStack, contextmanager

NETWORK = "10.213.{number}"
NEIGHBOURS = "10.213.0.0/16"
HOSTS = (1, 2)


class NotAllowed(Exception):
    """This machine does not let us make networks; the message is its own."""


def outer(number):
    """This machine's address on the line to a host."""
    return f"{NETWORK.format(number=number)}.1"


def inner(number):
    return f"{NETWORK.format(number=number)}.2"


def name_of(number):
    return f"oven-bench-{os.getpid()}-{number}"


def inside(number):
    """The command that puts a program on a host."""
    return ("ip", "netns", "exec", name_of(number))


@contextmanager
def hosts():
    """The hosts' numbers. Raises NotAllowed."""
    with ExitStack() as stack:
        for number in HOSTS:
            _ip("netns", "add", name_of(number))
            stack.callback(_ip, "netns", "delete", name_of(number))
            _connect(number)
        yield HOSTS


def _connect(number):
    """A line that goes when its host goes."""
    near, far = f"ovb{os.getpid() % 100_000}n{number}", f"ovb{os.getpid() % 100_000}f{number}"
    _ip("link", "add", near, "type", "veth", "peer", "name", far, "netns", name_of(number))
    _ip("address", "add", f"{outer(number)}/24", "dev", near)
    _ip("link", "set", near, "up")
    _ip("-n", name_of(number), "address", "add", f"{inner(number)}/24", "dev", far)
    _ip("-n", name_of(number), "link", "set", far, "up")
    _ip("-n", name_of(number), "link", "set", "lo", "up")


def _ip(*words):
    try:
        done = subprocess.run(["ip", *words], check=False, capture_output=True, text=True)
    except FileNotFoundError as missing:
        raise NotAllowed("There is no program called ip here. On Debian: apt-get install iproute2.") from missing
    if done.returncode:
        raise NotAllowed(f"`ip {' '.join(words)}` was refused: {done.stderr.strip()}")
