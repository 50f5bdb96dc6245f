import type { RunResult, StepReport } from "#core";
import { paintHeading } from "../terminal/colour.ts";
import { tableLines } from "../terminal/table.ts";
import type { Terminal } from "../terminal/terminal.ts";

/** Units that stand at the end of a key of an effect, longest first, and how they are written for people. */
const UNITS = [
  ["_deg_per_h", " deg/h"],
  ["_m_per_m", " m/m"],
  ["_deg", " deg"],
  ["_mm", " mm"],
  ["_m", " m"],
  ["_s", " s"],
] as const;

/** The runs with what each step of the computation changed, for `--verbose`. */
export function runSection(terminal: Terminal, runs: readonly RunResult[]): readonly string[] {
  return runs.flatMap((run) => {
    const steps = tableLines<StepReport>(
      [
        { heading: "", cell: () => "" },
        { heading: "", cell: ({ step }) => step },
        { heading: "", cell: ({ effect }) => Object.entries(effect).map(effectText).join(", ") },
      ],
      run.steps,
    ).slice(1);
    return [paintHeading(terminal, headOf(run)), ...steps, ""];
  });
}

function headOf(run: RunResult): string {
  const tube = run.tubeId === undefined ? "" : `, tube ${run.tubeId}`;
  const state =
    run.path === undefined ? "could not be worked out" : `${run.path.count} stations, ${run.method}`;
  const judged = run.path === undefined || run.judgeable ? "" : ", shown but not judged";
  return `Run ${run.runId}: element ${run.elementId}${tube}; ${state}${judged}`;
}

/** "misclosure 1.84 deg" from the key "misclosure_deg". */
function effectText([key, value]: [string, number | string]): string {
  const [suffix, unit] = UNITS.find(([end]) => key.endsWith(end)) ?? ["", ""];
  const name = key.slice(0, key.length - suffix.length).replaceAll("_", " ");
  return `${name} ${typeof value === "string" ? value : `${short(value)}${unit}`}`;
}

const short = (value: number): string =>
  Number.isFinite(value) ? String(Number(value.toPrecision(4))) : "not known";
