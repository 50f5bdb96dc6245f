import { type KeyboardEvent, type ReactNode, useId, useRef, useState } from "react";
import { componentWords } from "../words/components/words.ts";
import { useWords } from "../words/use-words.ts";
import { Button } from "./button.tsx";
import styles from "./table.module.css";
import { tableText } from "./table-text.ts";
import { tell } from "./toast.tsx";
import { useRowWindow } from "./use-row-window.ts";

export interface Column<Row> {
  readonly id: string;
  readonly title: string;
  /** stands in the head, so that no number is without its unit */
  readonly unit?: string;
  /** number: at the right, figures of equal width */
  readonly kind?: "text" | "number";
  /** what the cell says, also when it is copied */
  readonly text: (row: Row) => string;
  /** how it is drawn, where that is more than its text */
  readonly draw?: (row: Row) => ReactNode;
}

export interface TableProps<Row> {
  readonly label: string;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly idOf: (row: Row) => string;
  /** ids; the first column and the mark in it show what is chosen */
  readonly chosen?: ReadonlySet<string>;
  readonly onChoose?: (ids: ReadonlySet<string>) => void;
  /** Enter, or a double press */
  readonly onOpen?: (row: Row) => void;
  /** row that the keyboard stands on, where the screen wants to know */
  readonly onFocus?: (row: Row) => void;
  /** struck through, still to be read: a reading that was set aside */
  readonly isStruck?: (row: Row) => boolean;
  /** keys of the screen's own, on the row that the keyboard stands on; true: it was for the screen */
  readonly onKey?: (event: KeyboardEvent, row: Row) => boolean;
  /** beside the count and the copy button */
  readonly actions?: ReactNode;
  /** column by which the rows stand, which the caller has put in order; with `onSort` the heads can be pressed */
  readonly sorted?: Sorted | undefined;
  readonly onSort?: (column: string) => void;
}

/** Column by which rows are put in order. */
export interface Sorted {
  readonly id: string;
  readonly isDown: boolean;
}

/**
 * A table for numbers: units in the heads, first column and head stay in sight, arrow keys move, Space chooses, Enter opens,
 * Ctrl+C copies the chosen rows (or all) as text. Long tables draw only the rows in sight.
 */
export function Table<Row>(props: TableProps<Row>) {
  const { label, columns, rows, idOf, chosen, onChoose, onOpen } = props;
  const word = useWords(componentWords);
  const caption = useId();
  const place = useRef<HTMLDivElement>(null);
  const [standing, setStanding] = useState(0);
  const at = Math.min(standing, rows.length - 1);
  const { from, to, before, after } = useRowWindow(place, rows.length);
  const copy = () => copyRows(props, word);
  const move = (target: number) => {
    const next = Math.max(0, Math.min(rows.length - 1, target));
    setStanding(next);
    focusRow(place.current, next);
    const row = rows[next];
    if (row !== undefined) props.onFocus?.(row);
  };
  const toggle = (row: Row) => {
    if (chosen === undefined) return;
    const id = idOf(row);
    onChoose?.(
      chosen.has(id) ? new Set([...chosen].filter((each) => each !== id)) : new Set([...chosen, id]),
    );
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const row = rows[at];
    if (row === undefined || !(event.target instanceof HTMLTableRowElement)) return;
    const target = targetOf(event.key, at, rows.length);
    if (target !== undefined) move(target);
    else if (props.onKey?.(event, row) === true) {
      // the screen has taken it
    } else if (event.key === " ") toggle(row);
    else if (event.key === "Enter") onOpen?.(row);
    else if (event.key === "c" && (event.ctrlKey || event.metaKey)) copy();
    else return;
    event.preventDefault();
  };
  return (
    <div className={styles["table"]}>
      <div className={styles["bar"]}>
        <span id={caption} className={styles["count"]}>
          {label} · {word("tableRows", { count: rows.length })}
        </span>
        <span className={styles["actions"]}>
          {props.actions}
          <Button weight="quiet" onPress={copy}>
            {word("tableCopy")}
          </Button>
        </span>
      </div>
      <div className={styles["scroll"]} ref={place}>
        <table
          // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: rows can be moved through and chosen: a grid
          role="grid"
          aria-labelledby={caption}
          aria-rowcount={rows.length + 1}
          aria-multiselectable={chosen !== undefined || undefined}
          onKeyDown={onKeyDown}
        >
          <thead>
            <tr>
              {columns.map(({ id, title, unit, kind }) => (
                <th key={id} scope="col" data-kind={kind} aria-sort={sortOf(id, props.sorted)}>
                  <Head id={id} sorted={props.sorted} onSort={props.onSort}>
                    {title}
                    {unit === undefined ? null : <span className={styles["unit"]}> ({unit})</span>}
                  </Head>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {before > 0 ? <SpareRow height={before} columns={columns.length} /> : null}
            {rows.slice(from, to).map((row, i) => (
              <TableRow
                key={idOf(row)}
                row={row}
                index={from + i}
                isStanding={from + i === at}
                onPress={() => {
                  move(from + i);
                  toggle(row);
                }}
                {...props}
              />
            ))}
            {after > 0 ? <SpareRow height={after} columns={columns.length} /> : null}
          </tbody>
        </table>
      </div>
    </div>
  );
}

const sortOf = (id: string, sorted: Sorted | undefined) => {
  if (sorted?.id !== id) return undefined;
  return sorted.isDown ? "descending" : "ascending";
};

/** The text of a head; something to press where rows can be put in order. */
function Head({
  id,
  sorted,
  onSort,
  children,
}: {
  readonly id: string;
  readonly sorted: Sorted | undefined;
  readonly onSort: ((column: string) => void) | undefined;
  readonly children: ReactNode;
}) {
  if (onSort === undefined) return children;
  return (
    <button type="button" className={styles["sort"]} onClick={() => onSort(id)}>
      {children}
      <span aria-hidden="true" className={styles["order"]}>
        {sorted?.id === id ? (sorted.isDown ? "▾" : "▴") : ""}
      </span>
    </button>
  );
}

/** The room of rows that are out of sight; they are counted by the numbers of the others. */
const SpareRow = ({ height, columns }: { readonly height: number; readonly columns: number }) => (
  <tr>
    <td colSpan={columns} style={{ height, padding: 0, border: 0 }} />
  </tr>
);

type RowProps<Row> = TableProps<Row> & {
  readonly row: Row;
  readonly index: number;
  readonly isStanding: boolean;
  readonly onPress: () => void;
};

function TableRow<Row>({
  row,
  index,
  isStanding,
  onPress,
  columns,
  idOf,
  chosen,
  onOpen,
  isStruck,
}: RowProps<Row>) {
  const isChosen = chosen?.has(idOf(row));
  return (
    // the keys are heard by the table
    <tr
      data-row={index}
      data-struck={isStruck?.(row) || undefined}
      tabIndex={isStanding ? 0 : -1}
      aria-rowindex={index + 2}
      aria-selected={isChosen}
      onClick={onPress}
      onDoubleClick={() => onOpen?.(row)}
    >
      {columns.map(({ id, kind, text, draw }, column) => {
        const content = draw?.(row) ?? text(row);
        return column === 0 ? (
          <th key={id} scope="row" data-kind={kind}>
            {content}
          </th>
        ) : (
          <td key={id} data-kind={kind}>
            {content}
          </td>
        );
      })}
    </tr>
  );
}

const PAGE = 12;

function targetOf(key: string, at: number, count: number): number | undefined {
  switch (key) {
    case "ArrowDown":
      return at + 1;
    case "ArrowUp":
      return at - 1;
    case "PageDown":
      return at + PAGE;
    case "PageUp":
      return at - PAGE;
    case "Home":
      return 0;
    case "End":
      return count - 1;
    default:
      return undefined;
  }
}

/** Brings a row into sight and puts the keyboard on it; one that is not drawn yet is drawn by the scrolling first. */
function focusRow(place: HTMLElement | null, index: number): void {
  if (place === null) return;
  const find = () => place.querySelector<HTMLElement>(`tr[data-row="${index}"]`);
  const row = find();
  if (row === null) {
    const any = place.querySelector<HTMLElement>("tr[data-row]");
    place.scrollTop = index * (any?.offsetHeight ?? 32);
  }
  requestAnimationFrame(() => {
    find()?.focus({ preventScroll: row !== null });
    find()?.scrollIntoView({ block: "nearest" });
  });
}

async function copyRows<Row>(
  { columns, rows, idOf, chosen }: TableProps<Row>,
  word: ReturnType<typeof useWords<keyof (typeof componentWords)["en"]>>,
): Promise<void> {
  const wanted =
    chosen === undefined || chosen.size === 0 ? rows : rows.filter((row) => chosen.has(idOf(row)));
  const done = await navigator.clipboard.writeText(tableText(columns, wanted)).then(
    () => true,
    () => false,
  );
  tell({ text: done ? word("tableCopied", { count: wanted.length }) : word("tableCopyFailed") });
}
