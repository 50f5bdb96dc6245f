import { mkdtempSync, rmSync } from "node:fs";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { openMemoryStore, type Store } from "#store";
import { createOfficeClient, type Fetch, type OfficeClient, type Timers } from "#sync";
import { makeToken } from "../../src/server/access/api-tokens.ts";
import { giveRole } from "../../src/server/access/members.ts";
import { type Person, RIGHTS } from "../../src/server/access/person.ts";
import type { JobRole } from "../../src/server/access/rights.ts";
import type { AppInstance } from "../../src/server/app-instance.ts";
import { createApp } from "../../src/server/create-app.ts";
import { openOffice } from "../../src/server/office/open-office.ts";
import type { Office } from "../../src/server/office.ts";
import type { ServerSettings } from "../../src/server/settings.ts";
import { JOB, unwrap } from "./records.ts";

export { folderSettings } from "./folder-settings.ts";

/** A person of a test office, and the token with which programs speak for that person. */
export interface Member {
  readonly person: Person;
  readonly token: string;
}

/** An office in shared mode, listening on a port of its own. */
export interface TestOffice {
  readonly address: string;
  readonly office: Office;
  /** makes an account; with a role in the usual job, or as an administrator */
  member(id: string, role?: JobRole | "admin", job?: string): Promise<Member>;
  client(member: Member, settings?: ClientSettings): OfficeClient;
  stop(): Promise<void>;
}

export interface ClientSettings {
  readonly address?: string;
  readonly fetch?: Fetch;
  readonly timers?: Timers;
  readonly silenceMs?: number;
}

/** A folder that is removed by the function that comes with it. */
export function temporaryFolder(name: string): { readonly folder: string; readonly remove: () => void } {
  const folder = mkdtempSync(join(tmpdir(), `toeline-${name}-`));
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

/**
 * Starts an office over a folder.
 *
 * @param change what is different in this test, such as the era after a restore.
 */
export async function startOffice(
  settings: ServerSettings,
  change: (office: Office) => Office = (office) => office,
): Promise<TestOffice> {
  const opened = unwrap(await openOffice(settings));
  const office = change(opened);
  const app: AppInstance = await createApp(office);
  await app.listen({ host: settings.host, port: settings.port });
  const { port } = app.server.address() as AddressInfo;
  const address = `http://127.0.0.1:${port}`;
  const book = { db: office.tables.db, settings, clock: office.clock };
  return {
    address,
    office,
    member: async (id, role, job = JOB) => {
      await addAccount(office, id, role === "admin");
      const person: Person = {
        id,
        name: id,
        by: "session",
        isAdmin: role === "admin",
        hasSecondFactor: true,
      };
      if (role !== undefined && role !== "admin") await giveRole(book, job, id, role);
      const { token } = await makeToken(book, person, { name: "test", scopes: RIGHTS, days: 1 });
      return { person, token };
    },
    client: ({ token }, { address: over, ...more } = {}) =>
      unwrap(createOfficeClient({ address: over ?? address, token, fetch, ...more })),
    stop: async () => {
      await app.close();
      await opened.close();
    },
  };
}

async function addAccount({ tables, clock }: Office, id: string, isAdmin: boolean): Promise<void> {
  await tables.db
    .insertInto("accounts")
    .values({
      id,
      login: id,
      name: id,
      password: "nobody signs in with it",
      is_admin: isAdmin ? 1 : 0,
      disabled: 0,
      created_at: clock().getTime(),
      totp_secret: null,
      totp_step: 0,
    })
    .onConflict((conflict) => conflict.column("id").doNothing())
    .execute();
}

/** A device's store with entries in it. */
export async function storeWith(entries: Iterable<Parameters<Store["append"]>[1][number]>): Promise<Store> {
  const store = openMemoryStore();
  const all = [...entries];
  if (all.length > 0) unwrap(await store.append(all[0]!.job, all, "2026-03-02T09:00:00.000Z"));
  return store;
}
