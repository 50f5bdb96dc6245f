// Writes examples/shaft-and-pier/ anew from the simulator: `npx tsx scripts/make-example.mjs`.
// The seed is fixed, so that the folder changes only when the simulator or the scenario does.
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { namedScenarios, writeJobFolder } from "#simulator";

const SEED = 2026;
const target = resolve(import.meta.dirname, "../examples/shaft-and-pier");

const scenario = namedScenarios.find(({ id }) => id === "example-site");
const { files } = writeJobFolder(scenario.make({}, SEED), SEED);
rmSync(join(target, "readings"), { recursive: true, force: true });
for (const [name, text] of files) {
  const file = join(target, name);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, text);
}
const bytes = [...files.values()].reduce((sum, text) => sum + Buffer.byteLength(text), 0);
console.log(`${files.size} files, ${Math.round(bytes / 1000)} kB in ${target}`);
