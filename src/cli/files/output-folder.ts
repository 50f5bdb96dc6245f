import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { dirname, join, relative, resolve, sep } from "node:path";
import { setImmediate } from "node:timers/promises";
import { fail, ok, type Result } from "#core";

/** Names every file that was written, so that a later run knows what it may replace. */
const LIST = "written-by-toeline.txt";
const FIRST_LINE = "Written by toeline; the next run into this folder replaces these files:";
/** Where files are written first. Inside the folder, so that moving them is one step on any disk. */
const UNFINISHED = ".unfinished-";

/**
 * Whether a folder may be written: it is not there, is empty, or holds only files that this program wrote before.
 *
 * @returns undefined, or in one sentence why not.
 */
export function whyNotWritable(folder: string): string | undefined {
  const status = statSync(folder, { throwIfNoEntry: false });
  if (status === undefined) return undefined;
  if (!status.isDirectory()) return `${folder} is a file, not a folder.`;
  const ours = new Set([LIST, ...writtenBefore(folder)]);
  const foreign = filesIn(folder).filter((name) => !ours.has(name) && !name.startsWith(UNFINISHED));
  if (foreign.length === 0) return undefined;
  const more = foreign.length > 1 ? ` and ${foreign.length - 1} more` : "";
  return `${folder} holds files that toeline did not write: ${foreign[0]}${more}. Choose an empty or a new folder.`;
}

const filesIn = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => !entry.isDirectory())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join("/"));

function writtenBefore(folder: string): string[] {
  const list = join(folder, LIST);
  if (!existsSync(list)) return [];
  const lines = readFileSync(list, "utf8").split("\n");
  return lines[0] === FIRST_LINE ? lines.slice(1).filter((line) => line !== "") : [];
}

/**
 * Writes all files or none. Each is written whole in a hidden place first and then moved, so that whoever stops the
 * program finds the old files or the new ones, never half of one.
 *
 * @param files name with "/" between folders, and content; taken one by one, so that not all need be in memory.
 * @param interrupted asked between files; true takes everything back.
 * @returns number of files, or in one sentence why nothing was written.
 */
export async function writeFolder(
  folder: string,
  files: Iterable<readonly [name: string, content: string | Uint8Array]>,
  interrupted: () => boolean,
): Promise<Result<number, string>> {
  const target = resolve(folder);
  const reason = whyNotWritable(target);
  if (reason !== undefined) return fail(reason);
  const isNew = !existsSync(target);
  const unfinished = join(target, `${UNFINISHED}${process.pid}`);
  mkdirSync(unfinished, { recursive: true });
  const names = await writeInto(unfinished, files, interrupted);
  if (names === undefined) {
    rmSync(isNew ? target : unfinished, { recursive: true, force: true });
    return fail("Interrupted: nothing was written.");
  }
  writeFileSync(join(unfinished, LIST), [FIRST_LINE, ...names, ""].join("\n"));
  replace(target, unfinished, names);
  return ok(names.length);
}

async function writeInto(
  folder: string,
  files: Iterable<readonly [string, string | Uint8Array]>,
  interrupted: () => boolean,
): Promise<string[] | undefined> {
  const names: string[] = [];
  for (const [name, content] of files) {
    const path = join(folder, name);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, content);
    names.push(name);
    // lets a signal be seen
    if (names.length % 16 === 0) await setImmediate();
    if (interrupted()) return undefined;
  }
  return names;
}

function replace(target: string, unfinished: string, names: readonly string[]): void {
  for (const name of writtenBefore(target)) rmSync(join(target, name), { force: true });
  for (const name of names) mkdirSync(dirname(join(target, name)), { recursive: true });
  for (const name of [LIST, ...names]) renameSync(join(unfinished, name), join(target, name));
  for (const entry of readdirSync(target))
    if (entry.startsWith(UNFINISHED)) rmSync(join(target, entry), { recursive: true, force: true });
  removeEmptyFolders(target);
}

function removeEmptyFolders(folder: string): void {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    if (!entry.isDirectory()) continue;
    const path = join(folder, entry.name);
    removeEmptyFolders(path);
    if (readdirSync(path).length === 0) rmSync(path, { recursive: true });
  }
}
