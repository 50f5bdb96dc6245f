import { expect, test } from "vitest";
import { folderFromFiles, readJobFolder } from "#formats";
import { declinationAt } from "#geodesy";
import { valueFrom } from "../../support/results.ts";
import { edit, editJob, part, soundJob, textOf } from "./sound-job.ts";

/** The sound job with the dates of run R1 taken off its times. */
function withoutDates() {
  const files = soundJob();
  const text = textOf(files, "readings/R1.csv");
  edit(files, "readings/R1.csv", text, text.replaceAll(/\d{4}-\d\d-\d\dT(\d\d:\d\d:\d\d)[^,;\t]*/g, "$1"));
  return files;
}

test("[C6] a run without a date takes the declination of the day of its latest calibration, and says so", async () => {
  const { job, findings } = await readJobFolder(folderFromFiles(withoutDates()));
  const found = findings.find(({ code }) => code === "formats.date-from-calibration");
  expect(found?.severity).toBe("warning");
  expect(found?.place.field).toBe("runs[0]");
  const reference = job?.runs.find(({ id }) => id === "R1")?.opening;
  const expected = valueFrom(
    declinationAt({
      latRad: (51.5 * Math.PI) / 180,
      lonRad: (0.02 * Math.PI) / 180,
      heightM: 0,
      date: "2026-03-02T07:10:00Z",
    }),
  );
  expect(reference?.declinationRad).toBeCloseTo(expected.declinationRad, 10);
});

test("[C6] without any date the run cannot be turned to grid, and is left out with the reason", async () => {
  const files = withoutDates();
  editJob(files, (job) => {
    part(job, "runs", 0)["calibrations"] = [];
  });
  const { job, findings } = await readJobFolder(folderFromFiles(files));
  expect(findings.map(({ code }) => code)).not.toContain("formats.date-from-calibration");
  expect(job?.runs.map(({ id }) => id)).toEqual(["R2", "R3", "R4"]);
});
