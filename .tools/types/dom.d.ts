/* What the browser's own types leave open and the pages of this site settle. */

/* Every page is HTML: what a selector finds is an HTML element unless the caller says which. */
interface ParentNode {
  querySelector<E extends Element = HTMLElement>(selectors: string): E | null;
  querySelectorAll<E extends Element = HTMLElement>(selectors: string): NodeListOf<E>;
}
interface Element {
  closest<E extends Element = HTMLElement>(selectors: string): E | null;
}

/* htmx's events carry what it swapped in, and what it asked for. */
interface HtmxEvent extends CustomEvent<{ target: HTMLElement; pathInfo: { requestPath: string } }> {}
interface HTMLElementEventMap {
  "htmx:afterSettle": HtmxEvent;
  "htmx:beforeSwap": HtmxEvent;
  "htmx:historyRestore": HtmxEvent;
  "htmx:responseError": HtmxEvent;
  "htmx:sendError": HtmxEvent;
  "htmx:timeout": HtmxEvent;
}

/* Not in every browser: the offer to install, and sending once the connection is back. */
interface BeforeInstallPromptEvent extends Event {
  prompt(): Promise<void>;
}
interface WindowEventMap {
  beforeinstallprompt: BeforeInstallPromptEvent;
}
interface ServiceWorkerRegistration {
  readonly sync?: { register(tag: string): Promise<void> };
}

/* The fields of a form are looked for by name. */
interface HTMLFormControlsCollection {
  // biome-ignore lint/suspicious/noExplicitAny: it may be any kind of field
  [name: string]: any;
}
