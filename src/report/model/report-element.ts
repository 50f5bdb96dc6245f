import { type DesignElement, type ElementResult, elementKind, type Job, type RunResult } from "#core";
import { sentenceOf, verdictWords } from "#text";
import { say } from "../words/say.ts";
import { tableWords } from "../words/table-words.ts";
import { placeLines, rakeText, runLine, stationLines } from "./element-lines.ts";
import type { ReportOptions } from "./job-report.ts";
import type { Quantities } from "./quantities.ts";
import type { ReportElement } from "./report-model.ts";
import { remarkOf, verdictLine, worstFirst } from "./verdict-lines.ts";

/** What the elements of one report share. */
export interface ElementWork {
  readonly job: Job;
  readonly q: Quantities;
  readonly options: ReportOptions;
  readonly runs: ReadonlyMap<string, RunResult>;
  readonly runsOf: ReadonlyMap<string, readonly Job["runs"][number][]>;
}

/** One element, written out: design, verdicts, levels, runs. */
export function reportElement(
  element: DesignElement,
  result: ElementResult,
  figureKeys: readonly string[],
  { job, q, runs, runsOf }: ElementWork,
): ReportElement {
  const { language } = q;
  const verdicts = worstFirst(result).map((verdict) => verdictLine(verdict, job.decision, q));
  const verdict = verdicts[0]?.verdict ?? "not-judged";
  return {
    id: element.id,
    kind: elementKind(element.kind)?.text[language].name ?? element.kind,
    group: element.group ?? "",
    verdict,
    word: verdictWords[language][verdict],
    governing: verdicts[0],
    remark: remarkOf(element, result, job, language),
    facts: facts(element, result, q),
    verdicts,
    stations: stationLines(result, q),
    places: placeLines(result, element.cutoffDownM, q),
    runs: (runsOf.get(element.id) ?? []).map((run) => runLine(run, runs.get(run.id), q)),
    figures: figureKeys,
    findings: result.findings.map((finding) => sentenceOf(finding, language)),
  };
}

function facts(element: DesignElement, result: ElementResult, q: Quantities): ReportElement["facts"] {
  const { verticality } = result;
  const level = (downM: number | undefined) => (downM === undefined ? "" : q.levelText(downM));
  const rows: readonly [keyof typeof tableWords, string][] = [
    ["size", sectionText(element, q)],
    ["easting", q.placeText(element.head.east)],
    ["northing", q.placeText(element.head.north)],
    ["headLevel", level(element.head.down)],
    ["cutoff", level(element.cutoffDownM)],
    ["toeLevel", level(element.toeDownM)],
    ["rake", rakeText(element.rakeRad, element.rakeBearingRad, q)],
    ["chord", verticality === undefined ? "" : q.ratio(verticality.chordRatio)],
    ["segment", verticality === undefined ? "" : q.ratio(verticality.worstSegmentRatio)],
  ];
  return rows
    .filter(([, value]) => value !== "")
    .map(([name, value]) => ({ name: say(tableWords[name], q.language), value }));
}

/** "Ø 0.900 m", "2.800 × 0.800 m"; empty where the schedule gives none. */
export function sectionText({ section }: DesignElement, q: Quantities): string {
  if (section === undefined) return "";
  if (section.shape === "round") return `Ø ${q.placeText(section.diameterM)}`;
  return `${q.place(section.lengthM).text} × ${q.placeText(section.widthM)}, ${q.bearing(section.orientationRad).text}`;
}
