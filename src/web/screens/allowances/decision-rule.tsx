import { useState } from "react";
import { DECISION_RULES, type Decision, type DecisionRuleName } from "#core";
import { formatNumber } from "#text";
import { Button } from "../../components/button.tsx";
import { ChoiceBar } from "../../components/choice-bar.tsx";
import { NumberField } from "../../components/number-field.tsx";
import { Sheet } from "../../components/page.tsx";
import { readTypedNumber } from "../../components/typed-number.ts";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { allowancesWords } from "../../words/allowances/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { JobView } from "../../worker/desk.ts";
import type { AllowancesView } from "../../worker/desk-set-up.ts";
import { writeWithUndo } from "../write-with-undo.ts";
import styles from "./allowances-screen.module.css";
import { TrialOf } from "./trial-of.tsx";

const NAME = { simple: "ruleSimple", guarded: "ruleGuarded", "four-way": "ruleFourWay" } as const;
const EXPLAIN = { simple: "explainSimple", guarded: "explainGuarded", "four-way": "explainFourWay" } as const;

/** How value, limit and uncertainty become a verdict; chosen before the work. */
export function DecisionRule({ job, view }: { readonly job: JobView; readonly view: AllowancesView }) {
  const word = useWords(allowancesWords);
  const language = useLanguage();
  const held = view.decision;
  const [rule, setRule] = useState<DecisionRuleName>(held.rule);
  const [typed, setTyped] = useState(formatNumber(held.probability * 100, 1, language).replace(/[.,]0$/, ""));
  const [said, setSaid] = useState<string>();
  const read = readTypedNumber(typed, "%");
  const isGood = read.kind === "number" && read.value > 50 && read.value < 100;
  const decision: Decision | undefined = isGood
    ? { rule, probability: Number((read.value / 100).toPrecision(12)) }
    : undefined;
  const percent = (share: number) => `${formatNumber(share * 100, 1, language).replace(/[.,]0$/, "")}\u00a0%`;
  const save = async () => {
    if (decision === undefined) return setSaid(word("probabilityWrong"));
    if (decision.rule === held.rule && decision.probability === held.probability)
      return setSaid(word("decisionSame"));
    setSaid(undefined);
    const say = ({ rule: name, probability }: Decision) => [
      { kind: "job", body: { set: { decision: { rule: name, probability } } } },
    ];
    await writeWithUndo(job.id, say(decision), say(held), word("decisionSaved"));
  };
  return (
    <Sheet title={word("decisionTitle")}>
      <ChoiceBar
        label={word("rule")}
        value={rule}
        choices={DECISION_RULES.map((id) => ({ id, text: word(NAME[id]) }))}
        onChange={setRule}
      />
      <p className={styles["explain"]}>
        {word(EXPLAIN[rule], {
          asked: percent(decision?.probability ?? held.probability),
          rest: percent(1 - (decision?.probability ?? held.probability)),
        })}
      </p>
      {rule === "simple" ? null : (
        <div className={styles["narrow"]}>
          <NumberField
            label={word("probability")}
            hint={word("probabilityHint")}
            unit="%"
            text={typed}
            onChange={setTyped}
            min={50}
            max={100}
            isAsked
          />
        </div>
      )}
      {said === undefined ? null : (
        <p role="alert" className={styles["trouble"]}>
          {said}
        </p>
      )}
      <div className={styles["buttons"]}>
        <Button onPress={() => void save()}>{word("saveDecision")}</Button>
      </div>
      {decision === undefined ? null : (
        <TrialOf key={`${rule} ${typed}`} job={job.id} rules={view.rules} decision={decision} />
      )}
    </Sheet>
  );
}
