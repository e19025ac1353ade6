/* Writes the scripts that are served in one piece: bundled from their modules and minified by esbuild.

   node .tools/build.mjs           writes them
   node .tools/build.mjs --check   fails where one is older than its modules */

import { readFile, writeFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const SCRIPTS = fileURLToPath(new URL("../triage/static/triage/", import.meta.url));
const BUNDLES = [
  ["offline/worker.js", "offline/worker.min.js"],
  ["pages/page.js", "pages/page.min.js"],
];

async function bundled(entry) {
  const options = { bundle: true, minify: true, format: "iife", target: "es2022", charset: "utf8", legalComments: "none" };
  const result = await build({ ...options, entryPoints: [SCRIPTS + entry], write: false, logLevel: "warning" });
  return result.outputFiles[0].text;
}

const stale = [];
for (const [entry, name] of BUNDLES) {
  const [text, served] = await Promise.all([bundled(entry), readFile(SCRIPTS + name, "utf8").catch(() => "")]);
  if (text === served) continue;
  stale.push(name);
  if (!process.argv.includes("--check")) await writeFile(SCRIPTS + name, text);
}
if (process.argv.includes("--check") && stale.length) {
  console.error(`Older than their modules: ${stale.join(", ")}. Run .tools/build and commit what it writes.`);
  process.exit(1);
}
console.log(stale.length ? `Written: ${stale.join(", ")}.` : "Every served script is up to date.");
