/* A box that takes so much and no more. Cutting is ours and not the browser's, so that it can be told. */

/** Cuts what is too long for a box off; whether all of it is there.
 * @param {HTMLTextAreaElement | HTMLInputElement} box */
export function limited(box) {
  const most = Number(box.dataset.longest);
  if (box.value.length <= most) return true;
  box.value = box.value.slice(0, most);
  return false;
}
