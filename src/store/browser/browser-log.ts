import { Dexie } from "dexie";
import type { Backend, EntryRow, Inserted } from "../backend.ts";
import { settleRows } from "../batch.ts";
import { chainsOfRows } from "../chains-of-rows.ts";
import type { BrowserDatabase, StoredEntry } from "./database.ts";

type LogCalls = Omit<Backend, "blob" | "blobParts" | "addBlobPart" | "completeBlob" | "dropBlob" | "close">;

/** A browser counts the rows it is asked for in 32 bits. */
const MAX_COUNT = 2 ** 32 - 1;

/** The log and what is kept beside it, in the browser. */
export function browserLog(database: BrowserDatabase): LogCalls {
  const { entries, acknowledgements, pulled, keptAside } = database;
  const arrived = (job: string, after = 0) =>
    entries.where("[job+arrival]").between([job, after], [job, Dexie.maxKey], false, true);
  const acknowledged = async (job: string, office: string): Promise<readonly string[]> => {
    const keys = await acknowledgements.where({ office, job }).primaryKeys();
    return keys.map(([, entry]) => entry);
  };
  const notSent = (job: string, office: string): Promise<readonly StoredEntry[]> =>
    database.transaction("r", entries, acknowledgements, async () => {
      const known = new Set(await acknowledged(job, office));
      return arrived(job)
        .filter((row) => !known.has(row.id))
        .sortBy("arrival");
    });
  return {
    insertEntries: (job, rows, receivedAt) => insertEntries(database, job, rows, receivedAt),
    jobs: async () => {
      const keys = await entries.orderBy("[job+arrival]").uniqueKeys();
      return [...new Set((keys as unknown as [string, number][]).map(([job]) => job))].sort();
    },
    size: (job) => arrived(job).count(),
    ids: (job) => arrived(job).primaryKeys(),
    entriesAfter: (job, arrival, count) => arrived(job, arrival).limit(Math.min(count, MAX_COUNT)).toArray(),
    chainTexts: async (job, device, from, to) => {
      const rows = await entries
        .where("[job+device+sequence+id]")
        .between([job, device, from, Dexie.minKey], [job, device, to, Dexie.maxKey], true, true)
        .toArray();
      return rows.map((row) => row.text);
    },
    chains: async (job) => {
      // the index alone says all that is asked, without the texts
      const keys = await entries
        .where("[job+device+sequence+id]")
        .between([job, Dexie.minKey], [job, Dexie.maxKey], true, true)
        .keys();
      const rows = (keys as unknown as [string, string, number, string][]).map(
        ([, device, sequence, id]) => ({ device, sequence, id }),
      );
      return chainsOfRows(rows);
    },
    acknowledge: (job, office, ids, at) =>
      database.transaction("rw", entries, acknowledgements, async () => {
        const held = await entries.bulkGet([...ids]);
        const known = new Set(await acknowledged(job, office));
        const fresh = held.flatMap((row) =>
          row?.job === job && !known.has(row.id) ? [{ office, job, entry: row.id, at }] : [],
        );
        await acknowledgements.bulkAdd(fresh);
        return fresh.length;
      }),
    acknowledged,
    notSentTexts: async (job, office) => (await notSent(job, office)).map((row) => row.text),
    notSentCount: async (job, office) =>
      database.transaction("r", entries, acknowledgements, async () => {
        const all = await arrived(job).count();
        // an acknowledgement stands only for an entry of the log
        return all - (await acknowledgements.where({ office, job }).count());
      }),
    keepPulled: (job, office, place) =>
      database.transaction("rw", pulled, async () => {
        const held = await pulled.get([job, office]);
        if ((held?.place ?? -1) < place) await pulled.put({ job, office, place });
      }),
    pulled: async (job, office) => (await pulled.get([job, office]))?.place ?? 0,
    offices: async (job) => {
      const keys = await pulled
        .where("[job+office]")
        .between([job, Dexie.minKey], [job, Dexie.maxKey])
        .primaryKeys();
      return keys.map(([, office]) => office).sort();
    },
    forgetOffice: (job, office) =>
      database.transaction("rw", acknowledgements, pulled, async () => {
        await acknowledgements.where({ office, job }).delete();
        await pulled.delete([job, office]);
      }),
    keepAside: (job, rows) =>
      database.transaction("rw", keptAside, async () => {
        const held = await keptAside.bulkGet(rows.map((row): [string, string] => [job, row.key]));
        const fresh = rows.filter((_, i) => held[i] === undefined);
        await keptAside.bulkAdd(fresh.map((row) => ({ ...row, job })));
        return fresh.length;
      }),
    keptAside: async (job) => {
      const rows = await keptAside
        .where("[job+key]")
        .between([job, Dexie.minKey], [job, Dexie.maxKey])
        .toArray();
      return rows.map(({ key, issue, text, at }) => ({ key, issue, text, at }));
    },
  };
}

function insertEntries(
  database: BrowserDatabase,
  job: string,
  rows: readonly EntryRow[],
  receivedAt: string,
): Promise<Inserted> {
  const { entries } = database;
  return database.transaction("rw", entries, async () => {
    const held = await entries.bulkGet(rows.map((row) => row.id));
    const heldTexts = new Map(held.flatMap((row) => (row === undefined ? [] : [[row.id, row.text]])));
    const { fresh, taken } = settleRows(rows, heldTexts);
    const last = await entries
      .where("[job+arrival]")
      .between([job, Dexie.minKey], [job, Dexie.maxKey])
      .last();
    const before = last?.arrival ?? 0;
    await entries.bulkAdd(fresh.map((row, i) => ({ ...row, job, arrival: before + i + 1, receivedAt })));
    return { taken, added: fresh.length, size: before + fresh.length };
  });
}
