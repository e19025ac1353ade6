"""What the kernel says about processes and their children, and free ports."""

import os
import socket
from pathlib import Path

TICK = os.sysconf("SC_CLK_TCK")
PAGE = os.sysconf("SC_PAGE_SIZE")
# Fields of /proc/<pid>/stat after the name (proc(5)): own time in two parts, then that of children that have ended.
OWN_AND_ENDED = slice(11, 15)


def children_of(pid):
    try:
        return [int(child) for child in Path(f"/proc/{pid}/task/{pid}/children").read_text().split()]
    except FileNotFoundError:
        return []


def family_of(pid):
    """The process and every one below it."""
    return [pid, *(member for child in children_of(pid) for member in family_of(child))]


def processor_seconds(pid):
    """What a process and all below it have used, those that have ended too."""
    ticks = 0
    for member in family_of(pid):
        try:
            fields = Path(f"/proc/{member}/stat").read_text().rpartition(")")[2].split()
        except FileNotFoundError:  # it ended between the two looks; its parent counts it from now on
            continue
        ticks += sum(map(int, fields[OWN_AND_ENDED]))
    return ticks / TICK


def resident_bytes(pid):
    """What a process holds in memory."""
    return int(Path(f"/proc/{pid}/statm").read_text().split()[1]) * PAGE


def free_port():
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]
