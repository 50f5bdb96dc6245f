import { type ReactNode, useEffect } from "react";
import styles from "./page.module.css";

export interface PageProps {
  readonly title: string;
  /** one sentence below the title */
  readonly lead?: ReactNode;
  /** the one main action, and others beside it */
  readonly actions?: ReactNode;
  /** takes the whole width: plans and tables */
  readonly wide?: boolean;
  readonly children?: ReactNode;
}

/** What every screen begins with: its title, what it is for, and what to do next. */
export function Page({ title, lead, actions, wide = false, children }: PageProps) {
  useEffect(() => {
    document.title = `${title} · Toeline`;
  }, [title]);
  return (
    <main className={styles["page"]} data-wide={wide || undefined} id="main" tabIndex={-1}>
      <header className={styles["head"]}>
        <div className={styles["title"]}>
          <h1>{title}</h1>
          {lead === undefined ? null : <p className={styles["lead"]}>{lead}</p>}
        </div>
        {actions === undefined ? null : <div className={styles["actions"]}>{actions}</div>}
      </header>
      {children}
    </main>
  );
}

/** A titled part of a page on its own sheet. */
export function Sheet({
  title,
  actions,
  children,
}: {
  readonly title?: string;
  readonly actions?: ReactNode;
  readonly children: ReactNode;
}) {
  return (
    <section className={styles["sheet"]}>
      {title === undefined ? null : (
        <header className={styles["sheetHead"]}>
          <h2>{title}</h2>
          {actions}
        </header>
      )}
      {children}
    </section>
  );
}
