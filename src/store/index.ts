// The door of the layer for Node: what other layers may use, listed one by one. The browser's door is index-browser.ts.

export { attempt as attemptDatabase } from "./attempt.ts";
export { MAX_BLOB_PART_BYTES } from "./blob-part.ts";
export { keepBlobs } from "./keep-blobs.ts";
export { openMemoryStore } from "./memory/memory-store.ts";
export { type Notices, openNotices } from "./postgres/notices.ts";
export { openPostgresStore } from "./postgres/open-postgres-store.ts";
export type { Engine } from "./sql/engine.ts";
export { storeMigrations } from "./sql/migrations.ts";
export { connectTables, type OpenTables, openTables, type TablesPlace } from "./sql/open-tables.ts";
export { type Migration, type Migrations, runMigrations } from "./sql/run-migrations.ts";
export { openSqliteStore } from "./sqlite/open-sqlite-store.ts";
export type {
  Appended,
  BlobHeld,
  BlobPart,
  ChainHeld,
  KeptAside,
  Office,
  PageLimit,
  Store,
} from "./store.ts";
