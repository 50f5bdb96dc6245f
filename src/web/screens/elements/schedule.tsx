import { useState } from "react";
import { useNavigate } from "react-router";
import { Button } from "../../components/button.tsx";
import { Notice } from "../../components/message.tsx";
import { Table } from "../../components/table.tsx";
import { TextField } from "../../components/text-field.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { elementsWords } from "../../words/elements/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { JobView } from "../../worker/desk.ts";
import { writeWithUndo } from "../write-with-undo.ts";
import { EditElements } from "./edit-elements.tsx";
import styles from "./elements-screen.module.css";
import { filterRows, orderRows } from "./order-rows.ts";
import { useScheduleColumns } from "./schedule-columns.tsx";
import { TubesOf } from "./tubes-of.tsx";

/** The schedule as a table, with what can be done to the chosen elements. */
export function Schedule({ job }: { readonly job: JobView }) {
  const word = useWords(elementsWords);
  const language = useLanguage();
  const go = useNavigate();
  const [typed, setTyped] = useState("");
  const [sorted, setSorted] = useState({ id: "element", isDown: false });
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const [isEditing, setEditing] = useState(false);
  const columns = useScheduleColumns();
  const rows = orderRows(filterRows(job.elements, typed), sorted, language);
  const chosenRows = job.elements.filter(({ id }) => chosen.has(id));
  const only = chosenRows.length === 1 ? chosenRows[0] : undefined;
  const open = (id: string) =>
    void go(`/jobs/${encodeURIComponent(job.id)}/elements/${encodeURIComponent(id)}`);
  const withdraw = async () => {
    const say = (withdrawn: boolean) =>
      chosenRows.map(({ id }) => ({ kind: "element", body: { element: id, set: { withdrawn } } }));
    const text = word("withdrawn", { count: chosenRows.length });
    const trouble = await writeWithUndo(job.id, say(true), say(false), text);
    if (trouble.length === 0) setChosen(new Set());
  };
  return (
    <>
      <div className={styles["find"]}>
        <TextField
          label={word("filter")}
          hint={word("filterHint")}
          value={typed}
          onChange={setTyped}
          type="search"
        />
      </div>
      {rows.length === 0 ? (
        <Notice>{word("noMatch")}</Notice>
      ) : (
        <Table
          label={word("schedule")}
          columns={columns}
          rows={rows}
          idOf={({ id }) => id}
          chosen={chosen}
          onChoose={setChosen}
          onOpen={({ id }) => open(id)}
          sorted={sorted}
          onSort={(id) => setSorted((now) => ({ id, isDown: now.id === id && !now.isDown }))}
          actions={
            <Button
              weight="quiet"
              onPress={() => setChosen(chosen.size > 0 ? new Set() : new Set(rows.map(({ id }) => id)))}
            >
              {chosen.size > 0 ? word("chooseNone") : word("chooseAll")}
            </Button>
          }
        />
      )}
      {chosenRows.length === 0 ? null : (
        <div
          className={styles["chosen"]}
          role="toolbar"
          aria-label={word("chosen", { count: chosenRows.length })}
        >
          <strong>{word("chosen", { count: chosenRows.length })}</strong>
          {only === undefined ? null : <Button onPress={() => open(only.id)}>{word("open")}</Button>}
          <Button onPress={() => setEditing(true)}>{word("edit")}</Button>
          <Button onPress={() => void withdraw()}>{word("withdraw")}</Button>
        </div>
      )}
      {only === undefined ? null : <TubesOf key={only.id} job={job} element={only.id} />}
      {isEditing ? <EditElements job={job.id} rows={chosenRows} onClose={() => setEditing(false)} /> : null}
    </>
  );
}
