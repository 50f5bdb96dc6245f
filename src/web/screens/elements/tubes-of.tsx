import { useState } from "react";
import type { AccessTube, Issue } from "#core";
import { formatNumber } from "#text";
import { Button } from "../../components/button.tsx";
import { FindingList } from "../../components/finding-list.tsx";
import { Sheet } from "../../components/page.tsx";
import { type Column, Table } from "../../components/table.tsx";
import { TextField } from "../../components/text-field.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { elementsWords } from "../../words/elements/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { JobView } from "../../worker/desk.ts";
import { desk } from "../../worker/desk-client.ts";
import type { TypedRow } from "../../worker/desk-set-up.ts";
import { useAnswer } from "../../worker/use-answer.ts";
import { writeWithUndo } from "../write-with-undo.ts";
import { CellFields } from "./cell-fields.tsx";
import { TUBE_FIELDS } from "./element-fields.ts";
import styles from "./elements-screen.module.css";
import { typedCells } from "./typed-cells.ts";

/** The access tubes of the chosen element. */
export function TubesOf({ job, element }: { readonly job: JobView; readonly element: string }) {
  const word = useWords(elementsWords);
  const [isAdding, setAdding] = useState(false);
  const detail = useAnswer((asked) => asked.element(job.id, element), [job.id, element, job.revision]);
  const columns = useTubeColumns();
  if (detail === undefined) return null;
  const { tubes } = detail;
  const withdraw = (tube: string) => {
    const say = (withdrawn: boolean) => [{ kind: "tube", body: { element, tube, set: { withdrawn } } }];
    void writeWithUndo(job.id, say(true), say(false), word("tubeWithdrawn", { tube }));
  };
  return (
    <Sheet
      title={word("tubes", { element })}
      actions={isAdding ? null : <Button onPress={() => setAdding(true)}>{word("tubeAdd")}</Button>}
    >
      {tubes.length === 0 ? (
        <p>{word("tubesNone")}</p>
      ) : (
        <>
          <Table label={word("tubes", { element })} columns={columns} rows={tubes} idOf={({ id }) => id} />
          <ul className={styles["withdrawn"]}>
            {tubes.map(({ id }) => (
              <li key={id}>
                <Button weight="quiet" onPress={() => withdraw(id)}>
                  {word("tubeWithdraw", { tube: id })}
                </Button>
              </li>
            ))}
          </ul>
        </>
      )}
      {isAdding ? (
        <AddTube
          job={job.id}
          element={element}
          names={tubes.map(({ id }) => id)}
          onDone={() => setAdding(false)}
        />
      ) : null}
    </Sheet>
  );
}

function useTubeColumns(): readonly Column<AccessTube>[] {
  const word = useWords(elementsWords);
  const language = useLanguage();
  const number = (value: number | undefined, decimals: number) =>
    value === undefined ? "–" : formatNumber(value, decimals, language);
  return [
    { id: "tube", title: word("tube"), text: ({ id }) => id },
    {
      id: "easting",
      title: word("easting"),
      unit: "m",
      kind: "number",
      text: ({ head }) => number(head.east, 3),
    },
    {
      id: "northing",
      title: word("northing"),
      unit: "m",
      kind: "number",
      text: ({ head }) => number(head.north, 3),
    },
    {
      id: "top",
      title: word("topLevel"),
      unit: "m",
      kind: "number",
      text: ({ head }) => number(-head.down, 2),
    },
    {
      id: "inner",
      title: word("innerDiameter"),
      unit: "mm",
      kind: "number",
      text: ({ innerDiameterM }) =>
        number(innerDiameterM === undefined ? undefined : innerDiameterM * 1000, 0),
    },
    {
      id: "length",
      title: word("tubeLength"),
      unit: "m",
      kind: "number",
      text: ({ lengthM }) => number(lengthM, 2),
    },
  ];
}

interface AddTubeProps {
  readonly job: string;
  readonly element: string;
  readonly names: readonly string[];
  readonly onDone: () => void;
}

function AddTube({ job, element, names, onDone }: AddTubeProps) {
  const word = useWords(elementsWords);
  const [name, setName] = useState("");
  const [typed, setTyped] = useState<TypedRow>({});
  const [missing, setMissing] = useState<string>();
  const [trouble, setTrouble] = useState<readonly Issue[]>([]);
  const add = async () => {
    const tube = name.trim();
    if (tube === "") return setMissing(word("tubeMissing"));
    if (names.includes(tube)) return setMissing(word("tubeTwice", { tube }));
    setMissing(undefined);
    const rows = [{ element, tube, ...typedCells(TUBE_FIELDS, typed) }];
    const proposal = await desk().proposeSchedule(job, { from: "typed", table: "tubes", rows }, "none");
    if (proposal === undefined) return;
    const errors = proposal.findings.filter(({ severity }) => severity === "error");
    if (errors.length > 0) return setTrouble(errors);
    const failed = await writeWithUndo(
      job,
      proposal.statements,
      proposal.undo,
      word("addedTubes", { count: proposal.tubes }),
    );
    setTrouble(failed);
    if (failed.length === 0) onDone();
  };
  return (
    <div className={styles["form"]}>
      <p>{word("tubeHint")}</p>
      {trouble.length === 0 ? null : (
        <div role="alert">
          <p>{word("saveFailed")}</p>
          <FindingList findings={trouble} />
        </div>
      )}
      <TextField label={word("tube")} value={name} onChange={setName} trouble={missing} autoFocus />
      <CellFields fields={TUBE_FIELDS} typed={typed} onChange={setTyped} />
      <p>
        <Button weight="main" onPress={() => void add()}>
          {word("tubeAdd")}
        </Button>
      </p>
    </div>
  );
}
