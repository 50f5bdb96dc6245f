import type { ReactNode } from "react";
import { Link } from "react-router";
import { frameWords } from "../words/frame/words.ts";
import { useWords } from "../words/use-words.ts";
import { SyncLine } from "./sync-line.tsx";
import styles from "./top-bar.module.css";

/** Where one is, where one's data is, and the way to the settings. */
export function TopBar({
  job,
  children,
}: {
  readonly job: string | undefined;
  readonly children: ReactNode;
}) {
  const word = useWords(frameWords);
  return (
    <header className={styles["bar"]}>
      {children}
      <Link to="/jobs" className={styles["name"]!}>
        <svg className={styles["mark"]} viewBox="0 0 20 24" aria-hidden="true" focusable="false">
          <path d="M3 2h14" className={styles["head"]} />
          <path d="M10 2v20" className={styles["plumb"]} />
          <path d="M10 2c0 8 .7 13 4.5 20" className={styles["axis"]} />
        </svg>
        Toeline
      </Link>
      <div className={styles["middle"]}>{job === undefined ? null : <SyncLine job={job} />}</div>
      <nav className={styles["links"]} aria-label="Toeline">
        <Link to="/jobs">{word("jobs")}</Link>
        <Link to="/settings">{word("settings")}</Link>
      </nav>
    </header>
  );
}
