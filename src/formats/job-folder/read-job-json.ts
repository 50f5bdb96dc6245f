import type { z } from "zod";
import type { Decision, TypeAUse } from "#core";
import type { Finder } from "../finding/finder.ts";
import { checkItem, tellUnknownKey } from "./check-item.ts";
import {
  type CalibrationInput,
  calibrationSchema,
  type InstrumentInput,
  instrumentSchema,
} from "./schema/calibration-schema.ts";
import {
  type CriterionInput,
  criteriaSetSchema,
  criterionSchema,
  decisionSchema,
  JOB_FORMAT,
  jobSchema,
  limitsSchema,
  placeSchema,
  uncertaintySchema,
} from "./schema/job-schema.ts";

/** A part of job.json that has the shape it should have, and where it stands. */
export interface Item<T> {
  readonly input: T;
  readonly field: string;
}
/** A part whose shape is wrong; what little is known of it. */
export interface BadItem {
  readonly raw: unknown;
  readonly field: string;
  readonly found: Finder;
}
export type PlaceInput = z.infer<typeof placeSchema>;

/** job.json, part by part; what is wrong has been told and is left out. */
export interface JobInput {
  readonly name: string;
  readonly place: PlaceInput;
  readonly decision: Decision;
  readonly typeA: TypeAUse;
  readonly limits: z.infer<typeof limitsSchema>;
  readonly criteria: readonly Item<CriterionInput>[];
  readonly criteriaSets: readonly Item<z.infer<typeof criteriaSetSchema>>[];
  readonly instruments: readonly Item<InstrumentInput>[];
  readonly calibrations: readonly Item<CalibrationInput>[];
  readonly runs: readonly (Item<unknown> & { readonly found: Finder })[];
  readonly badInstruments: ReadonlySet<string>;
  readonly badCalibrations: ReadonlySet<string>;
}

/**
 * Takes job.json apart and holds every part against its schema. A part with an error is left out; the others stay.
 *
 * @param found findings about the file outside the runs.
 * @param finderFor a finder of its own for each run, since an error there costs only that run.
 * @returns undefined when the file is no Toeline job at all.
 */
export function readJobJson(value: unknown, found: Finder, finderFor: () => Finder): JobInput | undefined {
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    found.block("formats.json-type", { field: "" }, { found: "no object", expected: "an object in braces" });
    return undefined;
  }
  const top = value as Record<string, unknown>;
  if (top["format"] !== JOB_FORMAT) {
    const shown = top["format"] === undefined ? "nothing" : String(top["format"]).slice(0, 40);
    found.block("formats.json-format", { field: "format" }, { found: shown, expected: JOB_FORMAT });
    return undefined;
  }
  const known = Object.keys(jobSchema.shape);
  for (const key of Object.keys(top)) if (!known.includes(key)) tellUnknownKey(key, key, known, found);
  checkItem(jobSchema.shape.remark, top["remark"], "remark", found);
  const instruments = items(instrumentSchema, top, "instruments", "required", found);
  const calibrations = items(calibrationSchema, top, "calibrations", "optional", found);
  const decision = partly(decisionSchema, top["decision"], "decision", found);
  return {
    name: checkItem(jobSchema.shape.name, top["name"], "name", found) ?? "",
    place: placeOf(top, found),
    decision: { rule: decision.rule ?? "four-way", probability: decision.probability ?? 0.95 },
    typeA: partly(uncertaintySchema, top["uncertainty"], "uncertainty", found).type_a ?? "report",
    limits: partly(limitsSchema, top["limits"], "limits", found),
    criteria: items(criterionSchema, top, "criteria", "optional", found).good,
    criteriaSets: items(criteriaSetSchema, top, "criteria_sets", "optional", found).good,
    instruments: instruments.good,
    calibrations: calibrations.good,
    badInstruments: instruments.badIds,
    badCalibrations: calibrations.badIds,
    runs: listOf(top, "runs", "required", found).map((input, index) => ({
      input,
      field: `runs[${index}]`,
      found: finderFor(),
    })),
  };
}

function placeOf(top: Record<string, unknown>, found: Finder): PlaceInput {
  if (top["place"] === undefined)
    found.error(
      "formats.json-missing",
      { field: "place" },
      { found: "nothing", expected: "an object in braces" },
    );
  const place = partly(placeSchema, top["place"], "place", found);
  if (
    top["place"] !== undefined &&
    typeof top["place"] === "object" &&
    place.crs === undefined &&
    !hasKey(top["place"], "crs")
  )
    found.error(
      "formats.json-missing",
      { field: "place.crs" },
      { found: "nothing", expected: "EPSG:n or local" },
    );
  return { ...place, crs: place.crs ?? "local" };
}

const hasKey = (value: unknown, key: string): boolean =>
  typeof value === "object" && value !== null && Object.hasOwn(value, key);

/** Those fields of an object that are right; the others are told and left out. */
function partly<S extends z.ZodObject>(
  schema: S,
  value: unknown,
  path: string,
  found: Finder,
): Partial<z.infer<S>> {
  if (value === undefined) return {};
  const checked = checkItem(schema.partial(), value, path, found);
  if (checked !== undefined) return checked as Partial<z.infer<S>>;
  if (typeof value !== "object" || value === null || Array.isArray(value)) return {};
  const right = Object.entries(value).filter(
    ([key, part]) => schema.shape[key]?.safeParse(part).success === true,
  );
  return Object.fromEntries(right) as Partial<z.infer<S>>;
}

/** More runs than any job has. */
const MAX_ENTRIES = 100_000;

function listOf(
  top: Record<string, unknown>,
  key: string,
  need: "required" | "optional",
  found: Finder,
): readonly unknown[] {
  const value = top[key];
  if (Array.isArray(value)) {
    if (value.length <= MAX_ENTRIES) return value;
    const values = { found: value.length, expected: `at most ${MAX_ENTRIES} entries` };
    found.error("formats.json-range", { field: key }, values);
    return [];
  }
  if (value !== undefined)
    found.error("formats.json-type", { field: key }, { found: typeof value, expected: "a list in brackets" });
  else if (need === "required")
    found.error("formats.json-missing", { field: key }, { found: "nothing", expected: "a list in brackets" });
  return [];
}

function items<S extends z.ZodType>(
  schema: S,
  top: Record<string, unknown>,
  key: string,
  need: "required" | "optional",
  found: Finder,
): { good: Item<z.infer<S>>[]; badIds: Set<string> } {
  const good: Item<z.infer<S>>[] = [];
  const badIds = new Set<string>();
  const seen = new Map<string, string>();
  for (const [index, value] of listOf(top, key, need, found).entries()) {
    const field = `${key}[${index}]`;
    const id = hasKey(value, "id") ? String((value as { id: unknown }).id) : undefined;
    const first = id === undefined ? undefined : seen.get(id);
    if (id !== undefined && first !== undefined) {
      found.error(
        "formats.id-repeated",
        { field: `${field}.id` },
        { found: id, expected: "another id", other: first },
      );
      continue;
    }
    if (id !== undefined) seen.set(id, field);
    const input = checkItem(schema, value, field, found);
    if (input !== undefined) good.push({ input, field });
    else if (id !== undefined) badIds.add(id);
  }
  return { good, badIds };
}
