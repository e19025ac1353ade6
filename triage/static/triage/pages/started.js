/* When a reading was started, in milliseconds: kept in the address and, where the browser allows, in its storage. */

const NAME = "read-start";
const LONGEST = 24 * 3600 * 1000;

/** A start that lies ahead or more than a day back belongs to no reading that is still going on.
 * @param {number} start */
function sensible(start) {
  return start > Date.now() - LONGEST && start <= Date.now() ? start : 0;
}

/** @param {string} kind */
function stored(kind) {
  try {
    return Number(localStorage.getItem(`${NAME}-${kind}`)) || 0;
  } catch {
    return 0;
  }
}

/** @param {string} kind */
export function keptStart(kind) {
  const named = Number(new URLSearchParams(window.location.search).get(NAME)) * 1000;
  return sensible(named) || sensible(stored(kind));
}

/** @param {string} kind @param {number} start */
export function keepStart(kind, start) {
  const address = new URL(window.location.href);
  if (start) address.searchParams.set(NAME, String(Math.round(start / 1000)));
  else address.searchParams.delete(NAME);
  history.replaceState(history.state, "", address);
  try {
    if (start) localStorage.setItem(`${NAME}-${kind}`, String(start));
    else localStorage.removeItem(`${NAME}-${kind}`);
  } catch {
    /* Without storage the address alone keeps it. */
  }
}
