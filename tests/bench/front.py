"""nginx in front, as a host's own or a delivery network's cache would stand there: our own process, on loopback."""

import shutil
import subprocess
import tempfile
import time
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from tests.bench.connection import HOST, Cut, Wire, get
from tests.bench.processes import free_port, processor_seconds

# A request that another instance never answered is sent to the next one, hand-overs too: each carries a key of its own.
CONFIGURATION = """
daemon off;
worker_processes 1;
pid {folder}/nginx.pid;
error_log {folder}/error.log warn;
{user}
events {{ worker_connections 512; }}
http {{
  access_log off;
  client_body_temp_path {folder}/body;
  proxy_temp_path {folder}/passed;
  fastcgi_temp_path {folder}/fastcgi;
  uwsgi_temp_path {folder}/uwsgi;
  scgi_temp_path {folder}/scgi;
  proxy_cache_path {folder}/cache keys_zone=steps:16m max_size=400m inactive=10m use_temp_path=off;
  keepalive_requests 100000;
  upstream site {{
{servers}
    keepalive 16;
  }}
  server {{
    listen 127.0.0.1:{port};
    location / {{
      proxy_pass http://site;
      proxy_http_version 1.1;
      proxy_set_header Connection "";
      proxy_set_header Host {host};
      proxy_cache steps;
      proxy_cache_key $request_uri;
      proxy_cache_lock on;
      proxy_next_upstream error timeout non_idempotent;
      proxy_connect_timeout 2s;
      add_header X-Cache $upstream_cache_status always;
    }}
  }}
}}
"""


@dataclass(frozen=True)
class Front:
    port: int
    process: subprocess.Popen

    def cpu_seconds(self):
        return processor_seconds(self.process.pid)


@contextmanager
def front(*ports):
    """nginx before the instances on these ports of this machine."""
    program = shutil.which("nginx") or shutil.which("nginx", path="/usr/sbin")
    if program is None:
        raise RuntimeError("There is no nginx here. On Debian: apt-get install nginx-light.")
    with tempfile.TemporaryDirectory(prefix="oven-bench-") as folder:
        port, user = free_port(), "user root;" if Path(folder).owner() == "root" else ""
        servers = "\n".join(f"    server 127.0.0.1:{one} max_fails=1 fail_timeout=1s;" for one in ports)
        told = CONFIGURATION.format(folder=folder, port=port, servers=servers, host=HOST, user=user)
        Path(folder, "nginx.conf").write_text(told)
        errors = Path(folder, "error.log")
        process = subprocess.Popen([program, "-p", folder, "-c", f"{folder}/nginx.conf", "-e", str(errors)])
        try:
            _wait_for(port, process)
            yield Front(port, process)
        finally:
            process.terminate()
            process.wait(timeout=15)


def _wait_for(port, process):
    give_up = time.monotonic() + 15
    while process.poll() is None and time.monotonic() < give_up:
        try:
            Wire("127.0.0.1", port).ask(get("/health/"))
        except Cut:
            time.sleep(0.1)
        else:
            return
    raise RuntimeError("nginx did not start; what it says stands above.")
