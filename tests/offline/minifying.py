"""The script of the phone's pages in as few letters as it takes: names that nobody outside sees become short."""

import minify

from triage.offline.page_script import page_source


def minified():
    return minify.string("application/javascript", page_source()) + "\n"
