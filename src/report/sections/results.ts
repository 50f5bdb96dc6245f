import type { ReportContext } from "../model/job-report.ts";
import type { Block, ReportElement, TableBlock } from "../model/report-model.ts";
import { say } from "../words/say.ts";
import { sectionWords } from "../words/section-words.ts";
import { type ReportSection, table } from "./section.ts";

/** Contents 11: every element on its own page, verdict first, then the drawings, then level by level. */
export const resultsSection: ReportSection = {
  id: "results",
  title: sectionWords.results,
  blocks: (context, base) =>
    base.elements.flatMap((element, i) => elementBlocks(element, i === 0, context, base)),
};

function elementBlocks(
  element: ReportElement,
  isFirst: boolean,
  context: ReportContext,
  base: Parameters<ReportSection["blocks"]>[1],
): readonly Block[] {
  const { language } = context;
  const titles = new Map(base.figures.map(({ key, title }) => [key, title]));
  const heading: Block = {
    kind: "heading",
    level: 2,
    text: `${element.id} · ${element.kind}`,
    newPage: !isFirst,
  };
  const facts: Block = { kind: "facts", rows: element.facts, halves: true };
  const drawings = element.figures.map(
    (key): Block => ({ kind: "figure", figure: key, caption: `${element.id}: ${titles.get(key) ?? ""}` }),
  );
  return [
    heading,
    ...verdictsOf(element, context),
    facts,
    ...(element.stations.length === 0
      ? [{ kind: "paragraph", text: say(sectionWords.noAxis, language) } as const]
      : []),
    ...drawings,
    ...cellTable(`places-${element.id}`, say(sectionWords.placesOf, language, { element: element.id }), {
      columns: base.placeColumns.map((column, c) =>
        c === 0 ? { ...column, share: 1.4 } : { ...column, share: 1 },
      ),
      rows: element.places,
    }),
    ...cellTable(`levels-${element.id}`, say(sectionWords.levelsOf, language, { element: element.id }), {
      columns: base.stationColumns.map((column) => ({ ...column, share: 1 })),
      rows: element.stations.map(({ cells }) => cells),
      note: say(sectionWords.interpolatedNote, language),
      small: true,
    }),
    ...(element.findings.length === 0
      ? []
      : [
          { kind: "heading", level: 3, text: say(sectionWords.findingsOf, language) } as const,
          { kind: "list", items: element.findings } as const,
        ]),
  ];
}

const cellTable = (
  id: string,
  caption: string,
  parts: Pick<TableBlock, "columns" | "rows" | "note" | "small">,
): readonly Block[] => (parts.rows.length === 0 ? [] : [{ kind: "table", id, caption, ...parts }]);

/** The rules held against one element, with the reason where one is not settled. */
function verdictsOf(element: ReportElement, context: ReportContext): readonly Block[] {
  if (element.verdicts.length === 0) return [{ kind: "paragraph", text: element.remark }];
  const reasons = element.verdicts.flatMap(({ rule, reasons: said }) => said.map((one) => `${rule}: ${one}`));
  return [
    ...table(
      context,
      `rules-${element.id}`,
      say(sectionWords.verdictsOf, context.language, { element: element.id }),
      [
        { head: "verdict", cell: ({ word, verdict }) => ({ text: word, verdict }) },
        { head: "rule", cell: ({ rule }) => rule, share: 1 },
        { head: "value", align: "right", cell: ({ value }) => value },
        { head: "uncertainty", align: "right", cell: ({ uncertainty }) => uncertainty },
        { head: "limit", align: "right", cell: ({ limit }) => limit },
        { head: "level", unit: context.q.placeUnit, align: "right", cell: ({ level }) => level },
        { head: "probability", align: "right", cell: ({ probability }) => probability },
      ],
      element.verdicts,
    ),
    ...(reasons.length === 0 ? [] : [{ kind: "list", items: reasons } as const]),
  ];
}
