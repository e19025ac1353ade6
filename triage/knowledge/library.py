"""Everything the site knows, loaded once: the pack, its texts and the regions.

`load_library` reads the files and raises PackProblems with every mistake in all of them. `library` keeps what it
loaded for as long as the program runs: the engine compiles a model per pack and region object and finds it again by
identity.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

from triage.engine.pack import Pack
from triage.knowledge.overlay import danger_problems
from triage.knowledge.overlay_file import FOLDER as OVERLAYS
from triage.knowledge.pack_builder import build_written, overlaid
from triage.knowledge.pack_texts import build_texts
from triage.knowledge.problems import PackProblem, PackProblems
from triage.knowledge.region_builder import RegionProfile, build_regions
from triage.knowledge.texts import Texts
from triage.knowledge.wording import with_terms

HERE = Path(__file__).parent
ELECTRIC_OVEN = HERE / "packs" / "electric_oven"
REGIONS = HERE / "regions"
FIRST_LANGUAGE = "en"


@dataclass(frozen=True, eq=False)
class Library:
    """`texts` by language as the authors wrote them; `words` gives them in the words of a region."""

    pack: Pack
    regions: Mapping[str, RegionProfile]
    texts: Mapping[str, Texts]
    _worded: dict[tuple[str, str], Texts] = field(default_factory=dict, repr=False)

    def texts_for(self, region: str, language: str = FIRST_LANGUAGE) -> Texts:
        """The texts as people in `region` would say them, in English where the language does not exist yet."""
        key = (region, language if language in self.texts else FIRST_LANGUAGE)
        if key not in self._worded:
            self._worded[key] = with_terms(self.texts[key[1]], self.regions[region].terms)
        return self._worded[key]


def load_library(pack_folder: Path = ELECTRIC_OVEN, regions_folder: Path = REGIONS, *, learnt: bool = True) -> Library:
    """Pack, texts and regions from their folders, the pack with what was learnt unless told not to.

    Raises PackProblems.
    """
    written = build_written(pack_folder)
    pack = overlaid(written, pack_folder) if learnt else written
    problems: list[PackProblem] = []
    texts = {}
    for folder in sorted((pack_folder / "text").glob("*")):
        if folder.is_dir():
            texts[folder.name] = build_texts(folder, pack, problems)
    regions = build_regions(regions_folder, FIRST_LANGUAGE, pack, problems)
    if FIRST_LANGUAGE not in texts:
        where = f"{pack_folder.name}/text"
        problems.append(PackProblem(where, 1, "folder", f"has no {FIRST_LANGUAGE}.", "Every pack speaks it first."))
    if pack is not written:
        problems += danger_problems(written, pack, (profile.region for profile in regions.values()), OVERLAYS)
    if problems:
        raise PackProblems(problems)
    return Library(pack, regions, texts)


@cache
def library() -> Library:
    """The library this program works with."""
    return load_library()
