/* After htmx has put a step in place: name the page, show it from the top, and take the reader to its heading.
   Moving focus to the heading is what announces the step; the status line speaks only when a step did not come. */

const step = document.getElementById("step");
const status = document.getElementById("step-status");
const siteName = document.title.split(" – ").pop();

function arrive() {
  const heading = step.querySelector("h1");
  if (!heading) return;
  status.textContent = "";
  document.title = `${heading.textContent.trim()} – ${siteName}`;
  window.scrollTo(0, 0);
  heading.focus({ preventScroll: true });
}

function sayUnreached() {
  status.textContent = status.dataset.unreached;
}

/** A page the server could not make is better read as itself than lost: go there plainly. @param {HtmxEvent} event */
function goPlainly(event) {
  window.location.assign(event.detail.pathInfo.requestPath);
}

/** A click with a modifier key is the reader's wish for another tab or window: htmx must not take it.
 * @param {MouseEvent} event */
function leaveModified(event) {
  if (event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) event.stopPropagation();
}

export function watchSteps() {
  if (!step) return;
  document.addEventListener("click", leaveModified, { capture: true });
  document.body.addEventListener("htmx:afterSettle", (event) => {
    if (event.detail.target === step) arrive();
  });
  document.body.addEventListener("htmx:historyRestore", arrive);
  document.body.addEventListener("htmx:responseError", goPlainly);
  document.body.addEventListener("htmx:sendError", sayUnreached);
  document.body.addEventListener("htmx:timeout", sayUnreached);
}
