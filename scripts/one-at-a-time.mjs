import { mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout } from "node:timers/promises";
import { root } from "./run-step.mjs";

/**
 * Runs the action while no other process of this checkout does the same, so that two commands started together
 * on a fresh clone do not install or build over each other. A lock left by a process that is gone is taken over.
 */
export async function oneAtATime(name, action) {
  const lock = join(root, "dist", `.${name}.lock`);
  mkdirSync(join(root, "dist"), { recursive: true });
  while (!taken(lock)) await setTimeout(200);
  try {
    return await action();
  } finally {
    rmSync(lock, { recursive: true, force: true });
  }
}

function taken(lock) {
  try {
    mkdirSync(lock);
    writeFileSync(join(lock, "pid"), String(process.pid));
    return true;
  } catch (error) {
    if (error.code !== "EEXIST") throw error;
    if (isAbandoned(lock)) rmSync(lock, { recursive: true, force: true });
    return false;
  }
}

function isAbandoned(lock) {
  try {
    process.kill(Number(readFileSync(join(lock, "pid"), "utf8")), 0);
    return false;
  } catch (error) {
    if (error.code === "EPERM") return false;
    if (error.code === "ESRCH") return true;
    // no pid yet: either being written this very moment, or its owner was stopped in between
    const age = Date.now() - (statSync(lock, { throwIfNoEntry: false })?.mtimeMs ?? Date.now());
    return age > 5_000;
  }
}
