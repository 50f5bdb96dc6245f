import { NavLink } from "react-router";
import { useJob } from "../../app/job-frame.tsx";
import { reviewWords } from "../../words/review/words.ts";
import { useWords } from "../../words/use-words.ts";
import { useAnswer } from "../../worker/use-answer.ts";
import { addressOf } from "./addresses.ts";
import styles from "./review.module.css";

/** The screens of one element side by side, so that none is more than a step from another. */
export function ElementParts({ element }: { readonly element: string }) {
  const job = useJob();
  const word = useWords(reviewWords);
  const runs = useAnswer((desk) => desk.runs(job.id), [job.id, job.runs, job.entries, job.work.phase]);
  const own = (runs ?? []).filter(({ elementId }) => elementId === element);
  const parts = [
    { to: addressOf.element(job.id, element), text: word("overview") },
    ...own.map(({ id, tubeId }) => ({
      to: addressOf.readings(job.id, id),
      text: own.length > 1 ? `${word("readings")} ${tubeId ?? id}` : word("readings"),
    })),
    { to: addressOf.path(job.id, element), text: word("path") },
    { to: addressOf.together(job.id, element), text: word("together") },
    { to: addressOf.verdict(job.id, element), text: word("verdict") },
  ];
  return (
    <nav aria-label={word("partsOf", { element })}>
      <ul className={styles["parts"]}>
        {parts.map(({ to, text }) => (
          <li key={to}>
            <NavLink to={to} end className={styles["part"]!}>
              {text}
            </NavLink>
          </li>
        ))}
      </ul>
    </nav>
  );
}
