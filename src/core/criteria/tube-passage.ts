import type { HolePath } from "../path/hole-path.ts";
import { interpolatePath } from "../path/interpolate-path.ts";
import { checkAgainstDeclaration } from "./check-request.ts";
import type {
  Criterion,
  CriterionRequest,
  JudgedAxis,
  Language,
  Measured,
  NotMeasured,
} from "./criterion.ts";
import { tightestPlace } from "./probe-passage.ts";
import { type DepthRange, faultOfAxis, faultOfPath, isPartlyRead, readRange } from "./read-range.ts";
import { metresWords, plainNumber } from "./wording.ts";
import { worstOf } from "./worst.ts";

const MM = 1000;

/** Whether a rigid probe of a length and diameter passes the tubes of an element as they really run. */
export const tubePassage: Criterion = {
  id: "tube-passage",
  revision: 1,
  unit: "m",
  parameters: [
    {
      key: "probe_length_m",
      unit: "m",
      min: 0.01,
      max: 100,
      required: false,
      text: {
        en: "rigid length of the probe, if not that of the instrument",
        de: "starre Länge der Sonde, falls nicht die des Geräts",
      },
    },
    {
      key: "probe_diameter_mm",
      unit: "mm",
      min: 1,
      max: 1000,
      required: false,
      text: {
        en: "diameter of the probe, if not that of the instrument",
        de: "Durchmesser der Sonde, falls nicht der des Geräts",
      },
    },
    {
      key: "tube_inner_diameter_mm",
      unit: "mm",
      min: 1,
      max: 2000,
      required: false,
      text: {
        en: "inner diameter of tubes that do not name their own",
        de: "Innendurchmesser von Rohren ohne eigene Angabe",
      },
    },
  ],
  choices: [],
  tables: [],
  source: "Chord and sagitta of a circle: smallest bend radius l^2 / (8 (b - d))",
  text: {
    en: {
      title: "Passage of the probe",
      explanation:
        "Room that the bow of the tube takes up over the length of a rigid probe, against the play of the probe in the tube.",
    },
    de: {
      title: "Durchgang der Sonde",
      explanation:
        "Raum, den die Biegung des Rohrs über die Länge einer starren Sonde braucht, gegen das Spiel der Sonde im Rohr.",
    },
  },
  check: (request) => checkAgainstDeclaration(tubePassage, request),
  measure,
  describe,
};

interface SurveyedTube {
  readonly id: string;
  readonly path: HolePath;
  readonly range: DepthRange;
  readonly innerDiameterM: number | undefined;
  /** length that the tube has and nobody has read, metres */
  readonly unreadM: number;
}

function measure(axis: JudgedAxis, request: CriterionRequest): Measured | NotMeasured {
  const fault = faultOfAxis(axis);
  if (fault !== undefined) return fault;
  const { numbers } = request;
  const lengthM = numbers["probe_length_m"] ?? axis.instrument?.lengthM;
  const diameterMm = numbers["probe_diameter_mm"];
  const diameterM = diameterMm === undefined ? axis.instrument?.outerDiameterM : diameterMm / MM;
  if (!(lengthM !== undefined && lengthM > 0)) return { reason: "criteria.no-probe-length" };
  if (!(diameterM !== undefined && diameterM > 0)) return { reason: "criteria.no-probe-diameter" };

  const tubes = surveyedTubes(axis, request);
  const candidates: Measured[] = [];
  let unmeasured: NotMeasured | undefined;
  for (const tube of tubes) {
    const found = measureTube(tube, lengthM, diameterM);
    if ("reason" in found) unmeasured = found;
    else candidates.push(found);
  }
  const worst = worstOf(candidates);
  if (worst === undefined) return unmeasured ?? { reason: "criteria.no-tube" };
  if (unmeasured?.reason === "criteria.unread-station" || unmeasured?.reason === "criteria.not-a-number")
    return unmeasured;
  const partial =
    isPartlyRead(axis) || unmeasured !== undefined || tubes.some((tube) => tube.unreadM > lengthM);
  return { ...worst, partial };
}

/** The tubes with their own paths; the bore itself where the rule gives an inner diameter and there are no tubes. */
function surveyedTubes(axis: JudgedAxis, request: CriterionRequest): SurveyedTube[] {
  const givenMm = request.numbers["tube_inner_diameter_mm"];
  const givenM = givenMm === undefined ? undefined : givenMm / MM;
  if (axis.tubes.length === 0 && givenM !== undefined)
    return [
      { id: axis.element.id, path: axis.path, range: readRange(axis), innerDiameterM: givenM, unreadM: 0 },
    ];
  return axis.tubes.map(({ tube, path }) => {
    const toM = path.depthM[path.count - 1] ?? Number.NaN;
    return {
      id: tube.id,
      path,
      range: { fromM: path.depthM[0] ?? Number.NaN, toM },
      innerDiameterM: tube.innerDiameterM ?? givenM,
      unreadM: tube.lengthM === undefined ? 0 : tube.lengthM - toM,
    };
  });
}

function measureTube(tube: SurveyedTube, lengthM: number, diameterM: number): Measured | NotMeasured {
  const { path, range, innerDiameterM } = tube;
  const fault = faultOfPath(path);
  if (fault !== undefined) return fault;
  if (!(innerDiameterM !== undefined && Number.isFinite(innerDiameterM)))
    return { reason: "criteria.no-inner-diameter", values: { tube: tube.id } };
  const tightest = tightestPlace(path, range, lengthM);
  if (tightest === undefined)
    return { reason: "criteria.too-short", values: { read_m: range.toM - range.fromM, needed_m: lengthM } };
  if (!Number.isFinite(tightest.roomM)) return { reason: "criteria.not-a-number" };
  return {
    value: tightest.roomM,
    limit: innerDiameterM - diameterM,
    atDownM: interpolatePath(path, tightest.atDepthM).position.down,
    atDepthM: tightest.atDepthM,
    partial: false,
    foundOn: { code: "criteria.on-tube", values: { tube: tube.id } },
  };
}

function describe(request: CriterionRequest, language: Language): string {
  const english = language === "en";
  const {
    probe_length_m: lengthM,
    probe_diameter_mm: diameterMm,
    tube_inner_diameter_mm: innerMm,
  } = request.numbers;
  const own = english ? "that of the instrument" : "die des Geräts";
  const length = lengthM === undefined ? own : metresWords(lengthM, language);
  const diameter = diameterMm === undefined ? own : `${plainNumber(diameterMm, language)} mm`;
  const inner =
    innerMm === undefined
      ? ""
      : english
        ? `, inner diameter ${plainNumber(innerMm, language)} mm where the tube names none`
        : `, Innendurchmesser ${plainNumber(innerMm, language)} mm, wo das Rohr keinen nennt`;
  return english
    ? `a rigid probe passes the tubes: length ${length}, diameter ${diameter}${inner}`
    : `eine starre Sonde geht durch die Rohre: Länge ${length}, Durchmesser ${diameter}${inner}`;
}
