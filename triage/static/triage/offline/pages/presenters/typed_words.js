/* What the search box needs of the words people type: as `triage/check_pages/presenters/typed_words.py`. */

export function typedWords(phrases) {
  const words = [
    ...new Set(
      phrases
        .toLowerCase()
        .split(/[\s,]+/)
        .filter(Boolean),
    ),
  ];
  return words.filter((word) => !words.some((other) => other !== word && other.startsWith(word))).join(" ");
}
