import type { CreateTableBuilder, Kysely } from "kysely";
import type { Engine } from "#store";
import type { OfficeTables } from "./office-tables.ts";

type Column = "text" | "integer" | "text?" | "integer?";

/** Adds columns in their order; "?" marks those that may be null. */
function withColumns(
  table: CreateTableBuilder<string, string>,
  engine: Engine,
  columns: Readonly<Record<string, Column>>,
): CreateTableBuilder<string, string> {
  return Object.entries(columns).reduce(
    (built, [name, type]) =>
      built.addColumn(name, type.startsWith("text") ? "text" : engine.integer, (column) =>
        type.endsWith("?") ? column : column.notNull(),
      ),
    table,
  );
}

/** Tables and their columns; the first names given are the key. */
const TABLES: readonly (readonly [string, readonly string[], Readonly<Record<string, Column>>])[] = [
  [
    "accounts",
    ["id"],
    {
      id: "text",
      login: "text",
      name: "text",
      password: "text",
      is_admin: "integer",
      disabled: "integer",
      created_at: "integer",
      totp_secret: "text?",
      totp_step: "integer",
    },
  ],
  [
    "sessions",
    ["hash"],
    {
      hash: "text",
      id: "text",
      account: "text",
      pending: "integer",
      second_factor_at: "integer?",
      created_at: "integer",
      seen_at: "integer",
      address: "text",
      program: "text",
    },
  ],
  ["known_browsers", ["hash"], { hash: "text", account: "text", seen_at: "integer" }],
  [
    "one_time_links",
    ["hash"],
    {
      hash: "text",
      id: "text",
      purpose: "text",
      account: "text?",
      job: "text?",
      role: "text?",
      created_by: "text",
      created_at: "integer",
      expires_at: "integer",
      failures: "integer",
    },
  ],
  [
    "api_tokens",
    ["hash"],
    {
      hash: "text",
      id: "text",
      account: "text",
      name: "text",
      scopes: "text",
      second_factor: "integer",
      created_at: "integer",
      expires_at: "integer",
      used_at: "integer?",
    },
  ],
  ["job_members", ["job", "account"], { job: "text", account: "text", role: "text", since: "integer" }],
  [
    "passkeys",
    ["id"],
    {
      id: "text",
      account: "text",
      name: "text",
      public_key: "text",
      counter: "integer",
      transports: "text",
      created_at: "integer",
      used_at: "integer?",
    },
  ],
  [
    "challenges",
    ["id"],
    { id: "text", purpose: "text", account: "text?", challenge: "text", expires_at: "integer" },
  ],
  ["recovery_codes", ["account", "hash"], { account: "text", hash: "text" }],
  ["tries", ["key"], { key: "text", until: "integer" }],
  ["account_devices", ["device"], { device: "text", account: "text", since: "integer", revoked: "integer" }],
  [
    "security_events",
    ["number"],
    {
      number: "integer",
      at: "text",
      what: "text",
      who: "text",
      address: "text",
      details: "text",
      hash: "text",
    },
  ],
  ["security_head", ["id"], { id: "integer", number: "integer", hash: "text" }],
];

const INDEXES = [
  ["accounts_login", "accounts", "login", true],
  ["sessions_account", "sessions", "account", false],
  ["known_browsers_account", "known_browsers", "account", false],
  ["api_tokens_account", "api_tokens", "account", false],
  ["job_members_account", "job_members", "account", false],
  ["passkeys_account", "passkeys", "account", false],
  ["account_devices_account", "account_devices", "account", false],
] as const;

/** First step: accounts, and all that belongs to signing in. */
export async function createAccountTables(db: Kysely<OfficeTables>, engine: Engine): Promise<void> {
  for (const [name, key, columns] of TABLES) {
    const table = withColumns(db.schema.createTable(name), engine, columns);
    await engine.strict(table.addPrimaryKeyConstraint(`${name}_key`, [...key])).execute();
  }
  for (const [name, table, column, isUnique] of INDEXES) {
    const index = db.schema.createIndex(name).on(table).column(column);
    await (isUnique ? index.unique() : index).execute();
  }
}
