import type { CriterionRequest, Language } from "./criterion.ts";
import type { Row } from "./steps.ts";
import { degreesWords, metresWords, millimetres, oneIn, plainNumber } from "./wording.ts";

const WORDS = {
  en: {
    anyDirection: "in any direction",
    along: "along",
    across: "across",
    min: "the smaller of",
    max: "the larger of",
    and: "and",
    timesDiameter: "of the diameter",
    atLeast: "at least",
    atMost: "at most",
    perMetre: "more per metre below",
    growth: { head: "the commencing surface", cutoff: "cut-off level" },
    at: {
      cutoff: "at cut-off level",
      head: "at the commencing surface",
      toe: "at the toe",
      "every-level": "at every level",
    },
    level: "at level",
    from: {
      design: "from the design axis",
      "as-built-top": "from the as-built top",
      "own-line": "from the straight line between its own ends",
    },
    step: {
      up_to_diameter_m: "for diameters up to",
      up_to_rake_ratio: "for rakes up to",
      up_to_length_m: "for lengths up to",
    },
    plumb: "for plumb elements",
    others: "for all others",
    bearing: "along is at bearing",
  },
  de: {
    anyDirection: "in jeder Richtung",
    along: "längs",
    across: "quer",
    min: "der kleinere Wert von",
    max: "der größere Wert von",
    and: "und",
    timesDiameter: "des Durchmessers",
    atLeast: "mindestens",
    atMost: "höchstens",
    perMetre: "mehr je Meter unter",
    growth: { head: "der Arbeitsebene", cutoff: "der Kappebene" },
    at: {
      cutoff: "in der Kappebene",
      head: "in der Arbeitsebene",
      toe: "am Fuß",
      "every-level": "in jeder Höhe",
    },
    level: "in Höhe",
    from: {
      design: "von der Sollachse",
      "as-built-top": "vom gebauten Kopf",
      "own-line": "von der Geraden zwischen den eigenen Enden",
    },
    step: {
      up_to_diameter_m: "bis Durchmesser",
      up_to_rake_ratio: "bis Neigung",
      up_to_length_m: "bis Länge",
    },
    plumb: "für lotrechte Elemente",
    others: "für alle anderen",
    bearing: "längs hat die Richtung",
  },
} as const;

/** The rule in one sentence. */
export function describePlanPosition(request: CriterionRequest, language: Language): string {
  const w = WORDS[language];
  const { numbers, words, tables } = request;
  const limits: string[] = [];
  const constant = constantLimit(
    numbers["limit_m"],
    numbers["limit_per_diameter"],
    words["combine"],
    language,
  );
  if (constant !== undefined) limits.push(`${constant} ${w.anyDirection}`);
  for (const row of tables["steps"] ?? []) limits.push(stepWords(row, words["combine"], language));
  const along = numbers["limit_along_m"];
  const across = numbers["limit_across_m"];
  if (along !== undefined) limits.push(`${millimetres(along, language)} ${w.along}`);
  if (across !== undefined) limits.push(`${millimetres(across, language)} ${w.across}`);

  const growth = growthWords(numbers["growth_m_per_m"], words["growth_from"], language);
  const level = numbers["at_level_m"];
  const at =
    level === undefined
      ? w.at[(words["at"] ?? "cutoff") as keyof typeof w.at]
      : `${w.level} ${metresWords(level, language)}`;
  const from = w.from[(words["from"] ?? "design") as keyof typeof w.from];
  const bearing = numbers["along_bearing_deg"];
  const end = bearing === undefined ? "" : `; ${w.bearing} ${degreesWords(bearing, language)}`;
  return `${limits.join("; ")}${growth}, ${at}, ${from}${end}`;
}

function constantLimit(
  limitM: number | undefined,
  perDiameter: number | undefined,
  combine: string | undefined,
  language: Language,
): string | undefined {
  const w = WORDS[language];
  const part =
    perDiameter === undefined ? undefined : `${plainNumber(perDiameter, language)} ${w.timesDiameter}`;
  const fixed = limitM === undefined ? undefined : millimetres(limitM, language);
  if (part !== undefined && fixed !== undefined)
    return `${combine === "max" ? w.max : w.min} ${fixed} ${w.and} ${part}`;
  return fixed ?? part;
}

function growthWords(growth: number | undefined, from: string | undefined, language: Language): string {
  if (growth === undefined || growth === 0) return "";
  const w = WORDS[language];
  const start = w.growth[from === "cutoff" ? "cutoff" : "head"];
  return ` + ${millimetres(growth, language)} ${w.perMetre} ${start}`;
}

function stepWords(row: Row, combine: string | undefined, language: Language): string {
  const w = WORDS[language];
  const limit = constantLimit(row["limit_m"], row["per_diameter"], combine, language) ?? "";
  const bounds = [
    row["at_least_m"] === undefined ? "" : `, ${w.atLeast} ${millimetres(row["at_least_m"], language)}`,
    row["at_most_m"] === undefined ? "" : `, ${w.atMost} ${millimetres(row["at_most_m"], language)}`,
    growthWords(row["growth_m_per_m"], "head", language),
  ].join("");
  return `${limit}${bounds} ${stepRange(row, language)}`;
}

/** For which elements a row of a table is. */
export function stepRange(row: Row, language: Language): string {
  const w = WORDS[language];
  const { up_to_diameter_m: diameter, up_to_rake_ratio: rake, up_to_length_m: length } = row;
  if (diameter !== undefined) return `${w.step.up_to_diameter_m} ${metresWords(diameter, language)}`;
  if (rake === 0) return w.plumb;
  if (rake !== undefined) return `${w.step.up_to_rake_ratio} ${oneIn(rake, language)}`;
  if (length !== undefined) return `${w.step.up_to_length_m} ${metresWords(length, language)}`;
  return w.others;
}
