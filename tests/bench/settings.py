"""The site as in production, plus one bare page to compare with. Static files stand in a passing folder."""

import os
import secrets
from pathlib import Path

os.environ.setdefault("SECRET_KEY", secrets.token_urlsafe(50))
os.environ.setdefault("ALLOWED_HOSTS", "127.0.0.1")
os.environ.setdefault("DATABASE_URL", "sqlite:///:memory:")
os.environ.setdefault("HTTPS_ONLY", "0")
os.environ.setdefault("STATIC_FROM_SOURCE", "0")
os.environ.setdefault("TRIAGE_BOOKING_RATE_LIMIT", "1000000")  # a whole crowd comes from one address here

from site_config.settings import *  # noqa: F403  (the environment first)

ROOT_URLCONF = "tests.bench.urls"
STATIC_ROOT = Path(os.environ["BENCH_STATIC_ROOT"])
