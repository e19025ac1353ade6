/* The call this tab has on the line: what the page shows, what is kept, and bringing both to the same state.
   An answer is kept first and sent then; while the server cannot be reached, or wants a sign-in first, it waits and is
   tried again. */

import { beside, joined, load, newCall, parse, queryOf, save, withBeside, withChange } from "./calls.js";
import { newReference } from "./reference.js";

const TRY_AGAIN = 2500;
const TELLING = [404, 429]; // answers that say in words what is the matter

/* The server asks who this is: its answer leads to the door and not to the page. */
export class SignedOut extends Error {}

/** The text at an address of the call page. Throws SignedOut where the session is over, and another error while the
   server cannot be reached. @param {string} address */
export async function fetchPart(address) {
  const response = await fetch(address, { headers: { "HX-Request": "true" } });
  if (response.redirected) throw new SignedOut();
  if (!response.ok && !TELLING.includes(response.status)) throw new Error(`the page answered ${response.status}`);
  return response.text();
}

export class Connection {
  /** `shown` is told of every new page part, `said` of every sentence for the status line, `door` whether the session
   * is over.
   * @param {{place: string, shown: (part: string | null) => void, said: (sentence: string) => void,
   *   door: (out: boolean) => void, texts: Object<string, string>}} page */
  constructor({ place, shown, said, door, texts }) {
    this.place = place;
    this.shown = shown;
    this.said = said;
    this.door = door;
    this.texts = texts;
    const address = parse(location.search);
    const id = address.id || newReference();
    this.kept = true;
    this.cutOff = false;
    this.turn = 0;
    const fresh = { ...newCall(id, address.region || parse(this.good()).region), changed: 0 };
    const opened = withChange(fresh, parse(""), address, 1);
    this.call = joined(load(id), { ...opened, changed: load(id) ? 0 : Date.now() });
    this.ask = address.ask;
    this.takeBackWhatIsAskedAnew(address);
  }

  /** An address that wishes for a question and does not hold its answer takes back the one that is kept: so the key for
     danger reads the signs again from whatever page of the call it was pressed on.
   * @param {import("./calls.js").ParsedQuery} address */
  takeBackWhatIsAskedAnew({ ask, answers }) {
    const kept = this.call.answers[ask]?.[0] ?? null;
    if (!ask || kept === null || ask in answers) return;
    const from = parse(queryOf(this.call));
    const { [ask]: _taken, ...left } = from.answers;
    this.call = withChange(this.call, from, { ...from, answers: left });
    this.keep();
  }

  get address() {
    return `${this.place}?${queryOf(this.call, this.ask)}`;
  }

  good() {
    return document.getElementById("call-now").dataset.good;
  }

  /* Whether the page is on its way to what is kept; screen readers wait for it too. */
  get busy() {
    return document.getElementById("call").ariaBusy === "true";
  }

  set busy(on) {
    document.getElementById("call").ariaBusy = String(on);
  }

  /** What is kept beside the answers, such as the notes. @param {string} name */
  beside(name) {
    return beside(this.call, name);
  }

  /* After the page opened: nothing to fetch where the address already says everything that is kept. */
  async open() {
    const same = queryOf(
      withChange({ ...this.call, answers: {}, caller: {}, read: [] }, parse(""), parse(this.good())),
    );
    if (same === queryOf(this.call)) history.replaceState(null, "", this.address);
    else await this.show({ push: false });
  }

  /** @param {Object<string, any>} change */
  keep(change = {}) {
    this.call = withBeside(this.call, change);
    const whole = save(this.call);
    if (whole) this.call = whole;
    else if (this.kept) this.said(this.texts["kept-not"]);
    this.kept = whole !== null;
  }

  /** Follow an address of the call page: what it changes is kept, then the page is brought there; the whole of it where
     the oven stands in another place than was thought, because words, rules and numbers are others there.
   * @param {string} address @param {{push?: boolean}} [how] */
  async go(address, { push = true } = {}) {
    const to = parse(new URL(address, location.href).search);
    this.call = withChange(this.call, parse(this.good()), to);
    this.ask = to.ask;
    const elsewhere = to.region && to.region !== this.call.region;
    if (elsewhere) this.call = { ...this.call, region: to.region };
    this.keep();
    if (elsewhere) location.assign(this.address);
    else await this.show({ push });
  }

  /** Record answers beside whatever the page shows. @param {Object<string, string>} pairs */
  async record(pairs) {
    const from = parse(queryOf(this.call));
    this.call = withChange(this.call, from, { ...from, answers: { ...from.answers, ...pairs } });
    this.keep();
    await this.show({ push: true });
  }

  /** Another tab wrote to this call; `onJoined` is called when both are one, before anything is fetched.
   * @param {() => void} onJoined */
  async hear(onJoined) {
    const before = queryOf(this.call);
    this.call = joined(this.call, load(this.call.id));
    onJoined();
    if (queryOf(this.call) === before) return;
    this.said(this.texts.joined);
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
      if (this.cutOff) this.said(this.texts.back);
      this.cutOff = false;
      this.busy = false;
      this.door(false);
      this.shown(part);
    } catch (problem) {
      if (turn !== this.turn) return;
      this.cutOff = true;
      this.busy = false;
      this.door(problem instanceof SignedOut);
      if (!(problem instanceof SignedOut)) this.said(this.texts["cut-off"]);
      this.shown(null);
      setTimeout(() => turn === this.turn && this.show({ push: false }), TRY_AGAIN);
    }
  }
}
