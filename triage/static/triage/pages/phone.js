/* The page's side of the installed check: starts the worker, wakes it, lets a new version take over when a check is
   begun, and says in one quiet line what happened. Where workers are refused, as in another site's frame, the site goes
   on answering and nothing is said. */

const line = document.getElementById("phone-status");
const install = document.getElementById("install");
const workers = window.top === window.self ? navigator.serviceWorker : undefined;

function say(name) {
  if (line) line.textContent = line.dataset[name];
}

function isBeginning() {
  return location.pathname === "/";
}

/* A worker that is ready and waits takes over now, as no check is going on here; whether there was one. The old one must
   have nothing more to do, or the browser lets it finish first. */
function beginOnNewest(registration) {
  const fresh = isBeginning() ? registration.waiting : null;
  fresh?.postMessage({ type: "take-over" });
  return Boolean(fresh);
}

/* One that did not get that far leaves the last good one in charge, and that is worth a word. */
function follow(registration) {
  const fresh = registration.installing;
  let whole = false;
  fresh?.addEventListener("statechange", () => {
    whole ||= fresh.state === "installed";
    if (whole) beginOnNewest(registration);
    else if (fresh.state === "redundant" && registration.active) say("notWhole");
  });
}

/* What the worker needs for the next step, so that this is fast, and for a form that may be wanted with no line. */
function wake() {
  workers.controller?.postMessage({ type: "wake", address: location.href });
  const told = new URLSearchParams(location.search);
  const [region, firm] = [told.get("region"), told.get("firm")];
  if (firm && region) workers.controller?.postMessage({ type: "keep-form", region, firm });
}

async function register() {
  const registration = await workers.register("/worker.js");
  registration.addEventListener("updatefound", () => follow(registration));
  if (!beginOnNewest(registration)) wake();
  let here = isBeginning();
  document.body.addEventListener("htmx:afterSettle", () => {
    if (isBeginning() && !here)
      registration.update().then(
        () => beginOnNewest(registration),
        () => {},
      );
    here = isBeginning();
  });
}

/* A text shared from another app goes into the search box, and out of the address. */
function takeShared() {
  const told = new URLSearchParams(location.search);
  const shared = [told.get("shared-title"), told.get("shared-text")].filter(Boolean).join(" ");
  const box = document.getElementById("finder");
  if (!shared || !box) return;
  ["shared-title", "shared-text"].forEach((name) => told.delete(name));
  history.replaceState(history.state, "", `${location.pathname}?${told}`);
  box.value = shared.slice(0, 200);
  box.dispatchEvent(new Event("input", { bubbles: true }));
}

/* The browser's own offer waits until somebody asks for it at the foot of the page. */
function offerInstall(event) {
  event.preventDefault();
  install.hidden = false;
  install.querySelector("button").onclick = () => {
    install.hidden = true;
    event.prompt();
  };
}

export function keepOnPhone() {
  if (workers) {
    workers.addEventListener("message", (event) => {
      if (event.data?.type === "carried-over" && !isBeginning()) say("carriedOver");
    });
    workers.addEventListener("controllerchange", wake);
    window.addEventListener("load", () => register().catch(() => {}));
  }
  if (install) {
    window.addEventListener("beforeinstallprompt", offerInstall);
    window.addEventListener("appinstalled", () => (install.hidden = true));
  }
  if (location.hash === "#no-line") say("noLine");
  if (location.hash === "#no-costs") say("noCosts");
  takeShared();
}
