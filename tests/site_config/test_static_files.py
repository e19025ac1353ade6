"""A stylesheet is squeezed on its way into the served folder, and what is quoted in it stays as it was."""

from django.core.files.base import ContentFile

from site_config.static_files import SqueezedStaticFilesStorage

SHEET = """/* why; it { is } */
a > b, c :is(d) ~ e { color : red; margin: 0 calc(1px + 2px) !important; }
.f::before { content: "✕  ; /* kept */ : }"; }  /* here too */

@media (max-width: 9rem) and print { .g { --h: 'a  b'; } }
"""
SHORT = (
    "a>b,c :is(d) ~ e{color:red;margin:0 calc(1px + 2px)!important}"
    '.f::before{content:"✕  ; /* kept */ : }"}'
    "@media (max-width:9rem) and print{.g{--h:'a  b'}}"
)


def test_the_served_folder_gets_the_squeezed_sheet_and_other_files_as_they_are(tmp_path):
    storage = SqueezedStaticFilesStorage(location=tmp_path)
    read_before = ContentFile(SHEET.encode())
    read_before.read()
    storage._save("one.css", read_before)
    storage._save("one.js", ContentFile(SHEET.encode()))
    assert (tmp_path / "one.css").read_text("utf-8") == SHORT
    assert (tmp_path / "one.js").read_text("utf-8") == SHEET
