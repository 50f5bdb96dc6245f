import { degreesFromRadians, type Readings, type SurveyRun } from "#core";
import { atStep, csvText } from "./csv.ts";
import type { RecordResolution } from "./run-spec.ts";

interface Column {
  readonly heading: string;
  readonly text: (row: number) => string;
}

/** The readings file of a simulated run, in the layout of the job folder. */
export function readingsText(run: SurveyRun, resolution: RecordResolution = {}): string {
  const { readings } = run;
  const columns = columnsOf(run, readings, resolution).filter((column) =>
    readings.leg.some((_, row) => column.text(row) !== ""),
  );
  return csvText(
    columns.map((column) => column.heading),
    readings.leg.map((_, row) => columns.map((column) => column.text(row))),
  );
}

function columnsOf(run: SurveyRun, readings: Readings, resolution: RecordResolution): readonly Column[] {
  const number = (heading: string, values: Float64Array, step: number | undefined): Column => ({
    heading,
    text: (row) => atStep(values[row]!, step),
  });
  const degrees = (heading: string, values: Float64Array, step: number | undefined): Column => ({
    heading,
    text: (row) => atStep(degreesFromRadians(values[row]!), step),
  });
  const { tiltDeg, turnDeg, depthM, acceleration } = resolution;
  const fine = tiltDeg === undefined ? undefined : tiltDeg / 10;
  const start = Date.parse(run.startedAt ?? "2026-01-01T00:00:00Z");
  return [
    {
      heading: "time",
      text: (row) => new Date(start + Math.round(readings.timeS[row]! * 1000)).toISOString(),
    },
    { heading: "leg", text: (row) => readings.leg[row]! },
    { heading: "face", text: (row) => String(readings.face[row]!) },
    number("depth_m", readings.depthM, depthM),
    number("count", readings.depthCounts, 1),
    degrees("tilt_x_deg", readings.tiltXRad, tiltDeg),
    degrees("tilt_y_deg", readings.tiltYRad, tiltDeg),
    number("acc_x", readings.accX, acceleration),
    number("acc_y", readings.accY, acceleration),
    number("acc_z", readings.accZ, acceleration),
    degrees("inclination_deg", readings.inclinationRad, tiltDeg),
    degrees("azimuth_deg", readings.azimuthRad, tiltDeg),
    degrees("turn_deg", readings.turnRad, turnDeg),
    number("temperature_c", readings.temperatureC, 0.1),
    number("samples", readings.samples, 1),
    degrees("se_tilt_x_deg", readings.seTiltXRad, fine),
    degrees("se_tilt_y_deg", readings.seTiltYRad, fine),
  ];
}
