import type { Issue, Result } from "#core";
import { ok } from "#core";
import { type FolderReader, folderFromFiles, folderFromZip } from "#formats";
import type { InputFile } from "../desk.ts";

/** What was dropped as a job folder: one zip, or files with their folders around them. Errors: those of folderFromZip. */
export function inputFolder(files: readonly InputFile[]): Result<FolderReader, readonly Issue[]> {
  const [first] = files;
  if (files.length === 1 && first !== undefined && /\.zip$/i.test(first.name))
    return folderFromZip(first.bytes, first.name);
  const settings = files
    .map(({ name }) => name)
    .filter((name) => name === "job.json" || name.endsWith("/job.json"))
    .sort((a, b) => a.length - b.length)[0];
  const root = settings?.slice(0, -"job.json".length) ?? "";
  const inside = files.filter(({ name }) => name.startsWith(root));
  return ok(folderFromFiles(new Map(inside.map(({ name, bytes }) => [name.slice(root.length), bytes]))));
}
