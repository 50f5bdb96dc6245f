import { z } from "zod";
import { dateOrMoment, errors, id, moment, text, vector } from "./basics.ts";

const common = {
  id,
  instrument: id,
  made_at: moment,
  valid_until: dateOrMoment.optional(),
  max_runs: z.int().positive().optional().describe("How many runs may use it."),
  ended_by: z
    .array(z.strictObject({ at: moment, what: text }))
    .optional()
    .describe("Events that ended it: a knock, a repair."),
  remark: text.optional(),
};
const tilt = z.number().min(-90).max(90);

export const calibrationSchema = z.discriminatedUnion("kind", [
  z.strictObject({
    ...common,
    kind: z.literal("tilt-zero"),
    faces: z
      .array(z.strictObject({ face: z.union([z.literal(1), z.literal(2)]), x_deg: tilt, y_deg: tilt }))
      .min(2)
      .describe("Readings on both faces in one steady seat; more than one pair is allowed."),
  }),
  z.strictObject({
    ...common,
    kind: z.literal("accelerometer"),
    positions: z
      .array(z.strictObject({ expected: vector, shown: vector }))
      .min(6)
      .describe("What each axis should show and did show, the reaction to gravity, any one unit."),
  }),
  z.strictObject({
    ...common,
    kind: z.literal("gyro-zero"),
    rate_deg_per_h: z.number().optional().describe("Rate shown at rest."),
    log: text
      .optional()
      .describe(
        "Instead of the rate: file of a log at rest, relative to the job folder, with time and rate or turn.",
      ),
    standard_uncertainty_deg_per_h: z.number().nonnegative().optional(),
    attitude: z.enum(["upright", "inverted", "inclined"]),
    inclination_deg: z
      .number()
      .min(0)
      .max(180)
      .optional()
      .describe("For attitude `inclined`: from vertical, axis down-hole."),
    azimuth_deg: z
      .number()
      .min(-360)
      .max(360)
      .optional()
      .describe("For attitude `inclined`: from true north."),
    latitude_deg: z.number().min(-90).max(90),
  }),
  z.strictObject({
    ...common,
    kind: z.literal("gyro-scale"),
    true_turn_deg: z.number(),
    shown_turns_deg: z.array(z.number()).min(1),
  }),
  z.strictObject({
    ...common,
    kind: z.literal("depth-scale"),
    length_m: z.number().positive(),
    counts: z.array(z.number()).min(1),
  }),
]);
export type CalibrationInput = z.infer<typeof calibrationSchema>;

export const instrumentSchema = z.strictObject({
  id,
  serial: z.union([text, z.int()]).optional(),
  gauge_length_m: z
    .number()
    .positive()
    .optional()
    .describe("Between the points at which the probe touches the wall."),
  outer_diameter_mm: z.number().positive().optional(),
  length_m: z.number().positive().optional().describe("Rigid length of the probe, for the passage of tubes."),
  cable: z
    .strictObject({
      axial_stiffness_n: z.number().positive().describe("EA: force for a strain of 1."),
      probe_weight_n: z.number().nonnegative().describe("In the fluid of the hole."),
      weight_n_per_m: z.number().nonnegative().describe("Of the cable, in the fluid of the hole."),
    })
    .optional()
    .describe("Cable that the probe hangs on, where its stretch is to be allowed for."),
  budget: text.optional().describe("Class of the uncertainty budget."),
  errors: errors.optional(),
});
export type InstrumentInput = z.infer<typeof instrumentSchema>;
