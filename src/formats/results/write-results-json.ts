import {
  type AxisRow,
  type CriterionSource,
  type DesignElement,
  degreesFromRadians,
  type ElementResult,
  type Evidence,
  type HolePath,
  type Issue,
  type Job,
  type JobResults,
  type RuleRisk,
  type RunResult,
  ruleRisks,
  sourceKind,
  sourceValueFromSi,
  VERDICTS,
  type VerdictResult,
} from "#core";
import type { ReadJob, UnusableRun } from "../job-folder/read-job-folder.ts";
import {
  type ElementDocument,
  type FindingDocument,
  RESULTS_FORMAT,
  type ResultsDocument,
  type RunDocument,
  type SourceDocument,
  type VerdictDocument,
} from "./results-schema.ts";

export interface WriteOptions {
  /** version of the program */
  readonly version: string;
  /** the sentence for a finding or a reason */
  readonly sentence: (finding: Pick<Issue, "code" | "values">) => string;
}

/**
 * The text of results.json: every run with its steps and stations, every element with its axis and verdicts.
 *
 * Numbers are written so that the same double is read back; what is not known is null, never a number. Runs that could
 * not be used stand with no stations, and their findings.
 *
 * Frame: east, north, level (positive up); tangents north-east-down. Metres; effects of steps carry their unit in the key.
 */
export function writeResultsJson(
  job: Job,
  read: ReadJob,
  results: JobResults,
  options: WriteOptions,
): string {
  const elements = new Map(job.elements.map((element) => [element.id, element]));
  const whole = results.elements.length === job.elements.length;
  const worked = new Set(results.elements.map((element) => element.elementId));
  const unusable = read.unusableRuns.filter((run) => whole || worked.has(run.elementId));
  const findingsOf = findingsByRun(job, read.findings);
  const verdicts = results.elements.flatMap((element) => element.verdicts.map((each) => each.verdict));
  const document: ResultsDocument = {
    format: RESULTS_FORMAT,
    toeline: options.version,
    job: job.name,
    runs: [
      ...results.runs.map((result) => runDocument(result, findingsOf.get(result.runId) ?? [], options)),
      ...unusable.map((run) => unusableDocument(run, results.runs[0]?.method, options)),
    ],
    elements: results.elements.map((result) =>
      elementDocument(result, elements.get(result.elementId), options),
    ),
    evidence: results.evidence.map(evidenceDocument),
    risks: ruleRisks(results.elements, job.decision).map(riskDocument),
    neighbours: [],
    summary: Object.fromEntries(
      VERDICTS.map((word) => [word, verdicts.filter((verdict) => verdict === word).length]),
    ) as ResultsDocument["summary"],
    findings: read.findings.map((issue) => findingDocument(issue, options)),
  };
  return textOf(document);
}

/** JSON with a line for each run, element and finding, so that two files can be compared line by line. */
function textOf(document: ResultsDocument): string {
  const fields = Object.entries(document).map(([key, value]) => {
    const lines =
      Array.isArray(value) && value.length > 0 ? value.map((each) => JSON.stringify(each)) : undefined;
    return `${JSON.stringify(key)}: ${lines === undefined ? JSON.stringify(value) : `[\n${lines.join(",\n")}\n]`}`;
  });
  return `{\n${fields.join(",\n")}\n}\n`;
}

type Covariance = RunResult["covariances"][number];
type OffsetEllipse = NonNullable<ElementResult["uncertainty"]>["ellipses"][number];

/** From north-east-down to ee, en, eu, nn, nu, uu: up is down turned round, which turns the sign of its products once. */
function covarianceEnu(
  covariance: Covariance | undefined,
): RunDocument["stations"][number]["covariance_enu_m2"] {
  if (covariance === undefined || !covariance.every(Number.isFinite)) return null;
  const [nn, ne, nd, ee, ed, dd] = covariance;
  return [ee, ne, 0 - ed, nn, 0 - nd, dd];
}

/** A level from a depth below datum; no minus zero, which would not survive being read by people. */
const levelOf = (downM: number): number => 0 - downM;

/** JSON has no NaN: what is not known is null. */
const known = (value: number | undefined): number | null =>
  value !== undefined && Number.isFinite(value) ? value : null;

function findingDocument(issue: Issue, { sentence }: WriteOptions): FindingDocument {
  const { code, severity, place } = issue;
  return { code, severity, text: sentence(issue), place: { ...place } };
}

function runDocument(result: RunResult, own: readonly Issue[], options: WriteOptions): RunDocument {
  return {
    id: result.runId,
    element: result.elementId,
    tube: result.tubeId ?? null,
    method: result.method,
    judgeable: result.judgeable,
    steps: result.steps.map(({ step, revision, effect }) => ({
      step,
      revision,
      effect: Object.fromEntries(
        Object.entries(effect).map(([key, value]) => [key, typeof value === "number" ? known(value) : value]),
      ),
    })),
    findings: [...own, ...result.findings].map((issue) => findingDocument(issue, options)),
    gaps: gapsDocument(result.gaps),
    stations: result.path === undefined ? [] : stationsDocument(result.path, result.covariances),
  };
}

/** What was found in the readings of each run, and at the run in job.json. */
function findingsByRun(job: Job, findings: readonly Issue[]): ReadonlyMap<string, readonly Issue[]> {
  const byPlace = new Map<string, Issue[]>();
  for (const issue of findings) {
    const place = /^runs\[\d+\]/.exec(issue.place.field ?? "")?.[0] ?? issue.place.file ?? "";
    const others = byPlace.get(place);
    if (others === undefined) byPlace.set(place, [issue]);
    else others.push(issue);
  }
  return new Map(
    job.runs.map((run) => [run.id, [run.field, run.file].flatMap((place) => byPlace.get(place) ?? [])]),
  );
}

function unusableDocument(run: UnusableRun, method: string | undefined, options: WriteOptions): RunDocument {
  return {
    id: run.runId,
    element: run.elementId,
    tube: run.tubeId ?? null,
    method: method ?? "minimum-curvature",
    judgeable: false,
    steps: [],
    findings: run.findings.map((issue) => findingDocument(issue, options)),
    gaps: [],
    stations: [],
  };
}

function stationsDocument(path: HolePath, covariances: readonly Covariance[]): RunDocument["stations"] {
  return Array.from({ length: path.count }, (_, i) => ({
    depth_m: path.depthM[i]!,
    easting_m: path.eastM[i]!,
    northing_m: path.northM[i]!,
    level_m: levelOf(path.downM[i]!),
    tangent_ned: [path.tangentNorth[i]!, path.tangentEast[i]!, path.tangentDown[i]!],
    covariance_enu_m2: covarianceEnu(covariances[i]),
  }));
}

const gapsDocument = (gaps: RunResult["gaps"]): RunDocument["gaps"] =>
  gaps.map(({ fromM, toM }) => ({ from_m: fromM, to_m: toM }));

function elementDocument(
  result: ElementResult,
  element: DesignElement | undefined,
  options: WriteOptions,
): ElementDocument {
  const { verticality } = result;
  return {
    id: result.elementId,
    kind: element?.kind ?? "",
    runs: [...result.runIds],
    axis: result.axis.map((row, i) =>
      axisRowDocument(row, result.uncertainty?.ellipses[i], result.uncertainty?.covariances[i]),
    ),
    gaps: gapsDocument(result.gaps),
    verticality:
      verticality === undefined
        ? null
        : {
            chord_ratio: known(verticality.chordRatio),
            one_in: known(1 / verticality.chordRatio),
            worst_segment_ratio: known(verticality.worstSegmentRatio),
            worst_segment_at_level_m: known(levelOf(verticality.worstSegmentAtDownM)),
          },
    verdicts: result.verdicts.map((verdict) => verdictDocument(verdict, options)),
    budget: (result.uncertainty?.budget ?? []).map(({ place, atDownM, shares }) => ({
      place,
      at_level_m: known(levelOf(atDownM)),
      shares: shares.map(({ source, standardM, share }) => ({
        source,
        standard_m: standardM,
        share: known(share),
      })),
    })),
    trials: (result.uncertainty?.trials ?? []).map((trial) => ({
      criterion: trial.criterionId,
      trials: trial.trials,
      seed: trial.seed,
      mean: known(trial.mean),
      standard_uncertainty: known(trial.standardUncertainty),
      from_95: known(trial.from95),
      to_95: known(trial.to95),
      probability_tolerance: known(trial.probabilityTolerance),
    })),
    findings: result.findings.map((issue) => findingDocument(issue, options)),
  };
}

function riskDocument(risk: RuleRisk): NonNullable<ResultsDocument["risks"]>[number] {
  return {
    criterion: risk.criterionId,
    elements: risk.elements,
    test_uncertainty_ratio: risk.testUncertaintyRatio,
    consumers_risk: risk.consumersRisk,
    producers_risk: risk.producersRisk,
    within_share: risk.withinShare,
  };
}

function evidenceDocument(evidence: Evidence): NonNullable<ResultsDocument["evidence"]>[number] {
  const { instrumentId, sources, value, declared, degreesOfFreedom, origin, count, used } = evidence;
  const first = sources[0]!;
  return {
    instrument: instrumentId,
    sources: [...sources],
    value: sourceValueFromSi(first, value),
    declared: sourceValueFromSi(first, declared),
    unit: sourceKind(first)!.unit,
    degrees_of_freedom: degreesOfFreedom,
    from: origin,
    count,
    used,
  };
}

function axisRowDocument(
  row: AxisRow,
  ellipse: OffsetEllipse | undefined,
  covariance: Covariance | undefined,
): ElementDocument["axis"][number] {
  return {
    level_m: levelOf(row.downM),
    easting_m: row.eastM,
    northing_m: row.northM,
    offset_east_m: row.offsetEastM,
    offset_north_m: row.offsetNorthM,
    offset_m: row.offsetM,
    along_m: row.alongM,
    across_m: row.acrossM,
    u95_m: known(ellipse?.u95M),
    twist_deg: null,
    depth_m: row.depthM,
    interpolated: row.interpolated,
    covariance_enu_m2: covarianceEnu(covariance),
    ellipse95: ellipse === undefined ? null : ellipseDocument(ellipse),
  };
}

function ellipseDocument(ellipse: OffsetEllipse): ElementDocument["axis"][number]["ellipse95"] {
  return {
    semi_major_m: known(ellipse.semiMajor95M),
    semi_minor_m: known(ellipse.semiMinor95M),
    major_from_along_deg: known(degreesFromRadians(ellipse.majorFromAlongRad)),
  };
}

function verdictDocument(verdict: VerdictResult, { sentence }: WriteOptions): VerdictDocument {
  return {
    criterion: verdict.criterionId,
    kind: verdict.kind,
    verdict: verdict.verdict,
    value: known(verdict.value),
    limit: known(verdict.limit),
    unit: verdict.unit,
    standard_uncertainty: known(verdict.standardUncertainty),
    probability_within: known(verdict.probabilityWithin),
    at_level_m: known(levelOf(verdict.atDownM)),
    rule: verdict.rule,
    reasons: verdict.reasons.map(({ code, values }) => ({ code, text: sentence({ code, values }) })),
    revision: verdict.revision,
    source: verdict.source === undefined ? null : sourceDocument(verdict.source),
  };
}

const sourceDocument = (source: CriterionSource): SourceDocument => ({ ...source });
