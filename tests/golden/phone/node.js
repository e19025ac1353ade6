/* The engine in Node: one JSON value a line. The first is the compiled pack, each other a list of `[region, pairs]`
   trails; what the engine makes of a list comes back as one line. */

import { createInterface } from "node:readline";
import { openPack } from "../../../triage/static/triage/offline/engine/pack.js";
import { recorded } from "./recording.js";

let opened = null;

for await (const line of createInterface({ input: process.stdin })) {
  const value = JSON.parse(line);
  if (opened) {
    const records = value.map(([region, pairs]) => recorded(opened.pack, opened.regions.get(region), pairs));
    process.stdout.write(`${JSON.stringify(records)}\n`);
  } else {
    opened = openPack(value);
  }
}
