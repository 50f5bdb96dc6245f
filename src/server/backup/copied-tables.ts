/** A table that goes into a back-up, with the columns that name a row: rows are read in their order. */
export interface CopiedTable {
  readonly set: "store" | "office";
  readonly name: string;
  readonly key: readonly string[];
  /** rows read and written at once: few where rows are large */
  readonly page: number;
}

const table = (set: CopiedTable["set"], name: string, key: readonly string[], page = 500): CopiedTable => ({
  set,
  name,
  key,
  page,
});

/** Everything that is copied, in an order in which what a row refers to stands before it. */
export const COPIED: readonly CopiedTable[] = [
  table("store", "jobs", ["id"]),
  table("store", "entries", ["job", "arrival"]),
  table("store", "acknowledgements", ["office", "entry"]),
  table("store", "pulled", ["job", "office"]),
  table("store", "kept_aside", ["job", "key"], 100),
  table("store", "blobs", ["hash"]),
  table("store", "blob_parts", ["hash", "start"], 16),
  table("office", "accounts", ["id"]),
  table("office", "job_members", ["job", "account"]),
  table("office", "passkeys", ["id"]),
  table("office", "recovery_codes", ["account", "hash"]),
  table("office", "api_tokens", ["hash"]),
  table("office", "account_devices", ["device"]),
  table("office", "security_events", ["number"]),
  table("office", "security_head", ["id"]),
  table("office", "tree_heads", ["job", "size"]),
  table("office", "work", ["id"]),
];

/** What is not copied, with the reason. A table that stands in neither list makes a test fail. */
export const NOT_COPIED: Readonly<Record<string, string>> = {
  migrations: "the copy is made by the same steps",
  office_migrations: "the copy is made by the same steps",
  office_facts: "name and key of the office go along by themselves; its era must not come back",
  workers: "processes that are running",
  sessions: "a session that was ended since must not come back to life",
  known_browsers: "as sessions",
  one_time_links: "a link that was used since must not work again",
  challenges: "valid for minutes",
  tries: "valid for minutes",
};
