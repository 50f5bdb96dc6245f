import type { verdictWords } from "../../words/verdict/words.ts";

/** What a signature can mean, as it stands in the record. */
export const MEANINGS = ["checked by", "approved by", "accepted by"] as const;
export type Meaning = (typeof MEANINGS)[number];

export const meaningWord = {
  "checked by": "meaningChecked",
  "approved by": "meaningApproved",
  "accepted by": "meaningAccepted",
} as const satisfies Record<Meaning, keyof (typeof verdictWords)["en"]>;
