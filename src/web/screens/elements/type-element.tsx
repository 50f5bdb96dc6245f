import { useState } from "react";
import type { Issue } from "#core";
import { useJob } from "../../app/job-frame.tsx";
import { Button } from "../../components/button.tsx";
import { FindingList } from "../../components/finding-list.tsx";
import { TextField } from "../../components/text-field.tsx";
import { elementsWords } from "../../words/elements/words.ts";
import { useWords } from "../../words/use-words.ts";
import { desk } from "../../worker/desk-client.ts";
import type { TypedRow } from "../../worker/desk-set-up.ts";
import { writeWithUndo } from "../write-with-undo.ts";
import { CellFields } from "./cell-fields.tsx";
import { ELEMENT_FIELDS } from "./element-fields.ts";
import styles from "./elements-screen.module.css";
import { KindField } from "./kind-field.tsx";
import { typedCells } from "./typed-cells.ts";

/** One element, typed. Its cells stay in the form: the next one is often alike. */
export function TypeElement() {
  const word = useWords(elementsWords);
  const job = useJob();
  const [name, setName] = useState("");
  const [kind, setKind] = useState("bored-pile");
  const [typed, setTyped] = useState<TypedRow>({});
  const [missing, setMissing] = useState<string>();
  const [trouble, setTrouble] = useState<readonly Issue[]>([]);
  const add = async () => {
    const element = name.trim();
    if (element === "") return setMissing(word("typeMissing"));
    if (job.elements.some(({ id }) => id === element)) return setMissing(word("typeTwice", { element }));
    setMissing(undefined);
    const rows = [
      {
        element,
        kind,
        easting_m: "",
        northing_m: "",
        head_level_m: "",
        ...typedCells(ELEMENT_FIELDS, typed),
      },
    ];
    const proposal = await desk().proposeSchedule(job.id, { from: "typed", table: "elements", rows }, "none");
    if (proposal === undefined) return;
    const errors = proposal.findings.filter(({ severity }) => severity === "error");
    if (errors.length > 0) return setTrouble(errors);
    const failed = await writeWithUndo(
      job.id,
      proposal.statements,
      proposal.undo,
      word("added", { count: 1 }),
    );
    setTrouble(failed);
    if (failed.length === 0) setName("");
  };
  return (
    <div className={styles["form"]}>
      {trouble.length === 0 ? null : (
        <div role="alert">
          <p>{word("saveFailed")}</p>
          <FindingList findings={trouble} />
        </div>
      )}
      <div className={styles["cells"]}>
        <TextField label={word("element")} value={name} onChange={setName} trouble={missing} autoFocus />
        <KindField value={kind} onChange={setKind} />
      </div>
      <CellFields fields={ELEMENT_FIELDS} typed={typed} onChange={setTyped} />
      <p>
        <Button weight="main" onPress={() => void add()}>
          {word("typeAdd")}
        </Button>
      </p>
    </div>
  );
}
