import { readFileSync, statSync } from "node:fs";
import { fail, type Issue, ok, type Result } from "#core";
import { parseJson } from "#formats";
import { type NamedScenario, namedScenario, namedScenarios, readScenario, type Scenario } from "#simulator";
import { sentenceOf } from "#text";
import { nearest } from "../terminal/nearest.ts";

/**
 * A scenario by its name, in the sizes given, or out of a scenario file.
 *
 * @param sizes as typed, "elements=500"; only for a scenario that goes by a name.
 * @returns the scenario, or why not, a sentence or more.
 */
export function openScenario(
  nameOrFile: string,
  sizes: readonly string[],
  seed: string,
): Result<Scenario, string> {
  const named = namedScenarios.find((scenario) => scenario.id === nameOrFile);
  if (named !== undefined) return fromName(named, sizes, seed);
  const status = statSync(nameOrFile, { throwIfNoEntry: false });
  if (status?.isFile() !== true) return fail(unknown(nameOrFile));
  if (sizes.length > 0) return fail(`${nameOrFile} is a scenario file; its sizes stand in it.`);
  return fromFile(nameOrFile, seed);
}

function fromName({ id, parameters }: NamedScenario, sizes: readonly string[], seed: string) {
  const numbers: Record<string, unknown> = {};
  for (const size of sizes) {
    const [key = "", value = ""] = size.split("=", 2);
    if (!parameters.some((parameter) => parameter.key === key)) {
      const known = parameters.map((parameter) => parameter.key).join(", ") || "none";
      return fail(`Scenario ${id} has no size ${key}; its sizes: ${known}.`);
    }
    numbers[key] = /^\d+(\.\d+)?$/.test(value) ? Number(value) : value;
  }
  return explained(namedScenario(id, numbers, seed), id, () => undefined);
}

function fromFile(file: string, seed: string): Result<Scenario, string> {
  const parsed = parseJson(new TextDecoder().decode(readFileSync(file)));
  if (!parsed.ok) {
    const { line, found, expected } = parsed.error;
    return fail(`${file}:${line} Found ${found}; expected ${expected}.`);
  }
  return explained(readScenario(parsed.value.value, seed), file, (field) => parsed.value.lineOf(field));
}

function explained(
  read: Result<Scenario, readonly Issue[]>,
  source: string,
  lineOf: (field: string) => number | undefined,
): Result<Scenario, string> {
  if (read.ok) return ok(read.value);
  const lines = read.error.map((issue) => {
    const field = issue.place.field ?? "";
    const line = lineOf(field);
    return `${line === undefined ? source : `${source}:${line}`} ${field} ${sentenceOf(issue)}`;
  });
  return fail(lines.join("\n"));
}

function unknown(name: string): string {
  const ids = namedScenarios.map((scenario) => scenario.id);
  const near = nearest(name, ids);
  const hint = near === undefined ? `there are ${ids.join(", ")}` : `is ${near} meant?`;
  return `There is no scenario or scenario file ${name}; ${hint}`;
}
