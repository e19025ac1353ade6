"""The top level is fixed; a newcomer finds the same eight names for ever."""

from tests.whole_site.project_files import ROOT, project_files

FOLDERS = {"triage", "site_config", "fixtures_demo", "tests"}
FILES = {"README.md", "DEVELOPERS.md", "pyproject.toml", "manage.py"}


def test_the_top_level_is_the_agreed_one_dotfiles_aside():
    names = {path.parts[0] for path in project_files() if not path.parts[0].startswith(".")}
    assert names == FOLDERS | FILES


def test_each_name_is_the_kind_it_should_be():
    assert all((ROOT / name).is_dir() for name in FOLDERS)
    assert all((ROOT / name).is_file() for name in FILES)


def test_no_folder_is_a_drawer_for_everything():
    drawers = {"utils", "helpers", "common", "manager", "misc", "info", "data"}
    found = [path for path in project_files() if drawers & {part.removesuffix(".py") for part in path.parts}]
    assert found == []
