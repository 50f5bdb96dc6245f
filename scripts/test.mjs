import { ensureBundled } from "./bundle.mjs";
import { ensureAppBuilt } from "./bundle-app.mjs";
import { ensureInstalled } from "./ensure-installed.mjs";
import { ensureMachine, TO_TEST } from "./ensure-machine.mjs";
import { lintArgs, runTool, step, tools } from "./run-step.mjs";

// `npm test` does everything; `npm test -- src/core/path` runs only the tests of that folder.
const only = process.argv.slice(2);

ensureMachine(TO_TEST);
await ensureInstalled();
if (only.length === 0) {
  step("format and lint", () => runTool(tools.biome, lintArgs));
  step("types", () => runTool(tools.tsc, ["-b"]));
}
await ensureBundled();
await ensureAppBuilt();
const report = ["--reporter=default", "--reporter=json", "--outputFile.json=out/test-report.json"];
step("tests", () => runTool(tools.vitest, ["run", ...report, ...only]));
