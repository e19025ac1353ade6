"""No model has changed without its migration."""

import pytest
from django.core.management import call_command


@pytest.mark.django_db
def test_no_migration_is_pending():
    call_command("makemigrations", check=True, dry_run=True, verbosity=0)
