import { spawnSync } from "node:child_process";
import { commandLine, ensureBundled } from "./bundle.mjs";
import { ensureInstalled } from "./ensure-installed.mjs";

// The command line from a checkout: installs and builds what is missing, then runs where the user stands.
// npm changes into the package before it runs a script; INIT_CWD is where it was called.
await ensureInstalled();
await ensureBundled();
// Ctrl-C goes to the whole group: the command cleans up and ends, and only then do we.
process.on("SIGINT", () => {});
const done = spawnSync(process.execPath, [commandLine, ...process.argv.slice(2)], {
  cwd: process.env.INIT_CWD ?? process.cwd(),
  stdio: "inherit",
});
if (done.error) console.error(`toeline could not be started: ${done.error.message}`);
process.exit(done.status ?? 130);
