import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { namedScenarios, writeJobFolder } from "#simulator";

// How the time of `check` and `reduce` grows with the job: it must stay in proportion to the number of elements.
// The jobs are made by the simulator; every figure is the median of fresh processes of the command line as users have it,
// in seconds of CPU, because a machine that does something else besides makes the clock worthless.

const ELEMENTS = [250, 500, 1_000, 2_000];
const STATIONS = 60;
const INTERVAL_M = 0.5;
const ROUNDS = 3;
const SEED = 1;
const program = join(import.meta.dirname, "../toeline.mjs");

interface Row {
  readonly elements: number;
  readonly check: number;
  readonly reduce: number;
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

function writeJob(folder: string, elements: number): void {
  const large = namedScenarios.find((scenario) => scenario.id === "large");
  if (large === undefined) throw new Error("the simulator has no scenario called large");
  const scenario = large.make({ elements, stations: STATIONS, interval_m: INTERVAL_M }, SEED);
  for (const [name, text] of writeJobFolder(scenario, SEED).files) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
}

/** Makes a process say at its end what it used. */
const REPORT = `data:text/javascript,process.on("exit",()=>{const{user,system}=process.cpuUsage();process.stderr.write("cpu "+(user+system)/1e6)})`;

/** Seconds of CPU of one process. */
function timed(args: readonly string[]): number {
  const done = spawnSync(process.execPath, ["--import", REPORT, program, ...args], {
    stdio: ["ignore", "ignore", "pipe"],
    encoding: "utf8",
  });
  const used = /cpu ([\d.]+)$/.exec(done.stderr)?.[1];
  if (done.status !== 0 || used === undefined)
    throw new Error(`toeline ${args.join(" ")}: exit code ${done.status}\n${done.stderr}`);
  return Number(used);
}

function measure(elements: number): Row {
  const folder = mkdtempSync(join(tmpdir(), "toeline-bench-"));
  writeJob(folder, elements);
  const rounds = Array.from({ length: ROUNDS }, () => ({
    check: timed(["check", folder]),
    reduce: timed(["reduce", folder, "--json"]),
  }));
  rmSync(folder, { recursive: true });
  return {
    elements,
    check: median(rounds.map((one) => one.check)),
    reduce: median(rounds.map((one) => one.reduce)),
  };
}

const rows: Row[] = [];
console.log(`one run of ${STATIONS} stations an element, seed ${SEED}, median of ${ROUNDS} fresh processes`);
console.log("elements   check s  reduce s  reduce ms an element  against the first row");
for (const elements of ELEMENTS) {
  const row = measure(elements);
  rows.push(row);
  const each = (1000 * row.reduce) / elements;
  const first = (1000 * (rows[0]?.reduce ?? Number.NaN)) / (rows[0]?.elements ?? Number.NaN);
  const cells = [
    String(elements).padStart(8),
    row.check.toFixed(2).padStart(8),
    row.reduce.toFixed(2).padStart(8),
    each.toFixed(2).padStart(20),
    (each / first).toFixed(2).padStart(21),
  ];
  console.log(cells.join("  "));
}
const last = rows.at(-1);
const beforeLast = rows.at(-2);
if (last && beforeLast)
  console.log(
    `growth from ${beforeLast.elements} to ${last.elements} elements: ${(last.reduce / beforeLast.reduce).toFixed(2)} times the time`,
  );
