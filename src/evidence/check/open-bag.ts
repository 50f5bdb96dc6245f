import { fail, type Issue, ok, type Result } from "#core";
import { readZip } from "#formats";
import { type BagFiles, DECLARATION, FIXED_FILES } from "../bag/names.ts";
import { error } from "../issue.ts";

/**
 * The files of a bag in a ZIP archive, by their names inside the bag. The bag may stand in one folder of the archive.
 *
 * Errors: those of readZip, evidence.not-a-bag.
 */
export function openBag(bytes: Uint8Array): Result<BagFiles, readonly Issue[]> {
  const unpacked = readZip(bytes, "");
  return unpacked.ok ? bagIn(unpacked.value) : unpacked;
}

/**
 * The same from files that are unpacked already.
 *
 * Errors: evidence.not-a-bag.
 */
export function bagIn(files: BagFiles): Result<BagFiles, readonly Issue[]> {
  const [declaration] = [...files.keys()]
    .filter((name) => name === DECLARATION || name.endsWith(`/${DECLARATION}`))
    .sort((a, b) => a.length - b.length);
  const folder = declaration?.slice(0, -DECLARATION.length) ?? "";
  // what stands outside of the folder keeps its name, and is found as a stray file
  const inside = new Map(
    [...files].map(([name, bytes]) => [name.startsWith(folder) ? name.slice(folder.length) : name, bytes]),
  );
  const missing = FIXED_FILES.filter((name) => !inside.has(name));
  if (missing.length === 0) return ok(inside);
  return fail(missing.map((file) => error("evidence.not-a-bag", { file }, { found: file })));
}
