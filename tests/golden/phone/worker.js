/* Records one chunk of trails off the page's thread and hands the records back to the test. */

import { recordAll } from "./recording.js";

addEventListener("message", async ({ data: chunk }) => {
  const trails = await (await fetch(`/chunks/${chunk}`)).json();
  const records = await recordAll(trails);
  await fetch(`/records/${chunk}`, { method: "POST", body: JSON.stringify(records) });
  postMessage(chunk);
});
