import { spawn } from "node:child_process";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { commandLine, ensureBundled } from "./bundle.mjs";
import { ensureAppBuilt } from "./bundle-app.mjs";
import { ensureInstalled } from "./ensure-installed.mjs";
import { ensureMachine, TO_INSTALL } from "./ensure-machine.mjs";
import { root, runTool } from "./run-step.mjs";

// A first look: the example job from readings to verdicts, with everything written to out/; then the app with that job in it.
// With CI set the server is asked once whether it is ready and is stopped again, so that a machine can take this look too.
console.log("Installing what is missing (the first time takes some minutes) …");
ensureMachine(TO_INSTALL);
await ensureInstalled();
await ensureBundled();
await ensureAppBuilt();
const example = join(root, "examples/shaft-and-pier");
const data = join(root, "out/data");
step(["reduce", example, "--out", join(root, "out/shaft-and-pier")]);
const paper = join(root, "out/shaft-and-pier-report");
step(["report", example, "--pdf", `${paper}.pdf`, "--word", `${paper}.docx`, "--date", "2026-03-20"]);
// what is there already is not taken a second time
step(["import", example, "--data", data, "--job", "shaft-and-pier"]);
console.log("\nNext: npm run --silent toeline -- --help");

const isChecked = Boolean(process.env.CI);
const port = isChecked ? ["--port", "0"] : ["--open"];
const server = spawn(process.execPath, [commandLine, "serve", "--data", data, ...port], {
  stdio: ["ignore", isChecked ? "pipe" : "inherit", "inherit"],
});
// Ctrl-C reaches the server too; this program waits until it has stopped
for (const signal of ["SIGINT", "SIGTERM"]) process.on(signal, () => server.kill(signal));
const ended = new Promise((resolve) => server.on("exit", (code) => resolve(code ?? 1)));
if (isChecked) await askOnce();
process.exitCode = await ended;

function step(args) {
  const code = runTool(commandLine, args);
  if (code !== 0) process.exit(code);
}

async function askOnce() {
  for await (const line of createInterface({ input: server.stdout })) {
    console.log(line);
    const address = /^Toeline is at (\S+)$/.exec(line)?.[1];
    if (address === undefined) continue;
    const ready = await fetch(`${address}/api/1/health/ready`);
    console.log(`Asked whether it is ready: ${ready.status}`);
    server.kill("SIGTERM");
    if (!ready.ok) process.exit(1);
  }
}
