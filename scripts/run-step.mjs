import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

export const root = fileURLToPath(new URL("..", import.meta.url));

/** A program out of node_modules, run by this Node without going through npm. */
export const tools = {
  tsc: "node_modules/typescript/bin/tsc",
  biome: "node_modules/@biomejs/biome/bin/biome",
  vitest: "node_modules/vitest/vitest.mjs",
};

/** Runs a JavaScript tool of node_modules with its output shown. @returns its exit code */
export function runTool(tool, args, environment = {}) {
  const done = spawnSync(process.execPath, [tool, ...args], {
    cwd: root,
    stdio: "inherit",
    env: { ...process.env, ...environment },
  });
  if (done.error) console.error(`${tool} could not be started: ${done.error.message}`);
  return done.status ?? 1;
}

/** What a formatter and linter is told; without a person at the terminal it prints no colour codes. */
export const lintArgs = ["ci", "--error-on-warnings", ...(process.stdout.isTTY ? [] : ["--colors=off"])];

/** Shows a step and stops this program with its exit code if the step fails. */
export function step(title, action) {
  console.log(`== ${title}`);
  const code = action();
  if (code !== 0) {
    console.error(`Stopped: "${title}" failed with exit code ${code}.`);
    process.exit(code);
  }
}
