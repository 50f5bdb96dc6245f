import { readingsWords } from "../../words/readings/words.ts";
import { reviewWords } from "../../words/review/words.ts";
import { useTime } from "../../words/use-time.ts";
import { useWords } from "../../words/use-words.ts";
import type { RunReview } from "../../worker/desk-review.ts";
import styles from "./readings-screen.module.css";

/** Every setting aside and putting back of the run, the newest first: who, when, why. */
export function ChangeList({ changes }: Pick<RunReview, "changes">) {
  const word = useWords(readingsWords);
  const shared = useWords(reviewWords);
  const time = useTime();
  const all = Object.entries(changes)
    .flatMap(([row, each]) => each.map((change, i) => ({ ...change, row: Number(row), key: `${row} ${i}` })))
    .toSorted((a, b) => (a.wall < b.wall ? 1 : -1));
  if (all.length === 0) return <p className={styles["note"]}>{word("changesNone")}</p>;
  return (
    <ol className={styles["changes"]}>
      {all.map(({ key, row, isAside, reason, author, wall }) => (
        <li key={key}>
          {word(isAside ? "changeAside" : "changeBack", { row: row + 1, reason })}
          <span className={styles["found"]}>{shared("by", { author, when: time(wall) })}</span>
        </li>
      ))}
    </ol>
  );
}
