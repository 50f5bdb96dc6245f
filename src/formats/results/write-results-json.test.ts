import { describe, expect, test } from "vitest";
import { reduceJob } from "#core";
import { edit, editJob, type JobFiles, part, soundJob } from "../../../test/jobs/broken/sound-job.ts";
import { folderFromFiles } from "../job-folder/folder.ts";
import { readJobFolder } from "../job-folder/read-job-folder.ts";
import { type ResultsDocument, resultsSchema } from "./results-schema.ts";
import { writeResultsJson } from "./write-results-json.ts";

async function write(change: (files: JobFiles) => void = () => {}, only?: readonly string[]) {
  const files = soundJob();
  change(files);
  const read = await readJobFolder(folderFromFiles(files));
  const results = reduceJob(read.job!, only === undefined ? {} : { only });
  const options = { version: "9.9.9", sentence: (finding: { code: string }) => `said: ${finding.code}` };
  const text = writeResultsJson(read.job!, read, results, options);
  return { text, results, document: JSON.parse(text) as ResultsDocument };
}

describe("results.json", () => {
  test("is what its own schema says", async () => {
    const { document } = await write();
    expect(resultsSchema.safeParse(document).error).toBeUndefined();
    expect(document.format).toBe("toeline-results/1");
    expect(document.toeline).toBe("9.9.9");
    expect(document.neighbours).toEqual([]);
  });

  test("gives back every coordinate to the last digit, in east, north and level", async () => {
    const { document, results } = await write();
    for (const [index, run] of results.runs.entries()) {
      const stations = document.runs[index]!.stations;
      expect(stations.map((s) => s.easting_m)).toEqual([...run.path!.eastM]);
      expect(stations.map((s) => s.northing_m)).toEqual([...run.path!.northM]);
      expect(stations.map((s) => s.level_m)).toEqual([...run.path!.downM].map((down) => -down));
      expect(stations.map((s) => s.depth_m)).toEqual([...run.path!.depthM]);
      expect(stations.map((s) => s.tangent_ned[2])).toEqual([...run.path!.tangentDown]);
    }
    for (const [index, element] of results.elements.entries()) {
      const axis = document.elements[index]!.axis;
      expect(axis.map((row) => row.offset_m)).toEqual(element.axis.map((row) => row.offsetM));
      expect(axis.map((row) => row.along_m)).toEqual(element.axis.map((row) => row.alongM));
      expect(axis.map((row) => row.level_m)).toEqual(element.axis.map((row) => -row.downM));
      expect(axis.every((row) => row.twist_deg === null)).toBe(true);
    }
  });

  test("[E2] covariances are turned from north-east-down to east-north-up", async () => {
    const { document, results } = await write();
    const covariances = results.runs.flatMap((run) => [...run.covariances]);
    const written = document.runs.flatMap((run) => run.stations.map((station) => station.covariance_enu_m2));
    expect(covariances.length).toBeGreaterThan(0);
    for (const [index, [nn, ne, nd, ee, ed, dd]] of covariances.entries())
      expect(written[index]).toEqual([ee, ne, 0 - ed, nn, 0 - nd, dd]);
    const rows = results.elements.flatMap((element) =>
      (element.uncertainty?.ellipses ?? []).map((ellipse) => ellipse.u95M),
    );
    expect(document.elements.flatMap((element) => element.axis.map((row) => row.u95_m))).toEqual(rows);
  });

  test("counts the verdicts, and one_in is the ratio turned round", async () => {
    const { document } = await write();
    const words = document.elements.flatMap((element) => element.verdicts.map((verdict) => verdict.verdict));
    for (const [word, count] of Object.entries(document.summary))
      expect(count).toBe(words.filter((each) => each === word).length);
    expect(Object.values(document.summary).reduce((sum: number, n) => sum + Number(n), 0)).toBe(words.length);
    for (const { verticality } of document.elements)
      expect(verticality!.one_in! * verticality!.chord_ratio!).toBeCloseTo(1, 12);
  });

  test("a run that cannot be used stands without stations, with its findings; its element is not judged", async () => {
    const { document } = await write((files) => edit(files, "readings/R1.csv", ",3.000,0.350", ",3.000,NaN"));
    const run = document.runs.find((each) => each.id === "R1")!;
    expect(run.stations).toEqual([]);
    expect(run.findings.map((finding) => finding.code)).toContain("formats.cell-not-a-reading");
    expect(run.findings[0]!.text).toMatch(/^said: /);
    const element = document.elements.find((each) => each.id === "P1")!;
    expect(element.axis).toEqual([]);
    expect(element.verticality).toBeNull();
    expect(element.verdicts.length).toBeGreaterThan(0);
    expect(
      element.verdicts.every((verdict) => verdict.verdict === "not-judged" && verdict.value === null),
    ).toBe(true);
    expect(document.runs.filter((each) => each.stations.length > 0).map((each) => each.id)).toEqual([
      "R2",
      "R3",
      "R4",
    ]);
  });

  test("what was found in the readings of a usable run stands with it", async () => {
    const { document } = await write((files) =>
      edit(files, "readings/R1.csv", ",3.000,0.350", ",2.000,0.350"),
    );
    const { document: other } = await write((files) =>
      editJob(files, (job) => (part(job, "runs", 0)["operater"] = "x")),
    );
    expect(document.runs[0]!.findings.map((finding) => finding.code)).toContain("formats.station-repeated");
    expect(other.runs[0]!.findings.map((finding) => finding.code)).toEqual(["formats.json-unknown-key"]);
    expect(other.runs[1]!.findings.map((finding) => finding.code)).not.toContain("formats.json-unknown-key");
  });

  test("with some elements only, runs of the others are left out", async () => {
    const { document } = await write((files) => edit(files, "readings/R1.csv", "turn_deg", "spin"), ["M1"]);
    expect(document.runs.map((run) => run.id)).toEqual(["R3"]);
    expect(document.elements.map((element) => element.id)).toEqual(["M1"]);
  });
});
