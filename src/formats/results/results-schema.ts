import { z } from "zod";

export const RESULTS_FORMAT = "toeline-results/1";

const numberOrNull = z.number().nullable().describe("null: not known or not measured");

const findingSchema = z.looseObject({
  code: z.string(),
  severity: z.enum(["error", "warning", "note"]),
  text: z.string(),
  place: z.looseObject({
    file: z.string().optional(),
    line: z.int().optional(),
    field: z.string().optional(),
  }),
});

const covarianceSchema = z
  .tuple([z.number(), z.number(), z.number(), z.number(), z.number(), z.number()])
  .nullable()
  .describe("ee, en, eu, nn, nu, uu; standard (k = 1). null: no uncertainty was worked out.");

const stationSchema = z.looseObject({
  depth_m: z.number().describe("Along the hole, from the reference top."),
  easting_m: z.number(),
  northing_m: z.number(),
  level_m: z.number(),
  tangent_ned: z
    .tuple([z.number(), z.number(), z.number()])
    .describe("Unit vector down the hole: north, east, down."),
  covariance_enu_m2: covarianceSchema,
});

const runSchema = z.looseObject({
  id: z.string(),
  element: z.string(),
  tube: z.string().nullable(),
  method: z.string(),
  judgeable: z.boolean().describe("false: the path is shown, nothing is judged by it."),
  steps: z.array(
    z.looseObject({
      step: z.string(),
      revision: z.int(),
      effect: z.record(z.string(), z.union([z.number(), z.string(), z.null()])),
    }),
  ),
  findings: z.array(findingSchema),
  gaps: z.array(z.looseObject({ from_m: z.number(), to_m: z.number() })),
  stations: z.array(stationSchema).describe("Empty where the run could not be worked out."),
});

const axisRowSchema = z.looseObject({
  level_m: z.number(),
  easting_m: z.number(),
  northing_m: z.number(),
  offset_east_m: z.number(),
  offset_north_m: z.number(),
  offset_m: z.number(),
  along_m: z.number().describe("Towards the rake bearing, or along the wall."),
  across_m: z.number().describe("To the right of along."),
  u95_m: numberOrNull.describe(
    "Radius around the point, square to the design axis, that holds the true one with 95 %.",
  ),
  twist_deg: numberOrNull,
  depth_m: z.number(),
  interpolated: z.boolean(),
  covariance_enu_m2: covarianceSchema,
  ellipse95: z
    .looseObject({
      semi_major_m: numberOrNull,
      semi_minor_m: numberOrNull,
      major_from_along_deg: numberOrNull.describe("From along towards across."),
    })
    .nullable()
    .describe("Ellipse that holds the true offset with 95 %, square to the design axis."),
});

const sourceSchema = z.looseObject({
  document: z.string(),
  edition: z.string().optional(),
  clause: z.string().optional(),
  status: z.string().optional(),
});

const verdictWord = z.enum(["within", "too-close-to-call", "outside", "not-judged"]);

const verdictSchema = z.looseObject({
  criterion: z.string(),
  kind: z.string(),
  verdict: verdictWord,
  value: numberOrNull,
  limit: numberOrNull,
  unit: z.string(),
  standard_uncertainty: numberOrNull,
  probability_within: numberOrNull,
  at_level_m: numberOrNull,
  rule: z.string(),
  reasons: z.array(z.looseObject({ code: z.string(), text: z.string() })),
  revision: z.int(),
  source: sourceSchema.nullable(),
});

const elementSchema = z.looseObject({
  id: z.string(),
  kind: z.string(),
  runs: z.array(z.string()),
  axis: z.array(axisRowSchema),
  gaps: z.array(z.looseObject({ from_m: z.number(), to_m: z.number() })),
  verticality: z
    .looseObject({
      chord_ratio: numberOrNull,
      one_in: numberOrNull.describe("1 / chord_ratio; null for a plumb chord."),
      worst_segment_ratio: numberOrNull,
      worst_segment_at_level_m: numberOrNull,
    })
    .nullable(),
  verdicts: z.array(verdictSchema),
  budget: z
    .array(
      z.looseObject({
        place: z.enum(["toe", "worst"]),
        at_level_m: numberOrNull,
        shares: z.array(z.looseObject({ source: z.string(), standard_m: z.number(), share: numberOrNull })),
      }),
    )
    .describe("What each source of error adds to the offset, at the toe and at the worst place."),
  trials: z
    .array(
      z.looseObject({
        criterion: z.string(),
        trials: z.int(),
        seed: z.int(),
        mean: numberOrNull,
        standard_uncertainty: numberOrNull,
        from_95: numberOrNull,
        to_95: numberOrNull,
        probability_tolerance: numberOrNull,
      }),
    )
    .describe("Repeated computations with errors drawn at random, where some were made."),
  findings: z.array(findingSchema),
});

const evidenceSchema = z.looseObject({
  instrument: z.string(),
  sources: z.array(z.string()).describe("Of two, their values together: root of the sum of squares."),
  value: z.number(),
  declared: z.number().describe("The same value as the budget has it without this evidence."),
  unit: z.string(),
  degrees_of_freedom: z.number(),
  from: z.string().describe("double-runs, face-sums, closures or allan-curve."),
  count: z.int().describe("Runs, or calibrations, that it rests on."),
  used: z.boolean().describe("true: the budgets use it in place of the declared value."),
});

const riskSchema = z.looseObject({
  criterion: z.string(),
  elements: z.int().describe("Elements whose value and uncertainty are known."),
  test_uncertainty_ratio: z.number().describe("Limit over the expanded uncertainty."),
  consumers_risk: z.number().describe("Share of elements like these that are accepted although outside."),
  producers_risk: z.number().describe("Share that are not accepted although within."),
  within_share: z.number().describe("Share that are within, whatever is measured."),
});

/** results.json, as it is published and written. Angles in degrees, lengths in metres, levels positive up. */
export const resultsSchema = z
  .looseObject({
    format: z.literal(RESULTS_FORMAT),
    toeline: z.string().describe("Version of the program."),
    job: z.string(),
    runs: z.array(runSchema),
    elements: z.array(elementSchema),
    evidence: z
      .array(evidenceSchema)
      .optional()
      .describe("Standard values of errors that the runs of the job show."),
    risks: z
      .array(riskSchema)
      .optional()
      .describe("What each rule leads to over all elements like those of the job."),
    neighbours: z.array(z.unknown()),
    summary: z.looseObject({
      within: z.int(),
      "too-close-to-call": z.int(),
      outside: z.int(),
      "not-judged": z.int(),
    }),
    findings: z.array(findingSchema).describe("What was found while the job folder was read."),
  })
  .meta({ title: "Toeline results, version 1" });

export type ResultsDocument = z.infer<typeof resultsSchema>;
export type FindingDocument = z.infer<typeof findingSchema>;
export type RunDocument = z.infer<typeof runSchema>;
export type ElementDocument = z.infer<typeof elementSchema>;
export type VerdictDocument = z.infer<typeof verdictSchema>;
export type SourceDocument = z.infer<typeof sourceSchema>;
