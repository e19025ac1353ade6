/* The sentences that the scripts of a call say, by name: they stand in the page in the language of the site. */

/** @returns {Object<string, string>} */
export function pageTexts() {
  const lines = document.querySelectorAll("#call-words > [data-name]");
  return Object.fromEntries([...lines].map((line) => [line.dataset.name, line.textContent]));
}
