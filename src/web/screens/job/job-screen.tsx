import { useState } from "react";
import { useNavigate } from "react-router";
import type { Verdict } from "#core";
import { useJob } from "../../app/job-frame.tsx";
import { EmptyState } from "../../components/message.tsx";
import { Page } from "../../components/page.tsx";
import { Progress } from "../../components/progress.tsx";
import { jobWords } from "../../words/job/words.ts";
import { useWords } from "../../words/use-words.ts";
import { desk } from "../../worker/desk-client.ts";
import { useAnswer } from "../../worker/use-answer.ts";
import { Counts } from "./counts.tsx";
import { ElementList } from "./element-list.tsx";
import styles from "./job-screen.module.css";
import { LevelRuler } from "./level-ruler.tsx";
import { NextThing } from "./next-thing.tsx";
import { levelRange } from "./plan/level-range.ts";
import { SitePlan } from "./plan/site-plan.tsx";

/** The state of the whole job: where every element is at a level, how it was judged, and what waits. */
export function Component() {
  const job = useJob();
  const word = useWords(jobWords);
  const go = useNavigate();
  const [level, setLevel] = useState<number>();
  const [only, setOnly] = useState<ReadonlySet<Verdict>>(new Set());
  const axes = useAnswer((asked) => asked.axes(job.id), [job.id, job.revision]);
  const range = levelRange(job.elements);
  const levelM = level ?? range?.topM;
  const open = (element: string) =>
    void go(`/jobs/${encodeURIComponent(job.id)}/elements/${encodeURIComponent(element)}`);
  const { phase, done, total } = job.work;
  return (
    <Page wide title={job.name} lead={word("lead", { elements: job.elements.length, runs: job.runs })}>
      {phase === "working" || phase === "reading" || phase === "fetching" ? (
        <Progress
          label={word(phase)}
          done={done}
          total={phase === "working" ? total : 0}
          {...(phase === "working" ? { onCancel: () => void desk().stopWork(job.id) } : {})}
        />
      ) : null}
      {job.elements.length === 0 && phase === "ready" ? (
        <EmptyState title={word("emptyTitle")}>
          <p>{word("emptyText")}</p>
        </EmptyState>
      ) : null}
      {range === undefined || levelM === undefined ? null : (
        <div className={styles["layout"]}>
          <div className={styles["plan"]}>
            <LevelRuler range={range} levelM={levelM} onChange={setLevel} />
            <SitePlan elements={job.elements} axes={axes} levelM={levelM} only={only} onOpen={open} />
          </div>
          <div className={styles["beside"]}>
            <NextThing job={job} />
            <Counts job={job} only={only} onOnly={setOnly} />
            <ElementList elements={job.elements} only={only} onOpen={open} />
          </div>
        </div>
      )}
    </Page>
  );
}
