import { ensureInstalled } from "./ensure-installed.mjs";
import { lintArgs, runTool, step, tools } from "./run-step.mjs";

// What can be said about the code without running it.
await ensureInstalled();
step("format and lint", () => runTool(tools.biome, lintArgs));
step("types", () => runTool(tools.tsc, ["-b"]));
