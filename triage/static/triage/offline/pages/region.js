/* Which region is meant by the languages a browser speaks, where the address names none: as
   `triage/check_pages/region.py`. */

/** @typedef {{territory: string, order: number, wanted: number}} Territory */

export const ELSEWHERE = "iec";

const LONGEST_HEADER = 500;

/** The id of the region meant by languages as in an Accept-Language header ("en-AU,en;q=0.5").
 * @param {string} languages @param {Map<string, {territory: string}>} regions @param {string} usual */
export function guessRegion(languages, regions, usual) {
  const found = territoriesOf(languages);
  for (const territory of found) {
    for (const [id, region] of regions) if (region.territory === territory) return id;
  }
  return found.length && regions.has(ELSEWHERE) ? ELSEWHERE : usual;
}

/** Two-letter territories, the most wanted first. @param {string} languages */
function territoriesOf(languages) {
  const weighted = languages
    .slice(0, LONGEST_HEADER)
    .split(",")
    .flatMap((part, order) => {
      const [tag, ...rest] = part.trim().split(";");
      const named = tag
        .split("-")
        .slice(1)
        .filter((subtag) => /^[a-z]{2}$/i.test(subtag));
      return named.map((subtag) => ({ territory: subtag.toUpperCase(), order, wanted: qualityOf(rest.join(";")) }));
    });
  /** @param {Territory} one @param {Territory} other */
  const inOrder = (one, other) =>
    other.wanted - one.wanted || one.order - other.order || (one.territory < other.territory ? -1 : 1);
  return weighted.sort(inOrder).map(({ territory }) => territory);
}

/** @param {string} rest */
function qualityOf(rest) {
  const quality = rest.trim().replace(/^q=/, "");
  return rest === "" ? 1 : /^[0-9]*\.?[0-9]+$/.test(quality) ? Number(quality) : 0;
}
