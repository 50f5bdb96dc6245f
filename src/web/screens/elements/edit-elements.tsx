import { useState } from "react";
import type { Issue } from "#core";
import { Button } from "../../components/button.tsx";
import { Dialog } from "../../components/dialog.tsx";
import { FindingList } from "../../components/finding-list.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { elementsWords } from "../../words/elements/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { ElementRow } from "../../worker/desk.ts";
import { desk } from "../../worker/desk-client.ts";
import type { TypedRow } from "../../worker/desk-set-up.ts";
import { writeWithUndo } from "../write-with-undo.ts";
import { CellFields } from "./cell-fields.tsx";
import { cellsOfRow } from "./cells-of-row.ts";
import { ELEMENT_FIELDS, KIND } from "./element-fields.ts";
import { KindField } from "./kind-field.tsx";
import { changedCells, typedCells } from "./typed-cells.ts";

const FIELDS = [KIND, ...ELEMENT_FIELDS];
const EMPTIES = /^[-–—−]$/;

/** Changes one element, or the same cells of many. Only what differs is written. */
export function EditElements({
  job,
  rows,
  onClose,
}: {
  readonly job: string;
  readonly rows: readonly ElementRow[];
  readonly onClose: () => void;
}) {
  const word = useWords(elementsWords);
  const language = useLanguage();
  const [only] = rows.length === 1 ? rows : [];
  const [before] = useState<TypedRow>(() => (only === undefined ? {} : cellsOfRow(only, language)));
  const [typed, setTyped] = useState(before);
  const [trouble, setTrouble] = useState<readonly Issue[]>([]);
  const [isIdle, setIdle] = useState(false);
  const save = async () => {
    const changed = changedCells(before, typed);
    const cells = typedCells(FIELDS, only === undefined ? emptied(changed) : changed);
    const elements = rows.map(({ id }) => id);
    const proposal = await desk().proposeSchedule(job, { from: "edit", elements, set: cells }, "none");
    if (proposal === undefined) return;
    const errors = proposal.findings.filter(({ severity }) => severity === "error");
    setTrouble(errors);
    setIdle(errors.length === 0 && proposal.statements.length === 0);
    if (errors.length > 0 || proposal.statements.length === 0) return;
    const text = word("changed", { count: proposal.statements.length });
    const failed = await writeWithUndo(job, proposal.statements, proposal.undo, text);
    setTrouble(failed);
    if (failed.length === 0) onClose();
  };
  return (
    <Dialog
      title={
        only === undefined ? word("editMany", { count: rows.length }) : word("editOne", { element: only.id })
      }
      isOpen
      onClose={onClose}
      actions={
        <Button weight="main" onPress={() => void save()}>
          {word("save")}
        </Button>
      }
    >
      {only === undefined ? <p>{word("editManyHint")}</p> : null}
      {trouble.length === 0 ? null : (
        <div role="alert">
          <p>{word("saveFailed")}</p>
          <FindingList findings={trouble} />
        </div>
      )}
      {isIdle ? <p role="status">{word("nothingChanged")}</p> : null}
      <KindField
        value={typed["kind"] ?? ""}
        mayBeLeft={only === undefined}
        onChange={(kind) => setTyped({ ...typed, kind })}
      />
      <CellFields fields={ELEMENT_FIELDS} typed={typed} onChange={setTyped} />
    </Dialog>
  );
}

/** Cells that were left blank stay as they are; a dash empties one. */
const emptied = (typed: TypedRow): TypedRow =>
  Object.fromEntries(
    Object.entries(typed)
      .filter(([, text]) => text.trim() !== "")
      .map(([heading, text]) => [heading, EMPTIES.test(text.trim()) ? "" : text]),
  );
