import { verdictWords } from "#text";
import { type Column, Table } from "../../components/table.tsx";
import { VerdictBadge } from "../../components/verdict-badge.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { inboxWords } from "../../words/inbox/words.ts";
import { useTime } from "../../words/use-time.ts";
import { useWords, type Words } from "../../words/use-words.ts";
import type { InboxRow } from "../../worker/desk-review.ts";

export interface RunListProps {
  readonly rows: readonly InboxRow[];
  readonly onOpen: (run: string) => void;
}

/** Runs with their state and what is odd about each; Enter opens one. */
export function RunList({ rows, onOpen }: RunListProps) {
  const word = useWords(inboxWords);
  const language = useLanguage();
  const time = useTime();
  const columns: readonly Column<InboxRow>[] = [
    { id: "run", title: word("run"), text: ({ run }) => run },
    { id: "element", title: word("element"), text: ({ element }) => element },
    { id: "tube", title: word("tube"), text: ({ tube }) => tube ?? "–" },
    {
      id: "verdict",
      title: word("verdict"),
      text: ({ verdict }) => (verdict === undefined ? word("working") : verdictWords[language][verdict]),
      draw: ({ verdict }) => (verdict === undefined ? word("working") : <VerdictBadge verdict={verdict} />),
    },
    { id: "odd", title: word("odd"), text: (row) => oddText(row, word) },
    { id: "state", title: word("state"), text: ({ acceptance }) => word(acceptance) },
    { id: "readings", title: word("readings"), kind: "number", text: ({ readings }) => String(readings) },
    {
      id: "started",
      title: word("started"),
      text: ({ startedAt }) => (startedAt === undefined ? "–" : time(startedAt)),
    },
    {
      id: "arrived",
      title: word("arrived"),
      text: ({ arrivedAt }) => (arrivedAt === undefined ? "–" : time(arrivedAt)),
    },
    { id: "operator", title: word("operator"), text: ({ operator }) => operator ?? "–" },
  ];
  return (
    <Table
      label={word("list")}
      columns={columns}
      rows={rows}
      idOf={({ run }) => run}
      onOpen={({ run }) => onOpen(run)}
    />
  );
}

function oddText(row: InboxRow, word: Words<keyof (typeof inboxWords)["en"]>): string {
  const { isUsable, missing, isOpen, findings, setAside } = row;
  const parts = [
    isUsable ? undefined : word("oddUnusable"),
    missing > 0 ? word("oddMissing", { count: missing }) : undefined,
    isOpen ? word("oddOpen") : undefined,
    findings.error > 0 ? word("oddErrors", { count: findings.error }) : undefined,
    findings.warning > 0 ? word("oddWarnings", { count: findings.warning }) : undefined,
    setAside > 0 ? word("oddAside", { count: setAside }) : undefined,
  ].filter((part) => part !== undefined);
  return parts.length === 0 ? word("oddNothing") : parts.join(", ");
}
