import type { Issue } from "#core";
import { isHex32, sha256Hex } from "#records";
import { type BagFiles, BLOBS, ENTRIES, FIXED_FILES } from "../bag/names.ts";
import { error } from "../issue.ts";
import type { BlobsInEvidence } from "./evidence-report.ts";

export interface CheckedBlobs {
  readonly blobs: BlobsInEvidence;
  /** a file may never have reached the office */
  readonly missing: readonly Issue[];
  readonly changed: readonly Issue[];
}

/**
 * Checks the files that entries name, each against its hash, and that nothing else lies in the bag.
 *
 * @param named by hash, the place of the first entry that names it.
 *
 * Errors: evidence.blob-missing, evidence.blob-changed, evidence.stray-file.
 */
export async function checkBlobs(files: BagFiles, named: ReadonlyMap<string, number>): Promise<CheckedBlobs> {
  const absent = [...named].filter(([hash]) => !files.has(BLOBS + hash));
  const issues: Issue[] = [];
  const changed: string[] = [];
  for (const [name, bytes] of files) {
    if (FIXED_FILES.includes(name)) continue;
    const blob = name.startsWith(BLOBS) ? name.slice(BLOBS.length) : "";
    if (!isHex32(blob) || !named.has(blob)) issues.push(error("evidence.stray-file", { file: name }));
    else if ((await sha256Hex(bytes)) !== blob) {
      changed.push(blob);
      issues.push(error("evidence.blob-changed", { file: name }, { blob }));
    }
  }
  return {
    blobs: { named: named.size, missing: absent.map(([hash]) => hash), changed },
    missing: absent.map(([blob, line]) => error("evidence.blob-missing", { file: ENTRIES, line }, { blob })),
    changed: issues,
  };
}
