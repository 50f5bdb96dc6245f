import { sentenceOf, severityWords } from "#text";
import type { ReportContext, ReportFinding } from "../model/job-report.ts";
import type { Block } from "../model/report-model.ts";
import { say } from "../words/say.ts";
import { sectionWords } from "../words/section-words.ts";
import { type ReportSection, table } from "./section.ts";

/** Contents 13: each rule at each element, with the decision rule that was really used. */
export const conformitySection: ReportSection = {
  id: "conformity",
  title: sectionWords.conformity,
  blocks: (context, base) =>
    table(
      context,
      "conformity",
      sectionWords.conformityTable,
      [
        { head: "element", cell: ({ element }) => element },
        { head: "verdict", cell: ({ line }) => ({ text: line.word, verdict: line.verdict }) },
        { head: "rule", cell: ({ line }) => line.criterionId, share: 1 },
        { head: "value", align: "right", cell: ({ line }) => line.value },
        { head: "uncertainty", align: "right", cell: ({ line }) => line.uncertainty },
        { head: "limit", align: "right", cell: ({ line }) => line.limit },
        { head: "probability", align: "right", cell: ({ line }) => line.probability },
        { head: "source", cell: ({ line }) => line.source, share: 1.5 },
      ],
      base.elements.flatMap(({ id, verdicts }) => verdicts.map((line) => ({ element: id, line }))),
      { small: true },
    ),
};

/** Contents 14: said also where nothing was judged. */
export const neighboursSection: ReportSection = {
  id: "neighbours",
  title: sectionWords.neighbours,
  blocks: ({ language }) => [{ kind: "paragraph", text: say(sectionWords.neighboursNone, language) }],
};

const placeOf = ({ issue, about }: ReportFinding): string => {
  const { file, line, field } = issue.place;
  const where = file === undefined ? about : line === undefined ? file : `${file}:${line}`;
  return [where, field ?? ""].filter((part) => part !== "").join(" ");
};

/** Contents 15: what went otherwise, what was found, and what this paper does not say. */
export const limitsSection: ReportSection = {
  id: "limits",
  title: sectionWords.limits,
  blocks: (context, base) => {
    const { language, options } = context;
    const deviations = options.report.deviations ?? [];
    const shown = context.findings.filter(({ issue }) => issue.severity !== "note");
    const heading = (words: keyof typeof sectionWords): Block => ({
      kind: "heading",
      level: 2,
      text: say(sectionWords[words], language),
    });
    const sentence = (words: keyof typeof sectionWords): Block => ({
      kind: "paragraph",
      text: say(sectionWords[words], language),
    });
    return [
      heading("deviations"),
      deviations.length === 0 ? sentence("noDeviations") : { kind: "list", items: deviations },
      heading("findings"),
      ...(shown.length === 0 ? [sentence("noFindings")] : findingTable(context, shown)),
      heading("disclaimers"),
      { kind: "list", items: base.disclaimers },
      { kind: "callout", title: say(sectionWords.cautions, language), items: base.cautions },
    ];
  },
};

const findingTable = (context: ReportContext, shown: readonly ReportFinding[]): readonly Block[] =>
  table(
    context,
    "findings",
    sectionWords.findingTable,
    [
      { head: "severity", cell: ({ issue }) => severityWords[context.language][issue.severity] },
      { head: "where", cell: placeOf, share: 1 },
      { head: "finding", cell: ({ issue }) => sentenceOf(issue, context.language), share: 2.4 },
    ],
    shown,
    { small: true },
  );

/** Contents 16: who stands behind it. */
export const signaturesSection: ReportSection = {
  id: "signatures",
  title: sectionWords.signatures,
  blocks: ({ language }, base) => [
    { kind: "paragraph", text: say(sectionWords.signaturesIntro, language) },
    { kind: "signatures", lines: base.signatures },
  ],
};

/** Contents 17: what it was made from. */
export const annexSection: ReportSection = {
  id: "annexes",
  title: sectionWords.annexes,
  blocks: (context) => [
    { kind: "paragraph", text: say(sectionWords.annexNone, context.language) },
    ...table(
      context,
      "files",
      sectionWords.rawTable,
      [
        { head: "file", cell: ({ name }) => name, share: 1 },
        { head: "bytes", align: "right", cell: ({ bytes }) => context.q.count(bytes) },
        { head: "sha256", cell: ({ sha256 }) => sha256, share: 2.6 },
      ],
      context.options.files ?? [],
      { small: true },
    ),
  ],
};
