import { formatNumber } from "#text";
import { Button } from "../../components/button.tsx";
import { type Column, Table } from "../../components/table.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { readingsWords } from "../../words/readings/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { RunReview } from "../../worker/desk-review.ts";
import { decimalsOf, headOf, readingOrder } from "./columns.ts";
import styles from "./readings-screen.module.css";

/** A row as the table shows it, by its place in the run. */
export interface ShownReading {
  readonly index: number;
  readonly cells: readonly (string | number | null)[];
  readonly reason: string | undefined;
  readonly isChanged: boolean;
}

export interface ReadingsTableProps {
  readonly review: RunReview;
  readonly rows: readonly ShownReading[];
  readonly chosen: ReadonlySet<string>;
  readonly onChoose: (ids: ReadonlySet<string>) => void;
  readonly onStand: (index: number) => void;
  /** Space: for the rows that are chosen, else for this one */
  readonly onTurn: (row: ShownReading) => void;
}

/** The readings of a run as they were recorded. Rows that were set aside are struck through and stay. */
export function ReadingsList({ review, rows, chosen, onChoose, onStand, onTurn }: ReadingsTableProps) {
  const word = useWords(readingsWords);
  const language = useLanguage();
  const { table } = review;
  const columns: readonly Column<ShownReading>[] = [
    {
      id: "row",
      title: word("row"),
      kind: "number",
      text: ({ index }) => String(index + 1),
      draw: ({ index, isChanged }) => (
        <>
          {isChanged ? (
            <span
              className={styles["corner"]}
              role="img"
              aria-label={word("changed")}
              title={word("changed")}
            />
          ) : null}
          {index + 1}
        </>
      ),
    },
    {
      id: "state",
      title: word("state"),
      text: ({ reason }) => (reason === undefined ? word("counts") : word("aside", { reason })),
      draw: ({ reason }) => (
        <span className={styles["state"]}>
          {reason === undefined ? word("counts") : word("aside", { reason })}
        </span>
      ),
    },
    ...readingOrder(table.columns).map((at): Column<ShownReading> => {
      const column = table.columns[at]!;
      const { title, unit } = headOf(column, word);
      const decimals = decimalsOf(table, column);
      return {
        id: column,
        title,
        ...(unit === undefined ? {} : { unit }),
        ...(decimals === undefined ? {} : { kind: "number" as const }),
        text: ({ cells }) => {
          const cell = cells[at] ?? null;
          if (cell === null || cell === "") return "–";
          return typeof cell === "number" ? formatNumber(cell, decimals ?? 0, language) : shortTime(cell);
        },
      };
    }),
  ];
  const standing = rows.find(({ index }) => chosen.has(String(index)));
  return (
    <Table
      label={word("table")}
      columns={columns}
      rows={rows}
      idOf={({ index }) => String(index)}
      chosen={chosen}
      onChoose={onChoose}
      onFocus={({ index }) => onStand(index)}
      isStruck={({ reason }) => reason !== undefined}
      onKey={(event, row) => {
        if (event.key !== " " || event.shiftKey) return false;
        onTurn(row);
        return true;
      }}
      actions={
        standing === undefined ? null : (
          <Button weight="quiet" onPress={() => onTurn(standing)}>
            {word(standing.reason === undefined ? "setAside" : "putBack")} ({chosen.size})
          </Button>
        )
      }
    />
  );
}

/** The time of day of an ISO time; the day stands at the head of the page. */
const shortTime = (text: string): string =>
  /^\d{4}-\d\d-\d\dT(\d\d:\d\d:\d\d(?:\.\d)?)/.exec(text)?.[1] ?? text;
