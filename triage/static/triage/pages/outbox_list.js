/* Requests for a visit: sent at once where the phone is online, else queued and listed on every page until they are sent.
   Without this script the form is an ordinary one. */

import { newKey, queueBooking, queuedBookings, removeBooking, sendBooking, sendQueued } from "../offline/outbox.js";
import { fillIn } from "./fill_in.js";

/** @typedef {import("../offline/outbox.js").QueuedBooking} QueuedBooking */

const list = /** @type {HTMLDetailsElement | null} */ (document.getElementById("outbox"));
const status = document.getElementById("offline-status");

/** @param {QueuedBooking} booking */
function rowOf(booking) {
  /** @type {HTMLTemplateElement} */
  const template = list.querySelector("template");
  const row = /** @type {Element} */ (template.content.firstElementChild.cloneNode(true));
  const state = booking.sent ? "sent" : booking.trouble.length ? "refused" : "queued";
  for (const text of row.querySelectorAll("[data-state]")) text.hidden = text.dataset.state !== state;
  row.querySelector("strong").textContent = booking.firm;
  row.querySelector("[data-reference]").textContent = booking.sent?.reference ?? "";
  const items = booking.trouble.map((text) => Object.assign(document.createElement("li"), { textContent: text }));
  row.querySelector("ul").replaceChildren(...items);
  /** @param {HTMLAnchorElement} link @param {string | undefined} address */
  showLink(row.querySelector("[data-open]"), booking.sent?.address);
  showLink(row.querySelector("[data-refill]"), state === "refused" ? formOf(booking) : undefined);
  /** @param {HTMLFormElement} form */
  const send = row.querySelector("[data-send]");
  send.hidden = state !== "queued";
  send.onclick = sendAll;
  row.querySelector("[data-remove]").onclick = async () => {
    await removeBooking(booking.key);
    await showList();
  };
  return row;
}

/** One that was queued by the first release names only where it is sent to, which lies below its form.
 * @param {QueuedBooking} booking */
function formOf({ form, action }) {
  return form ?? action.replace("/kept/", "/");
}

/** @param {HTMLAnchorElement} link @param {string | undefined} address */
function showLink(link, address) {
  link.hidden = !address;
  if (address) link.href = address;
}

async function showList() {
  const bookings = await queuedBookings();
  const waiting = bookings.filter((booking) => !booking.sent).length;
  const text = waiting === 1 ? list.dataset.one : fillIn(list.dataset.many, { n: waiting });
  list.hidden = bookings.length === 0;
  list.querySelector("summary").textContent = waiting ? text : list.dataset.done;
  list.querySelector(":scope > ul").replaceChildren(...bookings.map(rowOf));
  return bookings;
}

/* Sends what waits and says what went. Nothing went is nothing to say: the list stands there. */
async function sendAll() {
  const before = new Set((await queuedBookings()).filter(({ sent }) => sent).map(({ key }) => key));
  await sendQueued().catch(() => {});
  const sent = (await showList()).filter((booking) => booking.sent && !before.has(booking.key));
  const texts = sent.map(({ firm, sent: { reference } }) => fillIn(status.dataset.sent, { firm, reference }));
  if (texts.length) status.textContent = texts.join(" ");
}

/** @param {HTMLFormElement} form @param {import("../offline/outbox.js").Booking & {form: string}} booking */
async function queue(form, booking) {
  try {
    await queueBooking(booking);
  } catch {
    status.textContent = status.dataset.notSaved;
    /** @type {HTMLDetailsElement} */ (document.getElementById("save-answers")).open = true;
    status.scrollIntoView({ block: "center" });
    return;
  }
  form.hidden = true;
  status.textContent = status.dataset.queued;
  await showList();
  list.open = true;
  window.scrollTo(0, 0);
  navigator.storage?.persist?.().catch(() => {});
  const registration = await navigator.serviceWorker?.getRegistration();
  await registration?.sync?.register("outbox").catch(() => {});
}

/** What the site refuses is sent again as a plain form, so that its page shows each problem beside its field.
 * @param {HTMLFormElement} form */
async function send(form) {
  form.dataset.key ||= newKey();
  const booking = {
    key: form.dataset.key,
    action: Object.assign(new URL(form.action), { pathname: form.dataset.queuePath }).href,
    form: form.action,
    firm: form.dataset.firm,
    fields: [...new FormData(form).entries()].filter(([name]) => name !== "state"),
  };
  /** @type {HTMLButtonElement} */
  const button = form.querySelector("button:not([type])");
  button.disabled = true;
  try {
    const { sent } = await sendBooking(booking);
    if (sent) location.assign(sent.address);
    else form.submit();
  } catch {
    await queue(form, booking);
  }
  button.disabled = false;
}

export function watchOutbox() {
  if (!list) return;
  document.addEventListener("submit", (event) => {
    const form = /** @type {HTMLFormElement} */ (event.target);
    if (!form.matches("form[data-firm]")) return;
    event.preventDefault();
    send(form);
  });
  const look = () => sendAll().catch(() => {});
  navigator.serviceWorker?.addEventListener("message", (event) => {
    if (event.data?.type === "outbox") showList().catch(() => {});
  });
  window.addEventListener("online", look);
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && look());
  look();
}
