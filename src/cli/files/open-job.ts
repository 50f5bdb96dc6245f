import { readFileSync, statSync } from "node:fs";
import { basename } from "node:path";
import { fail, ok, type Result } from "#core";
import { type FolderReader, folderFromZip } from "#formats";
import { sentenceOf } from "#text";
import { directoryReader } from "./directory-reader.ts";

/** Opens a job: a folder, or the same folder as a .zip. @returns the reader, or why not, in a sentence or more. */
export function openJob(path: string): Result<FolderReader, string> {
  const status = statSync(path, { throwIfNoEntry: false });
  if (status === undefined)
    return fail(`There is no ${path}. Give the folder that holds job.json, or a .zip of it.`);
  if (status.isDirectory()) return ok(directoryReader(path));
  const name = basename(path);
  if (name.toLowerCase() === "job.json")
    return fail(`${path} is one file of a job. Give the folder that it stands in.`);
  const unpacked = folderFromZip(readFileSync(path), name);
  if (unpacked.ok) return unpacked;
  return fail(unpacked.error.map((issue) => `${name}: ${sentenceOf(issue)}`).join("\n"));
}
