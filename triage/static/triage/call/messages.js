/* The sentences a page brings along for its scripts, and the status line that shows them. */

const sentences = Object.fromEntries(
  [...document.querySelectorAll("[data-js-messages] li")].map((line) => [line.dataset.name, line.textContent]),
);

/** The sentence of that name, with each `%(param)s` filled in.
 * @param {string} name @param {Object<string, any>} params @returns {string} */
export function message(name, params = {}) {
  return Object.entries(params).reduce(
    (sentence, [param, value]) => sentence.replace(`%(${param})s`, () => String(value)),
    sentences[name] ?? "",
  );
}

/** @param {string} sentence */
export function announce(sentence) {
  document.getElementById("call-status").textContent = sentence;
}

/** Copies a text and says whether it could be copied. @param {string} text */
export async function copy(text) {
  try {
    await navigator.clipboard.writeText(text);
    announce(message("copied"));
  } catch {
    announce(message("not-copied"));
  }
}
