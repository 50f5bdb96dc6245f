import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";

export const repository = resolve(import.meta.dirname, "../..");
export const example = join(repository, "examples/shaft-and-pier");
const program = join(repository, "dist/toeline.mjs");

export interface Ran {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Builds the command line if a source is newer; once for each file of tests. */
export function buildToeline(): void {
  const built = runNode([join(repository, "scripts/build.mjs"), "--bundle-only"], repository);
  if (built.code !== 0) throw new Error(`the command line could not be built: ${built.stderr}`);
}

/** Runs the bundled command line as a user would, in an environment that says nothing about colour. */
export const toeline = (args: readonly string[], cwd = repository): Ran => runNode([program, ...args], cwd);

export function runNode(
  args: readonly string[],
  cwd: string,
  environment: Readonly<Record<string, string>> = {},
): Ran {
  const done = spawnSync(process.execPath, args, {
    cwd,
    encoding: "utf8",
    env: { PATH: process.env["PATH"], HOME: process.env["HOME"], LANG: "C.UTF-8", ...environment },
    maxBuffer: 256 * 1024 * 1024,
  });
  return { code: done.status, stdout: done.stdout, stderr: done.stderr };
}

/** A folder for one test, and how to take it away. */
export function temporaryFolder(): { readonly path: string; readonly remove: () => void } {
  const path = mkdtempSync(join(tmpdir(), "toeline-test-"));
  return { path, remove: () => rmSync(path, { recursive: true, force: true }) };
}
