import { type Job, reduceJob, type Verdict } from "#core";
import { folderFromState } from "#exchange";
import { readJobFolder } from "#formats";
import type { FieldValue, JobState } from "#records";
import type { ConflictEffect } from "../desk-record.ts";
import { breath } from "../jobs/breath.ts";
import { elementKeys } from "../jobs/element-keys.ts";
import type { JobLog } from "../jobs/job-log.ts";
import type { JobNow } from "../jobs/worked-job.ts";
import { verdictOf } from "../view/verdict-of-element.ts";

export type ReadBlob = (blob: string) => Promise<Uint8Array | undefined>;

interface Place {
  readonly thing: string;
  readonly field: string;
}

/** Elements that are worked out for one conflict; a rule of the whole job may touch thousands. */
const MOST_WORKED = 60;

const known = new WeakMap<JobLog, Map<string, Promise<Effects>>>();

interface Effects {
  readonly effects: readonly ConflictEffect[];
  readonly leftOut: number;
}

/**
 * What each value of a field means for the verdicts: the job is made and worked out once with every value, but only where the
 * results can differ. Done once for every state of the log.
 */
export function conflictEffects(now: JobNow, place: Place, readBlob: ReadBlob): Promise<Effects> {
  const ofLog = known.get(now.log) ?? new Map<string, Promise<Effects>>();
  known.set(now.log, ofLog);
  const key = `${place.thing} ${place.field}`;
  const effects = ofLog.get(key) ?? workOut(now.log, place, readBlob);
  ofLog.set(key, effects);
  return effects;
}

interface Version {
  readonly job: Job | undefined;
  readonly keys: ReadonlyMap<string, string>;
}

async function workOut({ entries, state }: JobLog, place: Place, readBlob: ReadBlob): Promise<Effects> {
  const values = state.things[place.thing]?.fields[place.field] ?? [];
  const versions: Version[] = [];
  for (const value of values) {
    const given = await folderFromState(withValue(state, place, value), entries, readBlob);
    const { job } = await readJobFolder(given.folder);
    versions.push({ job, keys: job === undefined ? new Map() : elementKeys(job, given.files) });
    await breath();
  }
  const touched = touchedElements(versions);
  const worked = touched.slice(0, MOST_WORKED);
  const verdicts: ReadonlyMap<string, Verdict>[] = [];
  for (const { job } of versions) verdicts.push(await verdictsOf(job, worked));
  const effects = worked.map((element) => ({ element, verdicts: verdicts.map((each) => each.get(element)) }));
  const isSame = ({ verdicts: [first, ...others] }: ConflictEffect) => others.every((one) => one === first);
  return {
    effects: effects.toSorted((a, b) => Number(isSame(a)) - Number(isSame(b))),
    leftOut: touched.length - worked.length,
  };
}

function withValue(state: JobState, { thing, field }: Place, value: FieldValue): JobState {
  const open = state.things[thing]!;
  const settled = { ...open, fields: { ...open.fields, [field]: [value] } };
  return { ...state, things: { ...state.things, [thing]: settled } };
}

/** Elements whose result depends on something that differs between the versions. */
function touchedElements(versions: readonly Version[]): readonly string[] {
  const all = [...new Set(versions.flatMap(({ keys }) => [...keys.keys()]))];
  const [first, ...others] = versions;
  return all.filter((id) => others.some(({ keys }) => keys.get(id) !== first?.keys.get(id)));
}

async function verdictsOf(
  job: Job | undefined,
  elements: readonly string[],
): Promise<ReadonlyMap<string, Verdict>> {
  const here = elements.filter((id) => job?.elements.some((element) => element.id === id));
  const verdicts = new Map<string, Verdict>();
  if (job === undefined) return verdicts;
  // evidence of all runs goes into all budgets then: nothing can be worked out by itself
  const shares = job.typeA === "replace" ? [job.elements.map(({ id }) => id)] : here.map((id) => [id]);
  for (const share of shares) {
    for (const result of reduceJob(job, { only: share }).elements)
      verdicts.set(result.elementId, verdictOf(result));
    await breath();
  }
  return verdicts;
}
