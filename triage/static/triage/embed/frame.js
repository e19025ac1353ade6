/* Inside a firm's page: says how high the page is, when a step has come, and hands over the summary when the person
   asks for it. Speaks only to a page that greeted it from an origin the firm listed; see triage/embed/README.md. */

const VERSION = 1;
const around = window.parent;
const origins = (document.documentElement.dataset.firmOrigins || "").split(" ").filter(Boolean);
let host = "";
let takesSummary = false;

/** @param {string} type @param {object} more */
function tell(type, more) {
  if (host) around.postMessage({ ovenCheck: VERSION, type, ...more }, host);
}

/* The body is as high as what is in it; the document is at least as high as the frame and could never shrink. */
function tellHeight() {
  tell("height", { height: Math.ceil(document.body.getBoundingClientRect().height) });
}

/* Where the page around has a form of its own that takes the summary, ours is not offered beside it. */
function showWay() {
  for (const way of document.querySelectorAll("[data-book]")) way.hidden = !takesSummary;
  for (const way of document.querySelectorAll("[data-send]")) way.hidden = takesSummary;
}

/** @param {MessageEvent} event */
function greeted(event) {
  const message = event.data;
  if (event.source !== around || !origins.includes(event.origin)) return;
  if (message?.ovenCheck !== VERSION || message.type !== "hello") return;
  const first = !host;
  host = event.origin;
  takesSummary = message.takesSummary === true;
  document.documentElement.classList.add("framed");
  showWay();
  tellHeight();
  if (!first) return;
  new ResizeObserver(tellHeight).observe(document.body);
  tell("arrived", {});
  const sent = document.querySelector("main [data-sent]");
  if (sent) tell("sent", { reference: sent.dataset.sent });
}

/** @param {MouseEvent} event */
function book(event) {
  const button = /** @type {Element} */ (event.target).closest("[data-book] button");
  const summary = document.querySelector("[data-summary]");
  if (!button || !summary || !host) return;
  const offer = button.closest("[data-offer]");
  tell("summary", {
    text: summary.textContent,
    address: offer.dataset.address,
    heading: document.querySelector("h1").textContent.trim(),
    band: offer.dataset.band,
  });
  const status = offer.querySelector("[role=status]");
  status.textContent = status.dataset.booked;
}

if (around !== window && origins.length) {
  window.addEventListener("message", greeted);
  document.addEventListener("click", book);
  document.body.addEventListener("htmx:afterSettle", (event) => {
    showWay();
    if (event.detail.target.id === "step") tell("arrived", {});
  });
  document.body.addEventListener("htmx:historyRestore", showWay);
}
