"""Settings of the site. Every choice an operator has is an environment variable, read through `env`."""

import secrets
from pathlib import Path

from csp.constants import NONE, SELF

from site_config import env
from triage.conf import SETTINGS

BASE_DIR = Path(__file__).resolve().parent.parent

DEBUG = env.flag("DEBUG", default=False)
SECRET_KEY = secrets.token_urlsafe(50) if DEBUG else env.secret("SECRET_KEY")
# Keys of before: links of senders and open forms made with one still work.
SECRET_KEY_FALLBACKS = env.texts("SECRET_KEY_FALLBACKS")
ALLOWED_HOSTS = env.hosts("ALLOWED_HOSTS", default=[])

ROOT_URLCONF = "site_config.urls"
WSGI_APPLICATION = "site_config.wsgi.application"

# Accounts and sessions are the firm's desk's. A check lives in its address, and no page of it sets a cookie.
INSTALLED_APPS = [
    "django.contrib.auth",
    "django.contrib.contenttypes",
    "django.contrib.sessions",
    "django.contrib.messages",
    "django.contrib.staticfiles",
    "django_htmx",
    "csp",
    "triage",
]
# An invented firm with a booking page, for `manage.py demo` and the test that books through it.
DEMO = env.flag("DEMO", default=False)
if DEMO:
    INSTALLED_APPS.append("fixtures_demo")

# None of these may read request.GET: a forged address with ten thousand answers must still get a page, and
# request.GET refuses it with a 400. The views read QUERY_STRING themselves.
MIDDLEWARE = [
    "django.middleware.security.SecurityMiddleware",
    "triage.web.security_headers.SecurityHeadersMiddleware",
    "whitenoise.middleware.WhiteNoiseMiddleware",
    "triage.web.compression.OpenPagesGZipMiddleware",
    "csp.middleware.CSPMiddleware",
    "django.middleware.common.CommonMiddleware",
    "django_htmx.middleware.HtmxMiddleware",
    "triage.operations.step_metrics.StepCountingMiddleware",
    "triage.desk.middleware.SessionsForDesk",
]

TEMPLATES = [
    {
        "BACKEND": "django.template.backends.django.DjangoTemplates",
        "APP_DIRS": True,
        "OPTIONS": {"context_processors": ["django.template.context_processors.request"]},
    },
]

CONTENT_SECURITY_POLICY = {
    "DIRECTIVES": {
        "default-src": [SELF],
        "script-src": [SELF],
        "style-src": [SELF],
        "img-src": [SELF, "data:"],
        "object-src": [NONE],
        "base-uri": [NONE],
        "form-action": [SELF],
        "frame-ancestors": [NONE],
    },
}

DATABASES = {"default": env.database("DATABASE_URL", default=f"sqlite:///{BASE_DIR}/.oven.sqlite3")}
if DATABASES["default"]["ENGINE"] == "django.db.backends.sqlite3":
    # Writers queue instead of failing, and readers go on meanwhile; what was acknowledged outlives a power cut.
    DATABASES["default"]["OPTIONS"] = {
        "transaction_mode": "IMMEDIATE",
        "init_command": "PRAGMA journal_mode=WAL;PRAGMA synchronous=FULL;PRAGMA busy_timeout=5000",
    }
DEFAULT_AUTO_FIELD = "django.db.models.BigAutoField"

PASSWORD_HASHERS = ["django.contrib.auth.hashers.Argon2PasswordHasher"]
AUTH_PASSWORD_VALIDATORS = [
    {"NAME": f"django.contrib.auth.password_validation.{name}"}
    for name in ("UserAttributeSimilarityValidator", "MinimumLengthValidator", "CommonPasswordValidator")
]

# Behind a proxy that ends TLS, TRUST_PROXY tells the site to believe its X-Forwarded-Proto; without such a
# proxy anybody could forge it.
HTTPS_ONLY = env.flag("HTTPS_ONLY", default=not DEBUG)
SECURE_SSL_REDIRECT = HTTPS_ONLY
# Asked on this host by whoever watches it, without TLS.
SECURE_REDIRECT_EXEMPT = ["^health/$", "^ready/$", "^metrics/$"]
SECURE_HSTS_SECONDS = 31_536_000 if HTTPS_ONLY else 0
if env.flag("TRUST_PROXY", default=False):
    SECURE_PROXY_SSL_HEADER = ("HTTP_X_FORWARDED_PROTO", "https")
# Warnings of `check --deploy` that are answered elsewhere, or are not this site's to decide.
SILENCED_SYSTEM_CHECKS = [
    "security.W002",  # who may frame a page is said by frame-ancestors of the content policy, page by page
    "security.W003",  # form tokens are checked inside SessionsForDesk, where there are sessions to protect
    "security.W005",  # other hosts of the domain are for their operator to speak for
    "security.W021",  # and so is a list that browsers are shipped with
]
SESSION_COOKIE_SECURE = CSRF_COOKIE_SECURE = HTTPS_ONLY
SESSION_COOKIE_PATH = CSRF_COOKIE_PATH = "/desk/"
SESSION_COOKIE_AGE = 12 * 3600  # a working day
MESSAGE_STORAGE = "django.contrib.messages.storage.session.SessionStorage"  # a cookie of their own would be one more
CSRF_FAILURE_VIEW = "triage.desk.views.errors.form_expired"

# Job sheets by e-mail. Without a mail server they are written to the terminal, which is what a demo wants.
EMAIL_HOST = env.text("EMAIL_HOST", default="")
EMAIL_BACKEND = f"django.core.mail.backends.{'smtp' if EMAIL_HOST else 'console'}.EmailBackend"
EMAIL_PORT = env.number("EMAIL_PORT", default=587)
EMAIL_USE_TLS = env.flag("EMAIL_USE_TLS", default=True)
EMAIL_HOST_USER = env.text("EMAIL_HOST_USER", default="")
EMAIL_HOST_PASSWORD = env.text("EMAIL_HOST_PASSWORD", default="")
EMAIL_TIMEOUT = 20
DEFAULT_FROM_EMAIL = env.text("EMAIL_FROM", default="oven-check@localhost")

for setting in SETTINGS:
    globals()[setting.name] = env.text(setting.name, default=setting.default, old_name=setting.old_name)

# In production `collectstatic` builds hashed, compressed files once. A demo and a developer serve the
# source files.
STATIC_URL = "/static/"
STATIC_ROOT = BASE_DIR / "staticfiles"
STATIC_FROM_SOURCE = env.flag("STATIC_FROM_SOURCE", default=DEBUG)
WHITENOISE_AUTOREFRESH = WHITENOISE_USE_FINDERS = STATIC_FROM_SOURCE
STORAGES = {
    "default": {"BACKEND": "django.core.files.storage.FileSystemStorage"},
    "staticfiles": {
        "BACKEND": "django.contrib.staticfiles.storage.StaticFilesStorage"
        if STATIC_FROM_SOURCE
        else "site_config.static_files.SqueezedStaticFilesStorage",
    },
}

LANGUAGE_CODE = "en"
LANGUAGES = [("en", "English")]  # embed/loader.js names the same
USE_I18N = True
USE_TZ = True
TIME_ZONE = "UTC"

# Tracebacks go to the terminal, where whoever runs the site looks. Request lines do not: an address holds a trail. What
# an exception says does not either, because a database tells the row it refused; a developer sees it. A
# program that reads the log is also told what was written, by number.
LOG_FORMAT = env.choice("LOG_FORMAT", ("text", "json"), default="text")
LOGGING = {
    "version": 1,
    "disable_existing_loggers": False,
    "formatters": {
        "text": {"()": "triage.operations.log_lines.TextFormatter", "verbose": DEBUG},
        "json": {"()": "triage.operations.log_lines.JSONFormatter", "verbose": DEBUG},
    },
    "handlers": {"terminal": {"class": "logging.StreamHandler", "formatter": LOG_FORMAT}},
    "root": {"handlers": ["terminal"], "level": "WARNING"},
    "loggers": {
        "django": {"handlers": ["terminal"], "level": "WARNING", "propagate": False},
        "django.request": {"level": "ERROR"},
        "triage": {"level": "INFO" if LOG_FORMAT == "json" else "WARNING"},
    },
}
