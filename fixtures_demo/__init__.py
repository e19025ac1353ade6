"""An invented repair firm for `manage.py demo`: its booking page, its people, its job sheets. No unit test uses it."""
