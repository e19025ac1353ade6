"""Plays the part of the host's own supervisor (systemd with Restart=always): what ends is started again, by nobody."""

import signal
import subprocess
from collections import Counter
from threading import Event, Lock, Thread

LOOK_EVERY = 0.25


class Supervisor:
    """`starts` counts how often each was started again."""

    def __init__(self):
        self.starters, self.processes, self.starts = {}, {}, Counter()
        self.lock, self.stopping = Lock(), Event()
        self.thread = Thread(target=self._watch, daemon=True)

    def __enter__(self):
        self.thread.start()
        return self

    def __exit__(self, *_reason):
        self.stopping.set()
        self.thread.join()
        for name in reversed(list(self.processes)):
            self._end(self.processes[name])

    def keep(self, name, start):
        """`start` gives back the process it started."""
        with self.lock:
            self.processes[name] = start()
            self.starters[name] = start

    def let_go(self, name):
        with self.lock:
            del self.starters[name]
            self._end(self.processes.pop(name))

    def _watch(self):
        while not self.stopping.wait(LOOK_EVERY):
            with self.lock:
                for name, start in self.starters.items():
                    if self.processes[name].poll() is not None:
                        self.starts[name] += 1
                        self.processes[name] = start()

    def _end(self, process):
        if process.poll() is None:
            process.send_signal(signal.SIGTERM)
            try:
                process.wait(timeout=40)
            except subprocess.TimeoutExpired:
                process.kill()
                process.wait()
