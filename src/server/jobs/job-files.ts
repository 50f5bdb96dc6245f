import { fail, type Issue, ok, type Result } from "#core";
import { writeEvidenceBag } from "#evidence";
import { folderFromState } from "#exchange";
import { writeZip } from "#formats";
import { type Entry, foldJob, namedBlobs, utf8 } from "#records";
import type { Store } from "#store";
import { error } from "../issue.ts";
import type { TreeHeads } from "./tree-heads.ts";

type Bytes = Uint8Array<ArrayBuffer>;

/** The job of the log as a job folder in a ZIP archive; undefined if there is no such job. */
export async function jobFolderZip(store: Store, job: string): Promise<Result<Bytes | undefined, Issue>> {
  const entries = await store.readJob(job);
  if (!entries.ok) return entries;
  if (entries.value.length === 0) return ok(undefined);
  const { files } = await folderFromState(foldJob(entries.value), entries.value, async (blob) => {
    const bytes = await store.readBlob(blob);
    return bytes.ok ? bytes.value : undefined;
  });
  const written = [...files].map(
    ([name, content]) =>
      [name, typeof content === "string" ? utf8(content) : Uint8Array.from(content)] as const,
  );
  return ok(writeZip(new Map(written)));
}

/** Everything of a job in one file that anybody can check; undefined if there is no such job. */
export async function evidenceZip(
  store: Store,
  heads: TreeHeads,
  job: string,
): Promise<Result<Bytes | undefined, Issue>> {
  const head = await heads.head(job);
  if (!head.ok) return head;
  if (head.value === undefined) return ok(undefined);
  const { size } = head.value;
  const [entries, kept] = [await store.readJob(job), await heads.kept(job)];
  if (!entries.ok) return entries;
  if (!kept.ok) return kept;
  // what came since the head was signed waits for the next one
  const signed = entries.value.slice(0, size);
  const blobs = await blobsOf(store, signed);
  if (!blobs.ok) return blobs;
  const written = await writeEvidenceBag({
    job,
    entries: signed,
    heads: kept.value.filter((one) => one.size <= size),
    blobs: blobs.value,
    program: "toeline",
  });
  if (written.ok) return written;
  return fail(written.error[0] ?? error("server.log-changed", { job, size }));
}

async function blobsOf(
  store: Store,
  entries: readonly Entry[],
): Promise<Result<ReadonlyMap<string, Bytes>, Issue>> {
  const blobs = new Map<string, Bytes>();
  for (const hash of new Set(entries.flatMap(namedBlobs))) {
    const bytes = await store.readBlob(hash);
    if (!bytes.ok) return bytes;
    if (bytes.value !== undefined) blobs.set(hash, bytes.value);
  }
  return ok(blobs);
}
