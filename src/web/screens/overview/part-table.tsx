import { formatProbability } from "#text";
import { type Column, Table } from "../../components/table.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { overviewWords } from "../../words/overview/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { OverviewRow } from "../../worker/desk-record.ts";

/** Parts of a job with their share outside; few are told apart from many by a word. */
export function PartTable({
  label,
  rows,
}: {
  readonly label: string;
  readonly rows: readonly OverviewRow[];
}) {
  const word = useWords(overviewWords);
  const language = useLanguage();
  const percent = (share: number) => formatProbability(share, language);
  const number = (id: string, title: string, text: (row: OverviewRow) => string): Column<OverviewRow> => ({
    id,
    title,
    kind: "number",
    text,
  });
  const columns: readonly Column<OverviewRow>[] = [
    { id: "name", title: label, text: ({ name }) => (name === "" ? word("notSaid") : name) },
    number("elements", word("elements"), ({ elements }) => String(elements)),
    number("measured", word("measuredColumn"), ({ measured }) => String(measured)),
    number("judged", word("judgedColumn"), ({ judged }) => String(judged)),
    number("outside", word("outside"), ({ outside }) => String(outside)),
    number("share", word("share"), ({ judged, share }) => (judged === 0 ? "–" : percent(share))),
    number("range", word("range"), ({ judged, low, high }) =>
      judged === 0 ? "–" : `${percent(low)} … ${percent(high)}`,
    ),
    {
      id: "few",
      title: word("few"),
      text: ({ isSmall }) => word(isSmall ? "fewYes" : "fewNo"),
    },
  ];
  return <Table label={label} columns={columns} rows={rows} idOf={({ name }) => name} />;
}
