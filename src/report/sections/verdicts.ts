import { VERDICTS } from "#core";
import { MISSING, verdictWords } from "#text";
import type { ReportContext } from "../model/job-report.ts";
import type { Block, ReportElement } from "../model/report-model.ts";
import { sourceText } from "../model/source-text.ts";
import { say } from "../words/say.ts";
import { sectionWords } from "../words/section-words.ts";
import { tableWords } from "../words/table-words.ts";
import { type ReportSection, table } from "./section.ts";

/** Verdict first: what a reader looks for stands before any word on the method. */
export const verdictsSection: ReportSection = {
  id: "verdicts",
  title: sectionWords.verdicts,
  blocks: (context, base) => [
    { kind: "tally", counts: base.tally },
    ...confirmCallout(context),
    { kind: "paragraph", text: say(sectionWords.verdictsIntro, context.language) },
    ...groupTable(context, base.elements),
    ...verdictTable(context, base.elements),
    { kind: "key" },
  ],
};

/** Limits that nobody has read in their document yet: said on the first page, once for each. */
function confirmCallout({ job, language }: ReportContext): readonly Block[] {
  const items = new Set(
    job.criteria
      .filter(({ source }) => source?.status === "memory")
      .map(({ source }) => say(sectionWords.confirmItem, language, { source: sourceText(source, language) })),
  );
  if (items.size === 0) return [];
  return [{ kind: "callout", title: say(sectionWords.confirm, language), items: [...items] }];
}

const groupName = ({ group }: ReportElement, { language }: ReportContext): string =>
  group === "" ? say(tableWords.noGroup, language) : group;

/** One line a group; left out where there is only one. */
function groupTable(context: ReportContext, elements: readonly ReportElement[]): readonly Block[] {
  const groups = new Map<string, ReportElement[]>();
  for (const element of elements) {
    const name = groupName(element, context);
    groups.set(name, [...(groups.get(name) ?? []), element]);
  }
  if (groups.size < 2) return [];
  const count = (value: number) => context.q.count(value);
  const rows = [...groups, [say(tableWords.total, context.language), elements] as const];
  const [block] = table(
    context,
    "groups",
    sectionWords.groupTable,
    [
      { head: "group", cell: ([name]) => name, share: 2 },
      { head: "elements", align: "right", cell: ([, group]) => count(group.length), share: 1 },
    ],
    rows,
  );
  return [
    {
      ...block!,
      columns: [
        ...block!.columns,
        ...VERDICTS.map((verdict) => ({
          key: verdict,
          head: verdictWords[context.language][verdict],
          align: "right" as const,
          share: 1.4,
        })),
      ],
      rows: block!.rows.map((cells, i) => [
        ...cells,
        ...VERDICTS.map((verdict) =>
          count(rows[i]![1].filter((element) => element.verdict === verdict).length),
        ),
      ]),
    },
  ];
}

function verdictTable(context: ReportContext, elements: readonly ReportElement[]): readonly Block[] {
  const governing = ({ governing: line }: ReportElement) => line;
  return table(
    context,
    "verdicts",
    sectionWords.verdictTable,
    [
      { head: "element", cell: ({ id }) => id },
      { head: "verdict", cell: ({ word, verdict }) => ({ text: word, verdict }) },
      { head: "rule", cell: (row) => governing(row)?.rule ?? row.remark, share: 1 },
      { head: "value", align: "right", cell: (row) => governing(row)?.value ?? MISSING },
      { head: "uncertainty", align: "right", cell: (row) => governing(row)?.uncertainty ?? MISSING },
      { head: "limit", align: "right", cell: (row) => governing(row)?.limit ?? MISSING },
      {
        head: "level",
        unit: context.q.placeUnit,
        align: "right",
        cell: (row) => governing(row)?.level ?? MISSING,
      },
      { head: "probability", align: "right", cell: (row) => governing(row)?.probability ?? MISSING },
    ],
    elements,
  );
}
