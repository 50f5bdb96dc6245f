import { type Issue, ok, type Result } from "#core";
import { setDigest } from "#records";
import type { Store } from "#store";

/** Digests of the ids a job had up to a place. The last one is kept: as long as nobody sends, everybody asks for the same. */
export interface Digests {
  upTo(job: string, place: number): Promise<Result<string, Issue>>;
}

export function createDigests(store: Store): Digests {
  const last = new Map<string, { readonly place: number; readonly digest: string }>();
  return {
    upTo: async (job, place) => {
      const known = last.get(job);
      if (known?.place === place) return ok(known.digest);
      const ids = await store.readIds(job);
      if (!ids.ok) return ids;
      const digest = await setDigest(ids.value.slice(0, place));
      // a device that knows more than there is, after a loss here, asks for a place that is not there yet
      if (place <= ids.value.length) last.set(job, { place, digest });
      return ok(digest);
    },
  };
}
