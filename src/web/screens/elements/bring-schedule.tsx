import { useState } from "react";
import { useJob } from "../../app/job-frame.tsx";
import { Button } from "../../components/button.tsx";
import { ChoiceBar } from "../../components/choice-bar.tsx";
import { FileDrop } from "../../components/file-drop.tsx";
import { Sheet } from "../../components/page.tsx";
import { Progress } from "../../components/progress.tsx";
import { TextField } from "../../components/text-field.tsx";
import { elementsWords } from "../../words/elements/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { InputFile } from "../../worker/desk.ts";
import { desk } from "../../worker/desk-client.ts";
import type { ScheduleProposal, Swap, TypedRow } from "../../worker/desk-set-up.ts";
import { readFiles } from "../../worker/read-files.ts";
import { useAnswer } from "../../worker/use-answer.ts";
import { writeWithUndo } from "../write-with-undo.ts";
import { Proposal } from "./proposal.tsx";
import { remainingLines } from "./remaining-lines.ts";
import { SAMPLE } from "./sample.ts";
import { TypeElement } from "./type-element.tsx";

type Way = "paste" | "file" | "type";

/** Three ways in: pasted lines, files, typing. Whatever comes is shown as it was understood before it is written. */
export function BringSchedule({ onTaken }: { readonly onTaken: (isWhole: boolean) => void }) {
  const word = useWords(elementsWords);
  const [way, setWay] = useState<Way>("paste");
  const [text, setText] = useState("");
  const [dropped, setDropped] = useState<{ readonly turn: number; readonly files: readonly InputFile[] }>();
  const pasted: readonly InputFile[] =
    text.trim() === "" ? [] : [{ name: "elements.csv", bytes: new TextEncoder().encode(text) }];
  return (
    <>
      <Sheet>
        <ChoiceBar
          label={word("how")}
          value={way}
          choices={(["paste", "file", "type"] as const).map((id) => ({ id, text: word(id) }))}
          onChange={setWay}
        />
        {way === "paste" ? (
          <>
            <TextField
              label={word("pasteLabel")}
              hint={word("pasteHint")}
              value={text}
              onChange={setText}
              rows={9}
              isTable
            />
            {text === "" ? (
              <p>
                <Button onPress={() => setText(SAMPLE)}>{word("sample")}</Button>
              </p>
            ) : null}
          </>
        ) : null}
        {way === "file" ? (
          <FileDrop
            label={word("dropLabel")}
            choose={word("choose")}
            endings={[".csv", ".txt", ".xlsx"]}
            onFiles={(files) =>
              void readFiles(files).then((read) =>
                setDropped((before) => ({ turn: (before?.turn ?? 0) + 1, files: read })),
              )
            }
          />
        ) : null}
        {way === "type" ? <TypeElement /> : null}
      </Sheet>
      {way === "paste" && pasted.length > 0 ? (
        <Proposed
          files={pasted}
          turn={text}
          onTaken={({ findings }) => {
            const rest = remainingLines(text, findings);
            setText(rest);
            onTaken(rest === "");
          }}
        />
      ) : null}
      {way === "file" && dropped !== undefined ? (
        <Proposed
          files={dropped.files}
          turn={dropped.turn}
          onTaken={({ leftOut }) => onTaken(leftOut === 0)}
        />
      ) : null}
    </>
  );
}

interface ProposedProps {
  readonly files: readonly InputFile[];
  /** another one: other files */
  readonly turn: string | number;
  readonly onTaken: (proposal: ScheduleProposal) => void;
}

function Proposed({ files, turn, onTaken }: ProposedProps) {
  const word = useWords(elementsWords);
  const job = useJob();
  const [swap, setSwap] = useState<Swap>("none");
  const [fill, setFill] = useState<TypedRow>({});
  const proposal = useAnswer(
    () => desk().proposeSchedule(job.id, { from: "files", files, fill }, swap),
    [job.id, turn, JSON.stringify(swap), JSON.stringify(fill), job.entries],
  );
  if (proposal === undefined) return <Progress label={word("understanding")} done={0} total={0} />;
  const take = async () => {
    const { statements, undo, tubes } = proposal;
    const count = statements.filter(({ kind }) => kind === "element").length;
    const text = count > 0 ? word("added", { count }) : word("addedTubes", { count: tubes });
    const trouble = await writeWithUndo(job.id, statements, undo, text);
    if (trouble.length === 0) onTaken(proposal);
    return trouble;
  };
  return (
    <Proposal
      proposal={proposal}
      others={job.elements}
      swap={swap}
      onSwap={setSwap}
      fill={fill}
      onFill={setFill}
      onTake={take}
    />
  );
}
