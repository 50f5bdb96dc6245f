import { useEffect, useState } from "react";
import type { SyncStatus } from "#sync";
import { desk, told } from "./desk-client.ts";

/** Where the entries of a job are; undefined until it is known. */
export function useSyncStatus(job: string): SyncStatus | undefined {
  const [status, setStatus] = useState<SyncStatus>();
  useEffect(() => {
    let isShown = true;
    const watch = desk().watchSync(
      job,
      told((now: SyncStatus) => {
        if (isShown) setStatus(now);
      }),
    );
    return () => {
      isShown = false;
      void watch.then((number) => desk().unwatchSync(number));
    };
  }, [job]);
  return status;
}
