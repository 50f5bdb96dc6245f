import type { Verdict } from "#core";
import { verdictWords } from "#text";
import { measuredText } from "../../components/measured.tsx";
import { type Column, Table } from "../../components/table.tsx";
import { VerdictBadge } from "../../components/verdict-badge.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { jobWords } from "../../words/job/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { ElementRow } from "../../worker/desk.ts";

export interface ElementListProps {
  readonly elements: readonly ElementRow[];
  readonly only: ReadonlySet<Verdict>;
  readonly onOpen: (element: string) => void;
}

/** The elements of the plan as a table: what the plan shows, for reading, copying and the keyboard. */
export function ElementList({ elements, only, onOpen }: ElementListProps) {
  const word = useWords(jobWords);
  const language = useLanguage();
  const rows =
    only.size === 0 ? elements : elements.filter(({ verdict }) => verdict !== undefined && only.has(verdict));
  const decided = (row: ElementRow) =>
    row.deciding === undefined ? undefined : measuredText(row.deciding, language);
  const columns: readonly Column<ElementRow>[] = [
    { id: "element", title: word("element"), text: ({ id }) => id },
    {
      id: "verdict",
      title: word("verdict"),
      text: ({ verdict }) => (verdict === undefined ? "…" : verdictWords[language][verdict]),
      draw: ({ verdict }) => (verdict === undefined ? "…" : <VerdictBadge verdict={verdict} />),
    },
    { id: "value", title: word("found"), kind: "number", text: (row) => decided(row)?.value ?? "–" },
    { id: "limit", title: word("allowed"), kind: "number", text: (row) => decided(row)?.limit ?? "–" },
  ];
  return (
    <Table
      label={word("elements")}
      columns={columns}
      rows={rows}
      idOf={({ id }) => id}
      onOpen={({ id }) => onOpen(id)}
    />
  );
}
