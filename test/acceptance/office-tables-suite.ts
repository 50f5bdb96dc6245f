import { describe, expect, test } from "vitest";
import { officeMigrations } from "../../src/server/tables/migrations.ts";
import type { OfficeTables } from "../../src/server/tables/office-tables.ts";
import { type Migrations, openTables, type TablesPlace } from "../../src/store/index.ts";
import { unwrap } from "../support/records.ts";

/** What each step adds, in the order of the steps. */
const ADDED: readonly (readonly string[])[] = [
  [
    "account_devices",
    "accounts",
    "api_tokens",
    "challenges",
    "job_members",
    "known_browsers",
    "one_time_links",
    "passkeys",
    "recovery_codes",
    "security_events",
    "security_head",
    "sessions",
    "tries",
  ],
  ["work", "workers"],
  ["office_facts", "tree_heads"],
];
const ACCOUNT = {
  id: "a1",
  login: "anna",
  name: "Anna Muster",
  password: "$scrypt$",
  is_admin: 0,
  disabled: 0,
  created_at: 1_772_445_600_000,
  totp_secret: null,
  totp_step: 0,
};

/** The numbered steps of a server's tables, on every SQL engine. @param empty gives the place of an empty database. */
export function officeTablesSuite(name: string, empty: () => Promise<TablesPlace>): void {
  const upTo = (count: number): Migrations<OfficeTables> => ({
    ...officeMigrations,
    steps: officeMigrations.steps.slice(0, count),
  });

  describe(name, () => {
    test("the steps are numbered from 1 without gaps, and each is tested here", () => {
      expect(officeMigrations.steps.map(({ number }) => number)).toEqual(ADDED.map((_, i) => i + 1));
    });

    test.each(ADDED.map((_, i) => i + 1))(
      "step %i, from an empty database and from the one before",
      async (number) => {
        const place = await empty();
        for (const count of [number - 1, number, number]) {
          const { db } = unwrap(await openTables(place, upTo(count)));
          const tables = await db.introspection.getTables();
          expect(tables.map((table) => table.name).sort()).toEqual(
            ["office_migrations", ...ADDED.slice(0, count).flat()].sort(),
          );
          await db.destroy();
        }
      },
    );

    test("an account is kept by all later steps as it was", async () => {
      const place = await empty();
      const first = unwrap(await openTables(place, upTo(1)));
      await first.db.insertInto("accounts").values(ACCOUNT).execute();
      await first.db.destroy();
      const last = unwrap(await openTables(place, officeMigrations));
      expect(await last.db.selectFrom("accounts").selectAll().execute()).toEqual([ACCOUNT]);
      await last.db.destroy();
    });

    test("a database of a newer version is left alone", async () => {
      const place = await empty();
      const { db } = unwrap(await openTables(place, officeMigrations));
      await db.destroy();
      const refused = await openTables(place, upTo(0));
      expect(refused.ok ? "opened" : refused.error.code).toBe("store.newer");
    });
  });
}
