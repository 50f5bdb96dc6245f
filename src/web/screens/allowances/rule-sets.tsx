import { useState } from "react";
import type { Issue } from "#core";
import { Button } from "../../components/button.tsx";
import { FindingList } from "../../components/finding-list.tsx";
import { Sheet } from "../../components/page.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { allowancesWords } from "../../words/allowances/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { JobView } from "../../worker/desk.ts";
import type { RuleSetView, RuleView } from "../../worker/desk-set-up.ts";
import { ruleStatement } from "../../worker/set-up/rule-statement.ts";
import { useAnswer } from "../../worker/use-answer.ts";
import { writeWithUndo } from "../write-with-undo.ts";
import styles from "./allowances-screen.module.css";
import { SourceLine } from "./source-line.tsx";

/** The ready-made sets: every rule with its source and how that is known, to be copied into the job. */
export function RuleSets({ job, held }: { readonly job: JobView; readonly held: readonly RuleView[] }) {
  const word = useWords(allowancesWords);
  const language = useLanguage();
  const [trouble, setTrouble] = useState<readonly Issue[]>([]);
  const sets =
    useAnswer((asked) => asked.ruleSets(job.id, language), [job.id, language, job.elements.length]) ?? [];
  const here = new Set(held.map(({ id }) => id));
  const copy = async ({ rules }: RuleSetView) => {
    const undo = rules.map(({ id }) => ({
      kind: "criterion",
      body: { criterion: id, set: { withdrawn: true } },
    }));
    const text = word("copied", { count: rules.length });
    setTrouble(await writeWithUndo(job.id, rules.map(ruleStatement), undo, text));
  };
  return (
    <>
      {trouble.length === 0 ? null : (
        <div role="alert">
          <p>{word("failed")}</p>
          <FindingList findings={trouble} />
        </div>
      )}
      {sets.map((set) => (
        <Sheet
          key={set.id}
          title={set.title}
          actions={
            set.rules.every(({ id }) => here.has(id)) ? (
              <span className={styles["soft"]}>{word("isCopied")}</span>
            ) : (
              <Button label={`${word("copy")}: ${set.title}`} onPress={() => void copy(set)}>
                {word("copy")}
              </Button>
            )
          }
        >
          <p className={styles["soft"]}>
            {word("setFor", { kinds: set.kinds.join(", ") })} · {word("setApplies", { count: set.applies })}
          </p>
          <ul className={styles["setRules"]}>
            {set.rules.map((rule) => (
              <li key={rule.id}>
                <p className={styles["sentence"]}>{rule.sentence}</p>
                <SourceLine source={rule.source} />
              </li>
            ))}
          </ul>
          {set.notes.map((note) => (
            <p key={note} className={styles["soft"]} lang="en">
              {note}
            </p>
          ))}
        </Sheet>
      ))}
    </>
  );
}
