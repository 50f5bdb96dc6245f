import { useEffect, useState } from "react";
import type { Issue, Result } from "#core";
import type { JobView } from "./desk.ts";
import { desk, told } from "./desk-client.ts";

/** A job, told anew with every change; undefined until it is read. */
export function useWatchedJob(job: string): Result<JobView, Issue> | undefined {
  const [view, setView] = useState<Result<JobView, Issue>>();
  useEffect(() => {
    setView(undefined);
    let isShown = true;
    const watch = desk().watchJob(
      job,
      told((now: Result<JobView, Issue>) => {
        if (isShown) setView(now);
      }),
    );
    return () => {
      isShown = false;
      void watch.then((number) => desk().unwatchJob(number));
    };
  }, [job]);
  return view;
}
