import { reviewWords } from "../../words/review/words.ts";
import { useTime } from "../../words/use-time.ts";
import { useWords } from "../../words/use-words.ts";
import type { Acceptance } from "../../worker/desk-review.ts";
import styles from "./review.module.css";

/** Whether somebody has accepted something, who, when, and with which remark. */
export function AcceptanceLine({ acceptance }: { readonly acceptance: Acceptance }) {
  const word = useWords(reviewWords);
  const time = useTime();
  if (acceptance.state === "waiting") return <p className={styles["soft"]}>{word("waiting")}</p>;
  const { author, wall } = acceptance.by;
  return (
    <p className={styles["soft"]} role="status">
      {word(acceptance.state === "accepted" ? "accepted" : "changedSince", { author, when: time(wall) })}
      {acceptance.state === "accepted" ? `: ${acceptance.reason}` : null}
    </p>
  );
}
