/* The button that copies the summary. It is shown only where the browser can copy; the text can always be selected. */

function showButtons() {
  if (!navigator.clipboard) return;
  for (const button of document.querySelectorAll("button[data-copy][hidden]")) button.hidden = false;
}

/** @param {HTMLElement} button */
async function copy(button) {
  const text = document.getElementById(button.dataset.copy).textContent;
  const status = button.closest("section").querySelector("[data-copy-status]");
  try {
    await navigator.clipboard.writeText(text);
    status.textContent = button.dataset.copied;
  } catch {
    status.textContent = button.dataset.failed;
  }
}

export function offerCopying() {
  document.addEventListener("click", ({ target }) => {
    const button = /** @type {Element} */ (target).closest("button[data-copy]");
    if (button) copy(button);
  });

  showButtons();
  document.body.addEventListener("htmx:afterSettle", showButtons);
  document.body.addEventListener("htmx:historyRestore", showButtons);
}
