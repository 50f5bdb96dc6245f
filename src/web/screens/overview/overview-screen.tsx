import { useState } from "react";
import { VERDICTS } from "#core";
import { formatProbability } from "#text";
import { useJob } from "../../app/job-frame.tsx";
import { Loading } from "../../app/outcomes.tsx";
import { LinkButton } from "../../components/button.tsx";
import { ChoiceBar } from "../../components/choice-bar.tsx";
import { EmptyState, Notice } from "../../components/message.tsx";
import { Page, Sheet } from "../../components/page.tsx";
import { VerdictBadge } from "../../components/verdict-badge.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { overviewWords } from "../../words/overview/words.ts";
import { useWords } from "../../words/use-words.ts";
import { OVERVIEW_PARTS, type OverviewPart, type OverviewView } from "../../worker/desk-record.ts";
import { useAnswer } from "../../worker/use-answer.ts";
import { addressOf } from "../review/addresses.ts";
import styles from "./overview-screen.module.css";
import { PartTable } from "./part-table.tsx";
import { ProgressBars } from "./progress-bars.tsx";
import { WorstTable } from "./worst-table.tsx";

/** How far the job is, which share is outside, and where. */
export function Component() {
  const job = useJob();
  const word = useWords(overviewWords);
  const view = useAnswer((desk) => desk.record.overview(job.id), [job.id, job.revision]);
  if (view === undefined) return <Loading />;
  const [worst] = view.worst;
  const rows = view.worst.flatMap((id) => job.elements.find((row) => row.id === id) ?? []);
  if (view.elements === 0 || view.measured === 0)
    return (
      <Page title={word("title")} lead={word("lead")}>
        <EmptyState
          title={word("emptyTitle")}
          actions={
            <LinkButton weight="main" to={`/jobs/${encodeURIComponent(job.id)}/bring-in`}>
              {word("emptyAction")}
            </LinkButton>
          }
        >
          <p>{word("emptyText")}</p>
        </EmptyState>
      </Page>
    );
  return (
    <Page
      wide
      title={word("title")}
      lead={word("lead")}
      actions={
        worst === undefined ? null : (
          <LinkButton weight="main" to={addressOf.verdict(job.id, worst)}>
            {word("openWorst", { element: worst })}
          </LinkButton>
        )
      }
    >
      <div className={styles["top"]}>
        <Sheet title={word("progress")}>
          <ProgressBars view={view} />
        </Sheet>
        <Sheet title={word("whole")}>
          <Whole view={view} />
        </Sheet>
      </div>
      <Parts view={view} />
      <Sheet title={word("worst")}>
        {rows.length === 0 ? <p>{word("worstNone")}</p> : <WorstTable rows={rows} />}
      </Sheet>
    </Page>
  );
}

function Whole({ view: { whole, counts } }: { readonly view: OverviewView }) {
  const word = useWords(overviewWords);
  const language = useLanguage();
  const percent = (share: number) => formatProbability(share, language);
  const { judged, outside, share, low, high, isSmall } = whole;
  return (
    <>
      <ul className={styles["counts"]}>
        {VERDICTS.map((verdict) => (
          <li key={verdict}>
            <strong>{counts[verdict]}</strong> <VerdictBadge verdict={verdict} />
          </li>
        ))}
      </ul>
      {judged === 0 ? (
        <p>{word("nothingJudged")}</p>
      ) : (
        <>
          <p className={styles["share"]}>{word("wholeShare", { share: percent(share), outside, judged })}</p>
          <p>{word("interval", { low: percent(low), high: percent(high) })}</p>
          {isSmall ? <Notice>{word("small", { count: judged })}</Notice> : null}
        </>
      )}
    </>
  );
}

function Parts({ view }: { readonly view: OverviewView }) {
  const word = useWords(overviewWords);
  const [part, setPart] = useState<OverviewPart>("crew");
  const rows = view.parts[part];
  const isUnsaid = rows.every(({ name }) => name === "");
  return (
    <Sheet>
      <ChoiceBar
        label={word("part")}
        value={part}
        choices={OVERVIEW_PARTS.map((id) => ({ id, text: word(`part_${id}`) }))}
        onChange={setPart}
      />
      {part === "rig" && isUnsaid ? (
        <p>{word("rigNote")}</p>
      ) : (
        <PartTable label={word(`part_${part}`)} rows={rows} />
      )}
      {part === "crew" ? <p className={styles["soft"]}>{word("crewNote")}</p> : null}
      <p className={styles["soft"]}>{word("caution")}</p>
    </Sheet>
  );
}
