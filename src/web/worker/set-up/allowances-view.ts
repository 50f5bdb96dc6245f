import {
  APPLIES_TO_KEYS,
  appliesTo,
  type CriterionRequest,
  criterion,
  type DesignElement,
  elementKinds,
  type Issue,
  type Job,
  type Language,
  ned,
  type Verdict,
} from "#core";
import type { AllowancePicture, AllowancesView, RuleDraft, RulePreview, RuleView } from "../desk-set-up.ts";
import type { JobNow } from "../jobs/worked-job.ts";

const POINTS = 41;
const IMAGINED_LENGTH_M = 20;
const NO_VERDICTS = { within: 0, "too-close-to-call": 0, outside: 0, "not-judged": 0 } as const;

/** Stands for the elements while there are none: plumb, 1 m thick, 20 m long. It is on no list. */
const IMAGINED: DesignElement = {
  id: "",
  kind: "bored-pile",
  section: { shape: "round", diameterM: 1 },
  head: ned(0, 0, 0),
  cutoffDownM: 1,
  toeDownM: IMAGINED_LENGTH_M,
  rakeRad: 0,
  rakeBearingRad: undefined,
  group: undefined,
  sequence: undefined,
  role: undefined,
  loadKn: undefined,
  place: { file: "", line: 0 },
};

/** The rules of a job, each with its sentence, its picture, and what it does. */
export function allowancesView({ read, results }: JobNow, language: Language): AllowancesView | undefined {
  const { job } = read;
  if (job === undefined) return undefined;
  const rules = job.criteria.map((request): RuleView => {
    const elements = job.elements.filter((element) => appliesTo(request, element));
    const counts: Record<Verdict, number> = { ...NO_VERDICTS };
    for (const { id } of elements)
      for (const { criterionId, verdict } of results.get(id)?.result.verdicts ?? [])
        if (criterionId === request.id) counts[verdict]++;
    return {
      ...draftOf(request),
      sentence: criterion(request.kind)?.describe(request, language) ?? request.kind,
      ofSet: setIndexOf(request),
      applies: elements.length,
      counts,
      picture: pictureOf(request, elements[0]),
    };
  });
  return { rules, decision: job.decision, elements: job.elements.length, words: wordsOf(job) };
}

const draftOf = ({
  id,
  kind,
  appliesTo: to,
  numbers,
  words,
  tables,
  source,
}: CriterionRequest): RuleDraft => ({
  id,
  kind,
  appliesTo: to,
  numbers,
  words,
  tables,
  source,
});

/** Rules of a set are named in job.json by the set: "criteria_sets[0]". */
export function setIndexOf({ field }: CriterionRequest): number | undefined {
  const index = /^criteria_sets\[(\d+)\]/.exec(field)?.[1];
  return index === undefined ? undefined : Number(index);
}

export const requestOf = (draft: RuleDraft): CriterionRequest => ({ ...draft, field: "" });

function wordsOf({ elements }: Pick<Job, "elements">): Readonly<Record<string, readonly string[]>> {
  const own: Readonly<Record<string, (element: DesignElement) => string | undefined>> = {
    kind: ({ kind }) => kind,
    group: ({ group }) => group,
    role: ({ role }) => role,
    element: ({ id }) => id,
  };
  return Object.fromEntries(
    APPLIES_TO_KEYS.map((key) => {
      const used = elements.map((element) => own[key]?.(element)).filter((word) => word !== undefined);
      const all = key === "kind" && used.length === 0 ? elementKinds.map(({ id }) => id) : used;
      return [key, [...new Set(all)]];
    }),
  );
}

/** What a rule that is not written yet says, and what it lacks. */
export function rulePreview({ read }: JobNow, draft: RuleDraft, language: Language): RulePreview {
  const request = requestOf(draft);
  const kind = criterion(draft.kind);
  const faults = (kind?.check(request) ?? []).map(
    ({ field, expected, found }): Issue => ({
      code: "formats.criterion-field",
      severity: "error",
      place: { field },
      values: { found, expected },
    }),
  );
  const elements = (read.job?.elements ?? []).filter((element) => appliesTo(request, element));
  const isSound = kind !== undefined && faults.length === 0;
  return {
    sentence: isSound ? kind.describe(request, language) : undefined,
    faults,
    applies: elements.length,
    picture: isSound ? pictureOf(request, elements[0]) : undefined,
  };
}

/** The allowed offset down an element; undefined where the rule has none that could be drawn. */
export function pictureOf(
  request: CriterionRequest,
  found: DesignElement | undefined,
): AllowancePicture | undefined {
  const kind = criterion(request.kind);
  const element = found ?? IMAGINED;
  if (kind?.allowanceM === undefined) return undefined;
  const topM = element.head.down;
  const lengthM = (element.toeDownM ?? topM + IMAGINED_LENGTH_M) - topM;
  const levels = Array.from({ length: POINTS }, (_, i) => topM + (lengthM * i) / (POINTS - 1));
  // a rule may speak of one level only
  const single = [element.cutoffDownM, negative(request.numbers["at_level_m"])].filter(
    (downM) => downM !== undefined && !levels.includes(downM),
  ) as readonly number[];
  const points = [...levels, ...single]
    .sort((a, b) => a - b)
    .map((downM) => ({
      depthM: downM - topM,
      levelM: -downM,
      allowedM: kind.allowanceM!(element, downM, request),
    }))
    .filter(({ allowedM }) => Number.isFinite(allowedM));
  return points.length === 0 ? undefined : { element: found?.id, lengthM, points };
}

const negative = (value: number | undefined): number | undefined =>
  value === undefined ? undefined : -value;
