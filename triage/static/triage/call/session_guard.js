/* The way through the sign-in and back to the same call, shown from the moment the session is over. */

export class SessionGuard {
  /** `notice` holds the sentence and the link; `currentAddress` says where to come back to.
   * @param {HTMLElement} notice @param {() => string} currentAddress */
  constructor(notice, currentAddress) {
    this.notice = notice;
    this.currentAddress = currentAddress;
    /** @type {HTMLAnchorElement} */
    this.link = notice.querySelector("a");
    this.signIn = this.link.getAttribute("href");
  }

  /** Where this browser saves nothing, the page has to stay open: then the sign-in opens in a tab of its own.
   * @param {boolean} expired @param {boolean} isSaved */
  show(expired, isSaved) {
    this.notice.hidden = !expired;
    this.link.href = `${this.signIn}?next=${encodeURIComponent(this.currentAddress())}`;
    this.link.target = isSaved ? "" : "_blank";
  }
}
