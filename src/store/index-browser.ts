// The door of the layer for browsers, behind the condition "browser" in package.json. No database of a server may be reached
// from here.

export { MAX_BLOB_PART_BYTES } from "./blob-part.ts";
export { openBrowserStore } from "./browser/open-browser-store.ts";
export { openMemoryStore } from "./memory/memory-store.ts";
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
