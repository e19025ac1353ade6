/* Keeps the time of a reading: from a moment the person presses, through a locked phone and a page opened again. The
   moment stands in the address, which can be kept and sent, and in the browser's storage where there is one. */

import { notify } from "./notification.js";
import { fillRow } from "./thermometer.js";
import { keptStart, keepStart } from "./started.js";

/* Minutes at which it is worth going to look; after the last one, every half hour. */
const LOOKS = { "run-on": [1, 5, 10, 15, 20, 30, 45, 60, 90], preheat: [45], thermometer: [30] };
const AGAIN = 30;
const TICK = 1000;

function nextLook(kind, minutes) {
  const looks = LOOKS[kind];
  return looks.find((look) => look > minutes) ?? Math.ceil((minutes + 0.001) / AGAIN) * AGAIN;
}

/* To a tenth of a minute, as the form takes it. */
function minutesSince(start) {
  return Math.max(0, Date.now() - start) / 60_000;
}

export function open(block) {
  if (!block.hidden) return;
  block.hidden = false;
  const kind = block.dataset.clock;
  const form = block.closest("form");
  const part = (name) => block.querySelector(`[data-${name}]`);
  let start = keptStart(kind);
  let due = start ? nextLook(kind, 0) : 0;
  let told = start && minutesSince(start) >= due ? due : 0; // who opens the page at a look that is due sees it there

  function say(minutes) {
    const whole = Math.floor(minutes);
    const time = block.dataset.time.replace("%(m)s", whole);
    part("elapsed").textContent = time.replace("%(s)s", Math.floor((minutes - whole) * 60));
    const asked = minutes >= due;
    const line = asked ? block.dataset.now : block.dataset.next.replace("%(m)s", due);
    if (part("ask").textContent !== line) part("ask").textContent = line;
    part("ask").classList.toggle("due", asked);
    if (asked && told !== due) tellDue(line);
  }

  function tellDue(line) {
    told = due;
    notify(line, { tag: `oven-check-${kind}`, page: location.pathname + location.search });
  }

  function show() {
    part("before").hidden = Boolean(start);
    part("while").hidden = !start;
    part("started").value = start ? Math.round(start / 1000) : "";
    if (start) say(minutesSince(start));
  }

  function begin(moment) {
    start = moment;
    due = nextLook(kind, 0);
    told = 0;
    keepStart(kind, start);
    show();
  }

  function set(button) {
    const minutes = Number(button.dataset.at ?? minutesSince(start));
    for (const name of button.dataset.set.split(" ")) form.elements[`read-${name}`].value = minutes.toFixed(1);
    for (const box of block.querySelectorAll("[data-tick]"))
      form.elements[`read-${box.dataset.tick}`].checked = box === button;
    due = nextLook(kind, minutes);
    show();
    form.dispatchEvent(new Event("change", { bubbles: true }));
  }

  block.addEventListener("click", (event) => {
    const button = event.target.closest("button");
    if (!button) return;
    if (button.matches("[data-start]")) begin(Date.now());
    if (button.matches("[data-afresh]")) begin(0);
    if (button.matches("[data-set]")) set(button);
    if (button.matches("[data-row]")) fillRow(form, minutesSince(start));
  });

  const ticking = setInterval(() => (block.isConnected ? show() : clearInterval(ticking)), TICK);
  document.addEventListener("visibilitychange", show);
  show();
}
