/* Counts the flashes of a meter by being pressed along with them. Each press is a moment in seconds since the first; n
   flashes are n-1 intervals, and the server works out the rest. Two presses within a tenth of a second are one. */

const BOUNCE = 100;
const MOST = 60;
const ENOUGH = 5;
const JOULES_PER_KWH = 3.6e6;

/** What the whole home draws, by the middle interval: a thermostat that rests stretches few of them.
 * @param {number[]} moments in milliseconds @param {number} impulses for a kWh */
function watts(moments, impulses) {
  const gaps = moments.slice(1).map((moment, at) => (moment - moments[at]) / 1000);
  const ordered = gaps.sort((one, other) => one - other);
  const half = ordered.length >> 1;
  const middle = ordered.length % 2 ? ordered[half] : (ordered[half - 1] + ordered[half]) / 2;
  return JOULES_PER_KWH / impulses / middle;
}

/** @param {HTMLElement} block */
export function open(block) {
  if (!block.hidden) return;
  block.hidden = false;
  const form = /** @type {HTMLFormElement} */ (block.closest("form"));
  const field = form.elements["read-taps"];
  const counted = block.querySelector("[data-tapped]");
  /** @type {number[]} */
  let moments = [];

  function show() {
    const last = moments.length ? (moments.at(-1) - moments[0]) / 1000 : 0;
    const seconds = last.toFixed(1);
    counted.textContent = moments.length
      ? block.dataset.count.replace("%(n)s", String(moments.length)).replace("%(s)s", seconds)
      : "";
    if (moments.length && moments.length < ENOUGH) counted.textContent += `. ${block.dataset.more}`;
    const impulses = Number(form.elements["read-impulses"].value.replace(",", "."));
    if (moments.length >= ENOUGH && impulses > 0) {
      counted.textContent += `. ${block.dataset.power.replace("%(w)s", String(Math.round(watts(moments, impulses))))}`;
    }
    field.value = moments.map((moment) => ((moment - moments[0]) / 1000).toFixed(1)).join(" ");
    if (moments.length >= ENOUGH) field.dispatchEvent(new Event("change", { bubbles: true }));
  }

  block.querySelector("[data-tap]").addEventListener("click", () => {
    const now = performance.now();
    if (moments.length && now - moments.at(-1) < BOUNCE) return;
    moments = [...moments.slice(1 - MOST), now];
    show();
  });
  block.querySelector("[data-undo]").addEventListener("click", () => {
    moments = moments.slice(0, -1);
    show();
  });
  block.querySelector("[data-restart]").addEventListener("click", () => {
    moments = [];
    show();
  });
}
