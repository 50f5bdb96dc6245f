import { z } from "zod";
import { CLOSURE_MODELS, MEASURES } from "#core";
import { degrees, errors, id, moment, north, text } from "./basics.ts";

export const referenceSchema = z.strictObject({
  heading_deg: degrees.describe("Heading of probe +x, clockwise from the north named beside it."),
  north,
  standard_uncertainty_deg: z
    .number()
    .positive()
    .max(180)
    .optional()
    .describe("Of the heading itself. Without it: 1.0 for magnetic, 0.5 for true and grid."),
  declination_deg: degrees
    .optional()
    .describe("True minus magnetic. Without it: from the magnetic model at the date."),
  convergence_deg: degrees.optional().describe("Grid bearing = true bearing - convergence."),
});
export type ReferenceInput = z.infer<typeof referenceSchema>;

export const steadySchema = z
  .strictObject({
    seconds: z
      .number()
      .min(1)
      .max(3600)
      .optional()
      .describe("Shortest time at rest that makes a reading; 5."),
    tilt_deg: z
      .number()
      .positive()
      .max(10)
      .optional()
      .describe("Largest standard error of the mean tilt, and largest change of it; 0.02."),
    turn_deg: z
      .number()
      .positive()
      .max(90)
      .optional()
      .describe("Largest turn besides the rate that the gyro shows at rest; 0.1."),
    depth_m: z.number().positive().max(1).optional().describe("Largest change of the shown depth; 0.01."),
  })
  .describe("For a run logged continuously: when the probe counts as at rest.");
export type SteadyInput = z.infer<typeof steadySchema>;

export const runSchema = z.strictObject({
  id,
  element: id.describe("Reference of an element of the schedule."),
  tube: id.optional().describe("Access tube of the element, from tubes.csv."),
  instrument: id,
  readings: text.describe("Readings file, relative to the job folder."),
  measures: z.enum(MEASURES as [string, ...string[]]).describe("What the columns of the readings file mean."),
  sampling: z
    .enum(["stops", "continuous"])
    .optional()
    .describe("Whether the file has a row for each stop (without it), or was logged all the time."),
  steady: steadySchema.optional(),
  calibrations: z.array(id).optional(),
  zeroed: z.boolean().optional().describe("True: the instrument has already taken its tilt zero off."),
  operator: text.optional(),
  errors: errors.optional(),
  started_at: moment.optional().describe("When the run began, where its readings carry no date."),
  opening: referenceSchema.optional(),
  closing: referenceSchema.optional(),
  ties: z.array(referenceSchema).optional().describe("In the order of the rows with leg `tie`."),
  closure: z
    .enum(CLOSURE_MODELS as [string, ...string[]])
    .optional()
    .describe("How a misclosure is spread; without it linear-time."),
  closure_limit_deg: z.number().positive().max(180).optional(),
  azimuth_north: north.optional(),
  azimuth_standard_uncertainty_deg: z.number().positive().max(180).optional(),
  groove_bearing_deg: degrees.optional().describe("Grid bearing of +x on face 1 at the top of a keyed tube."),
  spiral: z
    .array(z.tuple([z.number(), z.number()]))
    .optional()
    .describe("Twist of the groove: [depth_m, twist_deg], positive clockwise looking down."),
  start: z
    .strictObject({
      easting_m: z.number(),
      northing_m: z.number(),
      level_m: z.number(),
      uncertainty_m: z.number().nonnegative().optional(),
    })
    .optional()
    .describe("Where the run starts, if not at the design head (runs in the element's own bore)."),
  declination_deg: degrees.optional(),
  convergence_deg: degrees.optional(),
  depth_zero_m: z
    .number()
    .min(-1000)
    .max(1000)
    .optional()
    .describe("Added to every depth: reading of the depth device at the reference top, sign reversed."),
  station_limit_m: z
    .number()
    .positive()
    .optional()
    .describe("Largest step between stations that counts as read through."),
});
export type RunInput = z.infer<typeof runSchema>;
