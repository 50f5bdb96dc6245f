import { useJob } from "../../app/job-frame.tsx";
import { LinkButton } from "../../components/button.tsx";
import { jobWords } from "../../words/job/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { JobView } from "../../worker/desk.ts";
import styles from "./job-screen.module.css";

const TEXTS = {
  "no-elements": "waitsElements",
  nothing: "waitsNothing",
  conflicts: "waitsConflicts",
  "missing-entries": "waitsEntries",
  errors: "waitsErrors",
  outside: "waitsOutside",
  "too-close": "waitsTooClose",
  "no-runs": "waitsRuns",
  "not-judged": "waitsJudgement",
} as const;

/** The one thing of the job that waits longest for somebody, and the way to it. */
export function NextThing({ job }: { readonly job: JobView }) {
  const word = useWords(jobWords);
  const { id } = useJob();
  const { waiting } = job;
  if (waiting.what === "nothing" && job.work.phase !== "ready") return null;
  const count = "count" in waiting ? waiting.count : 0;
  const element = "element" in waiting ? waiting.element : undefined;
  return (
    <section className={styles["next"]} aria-label={word("nextTitle")}>
      <h2>{word(TEXTS[waiting.what], { count })}</h2>
      {element === undefined ? null : (
        <div>
          <LinkButton
            weight="main"
            to={`/jobs/${encodeURIComponent(id)}/elements/${encodeURIComponent(element)}`}
          >
            {word("nextOpen", { element })}
          </LinkButton>
        </div>
      )}
    </section>
  );
}
