import { useEffect, useState } from "react";
import type { Issue, Result } from "#core";
import type { JobCard } from "./desk.ts";
import { desk, told } from "./desk-client.ts";

/** All jobs known here, told anew when one comes or grows; undefined until they are read. */
export function useJobs(): Result<readonly JobCard[], Issue> | undefined {
  const [jobs, setJobs] = useState<Result<readonly JobCard[], Issue>>();
  useEffect(() => {
    let isShown = true;
    const read = async () => {
      const now = await desk().jobs();
      if (isShown) setJobs(now);
    };
    void read();
    const watch = desk().watchJobs(told(() => void read()));
    return () => {
      isShown = false;
      void watch.then((number) => desk().unwatchJobs(number));
    };
  }, []);
  return jobs;
}
