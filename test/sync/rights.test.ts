import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { createEntry, type Entry, entryKinds, type JsonObject, positionAfter, type Signer } from "#records";
import { synchronize } from "#sync";
import { kindsWithRight, rightOf } from "../../src/server/sync/right-of-kind.ts";
import { clockAt, JOB, signerOf, unwrap } from "../support/records.ts";
import {
  folderSettings,
  type Member,
  startOffice,
  storeWith,
  type TestOffice,
  temporaryFolder,
} from "../support/sync-office.ts";

test("every kind of entry there is has its right", () => {
  expect([...kindsWithRight].sort()).toEqual(entryKinds.map(({ id }) => id).sort());
  const seal = (about: string) => ({ kind: "sign-off", body: { seal: { statement: { about } } } });
  expect(rightOf(seal("run/P1-1"))).toBe("record");
  expect(rightOf(seal("report/R-1"))).toBe("sign");
  expect(rightOf({ kind: "sign-off", body: {} })).toBe("sign");
  expect(rightOf({ kind: "toString", body: {} })).toBeUndefined();
});

describe("who may send what", () => {
  let office: TestOffice;
  let folder: ReturnType<typeof temporaryFolder>;
  let ted: Member;
  let eva: Member;

  beforeEach(async () => {
    folder = temporaryFolder("rights");
    office = await startOffice(folderSettings(folder.folder));
    ted = await office.member("ted", "technician");
    eva = await office.member("eva", "engineer");
  });
  afterEach(async () => {
    await office.stop();
    folder.remove();
  });

  /** Entries of one device, each by the author and of the kind given. */
  async function write(signer: Signer, said: readonly (readonly [author: string, kind: string])[]) {
    const bodies: Readonly<Record<string, JsonObject>> = {
      device: { public_key: signer.publicKey, name: "Tablet" },
      note: { about: "job", text: "a remark" },
      element: { element: "P1", set: { group: "wall" } },
      decision: { about: "element/P1", question: "which-run-counts", answer: "P1-2", reason: "water" },
    };
    let position = {
      job: JOB,
      device: signer.publicKey,
      last: undefined,
      declared: {},
      held: {},
    } as Parameters<typeof createEntry>[0];
    const entries: Entry[] = [];
    for (const [author, kind] of [[said[0]![0], "device"] as const, ...said]) {
      const entry = unwrap(
        await createEntry(position, { author, kind, body: bodies[kind]! }, clockAt(entries.length), signer),
      );
      position = positionAfter(position, entry);
      entries.push(entry);
    }
    return entries;
  }
  const send = async (member: Member, entries: readonly Entry[]) => {
    const outcome = await synchronize(await storeWith(entries), office.client(member), JOB, {
      entries: "send",
    });
    expect(outcome.stoppedBy).toBeUndefined();
    return entries.map(({ id }) => outcome.refused.get(id) ?? "held");
  };
  const ask = async (member: Member, path: string, method = "GET") => {
    const headers = { authorization: `Bearer ${member.token}` };
    const answer = await fetch(`${office.address}/api/1/jobs/${JOB}${path}`, { method, headers });
    return { status: answer.status, body: await answer.json() };
  };
  const NOT = "sync.kind-not-allowed";

  test("a technician's readings are held, a decision is kept aside, and an engineer can take it", async () => {
    const signer = await signerOf(1);
    const entries = await write(signer, [
      ["ted", "note"],
      ["ted", "decision"],
      ["ted", "note"],
    ]);
    expect(await send(ted, entries)).toEqual(["held", "held", NOT, "held"]);
    const listed = await ask(ted, "/aside");
    expect(listed.body).toMatchObject({ more: false, aside: [{ code: NOT, state: "aside" }] });
    expect(JSON.parse(listed.body.aside[0].text)).toEqual(entries[2]);
    const take = `/aside/${listed.body.aside[0].key}/take`;
    expect(await ask(ted, take, "POST")).toMatchObject({ status: 403, body: { code: NOT } });
    expect(await ask(eva, take, "POST")).toMatchObject({ status: 200, body: { entry: entries[2]!.id } });
    expect((await ask(ted, "/aside")).body.aside).toMatchObject([{ state: "taken" }]);
    expect(await ask(eva, "/aside/nothing/take", "POST")).toMatchObject({ status: 404 });
    const { store } = office.office;
    expect(new Set(unwrap(await store.readIds(JOB)))).toEqual(new Set(entries.map(({ id }) => id)));
  });

  test("what its own person wrote on a device is taken, whoever is signed in when the line comes back", async () => {
    const signer = await signerOf(2);
    const first = await write(signer, [["eva", "element"]]);
    expect(await send(eva, first)).toEqual(["held", "held"]);
    const both = await write(signer, [
      ["eva", "element"],
      ["eva", "decision"],
      ["ted", "note"],
      ["ted", "decision"],
    ]);
    // the device is eva's: what she decided there stands; what ted decided does not
    expect(await send(ted, both)).toEqual(["held", "held", "held", "held", NOT]);
  });

  test("nobody gets another's rights by naming that person as author", async () => {
    const forged = await write(await signerOf(3), [
      ["eva", "note"],
      ["eva", "decision"],
    ]);
    expect(await send(ted, forged)).toEqual(["held", "held", NOT]);
    // eva may send them, and does not come to own the device by that
    expect(await send(eva, await write(await signerOf(4), [["ted", "decision"]]))).toEqual(["held", "held"]);
    expect(await office.office.access.personOfDevice((await signerOf(4)).publicKey)).toBeUndefined();
  });

  test("readings from a member's device are taken even from somebody who may not record", async () => {
    const signer = await signerOf(5);
    await send(ted, await write(signer, [["ted", "note"]]));
    const more = await write(signer, [
      ["ted", "note"],
      ["ted", "note"],
    ]);
    const rita = await office.member("rita", "reviewer");
    expect(await send(rita, more)).toEqual(["held", "held", "held"]);
    const unknown = await write(await signerOf(6), [["xaver", "note"]]);
    expect(await send(rita, unknown)).toEqual([NOT, NOT]);
  });

  test("a kind that this office does not know is kept aside, also from an administrator", async () => {
    const admin = await office.member("ada", "admin");
    const entries = await write(await signerOf(7), [["ada", "note"]]);
    const { store } = office.office;
    // sound by itself, of a kind of tomorrow: made as any other, with the registry's check left out
    const later = await entryOfUnknownKind(entries, await signerOf(7));
    expect(await send(admin, [...entries, later])).toEqual(["held", "held", "sync.kind-not-known"]);
    expect(unwrap(await store.readKeptAside(JOB))).toHaveLength(1);
  });
});

async function entryOfUnknownKind(entries: readonly Entry[], signer: Signer): Promise<Entry> {
  const { canonicalEntry, sha256Hex, utf8 } = await import("#records");
  const { id: previous, signature: _signature, ...content } = entries.at(-1)!;
  const next = { ...content, sequence: content.sequence + 1, previous, kind: "of-tomorrow" };
  const bytes = utf8(unwrap(canonicalEntry(next)));
  return { ...next, id: await sha256Hex(bytes), signature: await signer.sign(bytes) };
}
