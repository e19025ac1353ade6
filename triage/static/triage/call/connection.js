/* The call this tab has on the line: what the page shows, what is kept, and bringing both to the same state.
   An answer is kept first and sent then; while the server cannot be reached it waits and is tried again. */

import { joined, load, newCall, parse, queryOf, save, withChange } from "./calls.js";
import { newReference } from "./reference.js";

const TRY_AGAIN = 2500;

export class Connection {
  /* `shown` is told of every new page part, `said` of every sentence for the status line. */
  constructor({ place, shown, said, words }) {
    Object.assign(this, { place, shown, said, words });
    const address = parse(location.search);
    const id = address.id || newReference();
    this.kept = true;
    this.cutOff = false;
    this.busy = false;
    this.turn = 0;
    const fresh = { ...newCall(id, address.region || parse(this.good()).region), changed: 0 };
    const opened = withChange(fresh, parse(""), address, 1);
    this.call = joined(load(id), { ...opened, changed: load(id) ? 0 : Date.now() });
    this.ask = address.ask;
  }

  good() {
    return document.getElementById("call-now").dataset.good;
  }

  /* After the page opened: nothing to fetch where the address already says everything that is kept. */
  async open() {
    const query = queryOf(this.call, this.ask);
    const same = queryOf(withChange({ ...this.call, answers: {}, caller: {}, read: [] }, parse(""), parse(this.good())));
    if (same === queryOf(this.call)) history.replaceState(null, "", `${location.pathname}?${query}`);
    else await this.show({ push: false });
  }

  keep(change = {}) {
    this.call = { ...this.call, ...change, changed: Date.now() };
    const whole = save(this.call);
    if (whole) this.call = whole;
    else if (this.kept) this.said(this.words["kept-not"]);
    this.kept = whole !== null;
  }

  /* Follow an address of the call page: what it changes is kept, then the page is brought there. */
  async go(address, { push = true } = {}) {
    const to = parse(new URL(address, location.href).search);
    this.call = withChange(this.call, parse(this.good()), to);
    this.ask = to.ask;
    this.keep();
    await this.show({ push });
  }

  /* Record answers beside whatever the page shows. */
  async record(pairs) {
    const from = parse(queryOf(this.call));
    this.call = withChange(this.call, from, { ...from, answers: { ...from.answers, ...pairs } });
    this.keep();
    await this.show({ push: true });
  }

  /* Another tab wrote to this call. */
  async hear() {
    const other = load(this.call.id);
    const before = queryOf(this.call);
    this.call = joined(this.call, other);
    if (queryOf(this.call) === before) return;
    this.said(this.words.joined);
    await this.show({ push: false });
  }

  async show({ push }) {
    const address = `${this.place}?${queryOf(this.call, this.ask)}`;
    if (push) history.pushState(null, "", address);
    else history.replaceState(null, "", address);
    this.turn += 1;
    this.busy = true;
    const turn = this.turn;
    try {
      const response = await fetch(address, { headers: { "HX-Request": "true" } });
      if (!response.ok) throw new Error(`the page answered ${response.status}`);
      const part = await response.text();
      if (turn !== this.turn) return;
      if (this.cutOff) this.said(this.words.back);
      this.cutOff = false;
      this.busy = false;
      this.shown(part);
    } catch {
      if (turn !== this.turn) return;
      this.cutOff = true;
      this.busy = false;
      this.said(this.words["cut-off"]);
      this.shown(null);
      setTimeout(() => turn === this.turn && this.show({ push: false }), TRY_AGAIN);
    }
  }
}
