import { type ProxyMarked, proxy, type Remote, wrap } from "comlink";
import type { Desk } from "./desk.ts";

const held: { desk: Remote<Desk> | undefined } = { desk: undefined };

/** The worker's desk, started with the first question. All windows of the browser have one each; one of them writes. */
export function desk(): Remote<Desk> {
  held.desk ??= wrap<Desk>(
    new Worker(new URL("./start-worker.ts", import.meta.url), { type: "module", name: "toeline" }),
  );
  return held.desk;
}

/** A function that the worker may call. */
export const told = <T extends (...values: never[]) => void>(listener: T): T & ProxyMarked => proxy(listener);
