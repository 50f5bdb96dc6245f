import { appliesTo, type DesignElement, type Job, type SurveyRun } from "#core";
import { groupBy } from "../group-by.ts";
import { fingerprint } from "./fingerprint.ts";

/**
 * For every element a fingerprint of all that its result depends on. Where it is the same as before, the result is too: only what
 * an edit has touched is worked out anew.
 *
 * @param files of the job folder, by their names.
 */
export function elementKeys(
  job: Job,
  files: ReadonlyMap<string, string | Uint8Array>,
): ReadonlyMap<string, string> {
  const instruments = new Map(job.instruments.map((each) => [each.id, textOf(each)]));
  const calibrations = new Map(job.calibrations.map((each) => [each.id, textOf(each)]));
  const runTexts = new Map(job.runs.map((run) => [run.id, runText(run, files)]));
  const shared = textOf([job.place, job.decision, job.typeA ?? null]);
  // evidence of all runs goes into all budgets then
  const whole =
    job.typeA === "replace"
      ? [...runTexts.values(), ...instruments.values(), ...calibrations.values()].join()
      : "";
  const runsOf = groupBy(job.runs, ({ elementId }) => elementId);
  const tubesOf = groupBy(job.tubes, ({ elementId }) => elementId);
  const keyOf = (element: DesignElement): string => {
    const runs = runsOf.get(element.id) ?? [];
    return fingerprint(
      [
        shared,
        whole,
        textOf({ ...element, place: null }),
        textOf((tubesOf.get(element.id) ?? []).map((tube) => ({ ...tube, place: null }))),
        textOf(
          job.criteria
            .filter((request) => appliesTo(request, element))
            .map((each) => ({ ...each, field: "" })),
        ),
        ...runs.flatMap((run) => [
          runTexts.get(run.id)!,
          instruments.get(run.instrumentId) ?? "",
          ...run.calibrationIds.map((id) => calibrations.get(id) ?? ""),
        ]),
      ].join("\n"),
    );
  };
  return new Map(job.elements.map((element) => [element.id, keyOf(element)]));
}

const runText = (
  { readings: _readings, field: _field, ...run }: SurveyRun,
  files: ReadonlyMap<string, string | Uint8Array>,
): string => `${textOf(run)} ${fingerprint(files.get(run.file) ?? "")}`;

/** JSON in which long columns stand as their fingerprint. */
const textOf = (value: unknown): string =>
  JSON.stringify(value, (_key, inner) => (ArrayBuffer.isView(inner) ? fingerprint(inner) : inner)) ?? "";
