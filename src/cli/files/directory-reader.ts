import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import type { FolderReader } from "#formats";

/** A job folder is two or three deep; this keeps a wrong folder (a home folder, say) from being walked to its end. */
const DEEPEST = 4;
const MOST_FILES = 100_000;

/**
 * A folder on this machine as the readers see it. Reads only files inside of it, and each only when asked.
 *
 * Hidden files and `node_modules` are left out.
 */
export function directoryReader(folder: string): FolderReader {
  const names: string[] = [];
  walk(folder, "", 1, names);
  const known = new Set(names);
  return {
    names,
    read: (name) => (known.has(name) ? readFileSync(join(folder, name)) : undefined),
  };
}

function walk(folder: string, prefix: string, depth: number, names: string[]): void {
  const entries = readdirSync(join(folder, prefix), { withFileTypes: true });
  for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
    if (entry.name.startsWith(".") || entry.name === "node_modules" || names.length >= MOST_FILES) continue;
    const name = prefix + entry.name;
    const kind = entry.isSymbolicLink() ? statSync(join(folder, name), { throwIfNoEntry: false }) : entry;
    if (kind?.isFile()) names.push(name);
    else if (kind?.isDirectory() && depth < DEEPEST) walk(folder, `${name}/`, depth + 1, names);
  }
}
