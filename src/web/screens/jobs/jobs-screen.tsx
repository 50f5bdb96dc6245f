import { useState } from "react";
import { useNavigate } from "react-router";
import { Loading } from "../../app/outcomes.tsx";
import { TroubleSentence } from "../../app/trouble-sentence.tsx";
import { Button } from "../../components/button.tsx";
import { EmptyState, ErrorState } from "../../components/message.tsx";
import { Page } from "../../components/page.tsx";
import { jobsWords } from "../../words/jobs/words.ts";
import { useWords } from "../../words/use-words.ts";
import { useJobs } from "../../worker/use-jobs.ts";
import { ImportPlace } from "./import-place.tsx";
import { JobList } from "./job-list.tsx";
import styles from "./jobs-screen.module.css";
import { NewJob } from "./new-job.tsx";

/** Finds the job: those on this device and at the office; starts one; brings one in. */
export function Component() {
  const word = useWords(jobsWords);
  const [isNew, setNew] = useState(false);
  const go = useNavigate();
  const jobs = useJobs();
  const open = (job: string) => void go(`/jobs/${encodeURIComponent(job)}`);
  if (jobs === undefined) return <Loading />;
  return (
    <Page
      title={word("title")}
      lead={word("lead")}
      actions={
        <Button weight="main" onPress={() => setNew(true)}>
          {word("newJob")}
        </Button>
      }
    >
      {!jobs.ok ? (
        <ErrorState title={word("readFailed")}>
          <p>
            <TroubleSentence trouble={jobs.error} />
          </p>
        </ErrorState>
      ) : jobs.value.length === 0 ? (
        <EmptyState title={word("emptyTitle")}>
          <p>{word("emptyText")}</p>
        </EmptyState>
      ) : (
        <JobList jobs={jobs.value} />
      )}
      <div className={styles["import"]}>
        <ImportPlace onOpen={open} />
      </div>
      <NewJob isOpen={isNew} onClose={() => setNew(false)} onMade={open} />
    </Page>
  );
}
