import { z } from "zod";
import { fail, type Issue, type Result } from "#core";
import type { JsonObject } from "#records";
import { error } from "../../issue.ts";
import { checkLogTask } from "./check-log.ts";
import { reportTask } from "./report.ts";
import { resultsTask } from "./results.ts";
import type { Task, TaskOrder, TaskSurroundings } from "./task.ts";

/** A task whose input has still to be checked. */
export interface RegisteredTask {
  readonly name: string;
  readonly description: string;
  /** what the input may be, as JSON Schema */
  readonly inputSchema: JsonObject;
  /** Errors: work.input. */
  readInput(raw: unknown): Result<JsonObject, Issue>;
  run(order: TaskOrder, raw: JsonObject, surroundings: TaskSurroundings): Promise<Result<JsonObject, Issue>>;
}

/** Every kind of heavy work there is; a new one is a file and a line here. */
export const tasks: readonly RegisteredTask[] = [
  registered(resultsTask),
  registered(reportTask),
  registered(checkLogTask),
];

export const taskOf = (name: string): RegisteredTask | undefined => tasks.find((task) => task.name === name);

function registered<Input>(task: Task<Input>): RegisteredTask {
  const read = (raw: unknown): Result<Input, Issue> => {
    const shaped = task.input.safeParse(raw);
    if (shaped.success) return { ok: true, value: shaped.data };
    const [first] = shaped.error.issues;
    const field = ["input", ...(first?.path ?? [])].join(".");
    return fail(error("work.input", { task: task.name, field, found: first?.message ?? "" }, field));
  };
  return {
    name: task.name,
    description: task.description,
    inputSchema: schemaOf(task),
    readInput: (raw) => {
      const checked = read(raw);
      // what was checked came out of JSON
      return checked.ok ? { ok: true, value: raw as JsonObject } : checked;
    },
    run: async (order, raw, surroundings) => {
      const input = read(raw);
      return input.ok ? task.run(order, input.value, surroundings) : input;
    },
  };
}

/** As a caller writes it, with what may be left out. */
function schemaOf<Input>({ name, description, input }: Task<Input>): JsonObject {
  const { $schema, ...schema } = z.toJSONSchema(input, { io: "input" });
  return { title: name, description, ...(schema as JsonObject) };
}
