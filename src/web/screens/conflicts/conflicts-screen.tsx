import { useJob } from "../../app/job-frame.tsx";
import { Loading } from "../../app/outcomes.tsx";
import { LinkButton } from "../../components/button.tsx";
import { EmptyState, Notice } from "../../components/message.tsx";
import { Page } from "../../components/page.tsx";
import { Progress } from "../../components/progress.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { conflictsWords } from "../../words/conflicts/words.ts";
import { useWords } from "../../words/use-words.ts";
import { useAnswer } from "../../worker/use-answer.ts";
import { ConflictSheet } from "./conflict-sheet.tsx";

/** Fields with more than one value: what each of them means, and which holds. */
export function Component() {
  const job = useJob();
  const word = useWords(conflictsWords);
  const language = useLanguage();
  const cards = useAnswer(
    (desk) => desk.record.conflicts(job.id, language),
    [job.id, job.entries, job.conflicts, language],
  );
  if (cards === undefined && job.conflicts === 0) return <Loading />;
  return (
    <Page title={word("title")} lead={word("lead")}>
      {cards === undefined ? (
        <Progress label={word("working")} done={0} total={0} />
      ) : cards.length === 0 ? (
        <EmptyState
          title={word("emptyTitle")}
          actions={
            <LinkButton to={`/jobs/${encodeURIComponent(job.id)}/history`}>{word("toHistory")}</LinkButton>
          }
        >
          <p>{word("emptyText")}</p>
        </EmptyState>
      ) : (
        <>
          <Notice>{word("signingTitle")}</Notice>
          {cards.map((card) => (
            <ConflictSheet key={`${card.thing} ${card.field}`} card={card} />
          ))}
        </>
      )}
    </Page>
  );
}
