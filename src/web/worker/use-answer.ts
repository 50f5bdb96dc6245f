import type { Remote } from "comlink";
import { useEffect, useState } from "react";
import type { Desk } from "./desk.ts";
import { desk } from "./desk-client.ts";

/**
 * The answer to a question to the desk; undefined until it is there. Asked anew when one of the keys changes; the answer before
 * stays on the screen until the new one has come.
 *
 * @param keys what the question depends on: ids, and the job's `revision` where the answer follows the job.
 */
export function useAnswer<T>(
  ask: (desk: Remote<Desk>) => Promise<T>,
  keys: readonly (string | number | boolean | undefined)[],
): T | undefined {
  const [answer, setAnswer] = useState<{ readonly value: T }>();
  const key = JSON.stringify(keys);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the question is written anew each time; its keys say when it changes
  useEffect(() => {
    let isWanted = true;
    void ask(desk()).then((value) => {
      if (isWanted) setAnswer({ value });
    });
    return () => {
      isWanted = false;
    };
  }, [key]);
  return answer?.value;
}
