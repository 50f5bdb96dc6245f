import type { CriteriaSetEntry, CriteriaSetRule } from "./criteria-set.ts";

const lean: CriteriaSetRule = {
  id: "lean",
  kind: "verticality",
  tables: {
    steps: [{ up_to_rake_ratio: 0, percent: 1.5 }, { percent: 4 }],
  },
  clause: "clause not stated",
  status: "quoted",
};

/** Indian standards and bridge practice. */
export const indianSets: readonly CriteriaSetEntry[] = [
  {
    id: "is-2911",
    document: "IS 2911 Design and construction of pile foundations",
    edition: "edition not stated",
    kinds: ["bored-pile"],
    text: { en: "Cast-in-situ piles in groups", de: "Ortbetonpfähle in Gruppen" },
    rules: [
      {
        id: "plan",
        kind: "plan-position",
        words: { at: "head" },
        tables: {
          steps: [
            { up_to_diameter_m: 0.6, per_diameter: 1 / 6, at_most_m: 0.075 },
            { per_diameter: 1 / 10, at_least_m: 0.075 },
          ],
        },
        clause: "clause not stated",
        status: "quoted",
      },
      lean,
    ],
    notes: [
      "Position at the working level of the piling rig. Up to 600 mm the smaller of 75 mm and D/6, above it the larger of 75 mm and D/10.",
    ],
  },
  {
    id: "is-2911-single-pile",
    document: "IS 2911 Design and construction of pile foundations",
    edition: "edition not stated",
    kinds: ["bored-pile"],
    text: {
      en: "A single cast-in-situ pile under a column",
      de: "Einzelner Ortbetonpfahl unter einer Stütze",
    },
    rules: [
      {
        id: "plan",
        kind: "plan-position",
        words: { at: "head" },
        tables: {
          steps: [{ up_to_diameter_m: 0.6, per_diameter: 1 / 6, at_most_m: 0.05 }, { limit_m: 0.1 }],
        },
        clause: "clause not stated",
        status: "quoted",
      },
      lean,
    ],
    notes: ["Where cap and ties cannot take the eccentricity, the text asks for replacing or adding piles."],
  },
  {
    id: "morth-bridge-piles",
    document: "MORTH Specifications for Road and Bridge Works",
    edition: "edition not stated",
    kinds: ["bored-pile"],
    text: { en: "Bridge piles", de: "Brückenpfähle" },
    rules: [
      {
        id: "plan",
        kind: "plan-position",
        numbers: { limit_m: 0.075 },
        words: { at: "head" },
        clause: "clause not stated",
        status: "quoted",
      },
      {
        id: "lean",
        kind: "verticality",
        tables: { steps: [{ up_to_rake_ratio: 0, one_in: 150 }] },
        clause: "clause not stated",
        status: "quoted",
      },
    ],
    notes: [
      "75 mm and 1 in 150 stand in two different quotations of Indian bridge practice. Rakers are not judged.",
    ],
  },
];
