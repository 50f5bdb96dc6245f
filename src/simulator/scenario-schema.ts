import { MEASURES } from "#core";
import { NO_ERRORS } from "./probe-errors.ts";
import {
  anyRecord,
  list,
  moment,
  number,
  oneOf,
  record,
  type Shape,
  text,
  word,
  yesOrNo,
} from "./scenario-shape.ts";

const degrees = number(-3600, 3600);
const small = number(-1000, 1000);
const positive = number(1e-6, 1e6);
const level = number(-20_000, 20_000);
const north = word("grid", "true", "magnetic");

const lean = { rakeDeg: number(0, 90), bearingDeg: degrees };
const wave = record({
  amplitudeDeg: number(-45, 45),
  wavelengthM: number(1, 1e6),
  phaseDeg: degrees,
  towardsDeg: degrees,
});
const hole: Shape = (value, field, found) => {
  const shapes = {
    straight: record({ shape: text, ...lean }),
    arc: record({ shape: text, ...lean, bendDegPerM: number(-45, 45), towardsDeg: degrees }),
    "wandering-bearing": record({
      shape: text,
      ...lean,
      amplitudeDeg: degrees,
      wavelengthM: number(1, 1e6),
      phaseDeg: degrees,
      turnDegPerM: number(-90, 90),
    }),
    waves: record({ shape: text, ...lean, waves: list(wave) }),
    part: record({ shape: text, of: hole, fromM: small }),
  };
  oneOf("shape", shapes)(value, field, found);
};

const reference = record(
  { headingDeg: number(-360, 360), north, standardUncertaintyDeg: number(0, 180) },
  { errorDeg: degrees },
);
const fault = oneOf("fault", {
  gap: record({ fault: text, fromM: small, toM: small }),
  "gyro-jump": record({ fault: text, atM: small, jumpDeg: degrees }),
  "swapped-faces": record({ fault: text }),
});

const place = record(
  {
    crs: (value, field, found) => {
      if (value !== "local") text(value, field, found);
    },
    latitudeDeg: number(-90, 90),
  },
  {
    longitudeDeg: number(-180, 180),
    levelDatum: text,
    convergenceDeg: degrees,
    declinationDeg: degrees,
    declinationErrorDeg: degrees,
  },
);

const instrument = record(
  { id: text, errors: record({}, Object.fromEntries(Object.keys(NO_ERRORS).map((key) => [key, small]))) },
  {
    serial: text,
    gaugeLengthM: positive,
    outerDiameterMm: positive,
    lengthM: positive,
    budget: text,
    resolution: record(
      {},
      { tiltDeg: number(0, 1), turnDeg: number(0, 1), depthM: number(0, 1), acceleration: number(0, 1) },
    ),
    countsPerM: positive,
    samplesPerRow: number(1, 1e6),
  },
);

const calibration = record(
  {
    id: text,
    instrument: text,
    kind: word("tilt-zero", "accelerometer", "gyro-zero", "gyro-scale", "depth-scale"),
    madeAt: moment,
  },
  { validUntil: moment, maxRuns: number(1, 1e6) },
);

const element = record(
  {
    id: text,
    kind: text,
    eastingM: number(),
    northingM: number(),
    headLevelM: level,
    builtOffsetEastM: small,
    builtOffsetNorthM: small,
    hole,
  },
  {
    diameterM: positive,
    lengthM: positive,
    widthM: positive,
    orientationDeg: degrees,
    cutoffLevelM: level,
    toeLevelM: level,
    rakeDeg: number(0, 89),
    rakeBearingDeg: degrees,
    group: text,
    sequence: number(0),
    role: text,
    loadKn: number(),
  },
);

const tube = record(
  { element: text, tube: text, offsetEastM: small, offsetNorthM: small, topLevelM: level },
  { innerDiameterMm: positive, lengthM: positive },
);

const run = record(
  {
    id: text,
    element: text,
    instrument: text,
    measures: word(...MEASURES),
    startedAt: moment,
    intervalM: number(0.001, 1000),
  },
  {
    tube: text,
    calibrations: list(text),
    operator: text,
    fromM: number(0, 10_000),
    toM: number(0, 10_000),
    passes: list(record({ leg: word("down", "up"), face: word(1, 2) })),
    opening: reference,
    closing: reference,
    ties: list(reference),
    faults: list(fault),
    spin: record({ turnsPerM: small, waveTurns: small }),
    grooveBearingDeg: degrees,
    spiral: list(record({ depthM: small, twistDeg: degrees })),
    azimuthNorth: north,
    temperature: record({ surfaceC: number(-60, 80), groundC: number(-60, 80) }),
    zeroed: yesOrNo,
    startUncertaintyM: number(0, 100),
    stepM: number(0.001, 1),
  },
);

/** The layout of a scenario file; see Scenario for the meaning of the fields. */
export const scenarioShape: Shape = record(
  {
    name: text,
    remark: text,
    place,
    instruments: list(instrument),
    calibrations: list(calibration),
    elements: list(element),
    runs: list(run),
  },
  { criteria: list(anyRecord), decision: anyRecord, tubes: list(tube) },
);
