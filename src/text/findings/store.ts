import type { Sentences } from "./sentences.ts";

export const storeSentences: Sentences = {
  "store.full":
    "There is no room left to write ({found}). Nothing of this was kept: free some space and try again.",
  "store.busy":
    "Another program is writing to the same store ({found}). Nothing of this was kept: try again.",
  "store.damaged":
    "The store is damaged and cannot be read ({found}). Do not write to it; keep a copy of it, and restore the latest back-up.",
  "store.unreachable":
    "The store cannot be reached ({found}). Nothing of this was kept: check that it is there and may be used, then try again.",
  "store.closed": "The store was closed. Open it again.",
  "store.failed": "The store could not do what was asked ({found}). Nothing of this was kept: try again.",
  "store.newer":
    "A newer version of the program has worked with this store (state {found}; this version knows {expected}). Update the program.",
  "store.entry-damaged":
    "An entry in the store cannot be read any more: {found}. Keep a copy of the store, and restore the latest back-up.",
  "store.id-taken":
    "The entry {entry} is here already with another content. The one that is here stays; the other was kept aside.",
  "store.blob-name": "A file is named by its SHA-256, 64 lower-case hexadecimal digits; found {found}.",
  "store.blob-part":
    "A part of {found} bytes from byte {from} on does not fit: parts have 1 to {expected} bytes and lie within the file's {size}.",
  "store.blob-size": "The file {hash} is said to have {found} bytes, which cannot be. Send it anew.",
  "store.blob-size-changed":
    "The file {hash} is said to have {found} bytes; when its first part came it was said to have {expected}.",
  "store.blob-offset":
    "The next part of the file {hash} must begin at byte {expected}, not at {found}. Go on from there.",
  "store.blob-differs":
    "The part of the file {hash} from byte {from} on is here already with other bytes. What is here stays.",
  "store.blob-hash":
    "The file came whole but is not {hash}: its SHA-256 is {found}. It was changed on the way; send it again.",
};
