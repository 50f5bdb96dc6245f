import { contract, type Job, type JobResults, VERDICTS } from "#core";
import { verdictWords } from "#text";
import { sections } from "../sections/registry.ts";
import { cautionWords, disclaimerWords } from "../words/caution-words.ts";
import { frame, meaningWords, statusWords } from "../words/frame-words.ts";
import { say } from "../words/say.ts";
import { placeColumns, stationColumns } from "./element-lines.ts";
import type { ReportContext, ReportFinding, ReportOptions } from "./job-report.ts";
import { quantities } from "./quantities.ts";
import { reportChanges } from "./report-changes.ts";
import { type ElementWork, reportElement } from "./report-element.ts";
import { drawCalibrations, drawElement } from "./report-figures.ts";
import {
  REPORT_FORMAT,
  type ReportFigure,
  type ReportIdentity,
  type ReportModel,
  SIGNATURE_MEANINGS,
  type SignatureLine,
} from "./report-model.ts";

/**
 * A report on a job as plain data: every number as finished text with the number beside it, every section, every drawing.
 *
 * The same job, results and options always give the same report; the date is given, never read from a clock.
 *
 * @param findings what was found while the job was read and worked out.
 * @throws ContractError if a result has no element in the job.
 */
export function reportModel(
  job: Job,
  results: JobResults,
  findings: readonly ReportFinding[],
  options: ReportOptions,
): ReportModel {
  const { language, units, report: identity } = options;
  const context = gather(job, results, findings, options);
  const elements = context.subjects.map(({ report }) => report);
  const title = identity.title ?? say(frame.title, language);
  const fingerprint = identity.head?.fingerprint ?? options.fingerprint ?? "";
  const base = {
    format: REPORT_FORMAT,
    language,
    units,
    program: say(frame.madeBy, language, { version: options.version }),
    jobName: job.name,
    identity,
    title,
    statusText: say(statusWords[identity.status], language),
    dateText: identity.date.slice(0, 10),
    numberText: say(frame.number, language, { number: identity.number }),
    revisionText: say(frame.revision, language, { revision: identity.revision }),
    cover: coverFacts(job.name, options),
    tally: VERDICTS.map((verdict) => ({
      verdict,
      word: verdictWords[language][verdict],
      count: elements.filter((element) => element.verdict === verdict).length,
    })),
    elements,
    stationColumns: stationColumns(context.q),
    placeColumns: placeColumns(context.q),
    figures: context.figures,
    signatures: signatureLines(identity, options),
    cautions: cautionWords.map((words) => say(words, language)),
    disclaimers: disclaimerWords.map((words) => say(words, language)),
    fingerprint,
    codeText: codeText(identity, fingerprint),
  } as const;
  const changes = options.previous === undefined ? [] : reportChanges(options.previous, base, language);
  return {
    ...base,
    changes,
    sections: sections
      .map((section) => ({
        id: section.id,
        title: say(section.title, language),
        blocks: section.blocks(context, { ...base, changes }),
      }))
      .filter(({ blocks }) => blocks.length > 0),
  };
}

function gather(
  job: Job,
  results: JobResults,
  findings: readonly ReportFinding[],
  options: ReportOptions,
): ReportContext {
  const { language, units, elements: asked } = options;
  const q = quantities(language, units);
  const designs = new Map(job.elements.map((element) => [element.id, element]));
  const work: ElementWork = {
    job,
    q,
    options,
    runs: new Map(results.runs.map((run) => [run.runId, run])),
    runsOf: groupRuns(job),
  };
  const figures: ReportFigure[] = [];
  const subjects = results.elements
    .filter(({ elementId }) => asked === undefined || asked.includes(elementId))
    .map((result) => {
      const element = designs.get(result.elementId);
      contract(element !== undefined, `reportModel: the job has no element ${result.elementId}`);
      const drawn = drawElement(element, result, job, options);
      figures.push(...drawn);
      const keys = drawn.map(({ key }) => key);
      return { element, result, report: reportElement(element, result, keys, work) };
    });
  return {
    job,
    results,
    findings,
    options,
    language,
    q,
    subjects,
    figures: [...figures, ...drawCalibrations(job, options)],
  };
}

function groupRuns(job: Job): ElementWork["runsOf"] {
  const groups = new Map<string, Job["runs"][number][]>();
  for (const run of job.runs) {
    const group = groups.get(run.elementId);
    if (group === undefined) groups.set(run.elementId, [run]);
    else group.push(run);
  }
  return groups;
}

function coverFacts(jobName: string, { language, report }: ReportOptions): ReportModel["cover"] {
  const rows: readonly [keyof typeof frame, string | undefined][] = [
    ["job", jobName],
    ["site", report.site],
    ["structure", report.structure],
    ["client", report.client],
    ["contract", report.contract],
    ["mainContractor", report.mainContractor],
    ["contractor", report.contractor],
    ["designer", report.designer],
    ["orderedBy", report.orderedBy],
    ["author", report.author],
    ["supersedes", report.supersedes],
  ];
  return rows.flatMap(([name, value]) =>
    value === undefined || value === "" ? [] : [{ name: say(frame[name], language), value }],
  );
}

/** Every meaning has a line; where nobody has signed yet it is empty, to be signed by hand. */
function signatureLines(identity: ReportIdentity, { language }: ReportOptions): readonly SignatureLine[] {
  return SIGNATURE_MEANINGS.flatMap((meaning) => {
    const meaningText = say(meaningWords[meaning], language);
    const signed = (identity.signatures ?? []).filter((signature) => signature.meaning === meaning);
    if (signed.length === 0) return [{ meaning, meaningText, name: "", role: "", at: "" }];
    return signed.map(({ name, role, at }) => ({
      meaning,
      meaningText,
      name,
      role: role ?? "",
      at: at.replace("T", " "),
    }));
  });
}

/** What the code on the cover says: enough to find the sealed data that a paper was made from. */
function codeText(identity: ReportIdentity, fingerprint: string): string {
  const { number, revision, head } = identity;
  const log = head === undefined ? [] : [`log ${head.size} ${head.root}`];
  return [REPORT_FORMAT, `${number} rev ${revision}`, ...log, fingerprint].join("\n");
}
