import type { Command } from "commander";
import { fail, ok, type Result } from "#core";
import { type NamedScenario, namedScenarios, writeJobFolder } from "#simulator";
import type { Surroundings } from "../command.ts";
import { EXIT, type ExitCode } from "../exit-code.ts";
import { whyNotWritable, writeFolder } from "../files/output-folder.ts";
import { nearest } from "../terminal/nearest.ts";
import { tableLines } from "../terminal/table.ts";

const EXAMPLES = `
Scenarios:
${scenarioList()}

Examples:
  toeline simulate plain --out trial --seed 7
  toeline simulate large --set elements=500 stations=60 --out big --seed 1
  toeline check trial

Besides the job folder, truth.json is written: the coordinates of the holes as they really are.
Exit code: 0 written, 2 nothing was written.`;

function scenarioList(): string {
  const lines = namedScenarios.flatMap((scenario) => [
    { name: scenario.id, text: scenario.text },
    ...scenario.parameters.map(({ key, otherwise, text }) => ({
      name: `  ${key}=${otherwise}`,
      text,
    })),
  ]);
  const columns = [
    { heading: "", cell: () => "" },
    { heading: "", cell: (line: (typeof lines)[number]) => line.name },
    { heading: "", cell: (line: (typeof lines)[number]) => line.text },
  ];
  return tableLines(columns, lines).slice(1).join("\n");
}

interface SimulateOptions {
  readonly out: string;
  readonly seed: string;
  readonly set?: readonly string[];
}

export function addSimulate(
  program: Command,
  surroundings: Surroundings,
  done: (code: ExitCode) => void,
): void {
  program
    .command("simulate")
    .summary("an invented job whose true holes are known")
    .description(
      "Writes a job folder of an invented site, with the readings of a probe whose errors are known.",
    )
    .argument("<scenario>", "one of the names below")
    .requiredOption("--out <dir>", "write the job into this folder")
    .requiredOption("--seed <s>", "all chance; the same seed gives the same files")
    .option("--set <key=number...>", "sizes of the scenario")
    .addHelpText("after", EXAMPLES)
    .action(async (name: string, options: SimulateOptions) =>
      done(await simulate(name, options, surroundings)),
    );
}

async function simulate(
  name: string,
  options: SimulateOptions,
  { terminal, interrupted, holdInterrupt }: Surroundings,
): Promise<ExitCode> {
  const refuse = (sentence: string): ExitCode => {
    terminal.tell(sentence);
    return EXIT.nothing;
  };
  const named = findScenario(name);
  if (!named.ok) return refuse(named.error);
  const numbers = readNumbers(named.value, options.set ?? []);
  if (!numbers.ok) return refuse(numbers.error);
  const unwritable = whyNotWritable(options.out);
  if (unwritable !== undefined) return refuse(unwritable);

  const scenario = named.value.make(numbers.value, options.seed);
  const { files } = writeJobFolder(scenario, options.seed);
  holdInterrupt();
  const written = await writeFolder(options.out, files, interrupted);
  if (!written.ok) {
    terminal.tell(written.error);
    return interrupted() ? EXIT.interrupted : EXIT.nothing;
  }
  terminal.print(
    `${scenario.name}: ${scenario.elements.length} elements, ${scenario.runs.length} runs, seed ${options.seed}; ` +
      `${written.value} files written to ${options.out}.`,
  );
  return EXIT.done;
}

function findScenario(name: string): Result<NamedScenario, string> {
  const named = namedScenarios.find((scenario) => scenario.id === name);
  if (named !== undefined) return ok(named);
  const ids = namedScenarios.map((scenario) => scenario.id);
  const near = nearest(name, ids);
  return fail(
    `There is no scenario ${name}; ${near === undefined ? `there are ${ids.join(", ")}` : `is ${near} meant?`}`,
  );
}

/** Sizes as they were typed, "elements=500", with the usual value for those that were not. */
function readNumbers(
  { id, parameters }: NamedScenario,
  typed: readonly string[],
): Result<Readonly<Record<string, number>>, string> {
  const numbers = Object.fromEntries(parameters.map(({ key, otherwise }) => [key, otherwise]));
  for (const part of typed) {
    const [key = "", text = ""] = part.split("=", 2);
    const parameter = parameters.find((one) => one.key === key);
    const known = parameters.map((one) => one.key).join(", ") || "none";
    if (parameter === undefined) return fail(`Scenario ${id} has no size ${key}; its sizes: ${known}.`);
    const { min, max, unit } = parameter;
    const value = /^\d+(\.\d+)?$/.test(text) ? Number(text) : Number.NaN;
    const fits = value >= min && value <= max && (unit !== "1" || Number.isInteger(value));
    if (!fits)
      return fail(`${key}=${text} cannot be: a ${unit === "1" ? "whole " : ""}number from ${min} to ${max}.`);
    numbers[key] = value;
  }
  return ok(numbers);
}
