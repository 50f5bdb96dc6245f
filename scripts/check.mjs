import { ensureInstalled } from "./ensure-installed.mjs";
import { runTool, step, tools } from "./run-step.mjs";

// What can be said about the code without running it.
await ensureInstalled();
step("format and lint", () => runTool(tools.biome, ["ci", "--error-on-warnings"]));
step("types", () => runTool(tools.tsc, ["-b"]));
