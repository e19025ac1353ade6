/* A box that takes so much and no more. Truncating is ours and not the browser's, so that it can be announced. */

/** Truncates what is too long for a box; whether all of it fits.
 * @param {HTMLTextAreaElement | HTMLInputElement} box */
export function enforceMaxLength(box) {
  const maxLength = Number(box.dataset.maxLength);
  if (box.value.length <= maxLength) return true;
  box.value = box.value.slice(0, maxLength);
  return false;
}
