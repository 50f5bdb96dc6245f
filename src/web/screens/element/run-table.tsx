import { type Column, Table } from "../../components/table.tsx";
import { elementWords } from "../../words/element/words.ts";
import { useTime } from "../../words/use-time.ts";
import { useWords } from "../../words/use-words.ts";
import type { RunRow } from "../../worker/desk.ts";

/** The runs of an element, those that cannot be worked out too. */
export function RunTable({ runs }: { readonly runs: readonly RunRow[] }) {
  const word = useWords(elementWords);
  const time = useTime();
  const columns: readonly Column<RunRow>[] = [
    { id: "run", title: word("run"), text: ({ id }) => id },
    { id: "tube", title: word("tube"), text: ({ tubeId }) => tubeId ?? "–" },
    { id: "usable", title: word("usable"), text: ({ isUsable }) => word(isUsable ? "yes" : "no") },
    { id: "readings", title: word("readings"), kind: "number", text: ({ readings }) => String(readings) },
    { id: "aside", title: word("setAside"), kind: "number", text: ({ setAside }) => String(setAside) },
    { id: "instrument", title: word("instrument"), text: ({ instrumentId }) => instrumentId },
    { id: "operator", title: word("operator"), text: ({ operator }) => operator ?? "–" },
    {
      id: "started",
      title: word("started"),
      text: ({ startedAt }) => (startedAt === undefined ? "–" : time(startedAt)),
    },
  ];
  return <Table label={word("runs")} columns={columns} rows={runs} idOf={({ id }) => id} />;
}
