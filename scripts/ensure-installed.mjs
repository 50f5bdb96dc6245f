import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { oneAtATime } from "./one-at-a-time.mjs";
import { root } from "./run-step.mjs";

const lockFile = join(root, "package-lock.json");
const installed = join(root, "node_modules", ".package-lock.json");
const stamp = join(root, "node_modules", ".toeline-installed");

/** Installs the packages of the lock file unless that has been done. Says nothing unless it fails. */
export async function ensureInstalled() {
  refuseOldNode();
  if (isInstalled()) return;
  await oneAtATime("install", () => {
    if (!isInstalled()) install();
  });
}

function refuseOldNode() {
  const [major, minor] = process.versions.node.split(".").map(Number);
  if (major > 20 || (major === 20 && minor >= 19)) return;
  console.error(`Toeline needs Node 20.19 or newer; this is Node ${process.versions.node}.`);
  process.exit(2);
}

/** Native packages are compiled for one version of Node, so that version belongs to what was installed. */
const wanted = () =>
  `${createHash("sha256").update(readFileSync(lockFile)).digest("hex")} modules ${process.versions.modules}\n`;

function isInstalled() {
  if (!existsSync(installed)) return false;
  if (existsSync(stamp)) return readFileSync(stamp, "utf8") === wanted();
  // installed by hand with npm: trust it if it is not older than the lock file
  if (statSync(installed).mtimeMs < statSync(lockFile).mtimeMs) return false;
  writeFileSync(stamp, wanted());
  return true;
}

function install() {
  const done = spawnSync("npm", ["ci", "--no-audit", "--no-fund", "--loglevel=error"], {
    cwd: root,
    encoding: "utf8",
    env: { ...process.env, ...nodeHeaders() },
    shell: process.platform === "win32",
    maxBuffer: 64 * 1024 * 1024,
  });
  if (done.status === 0) {
    writeFileSync(stamp, wanted());
    return;
  }
  console.error(done.error?.message ?? `${done.stdout}${done.stderr}`);
  console.error("The packages could not be installed (npm ci, see above).");
  console.error("A compiler is needed for one of them: python3, make and g++.");
  process.exit(2);
}

/** Where Node was installed with its headers, use them: the compile then needs no download. */
function nodeHeaders() {
  const prefix = dirname(dirname(process.execPath));
  const known = Object.keys(process.env).some((name) => name.toLowerCase() === "npm_config_nodedir");
  return !known && existsSync(join(prefix, "include/node/node.h")) ? { npm_config_nodedir: prefix } : {};
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await ensureInstalled();
