import type { z } from "zod";
import type { Issue, Result } from "#core";
import type { JsonObject } from "#records";
import type { Store } from "#store";

/** What is told of a signed head: the root of the tree, and when it was signed. */
export interface SignedOver {
  readonly root: string;
  readonly at: string;
}

/** What a piece of work is told, besides its own input. */
export interface TaskOrder {
  readonly job: string;
  /** entries of the job's log to go by, in their order of arrival: what comes later belongs to another piece of work */
  readonly entries: number;
  /** of the head that the office has signed over exactly these entries */
  readonly signed?: SignedOver;
}

export interface TaskSurroundings {
  /** opened for this thread alone */
  readonly store: Store;
  /** told how far the work has come */
  readonly onProgress: (done: number, total: number) => void;
}

/** A kind of heavy work. It runs in a thread of its own, knows only the store, and may be begun again at any time. */
export interface Task<Input> {
  readonly name: string;
  /** one sentence for the description of the interface */
  readonly description: string;
  readonly input: z.ZodType<Input>;
  /** @returns what is kept as the result. A large outcome goes into a blob, which the result names in a field `blob`. */
  run(order: TaskOrder, input: Input, surroundings: TaskSurroundings): Promise<Result<JsonObject, Issue>>;
}
