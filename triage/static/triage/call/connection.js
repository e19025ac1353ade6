/* The call that is open in this tab: what the page shows, what is saved, and bringing both to the same state.
   An answer is saved first and sent then; while the server cannot be reached, or wants a sign-in first, it waits and is
   tried again. */

import { extra, load, merge, newCall, parse, queryOf, save, withChange, withExtras } from "./call_store.js";
import { announce, message } from "./messages.js";
import { newReference } from "./reference.js";

const RETRY_MS = 2500;
const STATUSES_WITH_A_SENTENCE = [404, 429];

/* The server asks who this is: its answer leads to the sign-in and not to the page. */
export class SignedOut extends Error {}

/** The text at an address of the call page. Throws SignedOut where the session is over, and another error while the
   server cannot be reached. @param {string} address */
export async function fetchPart(address) {
  const response = await fetch(address, { headers: { "HX-Request": "true" } });
  if (response.redirected) throw new SignedOut();
  if (!response.ok && !STATUSES_WITH_A_SENTENCE.includes(response.status))
    throw new Error(`the page answered ${response.status}`);
  return response.text();
}

export class Connection {
  /** `onPart` is given every new page part, null while there is none; `onSession` whether the session is over.
   * @param {{path: string, onPart: (part: string | null) => void, onSession: (expired: boolean) => void}} page */
  constructor({ path, onPart, onSession }) {
    this.path = path;
    this.onPart = onPart;
    this.onSession = onSession;
    const address = parse(location.search);
    const id = address.id || newReference();
    this.isSaved = true;
    this.isOffline = false;
    this.turn = 0;
    const fresh = { ...newCall(id, address.region || parse(this.shownQuery()).region), changed: 0 };
    const opened = withChange(fresh, parse(""), address, 1);
    this.call = merge(load(id), { ...opened, changed: load(id) ? 0 : Date.now() });
    this.ask = address.ask;
    this.forgetAnswerAskedFor(address);
  }

  /** An address that asks a question and does not hold its answer takes back the one that is saved: so the key for
     danger reads the signs again from whatever page of the call it was pressed on.
   * @param {import("./call_store.js").ParsedQuery} address */
  forgetAnswerAskedFor({ ask, answers }) {
    const saved = this.call.answers[ask]?.[0] ?? null;
    if (!ask || saved === null || ask in answers) return;
    const from = parse(queryOf(this.call));
    const { [ask]: _removed, ...others } = from.answers;
    this.call = withChange(this.call, from, { ...from, answers: others });
    this.save();
  }

  get address() {
    return `${this.path}?${queryOf(this.call, this.ask)}`;
  }

  shownQuery() {
    return document.querySelector("[data-js-call-state]").dataset.query;
  }

  /* Whether the page is on its way to what is saved; screen readers wait for it too. */
  get busy() {
    return document.getElementById("call").ariaBusy === "true";
  }

  set busy(on) {
    document.getElementById("call").ariaBusy = String(on);
  }

  /** What is saved beside the answers, such as the notes. @param {string} name */
  extra(name) {
    return extra(this.call, name);
  }

  /* After the page opened: nothing to fetch where the address already says everything that is saved. */
  async open() {
    const shown = withChange({ ...this.call, answers: {}, caller: {}, read: [] }, parse(""), parse(this.shownQuery()));
    if (queryOf(shown) === queryOf(this.call)) history.replaceState(null, "", this.address);
    else await this.show({ push: false });
  }

  /** @param {Object<string, any>} extras */
  save(extras = {}) {
    this.call = withExtras(this.call, extras);
    const whole = save(this.call);
    if (whole) this.call = whole;
    else if (this.isSaved) announce(message("not-saved"));
    this.isSaved = whole !== null;
  }

  /** Follow an address of the call page: what it changes is saved, then the page is brought there; the whole of it where
     the oven is in another region than was thought, because terms, rules and numbers are others there.
   * @param {string} address @param {{push?: boolean}} [how] */
  async go(address, { push = true } = {}) {
    const to = parse(new URL(address, location.href).search);
    this.call = withChange(this.call, parse(this.shownQuery()), to);
    this.ask = to.ask;
    const elsewhere = to.region && to.region !== this.call.region;
    if (elsewhere) this.call = { ...this.call, region: to.region };
    this.save();
    if (elsewhere) location.assign(this.address);
    else await this.show({ push });
  }

  /** Record answers beside whatever the page shows. @param {Object<string, string>} pairs */
  async record(pairs) {
    const from = parse(queryOf(this.call));
    this.call = withChange(this.call, from, { ...from, answers: { ...from.answers, ...pairs } });
    this.save();
    await this.show({ push: true });
  }

  /** Another tab wrote to this call; `onMerged` is called before anything is fetched. @param {() => void} onMerged */
  async mergeOtherTab(onMerged) {
    const before = queryOf(this.call);
    this.call = merge(this.call, load(this.call.id));
    onMerged();
    if (queryOf(this.call) === before) return;
    announce(message("merged"));
    await this.show({ push: false });
  }

  /** @param {{push: boolean}} how whether the address becomes a step to go back to */
  async show({ push }) {
    if (push) history.pushState(null, "", this.address);
    else history.replaceState(null, "", this.address);
    this.turn += 1;
    this.busy = true;
    const turn = this.turn;
    try {
      const part = await fetchPart(this.address);
      if (turn !== this.turn) return;
      if (this.isOffline) announce(message("online"));
      this.isOffline = false;
      this.busy = false;
      this.onSession(false);
      this.onPart(part);
    } catch (problem) {
      if (turn !== this.turn) return;
      this.isOffline = true;
      this.busy = false;
      this.onSession(problem instanceof SignedOut);
      if (!(problem instanceof SignedOut)) announce(message("offline"));
      this.onPart(null);
      setTimeout(() => turn === this.turn && this.show({ push: false }), RETRY_MS);
    }
  }
}
