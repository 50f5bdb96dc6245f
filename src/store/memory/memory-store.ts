import type { Backend, EntryRow, StoredPart } from "../backend.ts";
import { settleRows } from "../batch.ts";
import { chainsOfRows } from "../chains-of-rows.ts";
import { createStore } from "../create-store.ts";
import type { BlobHeld, KeptAside, Store } from "../store.ts";

interface JobInMemory {
  /** in the order of arrival */
  readonly rows: EntryRow[];
  readonly acknowledged: Map<string, Set<string>>;
  readonly pulled: Map<string, number>;
  readonly aside: Map<string, KeptAside>;
}

interface BlobInMemory extends BlobHeld {
  readonly parts: readonly StoredPart[];
}

/** A store that lasts as long as the program: for tests, and for looking at a log without keeping it. */
export function openMemoryStore(): Store {
  const blobs = new Map<string, BlobInMemory>();
  return createStore({ ...logInMemory(), ...blobsInMemory(blobs), close: () => Promise.resolve() });
}

type BlobCalls = "blob" | "blobParts" | "addBlobPart" | "completeBlob" | "dropBlob";

function logInMemory(): Omit<Backend, BlobCalls | "close"> {
  const texts = new Map<string, string>();
  const jobs = new Map<string, JobInMemory>();
  const jobOf = (job: string): JobInMemory => {
    const known = jobs.get(job) ?? { rows: [], acknowledged: new Map(), pulled: new Map(), aside: new Map() };
    jobs.set(job, known);
    return known;
  };
  const acknowledgedOf = (job: string, office: string): Set<string> => {
    const { acknowledged } = jobOf(job);
    const known = acknowledged.get(office) ?? new Set<string>();
    acknowledged.set(office, known);
    return known;
  };
  const notSent = (job: string, office: string) =>
    jobOf(job).rows.filter((row) => !acknowledgedOf(job, office).has(row.id));
  return {
    insertEntries: async (job, rows) => {
      const { fresh, taken } = settleRows(rows, texts);
      const { rows: log } = jobOf(job);
      for (const row of fresh) {
        texts.set(row.id, row.text);
        log.push(row);
      }
      return { taken, added: fresh.length, size: log.length };
    },
    jobs: async () => [...jobs].flatMap(([job, { rows }]) => (rows.length > 0 ? [job] : [])).sort(),
    size: async (job) => jobOf(job).rows.length,
    ids: async (job) => jobOf(job).rows.map((row) => row.id),
    entriesAfter: async (job, arrival, count) =>
      jobOf(job)
        .rows.slice(arrival, arrival + count)
        .map(({ text }, i) => ({ arrival: arrival + i + 1, text })),
    chainTexts: async (job, device, from, to) =>
      jobOf(job)
        .rows.filter((row) => row.device === device && row.sequence >= from && row.sequence <= to)
        .sort((a, b) => a.sequence - b.sequence || (a.id < b.id ? -1 : 1))
        .map((row) => row.text),
    chains: async (job) => chainsOfRows(jobOf(job).rows),
    acknowledge: async (job, office, ids) => {
      const held = new Set(jobOf(job).rows.map((row) => row.id));
      const known = acknowledgedOf(job, office);
      const before = known.size;
      for (const id of ids) if (held.has(id)) known.add(id);
      return known.size - before;
    },
    acknowledged: async (job, office) => [...acknowledgedOf(job, office)],
    notSentTexts: async (job, office) => notSent(job, office).map((row) => row.text),
    notSentCount: async (job, office) => notSent(job, office).length,
    keepPulled: async (job, office, place) => {
      const { pulled } = jobOf(job);
      pulled.set(office, Math.max(place, pulled.get(office) ?? 0));
    },
    pulled: async (job, office) => jobOf(job).pulled.get(office) ?? 0,
    offices: async (job) => [...jobOf(job).pulled.keys()].sort(),
    forgetOffice: async (job, office) => {
      jobOf(job).acknowledged.delete(office);
      jobOf(job).pulled.delete(office);
    },
    keepAside: async (job, rows) => {
      const { aside } = jobOf(job);
      const before = aside.size;
      for (const row of rows) if (!aside.has(row.key)) aside.set(row.key, row);
      return aside.size - before;
    },
    keptAside: async (job) => [...jobOf(job).aside.values()].sort((a, b) => (a.key < b.key ? -1 : 1)),
  };
}

function blobsInMemory(blobs: Map<string, BlobInMemory>): Pick<Backend, BlobCalls> {
  return {
    blob: async (hash) => {
      const held = blobs.get(hash);
      return held && { size: held.size, received: held.received, isComplete: held.isComplete };
    },
    blobParts: async (hash, from, to) =>
      (blobs.get(hash)?.parts ?? []).filter(
        ({ offset, bytes }) => offset < to && offset + bytes.length > from,
      ),
    addBlobPart: async ({ hash, size, offset, bytes }) => {
      const held = blobs.get(hash) ?? { size, received: 0, isComplete: false, parts: [] };
      if (held.received !== offset) return;
      const parts = [...held.parts, { offset, bytes: bytes.slice() }];
      blobs.set(hash, { ...held, received: offset + bytes.length, parts });
    },
    completeBlob: async (hash) => {
      const held = blobs.get(hash);
      if (held !== undefined) blobs.set(hash, { ...held, isComplete: true });
    },
    dropBlob: async (hash) => {
      if (blobs.get(hash)?.isComplete === false) blobs.delete(hash);
    },
  };
}
