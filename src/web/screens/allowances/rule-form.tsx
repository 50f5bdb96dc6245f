import { useState } from "react";
import { criteria, criterion, type Issue } from "#core";
import { Button } from "../../components/button.tsx";
import { ChoiceBar } from "../../components/choice-bar.tsx";
import { ChoiceField } from "../../components/choice-field.tsx";
import { FindingList } from "../../components/finding-list.tsx";
import { Sheet } from "../../components/page.tsx";
import { TextField } from "../../components/text-field.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { allowancesWords } from "../../words/allowances/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { JobView } from "../../worker/desk.ts";
import type { AllowancesView, RuleView } from "../../worker/desk-set-up.ts";
import { ruleStatement } from "../../worker/set-up/rule-statement.ts";
import { useAnswer } from "../../worker/use-answer.ts";
import { writeWithUndo } from "../write-with-undo.ts";
import { AllowanceDrawing } from "./allowance-drawing.tsx";
import styles from "./allowances-screen.module.css";
import { AppliesToFields } from "./applies-to-fields.tsx";
import { ParameterFields } from "./parameter-fields.tsx";
import { SourceLine } from "./source-line.tsx";
import { TrialOf } from "./trial-of.tsx";
import { emptyRule, isReadable, ruleOf, type TypedRule, typedRule } from "./typed-rule.ts";

export interface RuleFormProps {
  readonly job: JobView;
  readonly view: AllowancesView;
  /** the rule that is changed; undefined: a new one */
  readonly before: RuleView | undefined;
  readonly onDone: () => void;
}

/** A rule in a form drawn from what its kind declares; beside it what it says, allows and would change. */
export function RuleForm({ job, view, before, onDone }: RuleFormProps) {
  const word = useWords(allowancesWords);
  const language = useLanguage();
  const taken = new Set(view.rules.map(({ id }) => id));
  const [typed, setTyped] = useState<TypedRule>(() =>
    before === undefined
      ? emptyRule(criteria[0]!.id, taken)
      : typedRule(before, language === "de" ? "," : "."),
  );
  const [isPressed, setPressed] = useState(false);
  const [trouble, setTrouble] = useState<readonly Issue[]>([]);
  const draft = ruleOf(typed);
  const preview = useAnswer(
    (asked) => asked.previewRule(job.id, draft, language),
    [job.id, language, JSON.stringify(draft), job.elements.length],
  );
  const kind = criterion(typed.kind);
  const isReady = preview?.sentence !== undefined && isReadable(typed);
  const write = async () => {
    setPressed(true);
    if (!isReady) return;
    const back =
      before === undefined
        ? { kind: "criterion", body: { criterion: draft.id, set: { withdrawn: true } } }
        : ruleStatement(before);
    const failed = await writeWithUndo(job.id, [ruleStatement(draft)], [back], word("written"));
    setTrouble(failed);
    if (failed.length === 0) onDone();
  };
  return (
    <div className={styles["form"]}>
      <Sheet>
        {before === undefined ? (
          <ChoiceField
            label={word("kind")}
            value={typed.kind}
            choices={criteria.map(({ id, text }) => ({ id, text: text[language].title }))}
            onChange={(id) => setTyped({ ...emptyRule(id, taken), appliesTo: typed.appliesTo })}
          />
        ) : null}
        <p className={styles["soft"]}>{kind?.text[language].explanation}</p>
        <ParameterFields typed={typed} onChange={setTyped} />
        <AppliesToFields words={view.words} typed={typed} onChange={setTyped} />
        <h2 className={styles["part"]}>{word("sourceTitle")}</h2>
        <div className={styles["cells"]}>
          {(["document", "edition", "clause"] as const).map((key) => (
            <TextField
              key={key}
              label={word(key)}
              value={typed[key]}
              onChange={(text) => setTyped({ ...typed, [key]: text })}
              autoComplete="off"
            />
          ))}
        </div>
        {typed.document.trim() === "" ? null : (
          <ChoiceBar
            label={word("status")}
            value={typed.status}
            choices={(["read", "quoted", "memory"] as const).map((id) => ({ id, text: word(id) }))}
            onChange={(status) => setTyped({ ...typed, status })}
          />
        )}
      </Sheet>
      <div className={styles["beside"]}>
        <Sheet title={word("says")}>
          <div className={styles["said"]} role="status">
            {preview?.sentence === undefined ? null : (
              <p className={styles["sentence"]}>{preview.sentence}</p>
            )}
            <p>{word("forCount", { count: preview?.applies ?? 0 })}</p>
          </div>
          {(preview?.faults.length ?? 0) === 0 ? null : (
            <>
              <p>{word("notYet")}</p>
              <FindingList findings={preview!.faults} />
            </>
          )}
          <SourceLine source={draft.source} />
          {preview?.sentence === undefined ? null : <AllowanceDrawing picture={preview.picture} />}
          {isReady ? (
            <TrialOf
              key={JSON.stringify(draft)}
              job={job.id}
              rules={[...view.rules.filter(({ id }) => id !== draft.id), draft]}
              decision={view.decision}
            />
          ) : null}
          {isPressed && !isReady ? (
            <p role="alert" className={styles["trouble"]}>
              {word("cannotWrite")}
            </p>
          ) : null}
          {trouble.length === 0 ? null : (
            <div role="alert">
              <p>{word("failed")}</p>
              <FindingList findings={trouble} />
            </div>
          )}
          <div className={styles["buttons"]}>
            <Button weight="main" onPress={() => void write()}>
              {word("write")}
            </Button>
          </div>
        </Sheet>
      </div>
    </div>
  );
}
