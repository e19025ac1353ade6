/* The page's side of the installed check: starts the worker, wakes it, lets a new version take over when a check is
   begun, and says in one quiet line what happened. Where workers are refused, as in another site's frame, the site goes
   on answering and nothing is said. */

const status = document.getElementById("offline-status");
const installOffer = document.getElementById("install");
const workers = window.top === window.self ? navigator.serviceWorker : undefined;

/** By the name of a data attribute of the status line. @param {string} name */
function say(name) {
  if (status) status.textContent = status.dataset[name];
}

function isStart() {
  return location.pathname === status?.dataset.start;
}

/** A worker that is ready and waits takes over now, as no check is going on here; whether there was one. The old one must
   have nothing more to do, or the browser lets it finish first. @param {ServiceWorkerRegistration} registration */
function takeOver(registration) {
  const waiting = isStart() ? registration.waiting : null;
  waiting?.postMessage({ type: "take-over" });
  return Boolean(waiting);
}

/** One that did not get that far leaves the last good one in charge, and that is worth a word.
 * @param {ServiceWorkerRegistration} registration */
function follow(registration) {
  const fresh = registration.installing;
  let installed = false;
  fresh?.addEventListener("statechange", () => {
    installed ||= fresh.state === "installed";
    if (installed) takeOver(registration);
    else if (fresh.state === "redundant" && registration.active) say("notUpdated");
  });
}

/* What the worker needs for the next step, so that this is fast, and for a form that may be wanted with no connection. */
function wake() {
  workers.controller?.postMessage({ type: "wake", address: location.href });
  const params = new URLSearchParams(location.search);
  const [region, firm] = [params.get("region"), params.get("firm")];
  if (firm && region) workers.controller?.postMessage({ type: "keep-form", region, firm });
}

async function register() {
  const registration = await workers.register(status.dataset.worker);
  registration.addEventListener("updatefound", () => follow(registration));
  if (!takeOver(registration)) wake();
  let here = isStart();
  document.body.addEventListener("htmx:afterSettle", () => {
    if (isStart() && !here) {
      registration.update().then(
        () => takeOver(registration),
        () => {},
      );
    }
    here = isStart();
  });
}

/* A text shared from another app goes into the search box, and out of the address. */
function takeShared() {
  const params = new URLSearchParams(location.search);
  const shared = [params.get("shared-title"), params.get("shared-text")].filter(Boolean).join(" ");
  const box = /** @type {HTMLInputElement | null} */ (document.getElementById("finder"));
  if (!shared || !box) return;
  for (const name of ["shared-title", "shared-text"]) params.delete(name);
  history.replaceState(history.state, "", `${location.pathname}?${params}`);
  box.value = shared.slice(0, 200);
  box.dispatchEvent(new Event("input", { bubbles: true }));
}

/** The browser's own offer waits until somebody asks for it at the foot of the page.
 * @param {BeforeInstallPromptEvent} event */
function offerInstall(event) {
  event.preventDefault();
  installOffer.hidden = false;
  installOffer.querySelector("button").onclick = () => {
    installOffer.hidden = true;
    event.prompt();
  };
}

export function startOffline() {
  if (workers && status) {
    workers.addEventListener("message", (event) => {
      if (event.data?.type === "carried-over" && !isStart()) say("updated");
    });
    workers.addEventListener("controllerchange", wake);
    window.addEventListener("load", () => register().catch(() => {}));
  }
  if (installOffer) {
    window.addEventListener("beforeinstallprompt", offerInstall);
    window.addEventListener("appinstalled", () => (installOffer.hidden = true));
  }
  if (location.hash === "#offline") say("offline");
  if (location.hash === "#costs-offline") say("costsOffline");
  takeShared();
}
