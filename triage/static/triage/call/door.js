/* The way through the sign-in and back to the same call, shown from the moment the session is over. */

export class Door {
  /* `sign` holds the sentence and the link; `here` tells where to come back to. */
  /** @param {HTMLElement} sign @param {() => string} here */
  constructor(sign, here) {
    this.sign = sign;
    this.here = here;
    /** @type {HTMLAnchorElement} */
    this.link = sign.querySelector("a");
    this.at = this.link.getAttribute("href");
  }

  /** Where this browser keeps nothing, the page has to stay open: then the door opens in a tab of its own.
   * @param {boolean} out @param {boolean} kept */
  show(out, kept) {
    this.sign.hidden = !out;
    this.link.href = `${this.at}?next=${encodeURIComponent(this.here())}`;
    this.link.target = kept ? "" : "_blank";
  }
}
