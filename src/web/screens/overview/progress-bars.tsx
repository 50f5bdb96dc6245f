import { ProgressBar } from "react-aria-components";
import { overviewWords } from "../../words/overview/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { OverviewView } from "../../worker/desk-record.ts";
import styles from "./overview-screen.module.css";

/** Done and to do, each as a bar with its numbers. */
export function ProgressBars({ view: { elements, measured, judged } }: { readonly view: OverviewView }) {
  const word = useWords(overviewWords);
  return (
    <div className={styles["bars"]}>
      <Bar label={word("measured")} count={measured} all={elements} />
      <Bar label={word("judged")} count={judged} all={elements} />
      <Bar label={word("toDo")} count={elements - judged} all={elements} />
    </div>
  );
}

function Bar({
  label,
  count,
  all,
}: {
  readonly label: string;
  readonly count: number;
  readonly all: number;
}) {
  const word = useWords(overviewWords);
  const said = word("ofAll", { count, all });
  return (
    <ProgressBar aria-label={label} value={count} maxValue={all} valueLabel={said} className={styles["bar"]!}>
      {({ percentage, valueText }) => (
        <>
          <span className={styles["words"]}>
            <span>{label}</span>
            <strong>{valueText}</strong>
          </span>
          <span className={styles["track"]}>
            <span className={styles["fill"]} style={{ width: `${percentage ?? 0}%` }} />
          </span>
        </>
      )}
    </ProgressBar>
  );
}
