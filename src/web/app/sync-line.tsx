import { frameWords } from "../words/frame/words.ts";
import { useWords } from "../words/use-words.ts";
import { useSyncStatus } from "../worker/use-sync-status.ts";
import styles from "./sync-line.module.css";

/** Where the entries of the job are, in words. Being offline is no fault and has no colour. */
export function SyncLine({ job }: { readonly job: string }) {
  const word = useWords(frameWords);
  const status = useSyncStatus(job);
  if (status?.unsent === undefined) return null;
  const text = {
    "on-this-device-only": word("notSent", { count: status.unsent?.entries ?? 0 }),
    sending: word("sending"),
    "at-the-office": word("allSent"),
  }[status.state];
  return (
    <span className={styles["line"]} role="status" data-state={status.state}>
      {text}
    </span>
  );
}
