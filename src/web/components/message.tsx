import type { ReactNode } from "react";
import styles from "./message.module.css";

interface MessageProps {
  readonly title: string;
  /** what to do, in a sentence or two */
  readonly children?: ReactNode;
  /** the one thing to press, and others */
  readonly actions?: ReactNode;
}

/** Nothing is here yet, and how to begin. */
export function EmptyState({ title, children, actions }: MessageProps) {
  return (
    <section className={styles["message"]} data-kind="empty">
      <h2>{title}</h2>
      <div className={styles["text"]}>{children}</div>
      <div className={styles["actions"]}>{actions}</div>
    </section>
  );
}

/** Something went wrong: what happened, what is safe, what to do. Told at once to those who listen. */
export function ErrorState({ title, children, actions }: MessageProps) {
  return (
    <section className={styles["message"]} data-kind="trouble" role="alert">
      <h2>{title}</h2>
      <div className={styles["text"]}>{children}</div>
      <div className={styles["actions"]}>{actions}</div>
    </section>
  );
}

/** Something to know while going on. */
export function Notice({ children, actions }: Pick<MessageProps, "children" | "actions">) {
  return (
    // no landmark: several may stand on a page
    <div role="note" className={styles["notice"]}>
      <div>{children}</div>
      {actions}
    </div>
  );
}
