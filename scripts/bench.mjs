import { cpSync, mkdirSync } from "node:fs";
import { join } from "node:path";
import { bundle, ensureBundled } from "./bundle.mjs";
import { ensureInstalled } from "./ensure-installed.mjs";
import { root, runTool, step } from "./run-step.mjs";

// `npm run bench` runs all; `npm run bench -- path` one of them.
const all = ["path", "reduce-job", "coverage", "store", "report"];
const wanted = process.argv.slice(2);
const unknown = wanted.filter((name) => !all.includes(name));
if (unknown.length > 0) {
  console.error(`No bench called ${unknown.join(", ")}; there are: ${all.join(", ")}.`);
  process.exit(2);
}

await ensureInstalled();
await ensureBundled();
mkdirSync(join(root, "dist/bench"), { recursive: true });
// what the report reads from files stands beside its bundle
cpSync(join(root, "src/report/assets"), join(root, "dist/bench/assets"), { recursive: true });
for (const name of wanted.length > 0 ? wanted : all) {
  const program = join(root, "dist/bench", `${name}.mjs`);
  await bundle(`bench/${name}.ts`, program);
  step(name, () => runTool(program, []));
}
