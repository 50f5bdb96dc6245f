import { MISSING } from "#text";
import type { ReportContext } from "../model/job-report.ts";
import type { Block } from "../model/report-model.ts";
import { say } from "../words/say.ts";
import { sectionWords } from "../words/section-words.ts";
import { calibrationWords, tableWords } from "../words/table-words.ts";
import { type ReportSection, table } from "./section.ts";

const written = ({ subjects }: ReportContext): ReadonlySet<string> =>
  new Set(subjects.map(({ element }) => element.id));

/** Contents 6: bores, casings, tubes. */
export const objectSection: ReportSection = {
  id: "object",
  title: sectionWords.object,
  blocks: (context) => {
    const { job, options, language, q } = context;
    const ids = written(context);
    const millimetres = (metres: number | undefined) => q.offset(metres ?? Number.NaN);
    return [
      { kind: "paragraph", text: options.report.conditions ?? say(sectionWords.objectNone, language) },
      ...table(
        context,
        "tubes",
        sectionWords.tubesTable,
        [
          { head: "element", cell: ({ elementId }) => elementId, share: 1 },
          { head: "tube", cell: ({ id }) => id, share: 1 },
          { head: "easting", unit: q.placeUnit, align: "right", cell: ({ head }) => q.place(head.east) },
          { head: "northing", unit: q.placeUnit, align: "right", cell: ({ head }) => q.place(head.north) },
          { head: "level", unit: q.placeUnit, align: "right", cell: ({ head }) => q.level(head.down) },
          {
            head: "innerDiameter",
            unit: q.offsetUnit,
            align: "right",
            cell: (tube) => millimetres(tube.innerDiameterM),
          },
          {
            head: "length",
            unit: q.depthUnit,
            align: "right",
            cell: (tube) => q.depth(tube.lengthM ?? Number.NaN),
          },
        ],
        job.tubes.filter(({ elementId }) => ids.has(elementId)),
        { small: true },
      ),
    ];
  },
};

/** Contents 7: where the runs begin, and who surveyed that. */
export const headSection: ReportSection = {
  id: "heads",
  title: sectionWords.heads,
  blocks: (context) => {
    const { job, options, language, q } = context;
    const ids = written(context);
    const started = job.runs.filter(({ elementId, start }) => start !== undefined && ids.has(elementId));
    return [
      { kind: "paragraph", text: options.report.headSurvey ?? say(sectionWords.headsNone, language) },
      ...table(
        context,
        "heads",
        sectionWords.headsTable,
        [
          { head: "run", cell: ({ id }) => id, share: 1 },
          { head: "element", cell: ({ elementId }) => elementId, share: 1 },
          { head: "easting", unit: q.placeUnit, align: "right", cell: ({ start }) => q.place(start!.east) },
          { head: "northing", unit: q.placeUnit, align: "right", cell: ({ start }) => q.place(start!.north) },
          { head: "level", unit: q.placeUnit, align: "right", cell: ({ start }) => q.level(start!.down) },
          {
            head: "standard",
            unit: q.offsetUnit,
            align: "right",
            cell: ({ start }) => q.offset(start!.standardUncertaintyM ?? Number.NaN),
          },
        ],
        started,
        { small: true },
      ),
    ];
  },
};

/** Contents 8: what was measured with, and that it was right. */
export const instrumentSection: ReportSection = {
  id: "instruments",
  title: sectionWords.instruments,
  blocks: (context) => {
    const { job, language, q } = context;
    return [
      ...table(
        context,
        "instruments",
        sectionWords.instrumentTable,
        [
          { head: "instrument", cell: ({ id }) => id, share: 1 },
          { head: "serial", cell: ({ serial }) => serial ?? MISSING, share: 1 },
          {
            head: "gauge",
            unit: q.depthUnit,
            align: "right",
            cell: (one) => q.depth(one.gaugeLengthM ?? Number.NaN),
          },
          { head: "budgetClass", cell: ({ budget }) => budget ?? MISSING, share: 1 },
        ],
        job.instruments,
      ),
      ...table(
        context,
        "calibrations",
        sectionWords.calibrationTable,
        [
          { head: "calibration", cell: ({ id }) => id, share: 1 },
          { head: "instrument", cell: ({ instrumentId }) => instrumentId, share: 1 },
          {
            head: "kind",
            cell: ({ kind }) => say(calibrationWords[kind] ?? { en: kind, de: kind }, language),
            share: 1.6,
          },
          { head: "madeAt", cell: ({ madeAt }) => madeAt.slice(0, 16).replace("T", " "), share: 1.4 },
          {
            head: "validUntil",
            cell: ({ validity }) => validity.until?.slice(0, 10) ?? say(tableWords.notLimited, language),
            share: 1.2,
          },
        ],
        job.calibrations,
      ),
      ...calibrationDrawings(context),
    ];
  },
};

const calibrationDrawings = ({ figures }: ReportContext): readonly Block[] =>
  figures
    .filter(({ elementId }) => elementId === undefined)
    .map(({ key, title }) => ({ kind: "figure", figure: key, caption: title }));

/** Contents 9: the runs, as they were made. */
export const fieldSection: ReportSection = {
  id: "field",
  title: sectionWords.field,
  blocks: (context) =>
    table(
      context,
      "runs",
      sectionWords.runTable,
      [
        { head: "run", cell: ({ id }) => id },
        { head: "tube", cell: ({ tube }) => tube },
        { head: "instrument", cell: ({ instrument }) => instrument },
        { head: "operator", cell: ({ operator }) => operator },
        { head: "started", cell: ({ started }) => started, share: 1.3 },
        { head: "measures", cell: ({ measures }) => measures, share: 1.4 },
        { head: "stations", align: "right", cell: ({ stations }) => stations },
        { head: "deepest", unit: context.q.depthUnit, align: "right", cell: ({ depth }) => depth },
        { head: "misclosure", unit: "°", align: "right", cell: ({ misclosure }) => misclosure },
        { head: "misclosureLimit", unit: "°", align: "right", cell: (run) => run.misclosureLimit },
        { head: "state", cell: ({ state }) => state, share: 1 },
      ],
      context.subjects.flatMap(({ report }) => report.runs),
      { small: true },
    ),
};
