import { spawnSync } from "node:child_process";
import { closeSync, openSync, readFileSync, rmSync, writeSync } from "node:fs";
import { join } from "node:path";
import { computePath, ned } from "#core";

// Minimum curvature over a million stations, against a C program compiled in the same run: only the ratio counts,
// since milliseconds depend on the machine and on what else it does. Rounds alternate, each in a fresh process.

const HOLES = 20_000;
const ROUNDS = 5;
const WARM_ROUNDS = 5;
const SEED = 20250101;
const folder = import.meta.dirname;
const input = join(folder, "path-input.bin");
const program = join(folder, "path-c");
const source = join(folder, "../../bench/path.c");

interface Measured {
  readonly cpuMs: number;
  readonly sum: number;
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

/** mulberry32, a small generator with a well-known form; from memory. */
function uniform(seed: number): () => number {
  let a = seed;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Holes of 20 to 80 stations about half a metre apart, near plumb and wandering; a million stations in all. */
function writeInput(): void {
  const u = uniform(SEED);
  const normal = () => Math.sqrt(-2 * Math.log(1 - u())) * Math.cos(2 * Math.PI * u());
  const first = new Int32Array(HOLES + 1);
  for (let hole = 0; hole < HOLES; hole += 2) {
    const stations = 20 + Math.floor(61 * u());
    first[hole + 1] = (first[hole] ?? 0) + stations;
    first[hole + 2] = (first[hole + 1] ?? 0) + 100 - stations;
  }
  const count = first[HOLES] ?? 0;
  const columns = Array.from({ length: 4 }, () => new Float64Array(count));
  const [depth, north, east, down] = columns as [Float64Array, Float64Array, Float64Array, Float64Array];
  for (let hole = 0; hole < HOLES; hole++) {
    let depthM = 0;
    let leanNorth = 0.005 * normal();
    let leanEast = 0.005 * normal();
    for (let i = first[hole] ?? 0; i < (first[hole + 1] ?? 0); i++) {
      depth[i] = depthM;
      north[i] = leanNorth;
      east[i] = leanEast;
      down[i] = Math.sqrt(1 - leanNorth ** 2 - leanEast ** 2);
      depthM += 0.5 + 0.02 * (u() - 0.5);
      leanNorth += 0.0026 * normal();
      leanEast += 0.0026 * normal();
    }
  }
  const file = openSync(input, "w");
  for (const part of [Int32Array.of(HOLES), first, ...columns]) writeSync(file, part);
  closeSync(file);
}

/** One process: the same work some times over, the median of it. */
function measure(): Measured {
  const bytes = readFileSync(input);
  const data = bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength);
  const holes = new Int32Array(data, 0, 1)[0] ?? 0;
  const first = new Int32Array(data, 4, holes + 1);
  const count = first[holes] ?? 0;
  const column = (c: number) =>
    new Float64Array(data.slice(4 * (holes + 2) + 8 * c * count, 4 * (holes + 2) + 8 * (c + 1) * count));
  const [depthM, north, east, down] = [column(0), column(1), column(2), column(3)];
  const taken: number[] = [];
  let sum = 0;
  for (let round = 0; round < WARM_ROUNDS; round++) {
    sum = 0;
    const before = process.cpuUsage();
    const paths = Array.from({ length: holes }, (_, hole) => {
      const part = (values: Float64Array) => values.subarray(first[hole], first[hole + 1]);
      const profile = { depthM: part(depthM), north: part(north), east: part(east), down: part(down) };
      return computePath(profile, ned(0, 0, 0), "minimum-curvature");
    });
    const used = process.cpuUsage(before);
    taken.push((used.user + used.system) / 1000);
    for (const path of paths)
      for (let i = 0; i < path.count; i++)
        sum += (path.northM[i] ?? 0) + (path.eastM[i] ?? 0) + (path.downM[i] ?? 0);
  }
  return { cpuMs: median(taken), sum };
}

function compileC(): boolean {
  const flags = ["-O3", "-march=native", "-fno-math-errno", source, "-o", program, "-lm"];
  const compiled = spawnSync("gcc", flags, { stdio: ["ignore", "inherit", "inherit"] });
  return compiled.status === 0;
}

function runProcess(command: string, args: readonly string[]): Measured {
  const done = spawnSync(command, args, { encoding: "utf8" });
  if (done.status !== 0) throw new Error(`${command} failed: ${done.stderr}`);
  return JSON.parse(done.stdout) as Measured;
}

function main(): void {
  writeInput();
  const hasC = compileC();
  const ours: Measured[] = [];
  const theirs: Measured[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    ours.push(runProcess(process.execPath, [process.argv[1] ?? "", "--measure"]));
    if (hasC) theirs.push(runProcess(program, [input]));
  }
  rmSync(input);
  console.log(`minimum curvature, ${HOLES} holes, 1,000,000 stations, seed ${SEED}, ${ROUNDS} rounds`);
  console.log(`  toeline  ${median(ours.map((one) => one.cpuMs)).toFixed(1)} ms of CPU`);
  if (!hasC) {
    console.log("  no gcc here: nothing to compare with");
    return;
  }
  const ratios = ours.map((one, i) => one.cpuMs / (theirs[i]?.cpuMs ?? Number.NaN));
  const difference = Math.abs((ours[0]?.sum ?? 0) - (theirs[0]?.sum ?? 0)) / 1_000_000;
  console.log(`  C, libm  ${median(theirs.map((one) => one.cpuMs)).toFixed(1)} ms of CPU`);
  console.log(
    `  ratio    ${median(ratios).toFixed(2)} (rounds: ${ratios.map((one) => one.toFixed(2)).join(", ")})`,
  );
  console.log(`  mean difference of a station's coordinates ${difference.toExponential(1)} m`);
}

if (process.argv.includes("--measure")) console.log(JSON.stringify(measure()));
else main();
