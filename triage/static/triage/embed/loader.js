/* The check in a firm's own page: `<script src="https://…/embed/<firm>/loader.js" async></script>`.
   Defines <oven-fault-check>, and puts one where the script stands if the page has none. Speaks with the frame as
   triage/embed/README.md says; whatever else arrives is ignored. Needs no cookie, no storage and no other file. */

(() => {
  const VERSION = 1;
  const NAME = "oven-fault-check";
  const ATTRIBUTES = ["complaint", "region", "field", "form", "use-events", "listens", "label", "lang"];
  const TAKES_SUMMARY = ["field", "use-events", "listens"];
  const LANGUAGES = ["en"]; // those of the site, the first of them for who asks for another
  const script = /** @type {HTMLScriptElement} */ (document.currentScript);
  const site = new URL(".", script.src);

  class OvenFaultCheck extends HTMLElement {
    /** @type {HTMLIFrameElement | undefined} */
    frame;

    connectedCallback() {
      if (!this.frame) this.build();
      window.addEventListener("message", this);
    }

    disconnectedCallback() {
      window.removeEventListener("message", this);
    }

    build() {
      const address = new URL(site);
      for (const name of ["complaint", "region"]) {
        const value = this.getAttribute(name);
        if (value) address.searchParams.set(name, value);
      }
      if (this.getAttribute("lang")) address.searchParams.set("lang", this.language());
      this.frame = document.createElement("iframe");
      this.frame.title = this.getAttribute("label") || "Oven fault check";
      this.frame.allow = "clipboard-write";
      Object.assign(this.frame.style, { display: "block", width: "100%", height: "40rem", border: "0" });
      Object.assign(this.style, { display: "block" });
      this.frame.addEventListener("load", () => this.greet());
      this.frame.src = address.href;
      this.append(this.frame);
    }

    /* "en-GB" is English. What the site is not translated into is said to whoever writes the page, and is no error. */
    language() {
      const asked = this.getAttribute("lang");
      const wanted = asked.trim().toLowerCase();
      const found = LANGUAGES.find((one) => wanted === one || wanted.startsWith(`${one}-`));
      if (!found)
        console.warn(
          `${NAME}: there is no translation into "${asked}" yet, so the check is in "${LANGUAGES[0]}". It has: ${LANGUAGES.join(", ")}.`,
        );
      return found || LANGUAGES[0];
    }

    /* Each page in the frame is greeted anew, since it knows nothing of the one before. */
    greet() {
      const takesSummary = TAKES_SUMMARY.some((name) => this.hasAttribute(name));
      this.frame.contentWindow.postMessage({ ovenCheck: VERSION, type: "hello", takesSummary }, site.origin);
    }

    /** @param {MessageEvent} event */
    handleEvent(event) {
      if (event.source !== this.frame.contentWindow || event.origin !== site.origin) return;
      const message = event.data;
      if (message?.ovenCheck !== VERSION) return;
      if (message.type === "height") this.fit(message.height);
      if (message.type === "navigated") this.showTop();
      if (message.type === "summary") this.take(message);
      if (message.type === "sent") this.report("oven-check-sent", { reference: String(message.reference) });
    }

    /** @param {unknown} height in pixels */
    fit(height) {
      if (typeof height === "number" && height > 0 && height < Infinity)
        this.frame.style.height = `${Math.min(Math.ceil(height), 20000)}px`;
    }

    /* A new step begins at its top; a reader who has not scrolled past it is left where they are. */
    showTop() {
      if (this.getBoundingClientRect().top < 0) this.scrollIntoView({ block: "start" });
    }

    /** @param {Object<string, unknown>} message */
    take(message) {
      /** @type {Object<string, string>} */
      const detail = {};
      for (const name of ["text", "address", "heading", "band"]) detail[name] = String(message[name] ?? "");
      const form = this.bookingForm();
      const name = this.getAttribute("field");
      if (form && name) this.fill(form, name, detail.text);
      this.report("oven-check-summary", detail);
    }

    bookingForm() {
      const named = this.getAttribute("form");
      return /** @type {HTMLFormElement | null} */ (named ? document.getElementById(named) : this.closest("form"));
    }

    /** @param {HTMLFormElement} form @param {string} name @param {string} text */
    fill(form, name, text) {
      let field = /** @type {HTMLInputElement | null} */ (form.elements.namedItem(name));
      if (!field) {
        field = document.createElement("input");
        field.type = "hidden";
        field.name = name;
        form.append(field);
      }
      field.value = text;
    }

    /** @param {string} name @param {Object<string, string>} detail */
    report(name, detail) {
      this.dispatchEvent(new CustomEvent(name, { bubbles: true, detail }));
    }
  }

  function placeOne() {
    if (document.querySelector(NAME)) return;
    const element = document.createElement(NAME);
    for (const name of ATTRIBUTES) {
      const value = script.getAttribute(`data-${name}`);
      if (value !== null) element.setAttribute(name, value);
    }
    script.after(element);
  }

  if (!customElements.get(NAME)) customElements.define(NAME, OvenFaultCheck);
  if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", placeOne, { once: true });
  else placeOne();
})();
