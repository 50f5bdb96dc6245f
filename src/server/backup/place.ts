import { join } from "node:path";
import { STORE_FILE } from "../heavy-work/open-work-queue.ts";
import { KEY_FILE } from "../office/identity.ts";
import { OFFICE_FILE } from "../tables/open-office-tables.ts";

/** Where an office keeps its records: SQLite files and keys in a folder, or a PostgreSQL database. */
export type OfficePlace = { readonly dataFolder: string } | { readonly database: string };

export const filesIn = (folder: string) => ({
  store: join(folder, STORE_FILE),
  office: join(folder, OFFICE_FILE),
  key: join(folder, KEY_FILE),
});

export const nameOf = (place: OfficePlace): string =>
  "dataFolder" in place ? place.dataFolder : place.database.replace(/\/\/[^@/]*@/, "//");
