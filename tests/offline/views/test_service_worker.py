"""The worker may guard the whole site, is asked for anew each time, and changes with the set it is to keep."""

from dataclasses import replace

from triage.offline.precache import precache_manifest
from triage.offline.views import service_worker


def test_it_stands_at_the_root_and_may_guard_all_of_it(client):
    response = client.get("/worker.js")
    assert response.headers["Content-Type"] == "text/javascript; charset=utf-8"
    assert response.headers["Service-Worker-Allowed"] == "/"
    assert response.headers["Cache-Control"] == "no-cache"


def test_it_carries_its_set_and_neither_imports_nor_exports(client):
    text = client.get("/worker.js").content.decode()
    assert f"const SET = {precache_manifest().as_json()};" in text
    assert "\nexport " not in text
    assert "\nimport " not in text


def test_another_set_is_another_worker(client, monkeypatch):
    first = client.get("/worker.js")
    newer = replace(precache_manifest(), version="newer")
    monkeypatch.setattr(service_worker, "precache_manifest", lambda: newer)
    again = client.get("/worker.js", headers={"If-None-Match": first.headers["ETag"]})
    assert again.status_code == 200
    assert again.content != first.content


def test_another_code_with_the_same_set_is_another_worker_too(client, monkeypatch, tmp_path):
    first = client.get("/worker.js")
    put_right = tmp_path / "worker.min.js"
    put_right.write_text(service_worker.BUILT.read_text("utf-8") + "/* put right */", "utf-8")
    monkeypatch.setattr(service_worker, "BUILT", put_right)
    again = client.get("/worker.js", headers={"If-None-Match": first.headers["ETag"]})
    assert again.status_code == 200
    assert again.content != first.content


def test_the_same_worker_is_not_sent_twice(client):
    tag = client.get("/worker.js").headers["ETag"]
    assert client.get("/worker.js", headers={"If-None-Match": tag}).status_code == 304


def test_it_can_only_be_read(client):
    assert client.post("/worker.js").status_code == 405
