import { type Column, Table } from "../../components/table.tsx";
import { elementsWords } from "../../words/elements/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { ProposedElement } from "../../worker/desk-set-up.ts";
import { useDesignColumns } from "./schedule-columns.tsx";

/** Every line as it was understood, with what it would change. */
export function ProposalTable({ elements }: { readonly elements: readonly ProposedElement[] }) {
  const word = useWords(elementsWords);
  const [element, ...design] = useDesignColumns();
  const changeText = ({ isTaken, change, fields }: ProposedElement) => {
    if (!isTaken) return word("staysOut");
    if (change === "changed") return word("isChanged", { fields: fields.join(", ") });
    return word(change === "new" ? "isNew" : change === "same" ? "isSame" : "isPutBack");
  };
  const columns: readonly Column<ProposedElement>[] = [
    { ...element!, text: ({ row }) => element!.text(row) },
    { id: "change", title: word("change"), text: changeText },
    ...design.map((column) => ({ ...column, text: ({ row }: ProposedElement) => column.text(row) })),
    { id: "line", title: word("line"), kind: "number", text: ({ line }) => String(line) },
  ];
  return (
    <Table
      label={word("proposed")}
      columns={columns}
      rows={elements}
      idOf={({ row }) => row.id}
      isStruck={({ isTaken }) => !isTaken}
    />
  );
}
