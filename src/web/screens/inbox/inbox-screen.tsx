import { useState } from "react";
import { useNavigate } from "react-router";
import { useJob } from "../../app/job-frame.tsx";
import { Loading } from "../../app/outcomes.tsx";
import { LinkButton } from "../../components/button.tsx";
import { ChoiceBar } from "../../components/choice-bar.tsx";
import { EmptyState, Notice } from "../../components/message.tsx";
import { Page } from "../../components/page.tsx";
import { inboxWords } from "../../words/inbox/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { InboxRow, InboxView } from "../../worker/desk-review.ts";
import { useAnswer } from "../../worker/use-answer.ts";
import { addressOf } from "../review/addresses.ts";
import { ReviewTools } from "../review/review-tools.tsx";
import { RunList } from "./run-list.tsx";

type Shown = "waiting" | "accepted" | "all";

const isShown = (shown: Shown, { acceptance }: InboxRow): boolean =>
  shown === "all" || (acceptance === "accepted") === (shown === "accepted");

/** What has arrived, by urgency, and what is odd about it. */
export function Component() {
  const job = useJob();
  const word = useWords(inboxWords);
  const navigate = useNavigate();
  const [shown, setShown] = useState<Shown>("waiting");
  const inbox = useAnswer((desk) => desk.review.inbox(job.id), [job.id, job.revision]);
  if (inbox === undefined) return <Loading />;
  const rows = inbox.rows.filter((row) => isShown(shown, row));
  const count = (which: Shown) => inbox.rows.filter((row) => isShown(which, row)).length;
  const open = (run: string) => void navigate(addressOf.readings(job.id, run));
  return (
    <Page
      wide
      title={word("title")}
      lead={word("lead")}
      actions={
        <>
          {inbox.oldest === undefined ? null : (
            <LinkButton weight="main" to={addressOf.readings(job.id, inbox.oldest)}>
              {word("openOldest", { run: inbox.oldest })}
            </LinkButton>
          )}
          <ReviewTools open={(element) => addressOf.element(job.id, element)} />
        </>
      }
    >
      <Odd inbox={inbox} />
      {inbox.rows.length === 0 ? (
        <EmptyState
          title={word("noRunsTitle")}
          actions={<LinkButton to={addressOf.plan(job.id)}>{word("toPlan")}</LinkButton>}
        >
          <p>{word("noRunsText")}</p>
        </EmptyState>
      ) : (
        <>
          <ChoiceBar
            label={word("show")}
            value={shown}
            choices={[
              { id: "waiting", text: word("waitingShown", { count: count("waiting") }) },
              { id: "accepted", text: word("acceptedShown", { count: count("accepted") }) },
              { id: "all", text: word("allShown", { count: count("all") }) },
            ]}
            onChange={setShown}
          />
          {rows.length === 0 && shown === "waiting" ? (
            <EmptyState title={word("emptyTitle")}>
              <p>{word("emptyText")}</p>
            </EmptyState>
          ) : (
            <RunList rows={rows} onOpen={open} />
          )}
        </>
      )}
    </Page>
  );
}

const SHORT = 8;

/** What is odd about the log itself: entries that are not here, cannot be read, or contradict each other. */
function Odd({ inbox: { missing, unread, forks } }: { readonly inbox: InboxView }) {
  const word = useWords(inboxWords);
  return (
    <>
      {missing.map(({ device, from, to }) => (
        <Notice key={`${device} ${from}`}>
          <p>{word(from === to ? "missingOne" : "missing", { from, to, device: device.slice(0, SHORT) })}</p>
        </Notice>
      ))}
      {unread === 0 ? null : (
        <Notice>
          <p>{word("unread", { count: unread })}</p>
        </Notice>
      )}
      {forks === 0 ? null : (
        <Notice>
          <p>{word("forks", { count: forks })}</p>
        </Notice>
      )}
    </>
  );
}
