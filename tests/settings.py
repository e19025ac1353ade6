"""The site's own settings, as tests need them: no set-up by the tester, no compiled static files."""

import os
import secrets

os.environ.setdefault("SECRET_KEY", secrets.token_urlsafe(50))
os.environ.setdefault("ALLOWED_HOSTS", "testserver,localhost,127.0.0.1")
os.environ.setdefault("HTTPS_ONLY", "0")
os.environ.setdefault("STATIC_FROM_SOURCE", "1")
os.environ.setdefault("DATABASE_URL", "sqlite:///:memory:")

from site_config.settings import *  # noqa: F403  (the environment first)

PASSWORD_HASHERS = ["tests.quick_password.QuickArgon2PasswordHasher"]
