import { unzipSync } from "fflate";
import { fail, type Issue, ok, type Result } from "#core";
import { Finder } from "../finding/finder.ts";
import { attempt } from "../text/attempt.ts";
import { type FolderReader, folderFromFiles } from "./folder.ts";

/** Unpacked size above which an archive is refused, before anything is unpacked. */
const MAX_UNPACKED_BYTES = 1_000_000_000;
const MAX_FILES = 100_000;

/**
 * A job folder from a zip archive. The folder may stand in the archive inside one or more outer folders.
 *
 * Names that lead out of the archive ("../", "/", "C:\\") refuse the archive as a whole.
 *
 * @param name the archive's name, used only in findings.
 * Errors: formats.not-zip, formats.zip-path, formats.file-too-large, formats.zip-without-job.
 */
export function folderFromZip(bytes: Uint8Array, name: string): Result<FolderReader, readonly Issue[]> {
  const found = new Finder(name);
  const listed = listFiles(bytes, found);
  if (listed === undefined) return fail(found.issues);
  const root = rootOf(listed);
  if (root === undefined) {
    const inside = listed.slice(0, 3).join(", ");
    found.block(
      "formats.zip-without-job",
      {},
      { found: inside === "" ? "no files" : inside, expected: "job.json" },
    );
    return fail(found.issues);
  }
  const wanted = new Set(listed.filter((file) => file.startsWith(root) && !file.endsWith("/")));
  const unpacked = attempt(() => unzipSync(bytes, { filter: (file) => wanted.has(tidy(file.name)) }));
  if (!unpacked.ok) {
    found.block("formats.not-zip", {}, { found: unpacked.error, expected: "a whole zip archive" });
    return fail(found.issues);
  }
  const files = Object.entries(unpacked.value).map(
    ([file, data]) => [tidy(file).slice(root.length), data] as const,
  );
  return ok(folderFromFiles(new Map(files)));
}

const tidy = (name: string): string => name.replaceAll("\\", "/");

function listFiles(bytes: Uint8Array, found: Finder): string[] | undefined {
  const names: string[] = [];
  let size = 0;
  const listed = attempt(() =>
    unzipSync(bytes, {
      filter: (file) => {
        names.push(tidy(file.name));
        size += file.originalSize;
        return false;
      },
    }),
  );
  if (!listed.ok) {
    found.block("formats.not-zip", {}, { found: listed.error, expected: "a zip archive" });
    return undefined;
  }
  if (size > MAX_UNPACKED_BYTES || names.length > MAX_FILES) {
    found.block("formats.file-too-large", {}, { found: size, expected: MAX_UNPACKED_BYTES });
    return undefined;
  }
  const outside = names.find((file) => /^(\/|[a-z]:)/i.test(file) || file.split("/").includes(".."));
  if (outside !== undefined) {
    found.block("formats.zip-path", {}, { found: outside, expected: "names inside the archive" });
    return undefined;
  }
  return names;
}

/** Path up to job.json, the one least deep; "" at the top. */
function rootOf(names: readonly string[]): string | undefined {
  const depth = (name: string) => name.split("/").length;
  const jobs = names.filter((name) => name === "job.json" || name.endsWith("/job.json"));
  const [first] = jobs.toSorted((a, b) => depth(a) - depth(b));
  return first?.slice(0, -"job.json".length);
}
