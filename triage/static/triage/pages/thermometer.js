/* Puts the time of a reading into the next empty row of the form and takes the person to its temperature. */

/* With one row more than can be used the result says so; there are no rows beyond that one. */
const MOST_ROWS = 61;

/** @param {HTMLFormElement} form @param {number} minutes */
export function fillRow(form, minutes) {
  let row = 1;
  for (; form.elements[`read-time-${row}`]; row += 1) {
    const time = form.elements[`read-time-${row}`];
    if (time.value) continue;
    time.value = minutes.toFixed(1);
    form.elements[`read-shown-${row}`].focus();
    return;
  }
  if (row > MOST_ROWS) return;
  /** @param {HTMLFormElement} form */
  addRow(form);
  fillRow(form, minutes);
}

/** One more row like the last one; the server shows as many again as are filled. @param {HTMLFormElement} form */
function addRow(form) {
  const cells = [...form.querySelectorAll("[data-cell]")];
  const row = cells.length / 2 + 1;
  for (const [name, cell] of Object.entries({ time: cells.at(-2), shown: cells.at(-1) })) {
    const next = /** @type {Element} */ (cell.cloneNode(true));
    /** @type {HTMLInputElement} */
    const input = next.querySelector("input");
    /** @type {HTMLLabelElement} */
    const label = next.querySelector("label");
    input.id = input.name = label.htmlFor = `read-${name}-${row}`;
    input.value = "";
    label.textContent = label.textContent.replace(/\d+$/, String(row));
    cell.parentElement.append(next);
  }
}
