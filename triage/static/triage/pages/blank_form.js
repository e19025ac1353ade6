/* A firm's form that the phone kept without anybody's answers, opened with no connection: the address of the page has the
   answers of this check, and what leads on from it gets them. Only the way back to the start carries none. */

export function fillBlankForm() {
  /** @type {HTMLFormElement | null} */
  const form = document.querySelector("form[data-blank]");
  if (!form) return;
  form.action = location.href;
  const start = new URL(form.dataset.blank, location.href);
  for (const link of document.links) {
    if (link.search === start.search && link.pathname !== start.pathname) link.search = location.search;
  }
}
