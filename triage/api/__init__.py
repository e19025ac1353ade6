"""The check and its job sheets as JSON, for firms with their own front end or telephone menu.

`README.md` says how to use it and `openapi.json` describes it. Nothing here is a conclusion of its own: the steps are
those of the pages, the job sheets those of `triage.jobsheet`.
"""
