/* Requests for a visit that wait on the phone until it is online again. One code for the pages and the worker, which may
   both try.

   A request is stored under the key it is sent with. The site writes one job sheet for a key however often it comes, and
   the lock lets one sender at a time work, so that nothing is sent twice. Every function may throw where the browser
   stores nothing (a private window, a full disk); who calls says so in plain words. */

/** @typedef {{reference: string, address: string}} Receipt of a job sheet: its `address` is secret
 * @typedef {{key: string, action: string, firm: string, fields: [string, FormDataEntryValue][]}} Booking what is sent,
 *   and where to
 * @typedef {Booking & {form?: string, kept: number, trouble: string[], sent: Receipt | null}} QueuedBooking `form` is the
 *   address it was filled in at (not known of the first release), `kept` when, in milliseconds, `trouble` what the site
 *   found wrong; the names stay as they are in the browser's store */

const DATABASE = "oven-check";
const STORE = "hand-overs";
const TIMEOUT_MS = 60_000;
const ASK_LATER = [403, 408, 429];

/** @returns {Promise<IDBDatabase>} */
function openDatabase() {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open(DATABASE, 1);
    opening.onupgradeneeded = () => opening.result.createObjectStore(STORE, { keyPath: "key" });
    opening.onsuccess = () => resolve(opening.result);
    opening.onerror = () => reject(opening.error);
    opening.onblocked = () => reject(new Error("The store is held open by another page."));
  });
}

/** One request on the store; settles when it is on the disk, not before.
 * @template T @param {IDBTransactionMode} mode @param {(store: IDBObjectStore) => IDBRequest<T>} work
 * @returns {Promise<T>} */
async function withStore(mode, work) {
  const database = await openDatabase();
  try {
    return await new Promise((resolve, reject) => {
      const transaction = database.transaction(STORE, mode, { durability: "strict" });
      const request = work(transaction.objectStore(STORE));
      transaction.oncomplete = () => resolve(request.result);
      transaction.onabort = () => reject(transaction.error ?? new Error("Nothing was stored."));
    });
  } finally {
    database.close();
  }
}

/** What waits and what was sent, oldest first. @returns {Promise<QueuedBooking[]>} */
export async function queuedBookings() {
  /** @type {QueuedBooking[]} */
  const queued = await withStore("readonly", (store) => store.getAll());
  return queued.sort((one, other) => one.kept - other.kept);
}

/** A key as the site wants it: 128 random bits. */
export function newKey() {
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** @param {Booking & {form: string}} booking */
export function queueBooking(booking) {
  return withStore("readwrite", (store) => store.put({ trouble: [], sent: null, ...booking, kept: Date.now() }));
}

/** @param {string} key */
export function removeBooking(key) {
  return withStore("readwrite", (store) => store.delete(key));
}

/** Asks the site to take one. Throws where it cannot be reached or has to be asked later.
 * @param {Booking} booking @returns {Promise<{sent: Receipt | null, trouble: string[]}>} */
export async function sendBooking({ key, action, fields }) {
  const form = new FormData();
  for (const [name, value] of fields) form.append(name, value);
  const signal = AbortSignal.timeout(TIMEOUT_MS);
  const response = await fetch(action, { method: "POST", body: form, headers: { "Idempotency-Key": key }, signal });
  if (response.status >= 500 || ASK_LATER.includes(response.status)) {
    throw new Error(`The site answered ${response.status}.`);
  }
  const data = await response.json();
  if (response.ok) return { sent: { reference: data.reference, address: data.address }, trouble: [] };
  /** @type {{detail: string}[]} */
  const errors = data.errors.length ? data.errors : [data];
  return { sent: null, trouble: errors.map((error) => error.detail) };
}

/** Sends what waits, one after the other; what the site refuses stays, with what is wrong, until its owner looks. */
export async function sendQueued() {
  const send = async () => {
    for (const booking of await queuedBookings()) {
      if (booking.sent || booking.trouble.length) continue;
      const { sent, trouble } = await sendBooking(booking);
      /** @type {Partial<QueuedBooking>} */
      const change = sent ? { sent, fields: [] } : { trouble };
      await withStore("readwrite", (store) => store.put({ ...booking, ...change }));
    }
  };
  return globalThis.navigator.locks ? navigator.locks.request("oven-outbox", send) : send();
}
