import { expect, test } from "vitest";
import { ned } from "#core";
import { folderFromFiles, readJobFolder } from "#formats";
import { continuousLogText, type RunSpec, simulateContinuousLog } from "#simulator";
import { editJob, part, soundJob } from "./broken/sound-job.ts";

const exact = { north: "grid", standardUncertaintyDeg: 0 } as const;
const resolution = { tiltDeg: 0.001, turnDeg: 0.001, depthM: 0.001 };

test("[C3] a million rows, 10,000 s at 100 Hz, are read and condensed to their stops", async () => {
  const spec: RunSpec = {
    id: "R1",
    elementId: "P1",
    instrumentId: "probe-a",
    measures: "tilt-turn",
    hole: { shape: "straight", rakeDeg: 0.4, bearingDeg: 60 },
    head: ned(5_710_000.1, 305_000.3, -5.2),
    site: { latitudeDeg: 51.5, convergenceDeg: 0, declinationDeg: 0 },
    stationsM: Array.from({ length: 29 }, (_, i) => i / 2),
    passes: [
      { leg: "down", face: 1 },
      { leg: "up", face: 1 },
    ],
    opening: { headingDeg: 12, ...exact },
    closing: { headingDeg: 12, ...exact },
    stopS: 165,
    errors: { tiltNoiseDeg: 0.05, gyroWalkDegPerRootH: 0.1 },
    resolution,
  };
  const log = simulateContinuousLog(spec, 5);
  expect(log.count).toBeGreaterThan(980_000);
  const files = soundJob();
  files.set("readings/R1.csv", continuousLogText(log, resolution));
  editJob(files, (job) => {
    const run = part(job, "runs", 0);
    run["sampling"] = "continuous";
    for (const which of ["opening", "closing"]) run[which] = { heading_deg: 12, north: "grid" };
  });
  const { job, findings } = await readJobFolder(folderFromFiles(files));
  expect(findings.map(({ code }) => code)).toEqual(["formats.log-condensed"]);
  const { readings } = job!.runs[0]!;
  expect(readings.leg.filter((leg) => leg === "down")).toHaveLength(29);
  expect(readings.leg.filter((leg) => leg === "up")).toHaveLength(28);
  expect(Math.min(...readings.samples)).toBeGreaterThan(8000);
});
