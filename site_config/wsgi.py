"""What a WSGI server loads: `granian --interface wsgi site_config.wsgi:application`."""

import os

from django.core.wsgi import get_wsgi_application

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "site_config.settings")

application = get_wsgi_application()

from triage.knowledge.library import library  # noqa: E402  (Django has to be set up first)

library()  # read before the first visitor comes, who would wait for it
