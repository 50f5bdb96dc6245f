import { designLengthM } from "../elements/design-axis.ts";
import type { DesignElement } from "../elements/element.ts";
import type { NotMeasured, Parameter } from "./criterion.ts";

export type Row = Readonly<Record<string, number>>;

/** A schedule rounds its angles and lengths; a value this little above a step still belongs to it, so to the stricter row. */
const STEP_TOLERANCE = 1e-3;

const MEASURES_OF_ELEMENT: Readonly<Record<string, (element: DesignElement) => number | undefined>> = {
  up_to_diameter_m: diameterM,
  up_to_rake_ratio: (element) => Math.tan(element.rakeRad),
  up_to_length_m: designLengthM,
};
/** For sentences. */
const MEASURE_WORDS: Readonly<Record<string, string>> = {
  up_to_diameter_m: "diameter",
  up_to_rake_ratio: "rake",
  up_to_length_m: "length",
};
const STEP_KEYS = Object.keys(MEASURES_OF_ELEMENT);

/** Columns that say for which elements a row is. A table uses one of them, in rising order; the last row may go without, for all others. */
export const stepColumns: readonly Parameter[] = [
  {
    key: "up_to_diameter_m",
    unit: "m",
    min: 0,
    max: 100,
    required: false,
    text: { en: "row is for diameters up to", de: "Zeile gilt bis Durchmesser" },
  },
  {
    key: "up_to_rake_ratio",
    unit: "m/m",
    min: 0,
    max: 1000,
    required: false,
    text: { en: "row is for rakes up to (0 = plumb)", de: "Zeile gilt bis Neigung (0 = lotrecht)" },
  },
  {
    key: "up_to_length_m",
    unit: "m",
    min: 0,
    max: 10_000,
    required: false,
    text: { en: "row is for lengths up to", de: "Zeile gilt bis Länge" },
  },
];

/** Diameter of a round section; the short side of a rectangle, as the standards that name a width mean it. Metres. */
export function diameterM(element: DesignElement): number | undefined {
  const { section } = element;
  if (section === undefined) return undefined;
  return section.shape === "round" ? section.diameterM : Math.min(section.lengthM, section.widthM);
}

const stepKey = (row: Row): string | undefined => STEP_KEYS.find((key) => row[key] !== undefined);

/**
 * The row of a table that is for an element: the first one whose step is not passed.
 *
 * Frame: none.
 * Source: docs/method/criteria.md.
 */
export function stepFor(rows: readonly Row[], element: DesignElement): Row | NotMeasured {
  const key = rows[0] && stepKey(rows[0]);
  if (key === undefined) return { reason: "criteria.no-limit" };
  const own = MEASURES_OF_ELEMENT[key]!(element);
  if (own === undefined || !Number.isFinite(own))
    return { reason: key === "up_to_length_m" ? "criteria.no-toe" : "criteria.no-section" };
  const row = rows.find(
    (candidate) => own <= (candidate[key] ?? Number.POSITIVE_INFINITY) * (1 + STEP_TOLERANCE),
  );
  return (
    row ?? {
      reason: "criteria.no-step",
      values: { measure: MEASURE_WORDS[key] ?? "", found: own, last: rows.at(-1)?.[key] ?? Number.NaN },
    }
  );
}

/** What is wrong with the steps of a table: the same step column in each row but an open last one, rising from row to row. */
export function faultOfSteps(
  field: string,
  rows: readonly Row[],
): { field: string; expected: string; found: string }[] {
  if (rows.length === 0) return [{ field, expected: "at least one row", found: "an empty table" }];
  const key = stepKey(rows[0]!);
  return rows.flatMap((row, i) => {
    const used = STEP_KEYS.filter((candidate) => row[candidate] !== undefined);
    const found = used.join(", ") || "none of them";
    if (used.length === 0 && i > 0 && i === rows.length - 1) return [];
    if (key === undefined || used.length !== 1 || used[0] !== key)
      return [
        { field: `${field}[${i}]`, expected: `the same one of ${STEP_KEYS.join(", ")} in every row`, found },
      ];
    const [own, before] = [row[key]!, rows[i - 1]?.[key]];
    if (before !== undefined && !(own > before))
      return [{ field: `${field}[${i}].${key}`, expected: `more than ${before}`, found: String(own) }];
    return [];
  });
}
