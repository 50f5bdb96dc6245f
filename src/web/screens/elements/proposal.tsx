import { useState } from "react";
import type { Issue } from "#core";
import { Button } from "../../components/button.tsx";
import { FindingList } from "../../components/finding-list.tsx";
import { Notice } from "../../components/message.tsx";
import { NumberField } from "../../components/number-field.tsx";
import { Sheet } from "../../components/page.tsx";
import { elementsWords } from "../../words/elements/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { ElementRow } from "../../worker/desk.ts";
import type { ScheduleProposal, Swap, TypedRow } from "../../worker/desk-set-up.ts";
import styles from "./elements-screen.module.css";
import { KindField } from "./kind-field.tsx";
import { ProposalPlan } from "./proposal-plan.tsx";
import { ProposalTable } from "./proposal-table.tsx";

export interface ProposalProps {
  readonly proposal: ScheduleProposal;
  /** elements that are there already */
  readonly others: readonly ElementRow[];
  readonly swap: Swap;
  readonly onSwap: (swap: Swap) => void;
  readonly fill: TypedRow;
  readonly onFill: (fill: TypedRow) => void;
  readonly onTake: () => Promise<readonly Issue[]>;
}

/** What was understood: every problem, the plan, the lines. The button says how many lines it takes. */
export function Proposal(props: ProposalProps) {
  const { proposal, others, swap, onSwap, onTake } = props;
  const word = useWords(elementsWords);
  const [trouble, setTrouble] = useState<readonly Issue[]>([]);
  const [isBusy, setBusy] = useState(false);
  const { elements, tubes, leftOut, findings, headings, statements } = proposal;
  const count = statements.length;
  const of = (...changes: readonly string[]) =>
    elements.filter(({ isTaken, change }) => isTaken && changes.includes(change)).length;
  const take = async () => {
    if (count === 0 || isBusy) return;
    setBusy(true);
    setTrouble(await onTake());
    setBusy(false);
  };
  return (
    <Sheet
      title={word("understood")}
      actions={
        count === 0 ? null : (
          <Button weight="main" onPress={() => void take()}>
            {word("take", { count })}
          </Button>
        )
      }
    >
      <div role="status" className={styles["summary"]}>
        {elements.length > 0 ? (
          <p>
            {word("understoodText", {
              fresh: of("new"),
              changed: of("changed", "put-back"),
              same: of("same"),
            })}
          </p>
        ) : null}
        {tubes > 0 ? <p>{word("understoodTubes", { count: tubes })}</p> : null}
        {leftOut > 0 ? <p>{word("leftOut", { count: leftOut })}</p> : null}
        {elements.length === 0 && tubes === 0 ? <p>{word("nothingUnderstood")}</p> : null}
        {count === 0 && elements.length > 0 ? <p>{word("takeNothing")}</p> : null}
        {headings.length === 0 ? null : (
          <p>{word("headings", { list: headings.map(([from, to]) => `${from} → ${to}`).join(", ") })}</p>
        )}
      </div>
      {trouble.length === 0 ? null : (
        <div role="alert">
          <p>{word("saveFailed")}</p>
          <FindingList findings={trouble} />
        </div>
      )}
      <Fill {...props} />
      {findings.length === 0 ? null : (
        <>
          <h3>{word("problems")}</h3>
          <FindingList findings={findings} />
        </>
      )}
      {elements.length === 0 ? null : (
        <>
          <Exchange looksSwapped={proposal.looksSwapped} swap={swap} onSwap={onSwap} />
          <ProposalPlan elements={elements} others={others} />
          <ProposalTable elements={elements} />
        </>
      )}
    </Sheet>
  );
}

/** Columns that the lines lack and that can be the same in all of them. */
function Fill({ proposal, fill, onFill }: ProposalProps) {
  const word = useWords(elementsWords);
  const asked = (heading: string) => proposal.lacking.includes(heading) || fill[heading] !== undefined;
  const [kind, head] = [asked("kind"), asked("head_level_m")];
  const [level, setLevel] = useState("");
  if (!kind && !head) return null;
  return (
    <fieldset className={styles["fill"]}>
      <legend>{word("fillTitle")}</legend>
      <p>{word("fillText")}</p>
      <div className={styles["cells"]}>
        {kind ? (
          <KindField value={fill["kind"] ?? ""} onChange={(value) => onFill({ ...fill, kind: value })} />
        ) : null}
        {head ? (
          <NumberField
            label={word("head")}
            unit="m"
            text={level}
            onChange={(text, read) => {
              setLevel(text);
              onFill({ ...fill, head_level_m: read.kind === "number" ? text.trim() : "" });
            }}
          />
        ) : null}
      </div>
    </fieldset>
  );
}

/** Says where easting and northing look exchanged; one press exchanges them, one more undoes it. */
function Exchange({
  looksSwapped,
  swap,
  onSwap,
}: {
  readonly looksSwapped: Swap;
  readonly swap: Swap;
  readonly onSwap: (swap: Swap) => void;
}) {
  const word = useWords(elementsWords);
  if (swap !== "none")
    return (
      <Notice actions={<Button onPress={() => onSwap("none")}>{word("swapBack")}</Button>}>
        {word("swapDone")}
      </Notice>
    );
  if (looksSwapped === "none")
    return (
      <p>
        <Button onPress={() => onSwap("all")}>{word("swapAll")}</Button>
      </p>
    );
  const names = looksSwapped === "all" ? undefined : listed(looksSwapped);
  return (
    <Notice
      actions={
        <Button onPress={() => onSwap(looksSwapped)}>
          {names === undefined ? word("swapAll") : word("swapSome", { elements: names })}
        </Button>
      }
    >
      {names === undefined ? word("swappedAll") : word("swappedSome", { elements: names })}
    </Notice>
  );
}

const SHOWN = 8;
const listed = (names: readonly string[]): string =>
  names.length > SHOWN ? `${names.slice(0, SHOWN).join(", ")} …` : names.join(", ");
