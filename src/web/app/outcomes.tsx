import { Link, useRouteError } from "react-router";
import { frameWords } from "../words/frame/words.ts";
import { useWords } from "../words/use-words.ts";
import styles from "./outcomes.module.css";

/** While a screen is fetched. */
export function Loading() {
  const word = useWords(frameWords);
  return (
    <p className={styles["loading"]} role="status">
      {word("loading")}
    </p>
  );
}

/** An address that leads nowhere. */
export function NotFound() {
  const word = useWords(frameWords);
  return (
    <main className={styles["outcome"]} id="main">
      <h1>{word("notFoundTitle")}</h1>
      <p>{word("notFoundText")}</p>
      <p>
        <Link to="/jobs">{word("toJobs")}</Link>
      </p>
    </main>
  );
}

/** The outermost edge: a mistake of the program. What was written is in the store already. */
export function Mistake() {
  const word = useWords(frameWords);
  const thrown = useRouteError();
  const text = thrown instanceof Error ? (thrown.stack ?? thrown.message) : JSON.stringify(thrown);
  return (
    <main className={styles["outcome"]} id="main">
      <h1>{word("mistakeTitle")}</h1>
      <p>{word("mistakeText")}</p>
      <p>
        <a href="/jobs">{word("reload")}</a>
      </p>
      <pre className={styles["text"]}>{text}</pre>
    </main>
  );
}
