import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { sha256Hex } from "#records";
import { openMemoryStore, type Store } from "#store";
import { createBlobCatalogue, synchronize } from "#sync";
import { type BadLine, startBadLine } from "../support/bad-line.ts";
import { JOB, Pen, unwrap } from "../support/records.ts";
import {
  folderSettings,
  type Member,
  startOffice,
  storeWith,
  type TestOffice,
  temporaryFolder,
} from "../support/sync-office.ts";

const PIECE = 256 * 1024;

describe("files that entries name", () => {
  let office: TestOffice;
  let anna: Member;
  let folder: ReturnType<typeof temporaryFolder>;
  let line: BadLine;
  let pen: Pen;

  beforeEach(async () => {
    folder = temporaryFolder("files");
    office = await startOffice(folderSettings(folder.folder));
    anna = await office.member("anna", "technician");
    line = await startBadLine(office.address);
    pen = await Pen.start(1);
  });
  afterEach(async () => {
    await line.stop();
    await office.stop();
    folder.remove();
  });

  const bytesOf = (size: number, seed: number) =>
    Uint8Array.from({ length: size }, (_, i) => (i * 7919 + seed * 31 + (i >> 8)) % 251);

  async function photo(store: Store, bytes: Uint8Array<ArrayBuffer>) {
    const blob = await sha256Hex(bytes);
    for (let offset = 0; offset < bytes.length; offset += PIECE)
      unwrap(
        await store.putBlobPart({
          hash: blob,
          size: bytes.length,
          offset,
          bytes: bytes.slice(offset, offset + PIECE),
        }),
      );
    const body = { about: "job", blob, bytes: bytes.length, type: "image/jpeg" };
    const entry = await pen.write("photo", body);
    return { device: pen.device, sequence: entry.sequence, blob };
  }
  const send = async (store: Store) =>
    unwrap(await store.append(JOB, pen.entries, "2026-03-02T09:00:00.000Z"));
  // a comparison item by item takes seconds
  const isSame = (a: Uint8Array | undefined, b: Uint8Array) => Buffer.compare(a ?? Buffer.of(), b) === 0;
  const held = async (blob: string) => unwrap(await office.office.store.blob(blob));

  test("go after the entries, in parts, and come whole to another device", async () => {
    const store = openMemoryStore();
    const sizes = [10, PIECE, PIECE + 1, 3 * PIECE + 77];
    const files = [];
    for (const [seed, size] of sizes.entries()) files.push(await photo(store, bytesOf(size, seed)));
    await send(store);
    const outcome = await synchronize(store, office.client(anna), JOB);
    expect(outcome).toMatchObject({ sent: 5, filesSent: 4, findings: [], stoppedBy: undefined });
    for (const { blob } of files) expect((await held(blob))?.isComplete).toBe(true);
    const other = openMemoryStore();
    const fetched = await synchronize(other, office.client(anna), JOB, { files: "both" });
    expect(fetched).toMatchObject({ received: 5, filesFetched: 4, filesSent: 0, findings: [] });
    for (const [seed, { blob }] of files.entries())
      expect(isSame(unwrap(await other.readBlob(blob)), bytesOf(sizes[seed]!, seed))).toBe(true);
    expect(await synchronize(store, office.client(anna), JOB)).toMatchObject({ filesSent: 0 });
  });

  test("go on after a cut where the office stands, and at most a part is sent again", async () => {
    const store = openMemoryStore();
    const bytes = bytesOf(6 * PIECE, 3);
    const file = await photo(store, bytes);
    await send(store);
    unwrap({ ok: true, value: await synchronize(store, office.client(anna), JOB, { files: "none" }) });
    const sent: number[] = [];
    const watching: typeof fetch = (input, init) => {
      const offset = /[?&]offset=(\d+)/.exec(String(input));
      if (offset !== null) sent.push(Number(offset[1]));
      return fetch(input, init);
    };
    const client = office.client(anna, { address: line.address, fetch: watching, silenceMs: 3000 });
    await line.set({ does: "cut-after", bytes: 3.5 * PIECE });
    const cut = await synchronize(store, client, JOB);
    expect(cut.stoppedBy?.code).toBe("sync.no-answer");
    const there = await held(file.blob);
    expect(there).toMatchObject({ received: 3 * PIECE, isComplete: false });
    await line.set({ does: "pass" });
    expect(await synchronize(store, client, JOB)).toMatchObject({ filesSent: 1, stoppedBy: undefined });
    expect(sent).toEqual([0, 1, 2, 3, 3, 4, 5].map((i) => i * PIECE));
    expect(isSame(unwrap(await office.office.store.readBlob(file.blob)), bytes)).toBe(true);
    // and back: what had come before the cut is not fetched again
    const other = openMemoryStore();
    await line.set({ does: "cut-answer-after", bytes: 2.5 * PIECE });
    const half = await synchronize(other, client, JOB, { files: "fetch" });
    expect(half.stoppedBy?.code).toBe("sync.no-answer");
    const here = unwrap(await other.blob(file.blob));
    expect(here!.received).toBeGreaterThan(PIECE);
    expect(here!.isComplete).toBe(false);
    await line.set({ does: "pass" });
    expect((await synchronize(other, client, JOB, { files: "fetch" })).filesFetched).toBe(1);
    expect(isSame(unwrap(await other.readBlob(file.blob)), bytes)).toBe(true);
  });

  test("that are held up by new readings go on in the next run", async () => {
    const store = openMemoryStore();
    for (let seed = 0; seed < 4; seed++) await photo(store, bytesOf(1000, seed));
    await send(store);
    let asked = 0;
    const isHeldUp = () => asked++ > 2;
    const catalogue = createBlobCatalogue(store, JOB);
    const first = await synchronize(store, office.client(anna), JOB, { isHeldUp, catalogue });
    expect(first).toMatchObject({ sent: 5, stoppedBy: undefined });
    expect(first.filesSent).toBeLessThan(4);
    const rest = await synchronize(store, office.client(anna), JOB, { catalogue });
    expect(first.filesSent + rest.filesSent).toBe(4);
  });

  test("are taken only if an entry names them, from who may write, and only with the right hash", async () => {
    const store = openMemoryStore();
    const file = await photo(store, bytesOf(1000, 1));
    await send(store);
    await synchronize(store, office.client(anna), JOB, { files: "none" });
    const reader = await office.member("rita", "reviewer");
    const put = (member: Member, path: string, body: Uint8Array<ArrayBuffer>) =>
      fetch(`${office.address}/api/1/jobs/${JOB}/chains/${path}`, {
        method: "PUT",
        headers: { authorization: `Bearer ${member.token}`, "content-type": "application/octet-stream" },
        body,
      });
    const place = `${file.device}/${file.sequence}/files/${file.blob}`;
    const code = async (answer: Promise<Response>) => {
      const { status } = await answer;
      return `${status} ${(await (await answer).json()).code}`;
    };
    const none = "f".repeat(64);
    expect(await code(put(anna, `${file.device}/2/files/${none}?size=9&offset=0`, bytesOf(9, 1)))).toBe(
      "404 sync.file-not-named",
    );
    expect(await code(put(anna, `${file.device}/1/files/${file.blob}?size=9&offset=0`, bytesOf(9, 1)))).toBe(
      "404 sync.file-not-named",
    );
    expect(await code(put(reader, `${place}?size=1000&offset=0`, bytesOf(1000, 1)))).toBe(
      "403 access.not-allowed",
    );
    expect(await code(put(anna, `${place}?size=1000&offset=0`, bytesOf(1000, 2)))).toBe(
      "422 store.blob-hash",
    );
    expect(await code(put(anna, `${place}?size=1000&offset=500`, bytesOf(500, 2)))).toBe(
      "409 store.blob-offset",
    );
    expect(await code(put(anna, `${place}?size=999999999999&offset=0`, bytesOf(5, 2)))).toBe(
      "413 sync.file-too-large",
    );
    expect(await code(put(anna, `${place}?size=900000&offset=0`, bytesOf(PIECE + 5000, 2)))).toBe(
      "413 server.body-too-large",
    );
    expect((await put(anna, `${place}?size=1000&offset=0`, bytesOf(1000, 1))).status).toBe(200);
    const got = await fetch(`${office.address}/api/1/jobs/${JOB}/chains/${place}`, {
      headers: { authorization: `Bearer ${reader.token}` },
    });
    expect(new Uint8Array(await got.arrayBuffer())).toEqual(bytesOf(1000, 1));
    expect(got.headers.get("content-disposition")).toBe(`attachment; filename="${file.blob}"`);
    expect(got.headers.get("x-content-type-options")).toBe("nosniff");
    expect(got.headers.get("content-type")).toBe("application/octet-stream");
    const stranger = await office.member("ben", "manager", "job-other");
    const refused = await fetch(`${office.address}/api/1/jobs/${JOB}/chains/${place}`, {
      headers: { authorization: `Bearer ${stranger.token}` },
    });
    expect(refused.status).toBe(404);
  });

  test("a photo whose file is not here is no fault", async () => {
    const body = { about: "job", blob: "a".repeat(64), bytes: 5, type: "image/png" };
    await pen.write("photo", body);
    const store = await storeWith(pen.entries);
    const outcome = await synchronize(store, office.client(anna), JOB, { files: "both" });
    expect(outcome).toMatchObject({ filesSent: 0, filesFetched: 0, findings: [], stoppedBy: undefined });
  });
});
