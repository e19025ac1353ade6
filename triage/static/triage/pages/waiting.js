/* Hand-overs from this phone: sent at once where there is a line, else kept and listed on every page until they are sent.
   Without this script the form is an ordinary one. */

import { askToTake, forgetHandOver, keepHandOver, keptHandOvers, newKey, sendWaiting } from "../offline/outbox.js";

const list = document.getElementById("waiting");
const line = document.getElementById("phone-status");

const filled = (text, told) => text.replace(/%\((\w+)\)s/g, (_whole, name) => told[name]);

function rowOf(handOver) {
  const row = list.querySelector("template").content.firstElementChild.cloneNode(true);
  const state = handOver.sent ? "sent" : handOver.trouble.length ? "trouble" : "waiting";
  for (const words of row.querySelectorAll("[data-state]")) words.hidden = words.dataset.state !== state;
  row.querySelector("strong").textContent = handOver.firm;
  row.querySelector("[data-reference]").textContent = handOver.sent?.reference ?? "";
  row
    .querySelector("ul")
    .replaceChildren(
      ...handOver.trouble.map((sentence) => Object.assign(document.createElement("li"), { textContent: sentence })),
    );
  showLink(row.querySelector("[data-open]"), handOver.sent?.address);
  showLink(row.querySelector("[data-again]"), state === "trouble" && handOver.action.replace("/kept/", "/"));
  const send = row.querySelector("[data-send]");
  send.hidden = state !== "waiting";
  send.onclick = sendAll;
  row.querySelector("[data-forget]").onclick = async () => {
    await forgetHandOver(handOver.key);
    await showKept();
  };
  return row;
}

function showLink(link, address) {
  link.hidden = !address;
  if (address) link.href = address;
}

async function showKept() {
  const kept = await keptHandOvers();
  const waiting = kept.filter((handOver) => !handOver.sent).length;
  const words = waiting === 1 ? list.dataset.one : filled(list.dataset.many, { n: waiting });
  list.hidden = kept.length === 0;
  list.querySelector("summary").textContent = waiting ? words : list.dataset.done;
  list.querySelector(":scope > ul").replaceChildren(...kept.map(rowOf));
  return kept;
}

/* Sends what waits and says what went. Nothing went is nothing to say: the list stands there. */
async function sendAll() {
  const before = new Set((await keptHandOvers()).filter((handOver) => handOver.sent).map((handOver) => handOver.key));
  await sendWaiting().catch(() => {});
  const sent = (await showKept()).filter((handOver) => handOver.sent && !before.has(handOver.key));
  if (sent.length) {
    line.textContent = sent
      .map(({ firm, sent: { reference } }) => filled(line.dataset.sent, { firm, reference }))
      .join(" ");
  }
}

async function keepForLater(form, handOver) {
  try {
    await keepHandOver(handOver);
  } catch {
    line.textContent = line.dataset.notKept;
    document.getElementById("keep-answers").open = true;
    line.scrollIntoView({ block: "center" });
    return;
  }
  form.hidden = true;
  line.textContent = line.dataset.kept;
  await showKept();
  list.open = true;
  window.scrollTo(0, 0);
  navigator.storage?.persist?.().catch(() => {});
  const registration = await navigator.serviceWorker?.getRegistration();
  await registration?.sync?.register("outbox").catch(() => {});
}

/* What the site refuses is sent again as a plain form, so that its page shows each problem beside its field. */
async function send(form) {
  const fields = [...new FormData(form)].filter(([name]) => name !== "state");
  const action = form.action.replace("/hand-over/", "/hand-over/kept/");
  form.dataset.key ||= newKey();
  const handOver = { key: form.dataset.key, action, firm: form.dataset.firm, fields };
  const button = form.querySelector("button:not([type])");
  button.disabled = true;
  try {
    const { sent } = await askToTake(handOver);
    if (sent) location.assign(sent.address);
    else form.submit();
  } catch {
    await keepForLater(form, handOver);
  }
  button.disabled = false;
}

/* An advice that the phone made for a firm's check has no offer from the site; its place is after the summary. */
function offerWithNoLine() {
  const summary = document.querySelector("[data-for-firm]")?.closest("section");
  if (!summary || document.querySelector("#step .offer")) return;
  const offer = document.getElementById("offer-with-no-line").content.firstElementChild.cloneNode(true);
  offer.querySelector("a").href = `/check/hand-over/${location.search}`;
  summary.after(offer);
}

export function watchOutbox() {
  if (!list) return;
  offerWithNoLine();
  document.body.addEventListener("htmx:afterSettle", offerWithNoLine);
  document.addEventListener("submit", (event) => {
    if (!event.target.matches("form[data-firm]")) return;
    event.preventDefault();
    send(event.target);
  });
  const look = () => sendAll().catch(() => {});
  navigator.serviceWorker?.addEventListener("message", (event) => {
    if (event.data?.type === "outbox") showKept().catch(() => {});
  });
  window.addEventListener("online", look);
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && look());
  look();
}
