import { createContext, useContext } from "react";
import { Outlet, useParams } from "react-router";
import { contract } from "#core";
import { LinkButton } from "../components/button.tsx";
import { ErrorState } from "../components/message.tsx";
import { Page } from "../components/page.tsx";
import { frameWords } from "../words/frame/words.ts";
import { useWords } from "../words/use-words.ts";
import type { JobView } from "../worker/desk.ts";
import { useWatchedJob } from "../worker/use-watched-job.ts";
import { Loading } from "./outcomes.tsx";
import { TroubleSentence } from "./trouble-sentence.tsx";

const JobContext = createContext<JobView | undefined>(undefined);

/** The job of the screen, as it is now; drawn anew with every change. Only for screens of a job. */
export function useJob(): JobView {
  const job = useContext(JobContext);
  contract(job !== undefined, "useJob: the screen does not stand in a job");
  return job;
}

/** Opens the job of the address and keeps it open while one moves among its screens. */
export function JobFrame() {
  const { job: id = "" } = useParams();
  const word = useWords(frameWords);
  const watched = useWatchedJob(id);
  if (watched === undefined) return <Loading />;
  if (!watched.ok)
    return (
      <Page title={id}>
        <ErrorState
          title={word("jobUnreadable")}
          actions={<LinkButton to="/jobs">{word("toJobs")}</LinkButton>}
        >
          <p>
            <TroubleSentence trouble={watched.error} />
          </p>
        </ErrorState>
      </Page>
    );
  return (
    <JobContext.Provider value={watched.value}>
      <Outlet />
    </JobContext.Provider>
  );
}
