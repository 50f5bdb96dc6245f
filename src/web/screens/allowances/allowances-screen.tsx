import { useState } from "react";
import { useJob } from "../../app/job-frame.tsx";
import { Loading } from "../../app/outcomes.tsx";
import { Button, LinkButton } from "../../components/button.tsx";
import { EmptyState, Notice } from "../../components/message.tsx";
import { Page } from "../../components/page.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { allowancesWords } from "../../words/allowances/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { RuleView } from "../../worker/desk-set-up.ts";
import { useAnswer } from "../../worker/use-answer.ts";
import styles from "./allowances-screen.module.css";
import { DecisionRule } from "./decision-rule.tsx";
import { RuleCard } from "./rule-card.tsx";
import { RuleForm } from "./rule-form.tsx";
import { RuleSets } from "./rule-sets.tsx";

type Mode = { readonly at: "list" | "sets" | "new" } | { readonly at: "change"; readonly rule: RuleView };

/** What counts as good: rules with their pictures, ready-made sets, own rules, and how a verdict is reached. */
export function Component() {
  const job = useJob();
  const word = useWords(allowancesWords);
  const language = useLanguage();
  const [mode, setMode] = useState<Mode>({ at: "list" });
  const view = useAnswer((asked) => asked.allowances(job.id, language), [job.id, language, job.revision]);
  const toList = () => setMode({ at: "list" });
  const back = <Button onPress={toList}>{word("back")}</Button>;
  if (job.elements.length === 0 && job.work.phase === "ready")
    return (
      <Page title={word("title")} lead={word("lead")}>
        <EmptyState
          title={word("noElementsTitle")}
          actions={
            <LinkButton weight="main" to={`/jobs/${encodeURIComponent(job.id)}/schedule`}>
              {word("toElements")}
            </LinkButton>
          }
        >
          <p>{word("noElementsText")}</p>
        </EmptyState>
      </Page>
    );
  if (view === undefined) return <Loading />;
  if (mode.at === "sets")
    return (
      <Page title={word("setsTitle")} lead={word("setsLead")} actions={back}>
        <Notice>{word("caution")}</Notice>
        <RuleSets job={job} held={view.rules} />
      </Page>
    );
  if (mode.at === "new" || mode.at === "change")
    return (
      <Page title={word(mode.at === "new" ? "formNew" : "formChange")} actions={back}>
        <RuleForm
          job={job}
          view={view}
          before={mode.at === "change" ? mode.rule : undefined}
          onDone={toList}
        />
      </Page>
    );
  return (
    <Page
      title={word("title")}
      lead={word("lead")}
      actions={
        <>
          <Button onPress={() => setMode({ at: "sets" })}>{word("sets")}</Button>
          <Button weight="main" onPress={() => setMode({ at: "new" })}>
            {word("add")}
          </Button>
        </>
      }
    >
      <Notice>{word("caution")}</Notice>
      {view.rules.length === 0 ? (
        <EmptyState title={word("emptyTitle")}>
          <p>{word("emptyText")}</p>
        </EmptyState>
      ) : (
        <div className={styles["rules"]}>
          {view.rules.map((rule) => (
            <RuleCard key={rule.id} job={job} rule={rule} onChange={() => setMode({ at: "change", rule })} />
          ))}
        </div>
      )}
      <DecisionRule job={job} view={view} />
    </Page>
  );
}
