import { sha256Hex, utf8 } from "../crypto/hash.ts";

/** One hash for a set of entries: SHA-256 over their ids in order, a line each. Equal sets, equal digests. */
export const setDigest = (ids: Iterable<string>): Promise<string> =>
  sha256Hex(utf8([...new Set(ids)].sort().join("\n")));
