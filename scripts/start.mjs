import { join } from "node:path";
import { commandLine, ensureBundled } from "./bundle.mjs";
import { ensureInstalled } from "./ensure-installed.mjs";
import { root, runTool } from "./run-step.mjs";

// A first look: the example job from readings to verdicts, with everything written to out/.
console.log("Installing what is missing (the first time takes some minutes) …");
await ensureInstalled();
await ensureBundled();
const out = join(root, "out/shaft-and-pier");
const code = runTool(commandLine, ["reduce", join(root, "examples/shaft-and-pier"), "--out", out]);
if (code !== 0) process.exit(code);
console.log("\nNext: npm run --silent toeline -- --help");
