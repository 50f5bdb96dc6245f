import { calibrationEndedKind, calibrationKind } from "./calibration.ts";
import { continuationKind } from "./continuation.ts";
import { criterionKind } from "./criterion.ts";
import { deviceKind } from "./device.ts";
import { elementKind } from "./element.ts";
import { instrumentKind } from "./instrument.ts";
import { jobKind } from "./job.ts";
import type { EntryKind } from "./kind.ts";
import { personKind } from "./person.ts";
import {
  decisionKind,
  nonConformanceAnsweredKind,
  nonConformanceClosedKind,
  nonConformanceOpenedKind,
  noteKind,
  photoKind,
} from "./remarks.ts";
import { reportIssuedKind, signOffKind } from "./report.ts";
import {
  putBackKind,
  readingsKind,
  referenceKind,
  runClosedKind,
  runOpenedKind,
  setAsideKind,
} from "./run.ts";
import { tubeKind } from "./tube.ts";

/** Every kind of entry there is. A new one is a line here and a file beside. */
export const entryKinds: readonly EntryKind[] = [
  deviceKind,
  personKind,
  jobKind,
  elementKind,
  tubeKind,
  criterionKind,
  instrumentKind,
  calibrationKind,
  calibrationEndedKind,
  runOpenedKind,
  readingsKind,
  referenceKind,
  runClosedKind,
  setAsideKind,
  putBackKind,
  noteKind,
  photoKind,
  decisionKind,
  reportIssuedKind,
  signOffKind,
  nonConformanceOpenedKind,
  nonConformanceAnsweredKind,
  nonConformanceClosedKind,
  continuationKind,
];

const byId = new Map(entryKinds.map((kind) => [kind.id, kind]));

/** The kind of that id; undefined for one that this version does not know. */
export const kindOf = (id: string): EntryKind | undefined => byId.get(id);
