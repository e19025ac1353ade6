"""A site's choices are typed, have a default and are written down where operators look."""

import pytest
from django.core.exceptions import ImproperlyConfigured

from tests.whole_site.project_files import ROOT
from triage.conf import DEFAULT_REGION, SETTINGS


def test_a_setting_nobody_chose_has_its_default():
    assert DEFAULT_REGION.value() == "gb-eng"


def test_a_site_chooses_in_its_django_settings(settings):
    settings.TRIAGE_DEFAULT_REGION = "ie"
    assert DEFAULT_REGION.value() == "ie"


@pytest.mark.parametrize("wrong", ["", None, 7])
def test_a_wrong_value_is_refused_by_name(settings, wrong):
    settings.TRIAGE_DEFAULT_REGION = wrong
    with pytest.raises(ImproperlyConfigured) as caught:
        DEFAULT_REGION.value()
    assert str(caught.value) == (
        f"TRIAGE_DEFAULT_REGION is {wrong!r}. The region whose rules and emergency numbers apply until a"
        " person chooses another. Use a text, as in 'gb-eng'."
    )


@pytest.mark.parametrize("setting", SETTINGS, ids=lambda setting: setting.name)
def test_every_setting_is_in_the_developers_guide(setting):
    guide = (ROOT / "DEVELOPERS.md").read_text("utf-8")
    assert setting.name in guide
    assert setting.meaning in guide
    assert f"`{setting.default}`" in guide
