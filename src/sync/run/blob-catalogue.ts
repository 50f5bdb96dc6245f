import { type Issue, ok, type Result } from "#core";
import { namedBlobs } from "#records";
import type { Store } from "#store";
import type { BlobRef } from "../messages.ts";

/** The files that the entries of a job name. Read from the log, and read on from where it was left when the log has grown. */
export interface BlobCatalogue {
  /** in the order of arrival; each file once */
  files(): Promise<Result<readonly BlobRef[], Issue>>;
}

export function createBlobCatalogue(store: Store, job: string): BlobCatalogue {
  const found = new Map<string, BlobRef>();
  let cursor = 0;
  return {
    files: async () => {
      for (let more = true; more; ) {
        const page = await store.readAfter(job, cursor);
        if (!page.ok) return page;
        for (const entry of page.value.entries)
          for (const blob of namedBlobs(entry))
            if (!found.has(blob)) found.set(blob, { device: entry.device, sequence: entry.sequence, blob });
        cursor = page.value.from + page.value.entries.length;
        more = page.value.more;
      }
      return ok([...found.values()]);
    },
  };
}
