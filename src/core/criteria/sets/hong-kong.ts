import type { CriteriaSetEntry } from "./criteria-set.ts";

const DOCUMENT = "Hong Kong General Specification for Civil Engineering Works, section 8";

/** Hong Kong. */
export const hongKongSets: readonly CriteriaSetEntry[] = [
  {
    id: "hk-gs-piles",
    document: DOCUMENT,
    edition: "edition not stated",
    kinds: ["bored-pile"],
    text: { en: "Piles", de: "Pfähle" },
    rules: [
      {
        id: "plan",
        kind: "plan-position",
        numbers: { limit_m: 0.075 },
        clause: "clause not stated",
        status: "memory",
      },
      {
        id: "lean",
        kind: "verticality",
        tables: {
          steps: [{ up_to_rake_ratio: 0, one_in: 75 }, { one_in: 25 }],
        },
        clause: "clause not stated",
        status: "memory",
      },
    ],
    notes: ["The table was cut off where the text was seen; the level is taken as the cut-off level."],
  },
  {
    id: "hk-gs-hand-dug-caissons",
    document: DOCUMENT,
    edition: "edition not stated",
    kinds: ["bored-pile"],
    text: { en: "Straightness of hand-dug caissons", de: "Geradheit handgegrabener Senkschächte" },
    rules: [
      {
        id: "straightness",
        kind: "plan-position",
        numbers: { limit_m: 0.05 },
        words: { at: "every-level", from: "own-line" },
        clause: "clause not stated",
        status: "quoted",
      },
    ],
    notes: [
      "The centre of each section against the centre-line of the whole shaft, taken as the straight line between its ends.",
    ],
  },
];
