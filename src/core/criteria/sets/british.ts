import type { CriteriaSetEntry, CriteriaSetRule } from "./criteria-set.ts";

const SPERWALL = "ICE Specification for Piling and Embedded Retaining Walls";

const wallPlan = (limitM: number): CriteriaSetRule => ({
  id: "plan",
  kind: "plan-position",
  numbers: { limit_m: limitM, growth_m_per_m: 0.0133 },
  clause: "Table B1.4, as corrected by the published errata",
  status: "quoted",
});
const wallLean: CriteriaSetRule = {
  id: "lean",
  kind: "verticality",
  numbers: { one_in: 75 },
  clause: "Table B1.4, as corrected by the published errata",
  status: "quoted",
};
const WALL_NOTES = [
  "1 in 75 is meant for the exposed face; here it is asked of the whole length in any direction, which is stricter.",
];

const contiguous = (growth: number): readonly CriteriaSetRule[] => [
  {
    id: "plan",
    kind: "plan-position",
    numbers: { limit_m: 0.05, growth_m_per_m: growth },
    clause: "15.8.2",
    status: "quoted",
  },
  { id: "lean", kind: "verticality", numbers: { one_in: 75 }, clause: "15.8.2", status: "quoted" },
];
const CONTIGUOUS_NOTES = [
  "Depth counts from the commencing surface: give the top of the guide wall there, where there is one.",
  "1 in 75 is meant for the exposed face. 100 mm more for protrusions is about concrete, not about the axis.",
];

/** British specifications. */
export const britishSets: readonly CriteriaSetEntry[] = [
  {
    id: "ice-sperwall-2-bearing-piles",
    document: SPERWALL,
    edition: "2nd edition",
    kinds: ["bored-pile", "barrette", "micropile"],
    text: { en: "Bearing piles, plumb and raked", de: "Gründungspfähle, lotrecht und geneigt" },
    rules: [
      {
        id: "plan",
        kind: "plan-position",
        tables: {
          steps: [
            { up_to_rake_ratio: 0, limit_m: 0.075, growth_m_per_m: 1 / 75 },
            { up_to_rake_ratio: 1 / 6, limit_m: 0.075, growth_m_per_m: 1 / 25 },
            { limit_m: 0.075, growth_m_per_m: 1 / 15 },
          ],
        },
        clause: "Table B1.4, as corrected by the published errata",
        status: "quoted",
      },
      {
        id: "lean",
        kind: "verticality",
        words: { to: "every-level" },
        tables: {
          steps: [
            { up_to_rake_ratio: 0, one_in: 75 },
            { up_to_rake_ratio: 1 / 6, one_in: 25 },
            { one_in: 15 },
          ],
        },
        clause: "Table B1.4, as corrected by the published errata",
        status: "quoted",
      },
    ],
    notes: [
      "Below the commencing surface the position may be off by 75 mm and what the lean adds; the lean of the element's own rake was taken for that.",
      "A rake of exactly 1 in 6 is not in the table; the stricter row is taken.",
      "The first print runs were wrong: record the print run.",
    ],
  },
  {
    id: "ice-sperwall-2-raked-piles",
    document: SPERWALL,
    edition: "2nd edition",
    kinds: ["bored-pile", "micropile"],
    text: { en: "Raked piles: rake by itself", de: "Geneigte Pfähle: Neigung für sich" },
    rules: [
      {
        id: "rake",
        kind: "rake",
        tables: {
          steps: [{ up_to_rake_ratio: 1 / 6, one_in: 25 }, { one_in: 15 }],
        },
        clause: "Table B1.4, as corrected by the published errata",
        status: "quoted",
      },
    ],
    notes: [
      "Looks at the rake alone. The set for bearing piles holds the whole direction against the same limits.",
    ],
  },
  {
    id: "ice-sperwall-2-wall-no-guide-wall",
    document: SPERWALL,
    edition: "2nd edition",
    kinds: ["bored-pile", "panel"],
    text: { en: "Wall elements without guide wall", de: "Wandelemente ohne Leitwand" },
    rules: [wallPlan(0.075), wallLean],
    notes: WALL_NOTES,
  },
  {
    id: "ice-sperwall-2-wall-guide-wall",
    document: SPERWALL,
    edition: "2nd edition",
    kinds: ["bored-pile", "panel"],
    text: { en: "Wall elements with guide wall", de: "Wandelemente mit Leitwand" },
    rules: [wallPlan(0.025), wallLean],
    notes: WALL_NOTES,
  },
  {
    id: "ice-sperwall-1996-contiguous-wall",
    document: SPERWALL,
    edition: "1st edition, 1996",
    kinds: ["bored-pile"],
    text: { en: "Contiguous bored pile walls", de: "Aufgelöste Bohrpfahlwände" },
    rules: contiguous(0.01),
    notes: CONTIGUOUS_NOTES,
  },
  {
    id: "ice-sperwall-1996-contiguous-wall-auger",
    document: SPERWALL,
    edition: "1st edition, 1996",
    kinds: ["bored-pile"],
    text: {
      en: "Contiguous walls of continuous-flight-auger piles",
      de: "Aufgelöste Wände aus Schneckenbohrpfählen",
    },
    rules: contiguous(0.005),
    notes: CONTIGUOUS_NOTES,
  },
  {
    id: "bs-8004",
    document: "BS 8004 Foundations",
    edition: "edition not stated (an old one, as quoted in a textbook)",
    kinds: ["bored-pile"],
    text: { en: "Plumb driven or bored cast-in-place piles", de: "Lotrechte Ortbetonpfähle" },
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
        tables: { steps: [{ up_to_rake_ratio: 0, one_in: 75 }] },
        clause: "clause not stated",
        status: "quoted",
      },
    ],
    notes: [
      "Position at the level of the piling rig. Rakers are not judged: the quotation breaks off before their limits.",
    ],
  },
];
