import type { CriteriaSetEntry, CriteriaSetRule } from "./criteria-set.ts";

const ACI_117 = "ACI 117M Specification for tolerances for concrete construction";
const ACI_117_CLAUSE = "foundations (clause not stated)";
const INCH_M = 0.0254;
const FOOT_M = 0.3048;

function aashtoSet(ground: string, text: CriteriaSetEntry["text"], percent: number): CriteriaSetEntry {
  const clause = "section 5 (clause not stated)";
  return {
    id: `aashto-drilled-shafts-${ground}`,
    document: "AASHTO LRFD Bridge Construction Specifications; FHWA drilled-shaft guide specification",
    edition: "edition not stated",
    kinds: ["bored-pile"],
    text,
    rules: [
      {
        id: "plan",
        kind: "plan-position",
        tables: {
          steps: [
            { up_to_diameter_m: 2 * FOOT_M, limit_m: 3 * INCH_M },
            { up_to_diameter_m: 5 * FOOT_M, limit_m: 4 * INCH_M },
            { limit_m: 6 * INCH_M },
          ],
        },
        clause,
        status: "memory",
      },
      { id: "lean", kind: "verticality", numbers: { percent }, clause, status: "memory" },
    ],
    notes: [
      "Position at the top of the shaft, taken as the cut-off level. A diameter of exactly 5 ft belongs to 6 in; here the stricter 4 in is taken.",
    ],
  };
}

const aci117Set = (id: string, text: CriteriaSetEntry["text"], rule: CriteriaSetRule): CriteriaSetEntry => ({
  id: `aci-117m-${id}`,
  document: ACI_117,
  edition: "2010",
  kinds: ["bored-pile"],
  text,
  rules: [rule],
  notes: ["Vertical alignment only."],
});

/** American specifications. */
export const americanSets: readonly CriteriaSetEntry[] = [
  aci117Set(
    "unreinforced",
    { en: "Unreinforced piers without lateral restraint", de: "Unbewehrte Pfeiler ohne seitlichen Halt" },
    {
      id: "drift",
      kind: "plan-position",
      numbers: { limit_per_diameter: 0.125 },
      words: { at: "toe", from: "as-built-top" },
      clause: ACI_117_CLAUSE,
      status: "quoted",
    },
  ),
  aci117Set(
    "unreinforced-restrained",
    { en: "Unreinforced piers with lateral restraint", de: "Unbewehrte Pfeiler mit seitlichem Halt" },
    { id: "lean", kind: "verticality", numbers: { percent: 1.5 }, clause: ACI_117_CLAUSE, status: "quoted" },
  ),
  aci117Set(
    "reinforced",
    { en: "Reinforced piers", de: "Bewehrte Pfeiler" },
    { id: "lean", kind: "verticality", numbers: { percent: 2 }, clause: ACI_117_CLAUSE, status: "quoted" },
  ),
  {
    id: "aci-336-1",
    document: "ACI 336.1 Specification for the construction of drilled piers",
    edition: "edition not stated",
    kinds: ["bored-pile"],
    text: { en: "Drilled piers", de: "Gebohrte Pfeiler" },
    rules: [
      {
        id: "plan",
        kind: "plan-position",
        numbers: { limit_m: 3 * INCH_M, limit_per_diameter: 1 / 24 },
        words: { combine: "min" },
        clause: "clause not stated",
        status: "memory",
      },
      {
        id: "lean",
        kind: "verticality",
        numbers: { percent: 1.5 },
        clause: "clause not stated",
        status: "memory",
      },
    ],
    notes: ["Position at the top, taken as the cut-off level. An edition of 2024 exists."],
  },
  aashtoSet("soil", { en: "Drilled shafts in soil", de: "Bohrpfähle im Boden" }, 1.5),
  aashtoSet("rock", { en: "Drilled shafts in rock", de: "Bohrpfähle im Fels" }, 2),
  {
    id: "everett-drilled-shafts",
    document: "City of Everett (Washington), special provision for drilled shafts",
    edition: "edition not stated",
    kinds: ["bored-pile"],
    text: { en: "Drilled shafts", de: "Bohrpfähle" },
    rules: [
      {
        id: "plan",
        kind: "plan-position",
        numbers: { limit_m: 3 * INCH_M },
        clause: "clause not stated",
        status: "quoted",
      },
      {
        id: "lean",
        kind: "verticality",
        numbers: { one_in: 48 },
        clause: "clause not stated",
        status: "quoted",
      },
    ],
    notes: [
      "Position at the plan elevation of the top, taken as the cut-off level. 1 in 48 is 1/4 in per foot.",
    ],
  },
];
