import { useState } from "react";
import type { Decision } from "#core";
import { Button } from "../../components/button.tsx";
import { Progress } from "../../components/progress.tsx";
import { allowancesWords } from "../../words/allowances/words.ts";
import { useWords } from "../../words/use-words.ts";
import { desk, told } from "../../worker/desk-client.ts";
import type { RuleDraft, Trial } from "../../worker/desk-set-up.ts";
import styles from "./allowances-screen.module.css";
import { Counts } from "./rule-card.tsx";

type State =
  | { readonly at: "idle" }
  | { readonly at: "work"; readonly done: number; readonly total: number }
  | { readonly at: "done"; readonly trial: Trial };

const SHOWN = 12;

/** What the verdicts of the surveyed elements would be; nothing is written. */
export function TrialOf({
  job,
  rules,
  decision,
}: {
  readonly job: string;
  readonly rules: readonly RuleDraft[];
  readonly decision: Decision;
}) {
  const word = useWords(allowancesWords);
  const [state, setState] = useState<State>({ at: "idle" });
  const run = async () => {
    const progress = (done: number, total: number) => setState({ at: "work", done, total });
    progress(0, 0);
    const drafts = rules.map(({ id, kind, appliesTo, numbers, words, tables, source }) => ({
      id,
      kind,
      appliesTo,
      numbers,
      words,
      tables,
      source,
    }));
    const trial = await desk().tryRules(job, drafts, decision, told(progress));
    setState(trial === undefined ? { at: "idle" } : { at: "done", trial });
  };
  if (state.at === "work")
    return (
      <Progress
        label={word("trying")}
        done={state.done}
        total={state.total}
        onCancel={() => void desk().stopTrial()}
      />
    );
  return (
    <div className={styles["trial"]}>
      <div className={styles["buttons"]}>
        <Button onPress={() => void run()}>{word("tryIt")}</Button>
      </div>
      {state.at === "done" ? <Outcome trial={state.trial} /> : null}
    </div>
  );
}

function Outcome({ trial }: { readonly trial: Trial }) {
  const word = useWords(allowancesWords);
  const { elements, before, after, changing } = trial;
  if (elements === 0) return <p role="status">{word("triedNone")}</p>;
  const names = changing.slice(0, SHOWN).join(", ") + (changing.length > SHOWN ? " …" : "");
  return (
    <div role="status">
      <p>{word("tried", { changing: changing.length, count: elements })}</p>
      <dl className={styles["outcome"]}>
        <dt>{word("now")}</dt>
        <dd>
          <Counts counts={before} />
        </dd>
        <dt>{word("afterwards")}</dt>
        <dd>
          <Counts counts={after} />
        </dd>
      </dl>
      {changing.length === 0 ? null : <p>{word("changing", { elements: names })}</p>}
    </div>
  );
}
