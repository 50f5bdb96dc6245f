import { scryptSync } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Book } from "../../src/server/access/book.ts";
import { giveRole } from "../../src/server/access/members.ts";
import type { JobRole } from "../../src/server/access/rights.ts";
import { beginSession } from "../../src/server/access/sessions.ts";
import type { AppInstance } from "../../src/server/app-instance.ts";
import { createApp } from "../../src/server/create-app.ts";
import { openOffice } from "../../src/server/office/open-office.ts";
import type { Office } from "../../src/server/office.ts";
import type { ServerSettings } from "../../src/server/settings.ts";
import { unwrap } from "./records.ts";
import { settingsFor } from "./served.ts";

export const PUBLIC_ADDRESS = "https://office.example";
export const SESSION_COOKIE = "__Host-toeline-session";
export const BROWSER_COOKIE = "__Host-toeline-browser";
export const PASSWORD = "four words on paper";

/** Hashed cheaply, so that a thousand guesses take seconds; how it was hashed stands in the text. */
const CHEAP_HASH = (() => {
  const salt = Buffer.from("only for tests!!");
  const hash = scryptSync(PASSWORD, salt, 32, { N: 16, r: 8, p: 1 });
  const text = (bytes: Buffer) => bytes.toString("base64").replaceAll("=", "");
  return `$scrypt$ln=4,r=8,p=1$${text(salt)}$${text(hash)}`;
})();

export interface Asking {
  readonly body?: unknown;
  /** session cookie's value */
  readonly session?: string | undefined;
  readonly browser?: string | undefined;
  readonly token?: string;
  readonly address?: string;
  readonly headers?: Readonly<Record<string, string>>;
}

export interface Answered {
  readonly status: number;
  readonly body: Record<string, unknown>;
  readonly text: string;
  readonly headers: Readonly<Record<string, unknown>>;
  /** value of a cookie that was set; "" if it was cleared */
  readonly cookie: (name: string) => string | undefined;
}

/** An office in shared mode whose clock the test moves. */
export interface PeopledOffice {
  readonly app: AppInstance;
  readonly office: Office;
  readonly book: Book;
  ask(method: "GET" | "POST" | "PUT" | "PATCH" | "DELETE", url: string, asking?: Asking): Promise<Answered>;
  /** moves the clock on, milliseconds */
  wait(ms: number): void;
  addAccount(id: string, change?: { readonly isAdmin?: boolean }): Promise<void>;
  /** an account with a role in a job, signed in; gives the session's secret */
  signedIn(
    id: string,
    role?: JobRole | "admin",
    job?: string,
    factor?: "second-factor" | "password-only",
  ): Promise<string>;
  close(): Promise<void>;
}

export async function openPeopledOffice(change: Partial<ServerSettings> = {}): Promise<PeopledOffice> {
  const folder = mkdtempSync(join(tmpdir(), "toeline-people-"));
  let now = Date.parse("2026-03-02T09:00:00Z");
  const settings = settingsFor(folder, {
    mode: "shared",
    publicAddress: PUBLIC_ADDRESS,
    logLevel: "silent",
    ...change,
  });
  const office = unwrap(await openOffice(settings, () => new Date(now)));
  const app = await createApp(office);
  const book: Book = { db: office.tables.db, settings, clock: office.clock };
  const addAccount: PeopledOffice["addAccount"] = async (id, { isAdmin = false } = {}) => {
    await book.db
      .insertInto("accounts")
      .values({
        id,
        login: `${id}@office.example`,
        name: `Person ${id}`,
        password: CHEAP_HASH,
        is_admin: isAdmin ? 1 : 0,
        disabled: 0,
        created_at: now,
        totp_secret: null,
        totp_step: 0,
      })
      .execute();
  };
  return {
    app,
    office,
    book,
    addAccount,
    wait: (ms) => {
      now += ms;
    },
    ask: async (method, url, { body, session, browser, token, address = "192.0.2.1", headers = {} } = {}) => {
      const cookies = [
        ...(session === undefined ? [] : [`${SESSION_COOKIE}=${session}`]),
        ...(browser === undefined ? [] : [`${BROWSER_COOKIE}=${browser}`]),
      ];
      const answer = await app.inject({
        method,
        url,
        remoteAddress: address,
        headers: {
          host: "office.example",
          ...(cookies.length > 0 && { cookie: cookies.join("; ") }),
          ...(token !== undefined && { authorization: `Bearer ${token}` }),
          ...(body !== undefined && { "content-type": "application/json" }),
          ...headers,
        },
        ...(body !== undefined && { payload: typeof body === "string" ? body : JSON.stringify(body) }),
      });
      const isJson = /json/.test(String(answer.headers["content-type"]));
      return {
        status: answer.statusCode,
        text: answer.body,
        body: isJson && answer.body !== "" ? JSON.parse(answer.body) : {},
        headers: answer.headers,
        cookie: (name) => answer.cookies.find((one) => one.name === name)?.value,
      };
    },
    signedIn: async (id, role, job = "job-1", factor = "second-factor") => {
      await addAccount(id, { isAdmin: role === "admin" });
      if (role !== undefined && role !== "admin") await giveRole(book, job, id, role);
      return beginSession(book, id, { address: "192.0.2.1", program: "test" }, factor);
    },
    close: async () => {
      await app.close();
      await office.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
