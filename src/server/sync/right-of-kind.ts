import type { Entry } from "#records";
import type { Right } from "../access/person.ts";

/** What somebody needs to write an entry of a kind. A kind that is not listed is none that this office knows. */
const RIGHTS: Readonly<Record<string, Right>> = {
  device: "record",
  person: "record",
  job: "set-up",
  element: "set-up",
  tube: "set-up",
  criterion: "set-up",
  instrument: "set-up",
  calibration: "set-up",
  "calibration-ended": "set-up",
  "run-opened": "record",
  readings: "record",
  reference: "record",
  "run-closed": "record",
  note: "record",
  photo: "record",
  "set-aside": "judge",
  "put-back": "judge",
  decision: "judge",
  continuation: "judge",
  "non-conformance-opened": "record",
  "non-conformance-answered": "judge",
  "non-conformance-closed": "judge",
  "report-issued": "sign",
  "sign-off": "sign",
};

/** Kinds of entry that somebody has to have a right for. A test holds them against the registry. */
export const kindsWithRight: readonly string[] = Object.keys(RIGHTS);

/**
 * The right that an entry asks for; undefined for a kind that this office does not know. A signature for a run is part of taking it;
 * every other one is for those who sign for the house.
 */
export function rightOf({ kind, body }: Pick<Entry, "kind" | "body">): Right | undefined {
  if (kind === "sign-off" && isAboutRun(body["seal"])) return "record";
  return Object.hasOwn(RIGHTS, kind) ? RIGHTS[kind] : undefined;
}

function isAboutRun(seal: unknown): boolean {
  const about = (seal as { readonly statement?: { readonly about?: unknown } } | undefined)?.statement?.about;
  return typeof about === "string" && about.startsWith("run/");
}
