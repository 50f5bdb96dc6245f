import type { CriteriaSetEntry } from "./criteria-set.ts";

/** European execution standards. */
export const europeanSets: readonly CriteriaSetEntry[] = [
  {
    id: "en-1536",
    document: "EN 1536 Bored piles",
    edition: "2010+A1:2015",
    kinds: ["bored-pile", "barrette"],
    text: { en: "Bored piles and barrettes", de: "Bohrpfähle und Schlitzwandpfähle" },
    rules: [
      {
        id: "plan",
        kind: "plan-position",
        words: { at: "head" },
        tables: {
          steps: [
            { up_to_diameter_m: 1, limit_m: 0.1 },
            { up_to_diameter_m: 1.5, per_diameter: 0.1 },
            { up_to_diameter_m: 3, limit_m: 0.15 },
          ],
        },
        clause: "8.1 (7.2 in the edition of 1999)",
        status: "memory",
      },
      {
        id: "lean",
        kind: "verticality",
        tables: {
          steps: [
            { up_to_rake_ratio: 1 / 15, ratio: 0.02 },
            { up_to_rake_ratio: 1 / 4, ratio: 0.04 },
          ],
        },
        clause: "8.1 (7.2 in the edition of 1999)",
        status: "memory",
      },
    ],
    notes: [
      "Position at working level, taken as the commencing surface. The width counts for a rectangle.",
      "The scope (diameters 0.3 m to 3.0 m, rakes to 1 in 4) was seen quoted; the numbers are from memory.",
    ],
  },
  {
    id: "en-1538",
    document: "EN 1538 Diaphragm walls",
    edition: "2010+A1:2015",
    kinds: ["panel"],
    text: { en: "Wall panels", de: "Schlitzwandlamellen" },
    rules: [
      {
        id: "lean",
        kind: "verticality",
        numbers: { percent: 1 },
        words: { component: "each" },
        clause: "clause not stated",
        status: "memory",
      },
    ],
    notes: ["1 % in both directions, along and across the wall, each. The position is left to the contract."],
  },
  {
    id: "en-14199",
    document: "EN 14199 Micropiles",
    edition: "2005",
    kinds: ["micropile"],
    text: { en: "Micropiles", de: "Mikropfähle" },
    rules: [
      {
        id: "plan",
        kind: "plan-position",
        numbers: { limit_m: 0.05 },
        words: { at: "head" },
        clause: "Annex B (guidance)",
        status: "memory",
      },
      {
        id: "lean",
        kind: "verticality",
        tables: {
          steps: [
            { up_to_rake_ratio: 0, percent: 2 },
            { up_to_rake_ratio: 1 / 4, percent: 4 },
            { percent: 6 },
          ],
        },
        clause: "7.2.1 and Annex B (guidance)",
        status: "memory",
      },
      {
        id: "bend",
        kind: "curvature",
        numbers: { min_bend_radius_m: 200 },
        clause: "7.2.1 and Annex B (guidance)",
        status: "memory",
      },
    ],
    notes: [
      "Annex B of the edition of 2015 is about something else: the edition matters.",
      "The largest angle at a joint (1 in 150, from memory) is not judged.",
    ],
  },
  {
    id: "en-12716",
    document: "EN 12716 Jet grouting",
    edition: "2001",
    kinds: ["grout-hole"],
    text: { en: "Jet-grouting holes to 20 m", de: "Bohrungen für Düsenstrahlverfahren bis 20 m" },
    rules: [
      {
        id: "plan",
        kind: "plan-position",
        numbers: { limit_m: 0.05 },
        words: { at: "head" },
        clause: "8.4.3",
        status: "quoted",
      },
      {
        id: "lean",
        kind: "verticality",
        tables: { steps: [{ up_to_length_m: 20, percent: 2 }] },
        clause: "8.4.4",
        status: "quoted",
      },
    ],
    notes: ["Deeper holes are not judged: the clause asks for other tolerances there without giving them."],
  },
  {
    id: "en-1537",
    document: "EN 1537 Ground anchors",
    edition: "1999",
    kinds: ["anchor"],
    text: { en: "Anchor holes", de: "Ankerbohrungen" },
    rules: [
      {
        id: "plan",
        kind: "plan-position",
        numbers: { limit_m: 0.075 },
        words: { at: "head" },
        clause: "8.1",
        status: "memory",
      },
      { id: "lean", kind: "verticality", numbers: { one_in: 30 }, clause: "8.1", status: "memory" },
    ],
    notes: ["The alignment at the start of the hole (2 degrees, from memory) is not judged."],
  },
  {
    id: "en-12699",
    document: "EN 12699 Displacement piles",
    edition: "2001",
    kinds: ["bored-pile"],
    text: { en: "Displacement piles on land", de: "Verdrängungspfähle an Land" },
    rules: [
      {
        id: "plan",
        kind: "plan-position",
        numbers: { limit_m: 0.1 },
        words: { at: "head" },
        clause: "7.3.1",
        status: "memory",
      },
      { id: "lean", kind: "verticality", numbers: { ratio: 0.04 }, clause: "7.3.1", status: "memory" },
    ],
    notes: ["That the position counts at working level was seen quoted; the numbers are from memory."],
  },
  {
    id: "dggt-ak-2-8",
    document: "DGGT working group 2.8, ground-improvement columns",
    edition: "2002",
    kinds: ["grout-hole", "borehole"],
    text: { en: "Ground-improvement columns", de: "Säulen zur Baugrundverbesserung" },
    rules: [
      {
        id: "plan",
        kind: "plan-position",
        numbers: { limit_m: 0.0762 },
        words: { at: "head" },
        clause: "clause not stated",
        status: "quoted",
      },
      {
        id: "lean",
        kind: "verticality",
        numbers: { ratio: Math.tan((2 * Math.PI) / 180) },
        clause: "clause not stated",
        status: "quoted",
      },
    ],
    notes: ["Quoted in inches and degrees (3 in, 2 degrees) by an English text."],
  },
];
