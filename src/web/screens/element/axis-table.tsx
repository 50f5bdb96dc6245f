import type { AxisRow, ElementResult, OffsetEllipse } from "#core";
import { formatLevel, formatOffset } from "#text";
import { type Column, Table } from "../../components/table.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { elementWords } from "../../words/element/words.ts";
import { useWords } from "../../words/use-words.ts";

interface ShownRow {
  readonly id: string;
  readonly row: AxisRow;
  readonly ellipse: OffsetEllipse | undefined;
}

/** The as-built axis in numbers, with its uncertainty. */
export function AxisTable({ result }: { readonly result: ElementResult }) {
  const word = useWords(elementWords);
  const language = useLanguage();
  const rows = result.axis.map((row, i) => ({
    id: String(i),
    row,
    ellipse: result.uncertainty?.ellipses[i],
  }));
  const offset = (id: "offset" | "along" | "across", value: (row: AxisRow) => number): Column<ShownRow> => ({
    id,
    title: word(id),
    kind: "number",
    text: ({ row }) => formatOffset(value(row), language),
  });
  const columns: readonly Column<ShownRow>[] = [
    {
      id: "level",
      title: word("level"),
      kind: "number",
      text: ({ row }) => formatLevel(-row.downM, language),
    },
    offset("offset", ({ offsetM }) => offsetM),
    offset("along", ({ alongM }) => alongM),
    offset("across", ({ acrossM }) => acrossM),
    {
      id: "within95",
      title: word("within95"),
      kind: "number",
      text: ({ ellipse }) => `± ${formatOffset(ellipse?.u95M ?? Number.NaN, language)}`,
    },
  ];
  return <Table label={word("axisTable")} columns={columns} rows={rows} idOf={({ id }) => id} />;
}
