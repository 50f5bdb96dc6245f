import { Link } from "react-router";
import { jobsWords } from "../../words/jobs/words.ts";
import { useTime } from "../../words/use-time.ts";
import { useWords } from "../../words/use-words.ts";
import type { JobCard } from "../../worker/desk.ts";
import styles from "./jobs-screen.module.css";

/** One line a job, the one written in last first. */
export function JobList({ jobs }: { readonly jobs: readonly JobCard[] }) {
  const word = useWords(jobsWords);
  const time = useTime();
  const latestFirst = jobs.toSorted((a, b) => Date.parse(b.lastWall ?? "0") - Date.parse(a.lastWall ?? "0"));
  return (
    <ul className={styles["list"]} aria-label={word("list")}>
      {latestFirst.map((job) => (
        <li key={job.id}>
          <Link to={`/jobs/${encodeURIComponent(job.id)}`} className={styles["card"]!}>
            <span className={styles["name"]}>{job.name}</span>
            <Count name={word("elements")} count={job.elements} />
            <Count name={word("runs")} count={job.runs} />
            <Count name={word("entries")} count={job.entries} />
            <span className={styles["last"]}>
              <small>{word("last")}</small> {job.lastWall === undefined ? "–" : time(job.lastWall)}
              {job.isHere ? null : <small className={styles["office"]}>{word("office")}</small>}
            </span>
          </Link>
        </li>
      ))}
    </ul>
  );
}

const Count = ({ name, count }: { readonly name: string; readonly count: number }) => (
  <span className={styles["count"]}>
    {count} <small>{name}</small>
  </span>
);
