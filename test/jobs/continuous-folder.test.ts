import { describe, expect, test } from "vitest";
import { reduceJob } from "#core";
import { folderFromFiles, readJobFolder } from "#formats";
import { continuousLogText, type RunSpec, simulateContinuousLog, simulateRun } from "#simulator";
import { edit, editJob, type JobFiles, part, soundJob } from "./broken/sound-job.ts";

const exact = { north: "grid", standardUncertaintyDeg: 0 } as const;
const resolution = { tiltDeg: 0.001, turnDeg: 0.001, depthM: 0.001 };

/** A run through P1, which is bored plumb here. */
const spec: RunSpec = {
  id: "R1",
  elementId: "P1",
  instrumentId: "probe-a",
  measures: "tilt-turn",
  hole: { shape: "arc", rakeDeg: 0.4, bearingDeg: 60, bendDegPerM: 0.05, towardsDeg: 150 },
  head: { north: 5_710_000.1, east: 305_000.3, down: -5.2 },
  site: { latitudeDeg: 51.5, convergenceDeg: 0, declinationDeg: 0 },
  stationsM: Array.from({ length: 14 }, (_, i) => i),
  passes: [
    { leg: "down", face: 1 },
    { leg: "up", face: 1 },
  ],
  opening: { headingDeg: 12, ...exact },
  closing: { headingDeg: 12, ...exact },
  errors: { tiltNoiseDeg: 0.05, gyroBiasDegPerH: 3.1 + 11.77, tiltZeroXDeg: 0.197, tiltZeroYDeg: 0.054 },
  resolution,
};

function continuousJob(more: (job: ReturnType<typeof part>) => void = () => undefined): JobFiles {
  const files = soundJob();
  files.set("readings/R1.csv", continuousLogText(simulateContinuousLog(spec, 11, 25), resolution));
  editJob(files, (job) => {
    const run = part(job, "runs", 0);
    run["sampling"] = "continuous";
    for (const which of ["opening", "closing"]) run[which] = { heading_deg: 12, north: "grid" };
    more(job);
  });
  return files;
}

/** A log at rest as text: 3.1 degrees an hour, walk of 0.3 degrees a root hour, 1 row a second. */
function restText(seconds: number, heading = "rate_deg_per_h", sign = "."): string {
  let state = 1;
  const noise = (): number => {
    // sum of twelve: near enough normal, and the same everywhere
    let sum = -6;
    for (let i = 0; i < 12; i++) {
      state = (state * 48271) % 2147483647;
      sum += state / 2147483647;
    }
    return sum;
  };
  let turn = 0;
  const rows = Array.from({ length: seconds + 1 }, (_, t) => {
    const rate = 3.1 + 0.3 * 60 * noise();
    turn += t === 0 ? 0 : rate / 3600;
    return `${t};${(heading === "turn_deg" ? turn.toFixed(6) : rate.toFixed(3)).replace(".", sign)}`;
  });
  return [`time_s;${heading}`, ...rows, ""].join("\n");
}

function withRestLog(text: string, more: Record<string, unknown> = {}): JobFiles {
  const files = soundJob();
  files.set("calibrations/rest.csv", text);
  editJob(files, (job) => {
    const calibration = part(job, "calibrations", 1);
    delete calibration["rate_deg_per_h"];
    Object.assign(calibration, { log: "calibrations/rest.csv", ...more });
  });
  return files;
}

const read = (files: JobFiles) => readJobFolder(folderFromFiles(files));
const codes = (findings: readonly { code: string }[]): string[] => findings.map(({ code }) => code);

describe("a run logged continuously, from its file", () => {
  test("[C3] is read, its stops are found, and its path is the truth", async () => {
    const { job, findings, unusableRuns } = await read(continuousJob());
    expect(codes(findings)).toEqual(["formats.log-condensed"]);
    expect(unusableRuns).toEqual([]);
    const run = job!.runs[0]!;
    expect(run.readings.leg.filter((leg) => leg === "down")).toHaveLength(14);
    expect(run.readings.line[0]).toBeGreaterThanOrEqual(2);
    const result = reduceJob(job!, { only: ["P1"] }).runs.find(({ runId }) => runId === "R1")!;
    const truth = simulateRun(spec, 11).truth.path;
    const last = truth.count - 1;
    const place = result.path!.count - 1;
    expect(result.path!.depthM[place]).toBeCloseTo(13, 2);
    expect(Math.abs(result.path!.northM[place]! - truth.northM[last]!)).toBeLessThan(0.01);
    expect(Math.abs(result.path!.eastM[place]! - truth.eastM[last]!)).toBeLessThan(0.01);
  });

  test("a bad cell far down blocks the run, with its line; a log without rest does", async () => {
    const bad = continuousJob();
    edit(bad, "readings/R1.csv", /\n100\.000,/, "\n1OO.000,");
    const first = await read(bad);
    expect(first.unusableRuns.map(({ runId }) => runId)).toEqual(["R1"]);
    expect(first.findings).toContainEqual(
      expect.objectContaining({
        code: "formats.cell-time",
        place: { file: "readings/R1.csv", line: 2502, field: "time_s" },
      }),
    );
    const strict = continuousJob((job) => {
      part(job, "runs", 0)["steady"] = { seconds: 600 };
    });
    const second = await read(strict);
    expect(codes(second.unusableRuns[0]!.findings)).toEqual(["formats.log-no-stop"]);
  });

  test("a stop that swings is told with its line and why", async () => {
    const strict = continuousJob((job) => {
      part(job, "runs", 0)["steady"] = { tilt_deg: 0.004 };
    });
    const { findings } = await read(strict);
    const told = findings.filter(({ code }) => code === "formats.stop-without-reading");
    expect(told.length).toBeGreaterThan(10);
    expect(told[0]).toMatchObject({ severity: "warning", values: { expected: "5 s at rest" } });
    expect(told[0]!.place.line).toBeGreaterThanOrEqual(2);
  });

  test("azimuths cannot be logged so; a settings field that is no number is told", async () => {
    const files = continuousJob((job) => {
      part(job, "runs", 2)["sampling"] = "continuous";
      part(job, "runs", 0)["steady"] = { seconds: -1 };
    });
    const { findings } = await read(files);
    expect(codes(findings)).toEqual(
      expect.arrayContaining(["formats.continuous-measures", "formats.json-range"]),
    );
  });
});

describe("a gyro zero from a log at rest", () => {
  test.each(["rate_deg_per_h", "turn_deg"])(
    "[B3] %s, with decimal commas: mean, uncertainty and noise",
    async (heading) => {
      const { job, findings } = await read(withRestLog(restText(1800, heading, ",")));
      expect(codes(findings)).toEqual([]);
      const zero = job!.calibrations.find(({ id }) => id === "gz-1")!;
      if (zero.kind !== "gyro-zero") throw new Error("another kind");
      const perHour = (180 / Math.PI) * 3600;
      const u = zero.standardUncertaintyRadPerS! * perHour;
      // walk / root time: 0.3 / sqrt(0.5 h)
      expect(Math.abs(u / (0.3 / Math.sqrt(0.5)) - 1)).toBeLessThan(0.15);
      expect(Math.abs(zero.rateRadPerS * perHour - 3.1)).toBeLessThan(3 * u);
      expect(Math.abs((zero.allan!.walk.value * (180 / Math.PI) * 60) / 0.3 - 1)).toBeLessThan(0.15);
      expect(zero.allan!.curve.count).toBeGreaterThan(10);
    },
  );

  test("[B3] a given uncertainty goes before the one worked out", async () => {
    const { job } = await read(withRestLog(restText(1800), { standard_uncertainty_deg_per_h: 2 }));
    const zero = job!.calibrations.find(({ id }) => id === "gz-1")!;
    expect(zero).toMatchObject({
      standardUncertaintyRadPerS: expect.closeTo((2 * Math.PI) / 180 / 3600, 12),
    });
  });

  const slowly = (row: string, i: number): string => {
    const [time, rate] = row.split(";");
    return i === 0 || row === "" ? row : `${time};${Number(rate) + i / 20}`;
  };
  const still = restText(1800);
  test.each([
    { log: "too short to tell", text: restText(40), code: "formats.rest-log-too-short" },
    { log: "short", text: restText(200), code: "formats.rest-log-short" },
    { log: "knocked", text: still.replace(/\n900;.*/, "\n900;5000.0"), code: "formats.rest-log-jump" },
    { log: "warming up", text: still.split("\n").map(slowly).join("\n"), code: "formats.rest-log-trend" },
    { log: "with a gap", text: still.replaceAll(/\n7\d\d;.*/g, ""), code: "formats.rest-log-gap" },
    {
      log: "without rates",
      text: still.replace("rate_deg_per_h", "heading"),
      code: "formats.column-missing",
    },
    { log: "running backwards", text: still.replace("\n900;", "\n90;"), code: "formats.time-backwards" },
    { log: "with a bad cell", text: still.replace(/\n900;.*/, "\n900;x"), code: "formats.cell-number" },
  ])("a log $log is told: $code", async ({ text, code }) => {
    const { findings } = await read(withRestLog(text));
    expect(findings).toContainEqual(
      expect.objectContaining({ code, place: expect.objectContaining({ file: "calibrations/rest.csv" }) }),
    );
  });

  test("a file that is not there, and a rate beside a log, are told; the runs go on", async () => {
    const missing = withRestLog(restText(1800));
    missing.delete("calibrations/rest.csv");
    const first = await read(missing);
    expect(codes(first.findings)).toEqual(
      expect.arrayContaining(["formats.file-missing", "formats.calibration-unusable"]),
    );
    expect(first.job!.runs).toHaveLength(4);
    const both = await read(withRestLog(restText(1800), { rate_deg_per_h: 3.1 }));
    expect(codes(both.findings)).toContain("formats.gyro-zero-rate");
  });
});
