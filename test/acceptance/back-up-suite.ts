import { mkdtempSync, readFileSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import {
  canonicalJson,
  foldJob,
  isSameSet,
  type PushAnswer,
  sha256Hex,
  UNKNOWN_OFFICE,
  viewAfterPush,
} from "../../src/records/index.ts";
import { backUp, move, restore } from "../../src/server/backup/back-up.ts";
import type { OfficePlace } from "../../src/server/backup/place.ts";
import { openIdentity } from "../../src/server/office/identity.ts";
import { openOfficeTables } from "../../src/server/tables/open-office-tables.ts";
import { createRandom } from "../../src/simulator/index.ts";
import type { Store } from "../../src/store/index.ts";
import { Pen, unwrap } from "../support/records.ts";

const AT = "2026-03-02T09:00:00.000Z";
const NOW = new Date(AT);
const SEED = 20260302;
const JOBS = ["job-1", "job-2"];
const QUIET = { onWritten: () => {}, onChecked: () => {} };

export interface BackUpPlaces {
  /** nothing is there yet */
  readonly empty: () => Promise<OfficePlace>;
  readonly openStore: (place: OfficePlace) => Promise<Store>;
}

const settingsOf = (place: OfficePlace) =>
  "database" in place
    ? { database: place.database, dataFolder: "" }
    : { database: undefined, dataFolder: place.dataFolder };

/** Who an office says it is, when a server opens it. */
async function identityAt(place: OfficePlace) {
  const tables = unwrap(await openOfficeTables(settingsOf(place)));
  const { id, era, signer } = unwrap(await openIdentity(settingsOf(place), tables));
  await tables.db.destroy();
  return { id, era, key: signer.publicKey };
}

async function addAccount(place: OfficePlace, id: string): Promise<void> {
  const { db } = unwrap(await openOfficeTables(settingsOf(place)));
  const times = { created_at: 1_772_445_600_000, totp_step: 0 };
  const flags = { is_admin: 0, disabled: 0, totp_secret: null };
  await db
    .insertInto("accounts")
    .values({ id, login: id, name: `Name ${id}`, password: "$scrypt$", ...times, ...flags })
    .execute();
  await db.destroy();
}

/** Entries in their order of arrival and the states they give, of all jobs. */
async function contentsOf(store: Store) {
  const jobs = unwrap(await store.jobs());
  const all = await Promise.all(
    jobs.map(async (job) => {
      const entries = unwrap(await store.readJob(job));
      const state = unwrap(canonicalJson(foldJob(entries) as never));
      return { job, entries, state, aside: unwrap(await store.readKeptAside(job)) };
    }),
  );
  return all;
}

/** Back-up, restore and move on one engine; copies go to the same engine. */
export function backUpSuite(name: string, { empty, openStore }: BackUpPlaces): void {
  const folder = mkdtempSync(join(tmpdir(), "toeline-back-up-"));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  let count = 0;
  const newFile = () => join(folder, `${++count}.toeline-backup`);

  /** An office with two jobs, a file, something kept aside and an account. */
  async function filled() {
    const place = await empty();
    const store = await openStore(place);
    const pens = await Promise.all([1, 2, 3, 4, 5].map((i) => Pen.start(i, JOBS[i % 2]!)));
    for (const pen of pens) {
      for (let i = 0; i < 10; i++) await pen.set(`P${i}`, "diameter_m", i + 1);
      const entries = pen.entries;
      unwrap(await store.append(entries[0]!.job, [...entries].reverse(), AT));
    }
    const bytes = new Uint8Array(30_000).map((_, i) => i % 251);
    const hash = await sha256Hex(bytes);
    for (const [offset, end] of [
      [0, 20_000],
      [20_000, 30_000],
    ] as const)
      unwrap(await store.putBlobPart({ hash, size: bytes.length, offset, bytes: bytes.slice(offset, end) }));
    const issue = { code: "records.id-mismatch", severity: "error", place: {}, values: {} } as const;
    unwrap(await store.keepAside(JOBS[0]!, [{ index: 0, raw: { a: "ü" }, issue }], AT));
    await addAccount(place, "anna");
    const identity = await identityAt(place);
    return { place, store, pens, hash, bytes, identity };
  }

  describe(name, () => {
    test("what comes back is what was there, in its order of arrival, and a later era", async () => {
      const { place, store, hash, bytes, identity } = await filled();
      const file = newFile();
      unwrap(await backUp(place, file, NOW, () => {}));
      const other = await empty();
      const { tally } = unwrap(await restore(file, other, NOW, QUIET));
      expect(Object.keys(tally.jobs).sort()).toEqual(JOBS);
      const again = await openStore(other);
      expect(await contentsOf(again)).toEqual(await contentsOf(store));
      expect(unwrap(await again.readBlob(hash))).toEqual(bytes);
      await again.close();
      const restored = await identityAt(other);
      expect(restored).toMatchObject({ id: identity.id, key: identity.key });
      expect(restored.era).toBeGreaterThan(identity.era);
      const { db } = unwrap(await openOfficeTables(settingsOf(other)));
      expect(await db.selectFrom("accounts").select("login").execute()).toEqual([{ login: "anna" }]);
      await db.destroy();
      await store.close();
    });

    test("it is one moment, while five devices write", async () => {
      const { place, store, pens } = await filled();
      const batches = pens.map(async (pen) => {
        for (let i = 0; i < 12; i++) {
          await pen.set("P1", "diameter_m", i + 50);
          unwrap(await store.append(pen.entries[0]!.job, pen.entries.slice(-1), AT));
        }
      });
      const file = newFile();
      const [tally] = await Promise.all([backUp(place, file, NOW, () => {}), ...batches]);
      const other = await empty();
      expect(unwrap(await restore(file, other, NOW, QUIET)).tally).toEqual(unwrap(tally));
      const again = await openStore(other);
      for (const job of JOBS) {
        const kept = unwrap(await again.readIds(job));
        // the log only grows, so what was there at one moment is how it begins
        expect(kept).toEqual(unwrap(await store.readIds(job)).slice(0, kept.length));
        expect(kept.length).toBeGreaterThanOrEqual(22);
      }
      await again.close();
      await store.close();
    });

    test("a place that is not empty stays as it is", async () => {
      const { place, store } = await filled();
      const file = newFile();
      unwrap(await backUp(place, file, NOW, () => {}));
      const before = await contentsOf(store);
      const refused = await restore(file, place, NOW, QUIET);
      expect(refused.ok ? "restored" : refused.error.code).toBe("backup.not-empty");
      expect(await contentsOf(store)).toEqual(before);
      await store.close();
    });

    test(`a changed byte is told, wherever it is, seed ${SEED}`, async () => {
      const { place, store } = await filled();
      await store.close();
      const file = newFile();
      unwrap(await backUp(place, file, NOW, () => {}));
      const sound = readFileSync(file);
      const random = createRandom(SEED);
      const ends = Array.from({ length: 1024 }, (_, i) => [i, sound.length - 1 - i]).flat();
      const inside = Array.from({ length: 200 }, () => Math.floor(random.uniform() * sound.length));
      const target = await empty();
      const quiet: string[] = [];
      const changed = newFile();
      for (const at of [...ends, ...inside]) {
        const bytes = Buffer.from(sound);
        bytes[at]! ^= 1 << Math.floor(random.uniform() * 8);
        writeFileSync(changed, bytes);
        const told = await restore(changed, target, NOW, QUIET);
        if (told.ok || !/^backup\.(not-one|damaged|cut)$/.test(told.error.code))
          quiet.push(`${at} of ${sound.length}: ${told.ok ? "restored" : told.error.code}`);
      }
      expect(quiet).toEqual([]);
      for (let cut = 0; cut < 50; cut++) {
        writeFileSync(changed, sound);
        truncateSync(changed, Math.floor(random.uniform() * sound.length));
        const told = await restore(changed, target, NOW, QUIET);
        expect(told.ok ? "restored" : told.error.code).toMatch(/^backup\.(not-one|damaged|cut)$/);
      }
      // nothing was written by all these tries
      unwrap(await restore(file, target, NOW, QUIET));
    });

    test("a device that had sent before the restore sends again afterwards", async () => {
      const { place, store, pens, identity } = await filled();
      const file = newFile();
      unwrap(await backUp(place, file, NOW, () => {}));
      const pen = pens[0]!;
      const { job } = pen.entries[0]!;
      const late = await pen.set("P1", "diameter_m", 99);
      unwrap(await store.append(job, [late], AT));
      const answer = (era: number, held: string[]): PushAnswer => ({
        format: "toeline-push-answer/1",
        job,
        era,
        held,
        refused: [],
        contiguous: {},
        forked: [],
      });
      const ids = pen.entries.map((entry) => entry.id);
      const before = viewAfterPush(UNKNOWN_OFFICE, answer(identity.era, ids), pen.entries);
      expect(before.acknowledged.has(late.id)).toBe(true);
      const other = await empty();
      unwrap(await restore(file, other, NOW, QUIET));
      const { era } = await identityAt(other);
      const after = viewAfterPush(before, answer(era, [ids[0]!]), pen.entries.slice(0, 1));
      expect(after.acknowledged.has(late.id)).toBe(false);
      expect(await isSameSet(before, { era, digest: null } as never)).toBe(false);
      // restored once more elsewhere, a moment later, it is another life again
      const third = await empty();
      unwrap(await restore(file, third, new Date(NOW.getTime() + 1000), QUIET));
      expect((await identityAt(third)).era).toBeGreaterThan(era);
      await store.close();
    });

    test("a move leaves the first place as it is, and the second one holds the same", async () => {
      const { place, store, identity } = await filled();
      const before = await contentsOf(store);
      const other = await empty();
      unwrap(await move(place, other, NOW, QUIET));
      expect(await contentsOf(store)).toEqual(before);
      const again = await openStore(other);
      expect(await contentsOf(again)).toEqual(before);
      await again.close();
      await store.close();
      expect((await identityAt(place)).era).toBe(identity.era);
      expect((await identityAt(other)).era).toBeGreaterThan(identity.era);
    });

    test("a place without records is told", async () => {
      const none = await backUp(await empty(), newFile(), NOW, () => {});
      expect(none.ok ? "written" : none.error.code).toBe("backup.source");
    });
  });
}
