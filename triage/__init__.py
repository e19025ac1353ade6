"""The oven fault check: a pure engine, the knowledge it reads, and the pages people see.

Arrows point one way, from the pages down to the engine; `[tool.importlinter]` in pyproject.toml lists them.
"""
