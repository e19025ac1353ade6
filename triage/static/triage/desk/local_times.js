// Shows each time as the clock on this desk's wall has it, in the browser's own way of writing; without a script it stands there in UTC.

const shown = new Intl.DateTimeFormat(undefined, { dateStyle: "medium", timeStyle: "short" });

for (const time of /** @type {NodeListOf<HTMLTimeElement>} */ (document.querySelectorAll("time[datetime]"))) {
  time.title = time.textContent;
  time.textContent = shown.format(new Date(time.dateTime));
}
