import { ensureBundled } from "./bundle.mjs";
import { ensureAppBuilt } from "./bundle-app.mjs";
import { ensureInstalled } from "./ensure-installed.mjs";
import { runTool, step, tools } from "./run-step.mjs";

// Types of every layer, then the command line as one file and the app. `--bundle-only` leaves the types out.
await ensureInstalled();
if (!process.argv.includes("--bundle-only")) step("types", () => runTool(tools.tsc, ["-b"]));
await ensureBundled();
await ensureAppBuilt();
