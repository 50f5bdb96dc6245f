import { useParams } from "react-router";
import { useJob } from "../../app/job-frame.tsx";
import { Loading } from "../../app/outcomes.tsx";
import { LinkButton } from "../../components/button.tsx";
import { EmptyState } from "../../components/message.tsx";
import { Page } from "../../components/page.tsx";
import { reviewWords } from "../../words/review/words.ts";
import { useWords } from "../../words/use-words.ts";
import { useAnswer } from "../../worker/use-answer.ts";
import { addressOf } from "../review/addresses.ts";
import { RunReadings } from "./run-readings.tsx";

/** The readings of one run: judged row by row, then accepted. */
export function Component() {
  const job = useJob();
  const { run: id = "" } = useParams();
  const word = useWords(reviewWords);
  const answer = useAnswer(
    async (desk) => ({ run: id, review: await desk.review.run(job.id, id) }),
    [job.id, id, job.revision],
  );
  if (answer?.run !== id) return <Loading />;
  if (answer.review === undefined) {
    if (job.work.phase === "reading" || job.work.phase === "fetching") return <Loading />;
    return (
      <Page title={id}>
        <EmptyState
          title={word("missingTitle", { name: id })}
          actions={<LinkButton to={addressOf.inbox(job.id)}>{word("toInbox")}</LinkButton>}
        >
          <p>{word("missingText")}</p>
        </EmptyState>
      </Page>
    );
  }
  return <RunReadings key={id} review={answer.review} />;
}
