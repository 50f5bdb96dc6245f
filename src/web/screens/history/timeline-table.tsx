import { type Column, Table } from "../../components/table.tsx";
import { historyWords } from "../../words/history/words.ts";
import { useTime } from "../../words/use-time.ts";
import { useWords } from "../../words/use-words.ts";
import type { TimelineRow } from "../../worker/desk-record.ts";
import styles from "./history-screen.module.css";

export interface TimelineTableProps {
  readonly rows: readonly TimelineRow[];
  readonly onFocus: (row: TimelineRow) => void;
  readonly onOpen: (row: TimelineRow) => void;
}

/** Entries, the newest first; Enter shows the proof of one. */
export function TimelineTable({ rows, onFocus, onOpen }: TimelineTableProps) {
  const word = useWords(historyWords);
  const time = useTime();
  const columns: readonly Column<TimelineRow>[] = [
    {
      id: "wall",
      title: word("wall"),
      text: ({ wall }) => time(wall),
      draw: ({ wall }) => <span className={styles["when"]}>{time(wall)}</span>,
    },
    {
      id: "what",
      title: word("what"),
      text: ({ what }) => what,
      draw: ({ what, aside }) =>
        aside === undefined ? (
          what
        ) : (
          <strong className={styles["aside"]} data-aside={aside}>
            {what}
          </strong>
        ),
    },
    { id: "about", title: word("aboutColumn"), text: ({ about }) => about },
    {
      id: "details",
      title: word("details"),
      text: ({ details }) => details.join("; "),
      draw: ({ details }) => <span className={styles["details"]}>{details.join("; ")}</span>,
    },
    {
      id: "reason",
      title: word("reason"),
      text: ({ reason }) => reason ?? "–",
      draw: ({ reason }) => <span className={styles["reason"]}>{reason ?? "–"}</span>,
    },
    { id: "author", title: word("author"), text: ({ author }) => author },
    { id: "device", title: word("device"), text: ({ deviceName }) => deviceName },
    {
      id: "number",
      title: word("number"),
      kind: "number",
      text: ({ sequence }) => String(sequence),
    },
    { id: "arrival", title: word("arrival"), kind: "number", text: ({ arrival }) => String(arrival) },
  ];
  return (
    <Table
      label={word("list")}
      columns={columns}
      rows={rows}
      idOf={({ id }) => id}
      onFocus={onFocus}
      onOpen={onOpen}
    />
  );
}
