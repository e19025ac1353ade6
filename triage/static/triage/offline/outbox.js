/* Hand-overs that wait on the phone until the line is back. One code for the pages and the worker, which may both try.

   A hand-over is kept under the key it is sent with. The site writes one job sheet for a key however often it comes, and
   the lock lets one sender at a time work, so that nothing is sent twice. Every function may throw where the browser
   keeps nothing (a private window, a full disk); who calls says so in plain words. */

const STORE = "hand-overs";
const LONGEST_TRY = 60_000;

function openStore() {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open("oven-check", 1);
    opening.onupgradeneeded = () => opening.result.createObjectStore(STORE, { keyPath: "key" });
    opening.onsuccess = () => resolve(opening.result);
    opening.onerror = () => reject(opening.error);
    opening.onblocked = () => reject(new Error("The store is held open by another page."));
  });
}

/* One request on the store; settles when it is on the disk, not before. */
async function withStore(mode, work) {
  const store = await openStore();
  try {
    return await new Promise((resolve, reject) => {
      const transaction = store.transaction(STORE, mode, { durability: "strict" });
      const asked = work(transaction.objectStore(STORE));
      transaction.oncomplete = () => resolve(asked.result);
      transaction.onabort = () => reject(transaction.error ?? new Error("Nothing was kept."));
    });
  } finally {
    store.close();
  }
}

/** What waits and what was sent, oldest first.
 * @returns {Promise<{key: string, action: string, firm: string, fields: [string, string | File][], kept: number,
 *   trouble: string[], sent: {reference: string, address: string} | null}[]>} */
export async function keptHandOvers() {
  const kept = await withStore("readonly", (store) => store.getAll());
  return kept.sort((one, other) => one.kept - other.kept);
}

/** A key as the site wants it: 128 random bits. */
export function newKey() {
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, "0")).join("");
}

export function keepHandOver(handOver) {
  return withStore("readwrite", (store) => store.put({ trouble: [], sent: null, ...handOver, kept: Date.now() }));
}

export function forgetHandOver(key) {
  return withStore("readwrite", (store) => store.delete(key));
}

function changeHandOver(handOver, change) {
  return withStore("readwrite", (store) => store.put({ ...handOver, ...change }));
}

/** Asks the site to take one hand-over. Throws where it cannot be reached or has to be asked later.
 * @returns {Promise<{sent: {reference: string, address: string} | null, trouble: string[]}>} */
export async function askToTake({ key, action, fields }) {
  const form = new FormData();
  for (const [name, value] of fields) form.append(name, value);
  const signal = AbortSignal.timeout(LONGEST_TRY);
  const answer = await fetch(action, { method: "POST", body: form, headers: { "Idempotency-Key": key }, signal });
  if (answer.status >= 500 || [403, 408, 429].includes(answer.status))
    throw new Error(`The site answered ${answer.status}.`);
  const told = await answer.json();
  if (answer.ok) return { sent: { reference: told.reference, address: told.address }, trouble: [] };
  return { sent: null, trouble: told.errors.length ? told.errors.map((wrong) => wrong.detail) : [told.detail] };
}

/** Sends what waits, one after the other; what the site refuses stays, with what is wrong, until its owner looks. */
export async function sendWaiting() {
  const send = async () => {
    for (const handOver of await keptHandOvers()) {
      if (handOver.sent || handOver.trouble.length) continue;
      const { sent, trouble } = await askToTake(handOver);
      await changeHandOver(handOver, sent ? { sent, fields: [] } : { trouble });
    }
  };
  return globalThis.navigator.locks ? navigator.locks.request("oven-outbox", send) : send();
}
