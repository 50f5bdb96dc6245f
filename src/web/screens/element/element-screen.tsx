import { useParams } from "react-router";
import { elementKind } from "#core";
import { useJob } from "../../app/job-frame.tsx";
import { Loading } from "../../app/outcomes.tsx";
import { LinkButton } from "../../components/button.tsx";
import { FindingList } from "../../components/finding-list.tsx";
import { EmptyState, Notice } from "../../components/message.tsx";
import { Page, Sheet } from "../../components/page.tsx";
import { VerdictBadge } from "../../components/verdict-badge.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { elementWords } from "../../words/element/words.ts";
import { useWords } from "../../words/use-words.ts";
import { useAnswer } from "../../worker/use-answer.ts";
import { ElementParts } from "../review/element-parts.tsx";
import { Drawings } from "./drawings.tsx";
import styles from "./element-screen.module.css";
import { RunTable } from "./run-table.tsx";
import { VerdictTable } from "./verdict-table.tsx";

/** One element: how it was judged and why, its drawings, its runs, what was found. */
export function Component() {
  const job = useJob();
  const { element: id = "" } = useParams();
  const word = useWords(elementWords);
  const language = useLanguage();
  const detail = useAnswer((asked) => asked.element(job.id, id), [job.id, id, job.revision]);
  const place = job.elements.findIndex((each) => each.id === id);
  const plan = `/jobs/${encodeURIComponent(job.id)}`;
  const to = (element: string) => `${plan}/elements/${encodeURIComponent(element)}`;
  if (place < 0)
    return (
      <Page title={id}>
        <EmptyState
          title={word("missingTitle", { element: id })}
          actions={<LinkButton to={plan}>{word("toPlan")}</LinkButton>}
        >
          <p>{word("missingText")}</p>
        </EmptyState>
      </Page>
    );
  if (detail === undefined || detail.row.id !== id) return <Loading />;
  const { row, result, runs, findings } = detail;
  const before = job.elements[place - 1]?.id;
  const after = job.elements[place + 1]?.id;
  const kind = elementKind(row.kind)?.text[language].name ?? row.kind;
  return (
    <Page
      wide
      title={row.id}
      lead={row.group === undefined ? kind : word("lead", { kind, group: row.group })}
      actions={
        <>
          {before === undefined ? null : (
            <LinkButton to={to(before)}>{word("previous", { element: before })}</LinkButton>
          )}
          {after === undefined ? null : (
            <LinkButton to={to(after)}>{word("next", { element: after })}</LinkButton>
          )}
          <LinkButton to={plan}>{word("toPlan")}</LinkButton>
        </>
      }
    >
      <ElementParts element={row.id} />
      {row.verdict === undefined ? (
        <p role="status">{word("notWorkedOut")}</p>
      ) : (
        <VerdictBadge verdict={row.verdict} large />
      )}
      {row.inConflict ? <Notice>{word("isInConflict")}</Notice> : null}
      <div className={styles["columns"]}>
        <div className={styles["column"]}>
          <Sheet title={word("verdicts")}>
            {result === undefined ? null : result.verdicts.length === 0 ? (
              <p>{word("noRules")}</p>
            ) : (
              <VerdictTable verdicts={result.verdicts} />
            )}
          </Sheet>
          <Sheet title={word("runs")}>
            {runs.length === 0 ? <p>{word("noRuns")}</p> : <RunTable runs={runs} />}
          </Sheet>
          <Sheet title={word("findings")}>
            <FindingList findings={findings} />
          </Sheet>
        </div>
        <div className={styles["column"]}>
          {result === undefined ? null : (
            <Sheet title={word("drawings")}>
              <Drawings job={job.id} element={id} result={result} revision={job.revision} />
            </Sheet>
          )}
        </div>
      </div>
    </Page>
  );
}
