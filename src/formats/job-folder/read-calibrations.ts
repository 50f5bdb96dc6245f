import {
  type Calibration,
  type GyroZeroCalibration,
  type HangingCable,
  type Instrument,
  instrumentClasses,
  instrumentClassOf,
  radiansFromDegrees,
  SECONDS_PER_HOUR,
  type Validity,
} from "#core";
import { excerpt } from "../finding/excerpt.ts";
import type { Finder } from "../finding/finder.ts";
import { nearestWord } from "../finding/nearest-word.ts";
import { isDateOnly, isoOf, momentOf } from "../text/iso-time.ts";
import { type FolderReader, tidyPath } from "./folder.ts";
import { readErrors } from "./read-errors.ts";
import type { Item, JobInput } from "./read-job-json.ts";
import { readRestLog } from "./read-rest-log.ts";
import { idText } from "./schema/basics.ts";
import type { CalibrationInput, InstrumentInput } from "./schema/calibration-schema.ts";

const LAST_MS_OF_DAY = 86_400_000 - 1;

/**
 * Instruments in core units. Warning: formats.budget-unknown, where no class of that name is known.
 */
export function readInstruments(input: JobInput, found: Finder): Instrument[] {
  return input.instruments.map(({ input: each, field }: Item<InstrumentInput>) => {
    if (each.budget !== undefined && instrumentClassOf(each.budget) === undefined) {
      const known = instrumentClasses.map((one) => one.id);
      const values = {
        found: excerpt(each.budget),
        expected: nearestWord(each.budget, known) ?? known.join(", "),
      };
      found.warning("formats.budget-unknown", { field: `${field}.budget` }, values);
    }
    return {
      id: idText(each.id),
      serial: each.serial === undefined ? undefined : idText(each.serial),
      gaugeLengthM: each.gauge_length_m,
      outerDiameterM: each.outer_diameter_mm === undefined ? undefined : each.outer_diameter_mm / 1000,
      lengthM: each.length_m,
      cable: cableOf(each),
      budget: each.budget,
      declaredErrors: readErrors(each.errors, `${field}.errors`, found),
      field,
    };
  });
}

function cableOf({ cable }: InstrumentInput): HangingCable | undefined {
  if (cable === undefined) return undefined;
  const {
    axial_stiffness_n: axialStiffnessN,
    probe_weight_n: probeWeightN,
    weight_n_per_m: cableWeightNPerM,
  } = cable;
  return { axialStiffnessN, probeWeightN, cableWeightNPerM };
}

/** Where the raw logs of calibrations are found, and a place for what is found in them. */
export interface CalibrationFiles {
  readonly folder: FolderReader;
  readonly finderFor: (file: string) => Finder;
}

export interface CalibrationsRead {
  readonly calibrations: readonly Calibration[];
  /** ids of calibrations that stand in the job but cannot be used */
  readonly badIds: ReadonlySet<string>;
}

/**
 * Calibrations in core units. One that contradicts itself is told and left out.
 *
 * Errors: formats.instrument-unknown, formats.attitude-incomplete, formats.faces-unpaired, formats.calibration-zero,
 * formats.gyro-zero-rate, formats.file-missing.
 */
export function readCalibrations(
  input: JobInput,
  instruments: readonly Instrument[],
  files: CalibrationFiles,
  found: Finder,
): CalibrationsRead {
  const known = new Set(instruments.map((instrument) => instrument.id));
  const calibrations: Calibration[] = [];
  const badIds = new Set(input.badCalibrations);
  for (const item of input.calibrations) {
    const owner = idText(item.input.instrument);
    const isKnown = known.has(owner) || input.badInstruments.has(owner);
    if (!isKnown) {
      const at = { field: `${item.field}.instrument` };
      found.error("formats.instrument-unknown", at, { found: owner, expected: [...known].join(", ") });
    }
    const calibration = isKnown ? calibrationOf(item, files, found) : undefined;
    if (calibration === undefined) badIds.add(idText(item.input.id));
    else calibrations.push(calibration);
  }
  return { calibrations, badIds };
}

function calibrationOf(
  { input, field }: Item<CalibrationInput>,
  files: CalibrationFiles,
  found: Finder,
): Calibration | undefined {
  const record = {
    id: idText(input.id),
    instrumentId: idText(input.instrument),
    madeAt: isoText(input.made_at),
    validity: validityOf(input),
    field,
  };
  switch (input.kind) {
    case "tilt-zero":
      if (!facesPair(input.faces, field, found)) return undefined;
      return {
        ...record,
        kind: "tilt-zero",
        faces: input.faces.map((face) => ({
          face: face.face,
          xRad: radiansFromDegrees(face.x_deg),
          yRad: radiansFromDegrees(face.y_deg),
        })),
      };
    case "accelerometer":
      return { ...record, kind: "accelerometer", positions: input.positions };
    case "gyro-zero":
      return gyroZeroOf(record, input, files, found);
    case "gyro-scale":
      if (isZero(input.true_turn_deg, `${field}.true_turn_deg`, found)) return undefined;
      if (input.shown_turns_deg.some((turn, i) => isZero(turn, `${field}.shown_turns_deg[${i}]`, found)))
        return undefined;
      return {
        ...record,
        kind: "gyro-scale",
        trueTurnRad: radiansFromDegrees(input.true_turn_deg),
        shownTurnsRad: input.shown_turns_deg.map(radiansFromDegrees),
      };
    case "depth-scale":
      if (input.counts.some((count, i) => isZero(count, `${field}.counts[${i}]`, found))) return undefined;
      return { ...record, kind: "depth-scale", lengthM: input.length_m, counts: input.counts };
  }
}

type Record = Pick<Calibration, "id" | "instrumentId" | "madeAt" | "validity" | "field">;

function gyroZeroOf(
  record: Record,
  input: Extract<CalibrationInput, { kind: "gyro-zero" }>,
  files: CalibrationFiles,
  found: Finder,
): GyroZeroCalibration | undefined {
  const axisTrueNed = axisOf(input, record.field, found);
  const rate = rateOf(input, record.field, files, found);
  if (axisTrueNed === undefined || rate === undefined) return undefined;
  const u = input.standard_uncertainty_deg_per_h;
  return {
    ...record,
    kind: "gyro-zero",
    ...rate,
    ...(u === undefined ? {} : { standardUncertaintyRadPerS: perSecond(u) }),
    axisTrueNed,
    latitudeRad: radiansFromDegrees(input.latitude_deg),
  };
}

type Rate = Pick<GyroZeroCalibration, "rateRadPerS" | "standardUncertaintyRadPerS" | "allan">;

/** The rate at rest: as it is given, or from its log. */
function rateOf(
  input: Extract<CalibrationInput, { kind: "gyro-zero" }>,
  field: string,
  files: CalibrationFiles,
  found: Finder,
): Rate | undefined {
  const { rate_deg_per_h: given, log } = input;
  if (given === undefined ? log === undefined : log !== undefined) {
    const values = { found: log === undefined ? "neither" : "both", expected: "rate_deg_per_h or log" };
    found.error("formats.gyro-zero-rate", { field }, values);
    return undefined;
  }
  if (given !== undefined) return { rateRadPerS: perSecond(given), standardUncertaintyRadPerS: undefined };
  const name = tidyPath(log!);
  const bytes = files.folder.read(name);
  if (bytes === undefined) {
    const expected = nearestWord(name, files.folder.names) ?? "a file of the job folder";
    found.error("formats.file-missing", { field: `${field}.log` }, { found: name, expected });
    return undefined;
  }
  const result = readRestLog(bytes, files.finderFor(name));
  if (result === undefined) return undefined;
  const { rateRadPerS, standardUncertaintyRadPerS, allan } = result;
  return { rateRadPerS, standardUncertaintyRadPerS, allan };
}

const perSecond = (degreesPerHour: number): number => radiansFromDegrees(degreesPerHour) / SECONDS_PER_HOUR;

/** Direction of the probe's down-hole axis during the zero, true north-east-down. */
function axisOf(
  input: Extract<CalibrationInput, { kind: "gyro-zero" }>,
  field: string,
  found: Finder,
): readonly [number, number, number] | undefined {
  if (input.attitude === "upright") return [0, 0, 1];
  if (input.attitude === "inverted") return [0, 0, -1];
  const { inclination_deg: inclination, azimuth_deg: azimuth } = input;
  if (inclination === undefined || azimuth === undefined) {
    const lacking = inclination === undefined ? "inclination_deg" : "azimuth_deg";
    const values = {
      found: "nothing",
      expected: "inclination_deg and azimuth_deg (true) of an inclined rest",
    };
    found.error("formats.attitude-incomplete", { field: `${field}.${lacking}` }, values);
    return undefined;
  }
  const lean = radiansFromDegrees(inclination);
  const bearing = radiansFromDegrees(azimuth);
  return [Math.sin(lean) * Math.cos(bearing), Math.sin(lean) * Math.sin(bearing), Math.cos(lean)];
}

/** The zero is the half sum over both faces: each face must be there as often as the other. */
function facesPair(faces: readonly { face: 1 | 2 }[], field: string, found: Finder): boolean {
  const first = faces.filter((face) => face.face === 1).length;
  if (2 * first === faces.length) return true;
  const values = {
    found: `${first} on face 1, ${faces.length - first} on face 2`,
    expected: "as many on each face",
  };
  found.error("formats.faces-unpaired", { field: `${field}.faces` }, values);
  return false;
}

function isZero(value: number, field: string, found: Finder): boolean {
  if (value !== 0) return false;
  found.error("formats.calibration-zero", { field }, { found: 0, expected: "a number other than 0" });
  return true;
}

function validityOf(input: CalibrationInput): Validity {
  const { valid_until: until, max_runs: maxRuns, ended_by: endedBy = [] } = input;
  const endOfDay = until !== undefined && isDateOnly(until) ? LAST_MS_OF_DAY : 0;
  return {
    until: until === undefined ? undefined : isoOf(momentOf(until)!.ms + endOfDay),
    maxRuns,
    endedBy: endedBy.map(({ at, what }) => ({ at: isoText(at), what })),
  };
}

/** The schema has let only moments through. */
const isoText = (moment: string): string => isoOf(momentOf(moment)!.ms);
