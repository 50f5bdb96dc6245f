import { z } from "zod";
import { TYPE_A_USES } from "#core";
import { degrees, text } from "./basics.ts";
import { calibrationSchema, instrumentSchema } from "./calibration-schema.ts";
import { runSchema } from "./run-schema.ts";

export const JOB_FORMAT = "toeline-job/1";

/** Points whose coordinates are known on the site's own grid and on a map grid: they lay one on the other. */
const commonPointsSchema = z.strictObject({
  map: z
    .string()
    .regex(/^EPSG:\d{4,6}$/)
    .describe('Map grid, "EPSG:n".'),
  points: z
    .array(
      z.strictObject({
        name: text,
        local_east_m: z.number(),
        local_north_m: z.number(),
        map_east_m: z.number(),
        map_north_m: z.number(),
      }),
    )
    .min(2),
  residual_limit_m: z
    .number()
    .positive()
    .optional()
    .describe("Largest residual that counts as good; without it 0.05."),
});

export const placeSchema = z.strictObject({
  crs: z
    .string()
    .regex(/^(EPSG:\d{4,6}|local)$/)
    .describe('"EPSG:n", or "local" for a grid of the site.'),
  latitude_deg: z.number().min(-90).max(90).optional(),
  longitude_deg: z.number().min(-180).max(180).optional(),
  level_datum: text.optional(),
  common_points: commonPointsSchema
    .optional()
    .describe(
      'With crs "local": where the site grid lies on a map grid, for its convergence and its place on the globe.',
    ),
  convergence_deg: degrees.optional().describe("Grid bearing = true bearing - convergence."),
  declination_deg: degrees
    .optional()
    .describe("True minus magnetic, where the magnetic model is not to be used."),
});

export const sourceSchema = z.strictObject({
  document: text,
  edition: text.optional(),
  clause: text.optional(),
  status: z.enum(["read", "quoted", "memory"]).optional(),
});

export const appliesToSchema = z
  .record(z.string(), z.union([z.string(), z.array(z.string())]))
  .describe("Keys that must be equal to the element's (kind, group, role, element); empty: all elements.");

/** Every other key belongs to the kind of criterion, which declares and checks it. */
export const criterionSchema = z.looseObject({
  id: text,
  kind: text,
  applies_to: appliesToSchema.optional(),
  source: sourceSchema.optional(),
});
export type CriterionInput = z.infer<typeof criterionSchema>;

export const criteriaSetSchema = z.strictObject({ set: text, applies_to: appliesToSchema.optional() });

export const decisionSchema = z.strictObject({
  rule: z.enum(["simple", "guarded", "four-way"]).optional(),
  probability: z.number().gt(0.5).lt(1).optional(),
});

export const limitsSchema = z.strictObject({
  closure_limit_deg: z.number().positive().max(180).optional(),
  station_limit_m: z.number().positive().optional(),
});

export const uncertaintySchema = z.strictObject({
  type_a: z
    .enum(TYPE_A_USES)
    .optional()
    .describe("Standard values that the runs of the job show: beside the declared ones, or in their place."),
});

/** The whole of job.json, as it is published. The reader checks it part by part, so that one bad run does not cost the others. */
export const jobSchema = z
  .strictObject({
    $schema: z.string().optional().describe("For editors."),
    format: z.literal(JOB_FORMAT),
    name: text,
    place: placeSchema,
    criteria: z.array(criterionSchema).optional(),
    criteria_sets: z.array(criteriaSetSchema).optional().describe("Ready-made criteria."),
    decision: decisionSchema.optional().describe("Without it: four-way, 0.95."),
    uncertainty: uncertaintySchema.optional().describe("Without it: report."),
    limits: limitsSchema.optional().describe("For every run that does not give its own."),
    instruments: z.array(instrumentSchema),
    calibrations: z.array(calibrationSchema).optional(),
    runs: z.array(runSchema),
    remark: text.optional(),
  })
  .meta({ title: "Toeline job, version 1" });
