import { Dexie } from "dexie";
import { IDBFactory, IDBKeyRange } from "fake-indexeddb";
import { describe, expect, test } from "vitest";
import { storeSuite } from "../../../test/acceptance/store-suite.ts";
import { JOB, Pen, unwrap } from "../../../test/support/records.ts";
import { openBrowserStore } from "./open-browser-store.ts";

const AT = "2026-03-02T09:00:00.000Z";

let place = { indexedDB: new IDBFactory(), IDBKeyRange };
const inNewBrowser = () => {
  place = { indexedDB: new IDBFactory(), IDBKeyRange };
  return place;
};

/** Does what a version far ahead of this one would have done to the number of the database. */
const raiseVersion = (version: number) =>
  new Promise<void>((resolve, reject) => {
    const request = place.indexedDB.open("test", version);
    request.onerror = () => reject(request.error ?? new Error("not opened"));
    request.onsuccess = () => {
      request.result.close();
      resolve();
    };
  });

storeSuite("the store in a browser", {
  create: async () => unwrap(await openBrowserStore("test", inNewBrowser())),
  reopen: async () => unwrap(await openBrowserStore("test", place)),
});

describe("a browser's database", () => {
  test("is asked to tell a commit only when it is on the disk", async () => {
    const asked: (string | undefined)[] = [];
    const { indexedDB } = inNewBrowser();
    const probe = await new Promise<IDBDatabase>((resolve) => {
      const request = indexedDB.open("probe");
      request.onsuccess = () => resolve(request.result);
    });
    const prototype = Object.getPrototypeOf(probe) as IDBDatabase;
    const before = prototype.transaction;
    prototype.transaction = function (this: IDBDatabase, names, mode, options) {
      if (mode === "readwrite") asked.push(options?.durability);
      return before.call(this, names, mode, options);
    };
    const store = unwrap(await openBrowserStore("test", place));
    const pen = await Pen.start(1);
    const appended = await store.append(JOB, pen.entries, AT);
    prototype.transaction = before;
    expect(unwrap(appended).added).toBe(1);
    expect(asked.length).toBeGreaterThan(0);
    expect(new Set(asked)).toEqual(new Set(["strict"]));
    probe.close();
    await store.close();
  });

  test("of the version before, with its entries, is taken over", async () => {
    const pen = await Pen.start(1);
    const [entry] = pen.entries;
    inNewBrowser();
    const first = new Dexie("test", place);
    first.version(1).stores({
      entries: "id, &[job+arrival], [job+device+sequence+id]",
      acknowledgements: "[office+entry], [office+job]",
      keptAside: "[job+key]",
    });
    const { id, device, sequence } = entry!;
    const row = { id, device, sequence, job: JOB, arrival: 1, receivedAt: AT, text: JSON.stringify(entry) };
    await first.table("entries").add(row);
    first.close();
    const store = unwrap(await openBrowserStore("test", place));
    expect(unwrap(await store.readJob(JOB))).toEqual([entry]);
    expect(unwrap(await store.blob("0".repeat(64)))).toBeUndefined();
    await store.close();
  });

  test("of a newer version of the program is left alone", async () => {
    inNewBrowser();
    await unwrap(await openBrowserStore("test", place)).close();
    await raiseVersion(990);
    const opened = await openBrowserStore("test", place);
    expect(opened.ok ? "opened" : opened.error.code).toBe("store.newer");
  });
});
