import type { Calibration, CalibrationKind } from "#core";
import type { Finder } from "../finding/finder.ts";
import { nearestWord } from "../finding/nearest-word.ts";
import type { ReadingsRead } from "./read-readings.ts";
import type { RunContext, RunRead } from "./run-context.ts";
import { idText } from "./schema/basics.ts";
import type { RunInput } from "./schema/run-schema.ts";

/**
 * The calibrations that a run names and may use: those that exist and belong to its instrument (rule B5).
 *
 * A stale or missing one is told and does not keep the run from being worked out; only counts without a scale do,
 * since they give no depth at all.
 *
 * Errors: formats.calibration-unknown, formats.calibration-unusable, formats.calibration-of-other, formats.calibration-expired,
 * formats.calibration-ended, formats.calibration-missing. Blocking: formats.count-without-scale.
 * Warnings: formats.calibration-later, formats.calibration-twice, formats.calibration-undated, formats.zero-not-applied,
 * formats.gyro-zero-missing.
 */
export function checkCalibrations(
  input: RunInput,
  field: string,
  read: ReadingsRead,
  startedAt: string | undefined,
  context: RunContext,
  found: Finder,
): readonly Calibration[] {
  const usable = (input.calibrations ?? []).flatMap((id, index) => {
    const calibration = namedCalibration(
      idText(id),
      input,
      `${field}.calibrations[${index}]`,
      context,
      found,
    );
    if (calibration === undefined) return [];
    if (startedAt !== undefined)
      checkValidity(calibration, startedAt, read, `${field}.calibrations[${index}]`, found);
    return [calibration];
  });
  const dated = usable.some(({ validity }) => validity.until !== undefined || validity.endedBy.length > 0);
  if (startedAt === undefined && dated) {
    const values = { found: "no date", expected: "dates in the times, or started_at" };
    found.warning("formats.calibration-undated", { field: `${field}.calibrations` }, values);
  }
  for (const kind of new Set(usable.map((each) => each.kind))) {
    const ids = usable.filter((each) => each.kind === kind).map((each) => each.id);
    if (ids.length < 2) continue;
    const values = { found: ids.join(", "), expected: `one ${kind}` };
    found.warning("formats.calibration-twice", { field: `${field}.calibrations` }, values);
  }
  checkNeeds(input, field, read, new Set(usable.map((each) => each.kind)), found);
  return usable;
}

function namedCalibration(
  id: string,
  input: RunInput,
  at: string,
  context: RunContext,
  found: Finder,
): Calibration | undefined {
  const calibration = context.calibrations.get(id);
  if (calibration === undefined) {
    const unusable = context.badCalibrationIds.has(id);
    const expected = nearestWord(id, [...context.calibrations.keys()]) ?? "a calibration of the job";
    const code = unusable ? "formats.calibration-unusable" : "formats.calibration-unknown";
    found.error(
      code,
      { field: at },
      { found: id, expected: unusable ? "a calibration that can be read" : expected },
    );
    return undefined;
  }
  const instrument = idText(input.instrument);
  if (calibration.instrumentId === instrument) return calibration;
  const values = {
    found: `${id} of ${calibration.instrumentId}`,
    expected: `a calibration of ${instrument}`,
  };
  found.error("formats.calibration-of-other", { field: at }, values);
  return undefined;
}

function checkValidity(
  calibration: Calibration,
  startedAt: string,
  read: ReadingsRead,
  at: string,
  found: Finder,
): void {
  const start = Date.parse(startedAt);
  const seconds = Math.max(0, ...read.readings.timeS.filter(Number.isFinite).slice(-1));
  const { id, madeAt, validity } = calibration;
  if (Date.parse(madeAt) > start + seconds * 1000) {
    const values = { found: `${id} made at ${madeAt}`, expected: `before the run at ${startedAt}` };
    found.warning("formats.calibration-later", { field: at }, values);
  }
  if (validity.until !== undefined && Date.parse(validity.until) < start) {
    const values = { found: `${id} valid until ${validity.until}`, expected: `valid at ${startedAt}` };
    found.error("formats.calibration-expired", { field: at }, values);
  }
  const event = validity.endedBy.find(
    (each) => Date.parse(each.at) < start + seconds * 1000 && each.at > madeAt,
  );
  if (event !== undefined) {
    const values = {
      found: `${event.what} at ${event.at}`,
      expected: `nothing between ${id} and the run`,
      id,
    };
    found.error("formats.calibration-ended", { field: at }, values);
  }
}

function checkNeeds(
  input: RunInput,
  field: string,
  read: ReadingsRead,
  kinds: ReadonlySet<CalibrationKind>,
  found: Finder,
): void {
  const at = { field: `${field}.calibrations` };
  const { readings } = read;
  const counts = !readings.depthM.some(Number.isFinite);
  if (counts && !kinds.has("depth-scale"))
    found.block("formats.count-without-scale", at, {
      found: "counts only",
      expected: "a depth-scale calibration",
    });
  const tilts = input.measures === "tilt-turn" || input.measures === "keyed-tilt";
  const zeroed = input.zeroed === true;
  const bothFaces = readings.face.includes(1) && readings.face.includes(2);
  if (tilts && !zeroed && !bothFaces && !kinds.has("tilt-zero"))
    found.error("formats.calibration-missing", at, {
      found: "none",
      expected: "tilt-zero, or readings on both faces",
    });
  if (zeroed && kinds.has("tilt-zero"))
    found.warning("formats.zero-not-applied", at, {
      found: "zeroed and a tilt-zero",
      expected: "one of them",
    });
  const gyro = input.measures === "tilt-turn" || input.measures === "acceleration-turn";
  if (gyro && !kinds.has("gyro-zero")) {
    const closed = input.closing !== undefined || (input.ties ?? []).length > 0;
    if (closed) found.warning("formats.gyro-zero-missing", at, { found: "none", expected: "gyro-zero" });
    else
      found.error("formats.calibration-missing", at, {
        found: "none",
        expected: "gyro-zero, or a closing reference",
      });
  }
}

/** Calibrations that may serve a number of runs only: tells the runs beyond it, in the order of time. Error: formats.calibration-used-up. */
export function checkRunCounts(runs: readonly RunRead[], calibrations: readonly Calibration[]): void {
  for (const { id, validity } of calibrations) {
    const { maxRuns } = validity;
    if (maxRuns === undefined) continue;
    const users = runs.filter((each) => each.run?.calibrationIds.includes(id) === true);
    const inTime = users.toSorted((a, b) => timeOf(a) - timeOf(b));
    for (const [index, { found, run }] of inTime.slice(maxRuns).entries()) {
      const values = { found: `use ${maxRuns + index + 1} of ${id}`, expected: `at most ${maxRuns} runs` };
      found.error("formats.calibration-used-up", { field: `${run!.field}.calibrations` }, values);
    }
  }
}

const timeOf = (read: RunRead): number =>
  read.run?.startedAt === undefined ? Number.MAX_VALUE : Date.parse(read.run.startedAt);
