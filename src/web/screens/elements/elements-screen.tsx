import { useState } from "react";
import { useJob } from "../../app/job-frame.tsx";
import { Button } from "../../components/button.tsx";
import { FindingList } from "../../components/finding-list.tsx";
import { EmptyState, Notice } from "../../components/message.tsx";
import { Page, Sheet } from "../../components/page.tsx";
import { elementsWords } from "../../words/elements/words.ts";
import { useWords } from "../../words/use-words.ts";
import { useAnswer } from "../../worker/use-answer.ts";
import { BringSchedule } from "./bring-schedule.tsx";
import { Schedule } from "./schedule.tsx";
import { Withdrawn } from "./withdrawn.tsx";

/** The schedule: brings elements in, shows them, changes them, withdraws them. */
export function Component() {
  const job = useJob();
  const word = useWords(elementsWords);
  const [isBringing, setBringing] = useState(false);
  const findings = useAnswer((asked) => asked.findings(job.id), [job.id, job.revision]) ?? [];
  const ofSchedule = findings.filter(
    ({ severity, place }) =>
      severity === "error" && (place.file === "elements.csv" || place.file === "tubes.csv"),
  );
  const isEmpty = job.elements.length === 0 && job.work.phase === "ready";
  if (isBringing)
    return (
      <Page
        wide
        title={word("bringTitle")}
        lead={word("bringLead")}
        actions={<Button onPress={() => setBringing(false)}>{word("back")}</Button>}
      >
        <BringSchedule onTaken={(isWhole) => setBringing(!isWhole)} />
      </Page>
    );
  return (
    <Page
      wide
      title={word("title")}
      lead={word("lead")}
      actions={
        <Button weight="main" onPress={() => setBringing(true)}>
          {word("add")}
        </Button>
      }
    >
      {isEmpty ? (
        <EmptyState title={word("emptyTitle")}>
          <p>{word("emptyText")}</p>
        </EmptyState>
      ) : null}
      {ofSchedule.length === 0 || job.elements.length === 0 ? null : (
        <Sheet title={word("unreadableTitle")}>
          <Notice>{word("unreadableText")}</Notice>
          <FindingList findings={ofSchedule} />
        </Sheet>
      )}
      {job.elements.length === 0 ? null : <Schedule job={job} />}
      <Withdrawn job={job} />
    </Page>
  );
}
