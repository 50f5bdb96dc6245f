import type { Row } from "../steps.ts";
import type { CriteriaSetEntry, CriteriaSetRule } from "./criteria-set.ts";

const JGJ_TABLE = "table of bored-pile deviations (p. 78)";
const EDGE = {
  id: "edge",
  en: "1 to 3 piles, across a strip, edge of a group",
  de: "1 bis 3 Pfähle, quer zum Streifen, Gruppenrand",
};
const MIDDLE = {
  id: "middle",
  en: "along a strip, middle of a group",
  de: "längs des Streifens, Gruppenmitte",
};

type Limits = Pick<CriteriaSetRule, "numbers" | "tables">;
const inSteps = (...steps: Row[]): Limits => ({ tables: { steps } });

function jgjSet(
  method: { readonly id: string; readonly en: string; readonly de: string },
  place: typeof EDGE,
  limits: Limits,
  percent: number,
): CriteriaSetEntry {
  return {
    id: `jgj-94-${method.id}-${place.id}`,
    document: "JGJ 94 Technical code for building pile foundations",
    edition: "2008",
    kinds: ["bored-pile"],
    text: { en: `${method.en}: ${place.en}`, de: `${method.de}: ${place.de}` },
    rules: [
      { id: "plan", kind: "plan-position", ...limits, clause: JGJ_TABLE, status: "quoted" },
      { id: "lean", kind: "verticality", numbers: { percent }, clause: JGJ_TABLE, status: "quoted" },
    ],
    notes: [
      "Position at the design level of the pile head, taken as the cut-off level; H is the depth of that level below the site.",
    ],
  };
}

const SLURRY = { id: "slurry", en: "Slurry-supported bored piles", de: "Flüssigkeitsgestützte Bohrpfähle" };
const CASING = { id: "casing", en: "Bored piles in driven casing", de: "Bohrpfähle in gerammtem Rohr" };
const DUG_CONCRETE = {
  id: "hand-dug-concrete",
  en: "Hand-dug, concrete lined",
  de: "Handschacht, Betonring",
};
const DUG_STEEL = { id: "hand-dug-steel", en: "Hand-dug, steel lined", de: "Handschacht, Stahlring" };
const constant = (limitM: number): Limits => ({ numbers: { limit_m: limitM } });
const slurrySteps = (perDiameter: number, limitM: number): Limits =>
  inSteps(
    { up_to_diameter_m: 1, per_diameter: perDiameter, at_most_m: limitM },
    { limit_m: limitM, growth_m_per_m: 0.01 },
  );
const casingSteps = (smallM: number, largeM: number): Limits =>
  inSteps({ up_to_diameter_m: 0.5, limit_m: smallM }, { limit_m: largeM });

const SHAFT_STANDARD =
  "Chinese acceptance standard for mine shafts (title not shown where it was seen, believed to be GB 50213)";
function freezeSet(ground: string, text: CriteriaSetEntry["text"], mmPerM: number): CriteriaSetEntry {
  return {
    id: `gb-freeze-holes-${ground}`,
    document: SHAFT_STANDARD,
    edition: "edition not stated",
    kinds: ["freeze-hole"],
    text,
    rules: [
      {
        id: "lean",
        kind: "verticality",
        numbers: { mm_per_m: mmPerM },
        clause: "12.1.4",
        status: "quoted",
      },
    ],
    notes: [
      "The clause also limits the spacing of neighbours, at every level; a deviation within its limit alone is not acceptance.",
    ],
  };
}

/** Chinese standards. */
export const chineseSets: readonly CriteriaSetEntry[] = [
  jgjSet(SLURRY, EDGE, slurrySteps(1 / 6, 0.1), 1),
  jgjSet(SLURRY, MIDDLE, slurrySteps(1 / 4, 0.15), 1),
  jgjSet(CASING, EDGE, casingSteps(0.07, 0.1), 1),
  jgjSet(CASING, MIDDLE, casingSteps(0.15, 0.15), 1),
  jgjSet(DUG_CONCRETE, EDGE, constant(0.05), 0.5),
  jgjSet(DUG_CONCRETE, MIDDLE, constant(0.15), 0.5),
  jgjSet(DUG_STEEL, EDGE, constant(0.1), 1),
  jgjSet(DUG_STEEL, MIDDLE, constant(0.2), 1),
  freezeSet(
    "alluvium",
    { en: "Main freeze holes in alluvium", de: "Hauptgefrierbohrungen im Lockergestein" },
    3,
  ),
  freezeSet(
    "bedrock",
    { en: "Main freeze holes in weathered or water-bearing rock", de: "Hauptgefrierbohrungen im Fels" },
    5,
  ),
  {
    id: "gb-50108-grout-holes",
    document: "GB 50108 Technical code for waterproofing of underground works",
    edition: "2008",
    kinds: ["grout-hole"],
    text: { en: "Grout holes", de: "Injektionsbohrungen" },
    rules: [
      {
        id: "plan",
        kind: "plan-position",
        words: { at: "head" },
        tables: {
          steps: [{ up_to_length_m: 10, limit_m: 0.1 }, { limit_m: 0.05 }],
        },
        clause: "7.4.1",
        status: "quoted",
      },
      {
        id: "lean",
        kind: "verticality",
        tables: {
          steps: [{ up_to_length_m: 10, percent: 1 }, { percent: 0.5 }],
        },
        clause: "7.4.1",
        status: "quoted",
      },
    ],
    notes: ["Holes of exactly 10 m are in neither row of the clause; the row for shorter holes is taken."],
  },
];
