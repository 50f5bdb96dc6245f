import type { DesignElement, ElementResult, Job, JobResults } from "#core";
import { calibrationFigures, elementFigures } from "#figures";
import { type ReadJob, writeResultsJson } from "#formats";
import { allFindings } from "#report";
import { sentenceOf, version } from "#text";
import { fileNames } from "../files/file-names.ts";
import { axisCsv } from "./axis-csv.ts";
import { limitsToConfirm, verdictCounts } from "./element-table.ts";
import { findingCounts, placeOf } from "./located-finding.ts";
import { verdictCsv } from "./verdict-csv.ts";

export type OutputFile = readonly [name: string, content: string];

/** results.json, as docs/users/command-line.md describes it. */
export const resultsJson = (job: Job, read: ReadJob, results: JobResults): string =>
  writeResultsJson(job, read, results, { version, sentence: sentenceOf });

/**
 * Everything that `reduce --out` writes, made one by one as it is asked for.
 *
 * @param onElement told after the files of each element.
 */
export function* jobFiles(
  job: Job,
  read: ReadJob,
  results: JobResults,
  onElement: (done: number, total: number) => void,
): Generator<OutputFile> {
  const total = results.elements.length;
  const names = fileNames(results.elements.map((element) => element.elementId));
  const designs = new Map(job.elements.map((element) => [element.id, element]));
  yield ["tables/verdicts.csv", verdictCsv(results.elements)];
  yield ["findings.txt", findingsText(job, read, results)];
  for (const [i, element] of results.elements.entries()) {
    const design = designs.get(element.elementId);
    const name = names.get(element.elementId) ?? element.elementId;
    if (design !== undefined && element.axis.length > 0) yield* elementFiles(job, design, element, name);
    onElement(i + 1, total);
  }
  yield* calibrationFiles(job);
  yield ["results.json", resultsJson(job, read, results)];
}

function* elementFiles(
  job: Job,
  element: DesignElement,
  result: ElementResult,
  name: string,
): Generator<OutputFile> {
  yield [`tables/${name}-axis.csv`, axisCsv(result)];
  const { criteria, decision, name: jobName } = job;
  const input = { element, result, criteria, decision, language: "en", jobName } as const;
  for (const { id, svg } of elementFigures(input)) yield [`figures/${name}-${id}.svg`, svg];
}

/** Named with a word that no element's drawing has: an element may share its id with a calibration. */
function* calibrationFiles(job: Job): Generator<OutputFile> {
  const names = fileNames(job.calibrations.map(({ id }) => id));
  for (const calibration of job.calibrations)
    for (const { id, draw } of calibrationFigures) {
      const svg = draw({ calibration, jobName: job.name, language: "en" });
      const name = names.get(calibration.id) ?? calibration.id;
      if (svg !== undefined) yield [`figures/calibration-${name}-${id}.svg`, svg];
    }
}

function findingsText(job: Job, read: ReadJob, results: JobResults): string {
  const findings = allFindings(read, job, results);
  const lines = findings.map(
    (one) => `${one.issue.severity}: ${placeOf(one)}: ${sentenceOf(one.issue)} (${one.issue.code})`,
  );
  const confirm = limitsToConfirm(job);
  return `${[
    job.name,
    `Worked out by toeline ${version}. ${verdictCounts(results.elements)}`,
    `Findings: ${findingCounts(findings)}.`,
    "",
    ...lines,
    ...(confirm.length > 0 ? ["", ...confirm] : []),
  ].join("\n")}\n`;
}
