import { appliesTo, type DesignElement, type Job, type SurveyRun } from "#core";
import { groupBy } from "../group-by.ts";

/** Which version of a file was read last: the same number as long as it says the same. */
export type FileVersions = ReadonlyMap<string, number>;

/** Numbers the files anew: one that is as it was keeps its number. */
export function fileVersions(
  before: ReadonlyMap<string, string | Uint8Array>,
  versions: FileVersions,
  now: ReadonlyMap<string, string | Uint8Array>,
): FileVersions {
  const next = 1 + Math.max(0, ...versions.values());
  return new Map(
    [...now].map(([name, content]) => {
      const isSame = before.get(name) === content;
      return [name, (isSame ? versions.get(name) : undefined) ?? next];
    }),
  );
}

/**
 * For every element a text of all that its result depends on. Where it is the same as before, the result is too: only what an
 * edit has touched is worked out anew.
 */
export function elementKeys(job: Job, versions: FileVersions): ReadonlyMap<string, string> {
  const instruments = new Map(job.instruments.map((each) => [each.id, textOf(each)]));
  const calibrations = new Map(job.calibrations.map((each) => [each.id, textOf(each)]));
  const runTexts = new Map(job.runs.map((run) => [run.id, runText(run, versions)]));
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
    return [
      shared,
      whole,
      textOf({ ...element, place: null }),
      textOf((tubesOf.get(element.id) ?? []).map((tube) => ({ ...tube, place: null }))),
      textOf(
        job.criteria.filter((request) => appliesTo(request, element)).map((each) => ({ ...each, field: "" })),
      ),
      ...runs.flatMap((run) => [
        runTexts.get(run.id)!,
        instruments.get(run.instrumentId) ?? "",
        ...run.calibrationIds.map((id) => calibrations.get(id) ?? ""),
      ]),
    ].join("\n");
  };
  return new Map(job.elements.map((element) => [element.id, keyOf(element)]));
}

const runText = ({ readings: _readings, field: _field, ...run }: SurveyRun, versions: FileVersions): string =>
  `${textOf(run)} ${versions.get(run.file) ?? 0}`;

/** JSON in which long columns stand as their length and a sum over their bits. */
const textOf = (value: unknown): string =>
  JSON.stringify(value, (_key, inner) => (ArrayBuffer.isView(inner) ? bitsOf(inner) : inner)) ?? "";

/** FNV-1a over the bytes: tells versions of one column apart, not forgeries. */
function bitsOf(view: ArrayBufferView): string {
  let hash = 0x811c9dc5;
  for (const byte of new Uint8Array(view.buffer, view.byteOffset, view.byteLength))
    hash = Math.imul(hash ^ byte, 0x01000193);
  return `${view.byteLength} ${hash >>> 0}`;
}
