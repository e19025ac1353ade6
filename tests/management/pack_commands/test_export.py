"""`manage.py pack export`: the network of one region, to a file or to standard output."""

import json

import pytest
from django.core.management import CommandError, call_command

from tests.management.pack_commands.asking import refused, said
from triage.engine.model import compile_model
from triage.knowledge.exports import to_xmlbif
from triage.knowledge.library import library


def network(region):
    return to_xmlbif(compile_model(library().pack, library().regions[region].region))


def test_it_is_written_to_standard_output():
    assert said("export", "--region", "us") == network("us")


def test_it_is_written_to_a_file_and_said(tmp_path):
    file = tmp_path / "oven.xml"
    text = said("export", "--format", "xmlbif", "--out", str(file))
    assert file.read_text("utf-8") == network("gb-eng")
    assert str(file) in text
    told = json.loads(said("export", "--out", str(file), "--json"))
    assert told == {
        "pack": "electric-oven",
        "version": library().pack.version,
        "region": "gb-eng",
        "format": "xmlbif",
        "file": str(file),
    }


def test_as_json_without_a_file_the_network_is_inside():
    assert json.loads(said("export", "--json"))["network"] == network("gb-eng")


def test_bad_input_gets_one_sentence(tmp_path):
    assert refused("export", "--region", "moon").startswith("There is no region moon.")
    assert "was not written" in refused("export", "--out", str(tmp_path))
    with pytest.raises(CommandError, match="invalid choice: 'bif'"):
        call_command("pack", "export", "--format", "bif")
