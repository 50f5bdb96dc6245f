import { useNavigate } from "react-router";
import { verdictWords } from "#text";
import { useJob } from "../../app/job-frame.tsx";
import { measuredText } from "../../components/measured.tsx";
import { type Column, Table } from "../../components/table.tsx";
import { VerdictBadge } from "../../components/verdict-badge.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { overviewWords } from "../../words/overview/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { ElementRow } from "../../worker/desk.ts";
import { addressOf } from "../review/addresses.ts";

/** Elements that need somebody; Enter opens one. */
export function WorstTable({ rows }: { readonly rows: readonly ElementRow[] }) {
  const job = useJob();
  const word = useWords(overviewWords);
  const language = useLanguage();
  const navigate = useNavigate();
  const measured = ({ deciding }: ElementRow) =>
    deciding === undefined ? undefined : measuredText(deciding, language);
  const columns: readonly Column<ElementRow>[] = [
    { id: "element", title: word("element"), text: ({ id }) => id },
    {
      id: "verdict",
      title: word("verdict"),
      text: ({ verdict }) => (verdict === undefined ? "–" : verdictWords[language][verdict]),
      draw: ({ verdict }) => (verdict === undefined ? "–" : <VerdictBadge verdict={verdict} />),
    },
    { id: "found", title: word("found"), kind: "number", text: (row) => measured(row)?.value ?? "–" },
    { id: "allowed", title: word("allowed"), kind: "number", text: (row) => measured(row)?.limit ?? "–" },
  ];
  return (
    <Table
      label={word("worst")}
      columns={columns}
      rows={rows}
      idOf={({ id }) => id}
      onOpen={({ id }) => void navigate(addressOf.verdict(job.id, id))}
    />
  );
}
