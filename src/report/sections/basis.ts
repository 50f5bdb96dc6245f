import { criterion, degreesFromRadians, ruleRisks } from "#core";
import { formatProbability } from "#text";
import { rakeText } from "../model/element-lines.ts";
import type { ReportContext } from "../model/job-report.ts";
import { sectionText } from "../model/report-element.ts";
import type { Block } from "../model/report-model.ts";
import { sourceStatusText, sourceText } from "../model/source-text.ts";
import { decisionText } from "../model/verdict-lines.ts";
import { say } from "../words/say.ts";
import { sectionWords } from "../words/section-words.ts";
import { tableWords } from "../words/table-words.ts";
import { facts, type ReportSection, table } from "./section.ts";

/** Contents 3: what was to be built. */
export const designSection: ReportSection = {
  id: "design",
  title: sectionWords.design,
  blocks: (context) => {
    const { q } = context;
    const level = (downM: number | undefined) => q.level(downM ?? Number.NaN);
    return table(
      context,
      "design",
      sectionWords.designTable,
      [
        { head: "element", cell: ({ element }) => element.id },
        { head: "kind", cell: ({ report }) => report.kind, share: 1 },
        { head: "size", cell: ({ element }) => sectionText(element, q), share: 1.3 },
        {
          head: "easting",
          unit: q.placeUnit,
          align: "right",
          cell: ({ element }) => q.place(element.head.east),
        },
        {
          head: "northing",
          unit: q.placeUnit,
          align: "right",
          cell: ({ element }) => q.place(element.head.north),
        },
        {
          head: "headLevel",
          unit: q.placeUnit,
          align: "right",
          cell: ({ element }) => level(element.head.down),
        },
        {
          head: "cutoff",
          unit: q.placeUnit,
          align: "right",
          cell: ({ element }) => level(element.cutoffDownM),
        },
        {
          head: "toeLevel",
          unit: q.placeUnit,
          align: "right",
          cell: ({ element }) => level(element.toeDownM),
        },
        {
          head: "rake",
          cell: ({ element }) => rakeText(element.rakeRad, element.rakeBearingRad, q),
          share: 1,
        },
      ],
      context.subjects,
      { small: true },
    );
  },
};

/** Contents 4: what coordinates, levels, bearings and signs mean. */
export const datumSection: ReportSection = {
  id: "datum",
  title: sectionWords.datum,
  blocks: (context) => {
    const { job, language, q } = context;
    const { crs, convergenceRad, levelDatum } = job.place;
    const degrees = (value: number) => `${q.degrees(degreesFromRadians(value)).text}°`;
    const notes: readonly Block[] = [
      { kind: "paragraph", text: say(sectionWords.datumNotes, language) },
      ...(q.system === "us"
        ? [{ kind: "paragraph", text: say(sectionWords.usNote, language) } as const]
        : []),
    ];
    return [
      facts(context, [
        ["crs", crs === "local" ? say(tableWords.localGrid, language) : crs],
        ["north", say(tableWords.gridNorth, language)],
        ["convergence", convergenceRad === undefined ? undefined : degrees(convergenceRad)],
        ["declination", declinations(context, degrees)],
        ["levelDatum", levelDatum],
        ["units", say(q.system === "us" ? tableWords.unitsUs : tableWords.unitsSi, language)],
      ]),
      ...notes,
    ];
  },
};

function declinations({ job }: ReportContext, degrees: (radians: number) => string): string | undefined {
  const used = job.runs.flatMap(({ opening, closing }) =>
    [opening, closing].flatMap((one) =>
      one !== undefined && one.givenNorth === "magnetic" ? [one.declinationRad] : [],
    ),
  );
  if (used.length === 0) return undefined;
  const [least, most] = [degrees(Math.min(...used)), degrees(Math.max(...used))];
  return least === most ? least : `${least} … ${most}`;
}

/** Contents 5: what was asked for, where it is written, and how it is decided. */
export const specificationSection: ReportSection = {
  id: "specification",
  title: sectionWords.specification,
  blocks: (context) => {
    const { job, language, subjects, results } = context;
    const share = (value: number) => ({ text: formatProbability(value, language), value });
    return [
      facts(context, [["decisionRule", decisionText(job.decision.rule, job.decision, language)]]),
      ...table(
        context,
        "criteria",
        sectionWords.criteriaTable,
        [
          { head: "rule", cell: ({ id }) => id },
          {
            head: "what",
            cell: (request) => criterion(request.kind)?.describe(request, language) ?? request.kind,
            share: 2,
          },
          { head: "source", cell: ({ source }) => sourceText(source, language), share: 1.5 },
          { head: "status", cell: ({ source }) => sourceStatusText(source, language), share: 1 },
        ],
        job.criteria,
      ),
      ...table(
        context,
        "risks",
        sectionWords.risksTable,
        [
          { head: "rule", cell: ({ criterionId }) => criterionId, share: 1 },
          { head: "elements", align: "right", cell: (risk) => context.q.count(risk.elements) },
          {
            head: "ratio",
            align: "right",
            cell: (risk) => context.q.degrees(risk.testUncertaintyRatio, 1),
          },
          { head: "consumer", align: "right", cell: (risk) => share(risk.consumersRisk), share: 1 },
          { head: "producer", align: "right", cell: (risk) => share(risk.producersRisk), share: 1 },
        ],
        subjects.length === results.elements.length ? ruleRisks(results.elements, job.decision) : [],
      ),
    ];
  },
};
