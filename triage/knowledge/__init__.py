"""Packs and regions: YAML in, `triage.engine` shapes and texts out. PyYAML, no Django."""
