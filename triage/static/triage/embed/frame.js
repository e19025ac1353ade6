/* Inside a firm's page: says how high the page is, when a step has come, and hands over the summary when the person
   asks for it. Speaks only to a page that greeted it from an origin the firm listed; see triage/embed/README.md. */

const VERSION = 1;
const parentWindow = window.parent;
const origins = (document.documentElement.dataset.firmOrigins || "").split(" ").filter(Boolean);
let host = "";
let takesSummary = false;

/** @param {string} type @param {object} more */
function send(type, more) {
  if (host) parentWindow.postMessage({ ovenCheck: VERSION, type, ...more }, host);
}

/* The body is as high as what is in it; the document is at least as high as the frame and could never shrink. */
function sendHeight() {
  send("height", { height: Math.ceil(document.body.getBoundingClientRect().height) });
}

/* Where the page around has a form of its own that takes the summary, ours is not offered beside it. */
function showOffer() {
  for (const offer of document.querySelectorAll("[data-book]")) offer.hidden = !takesSummary;
  for (const offer of document.querySelectorAll("[data-send]")) offer.hidden = takesSummary;
}

/** @param {MessageEvent} event */
function receiveHello(event) {
  const message = event.data;
  if (event.source !== parentWindow || !origins.includes(event.origin)) return;
  if (message?.ovenCheck !== VERSION || message.type !== "hello") return;
  const first = !host;
  host = event.origin;
  takesSummary = message.takesSummary === true;
  document.documentElement.classList.add("framed");
  showOffer();
  sendHeight();
  if (!first) return;
  new ResizeObserver(sendHeight).observe(document.body);
  send("navigated", {});
  const sent = document.querySelector("main [data-sent]");
  if (sent) send("sent", { reference: sent.dataset.sent });
}

/** @param {MouseEvent} event */
function book(event) {
  const button = /** @type {Element} */ (event.target).closest("[data-book] button");
  const summary = document.querySelector("[data-summary]");
  if (!button || !summary || !host) return;
  const offer = button.closest("[data-offer]");
  send("summary", {
    text: summary.textContent,
    address: offer.dataset.address,
    heading: document.querySelector("h1").textContent.trim(),
    band: offer.dataset.band,
  });
  const status = offer.querySelector("[role=status]");
  status.textContent = status.dataset.booked;
}

if (parentWindow !== window && origins.length) {
  window.addEventListener("message", receiveHello);
  document.addEventListener("click", book);
  document.body.addEventListener("htmx:afterSettle", (event) => {
    showOffer();
    if (event.detail.target.id === "step") send("navigated", {});
  });
  document.body.addEventListener("htmx:historyRestore", showOffer);
}
