/** Names inside a bag, relative to its folder. */
export const DECLARATION = "bagit.txt";
export const BAG_INFO = "bag-info.txt";
export const README = "README.txt";
export const MANIFEST = "manifest-sha256.txt";
export const TAG_MANIFEST = "tagmanifest-sha256.txt";

export const PAYLOAD = "data/";
export const ENTRIES = "data/entries.jsonl";
export const IDS = "data/ids.txt";
export const HEADS = "data/heads.jsonl";
export const KEYS = "data/keys.json";
export const SEALS = "data/seals.jsonl";
export const BLOBS = "data/blobs/";

/** Files that every bag has; whatever else lies in it must be a blob. */
export const FIXED_FILES: readonly string[] = [
  DECLARATION,
  BAG_INFO,
  README,
  MANIFEST,
  TAG_MANIFEST,
  ENTRIES,
  IDS,
  HEADS,
  KEYS,
  SEALS,
];

/** The files of a bag by name. */
export type BagFiles = ReadonlyMap<string, Uint8Array<ArrayBuffer>>;
