import type { Command } from "commander";
import { namedScenarios, writeJobFolder } from "#simulator";
import type { Surroundings } from "../command.ts";
import { EXIT, type ExitCode } from "../exit-code.ts";
import { openScenario } from "../files/open-scenario.ts";
import { whyNotWritable, writeFolder } from "../files/output-folder.ts";
import { counted } from "../terminal/counted.ts";
import { tableLines } from "../terminal/table.ts";

interface Line {
  readonly name: string;
  readonly text: string;
}

function scenarioList(): string {
  const lines = namedScenarios.flatMap((scenario): Line[] => [
    { name: scenario.id, text: scenario.text },
    ...scenario.parameters.map(({ key, otherwise, text }) => ({ name: `  ${key}=${otherwise}`, text })),
  ]);
  const columns = [
    { heading: "", cell: () => "" },
    { heading: "", cell: (line: Line) => line.name },
    { heading: "", cell: (line: Line) => line.text },
  ];
  return tableLines(columns, lines).slice(1).join("\n");
}

const afterHelp = () => `
Scenarios:
${scenarioList()}

Examples:
  toeline simulate plain --out trial --seed 7
  toeline simulate large --set elements=500 stations=60 --out big --seed 1
  toeline simulate my-scenario.json --out trial --seed 7
  toeline check trial

Besides the job folder, truth.json is written: the coordinates of the holes as they really are.
Exit code: 0 written, 2 nothing was written.`;

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
    .argument("<scenario>", "one of the names below, or a scenario file (JSON)")
    .requiredOption("--out <dir>", "write the job into this folder")
    .requiredOption("--seed <s>", "all chance; the same seed gives the same files")
    .option("--set <key=number...>", "sizes of a scenario that goes by a name")
    .addHelpText("after", afterHelp)
    .action(async (scenario: string, options: SimulateOptions) =>
      done(await simulate(scenario, options, surroundings)),
    );
}

async function simulate(
  nameOrFile: string,
  { out, seed, set = [] }: SimulateOptions,
  { terminal, interrupted, holdInterrupt }: Surroundings,
): Promise<ExitCode> {
  const opened = openScenario(nameOrFile, set, seed);
  const problem = opened.ok ? whyNotWritable(out) : opened.error;
  if (!opened.ok || problem !== undefined) {
    terminal.tell(problem ?? "");
    return EXIT.nothing;
  }
  const scenario = opened.value;
  const { files } = writeJobFolder(scenario, seed);
  holdInterrupt();
  const written = await writeFolder(out, files, interrupted);
  if (!written.ok) {
    terminal.tell(written.error);
    return interrupted() ? EXIT.interrupted : EXIT.nothing;
  }
  terminal.print(
    `${scenario.name}: ${counted(scenario.elements.length, "element")}, ${counted(scenario.runs.length, "run")}, ` +
      `seed ${seed}; ${counted(written.value, "file")} written to ${out}.`,
  );
  return EXIT.done;
}
