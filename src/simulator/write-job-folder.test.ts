import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { describe, expect, test } from "vitest";
import { namedScenario, readScenario } from "./read-scenario.ts";
import type { Scenario } from "./scenario.ts";
import { namedScenarios } from "./scenarios/registry.ts";
import { writeJobFolder } from "./write-job-folder.ts";

function made(id: string, numbers: Readonly<Record<string, unknown>> = {}, seed = 5): Scenario {
  const result = namedScenario(id, numbers, seed);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

const small = () => made("plain", { elements: 3, stations: 6, interval_m: 2 });

/** A comma-separated file without quotes, as records. */
function recordsOf(text: string | undefined): Record<string, string>[] {
  const [heads = "", ...lines] = (text ?? "").trim().split("\n");
  return lines.map((line) => {
    const cells = line.split(",");
    return Object.fromEntries(heads.split(",").map((head, i) => [head, cells[i] ?? ""]));
  });
}

describe("writeJobFolder", () => {
  test("gives the same bytes for the same seed, and other readings for another", () => {
    const one = writeJobFolder(small(), 3).files;
    expect(writeJobFolder(small(), 3).files).toEqual(one);
    const other = writeJobFolder(small(), 4).files;
    expect(other.get("elements.csv")).toBe(one.get("elements.csv"));
    expect(other.get("readings/P0001-1.csv")).not.toBe(one.get("readings/P0001-1.csv"));
  });

  test("writes the schedule, the job and a readings file for each run", () => {
    const { files, truth } = writeJobFolder(small(), 3);
    const job = JSON.parse(files.get("job.json") ?? "");
    expect(job.format).toBe("toeline-job/1");
    expect(job.remark).toContain("invented");
    expect(job.runs).toHaveLength(3);
    const elements = recordsOf(files.get("elements.csv"));
    expect(elements.map((element) => element["element"])).toEqual(["P0001", "P0002", "P0003"]);
    expect(elements[0]).toMatchObject({ head_level_m: "10", toe_level_m: "0", diameter_m: "0.9" });
    for (const run of job.runs) {
      const rows = recordsOf(files.get(run.readings));
      expect(rows.map((row) => row["leg"])).toEqual(["open", ...Array(6).fill("down"), "close"]);
      expect(rows.slice(1, -1).map((row) => Number(row["depth_m"]))).toEqual([0, 2, 4, 6, 8, 10]);
      expect(rows[0]?.["time"]).toBe(run.started_at.replace("Z", ".000Z"));
      expect(rows[3]?.["tilt_x_deg"]).toMatch(/^-?\d+\.\d{3}$/);
      const start = truth.runs.find((each) => each.id === run.id);
      expect(start?.easting_m[0]).toBeCloseTo(run.start.easting_m, 5);
    }
    expect(files.has("tubes.csv")).toBe(false);
  });

  test("[B1] the tilt zero that is written is the half sum of the faces, and is the probe's", () => {
    const { files } = writeJobFolder(small(), 3);
    const { calibrations } = JSON.parse(files.get("job.json") ?? "");
    const faces: { face: number; x_deg: number; y_deg: number }[] = calibrations[0].faces;
    const mean = (values: number[]) => values.reduce((sum, v) => sum + v, 0) / values.length;
    // zero of the sensor plus the lean of the sensor in its housing
    expect(mean(faces.map((face) => face.x_deg))).toBeCloseTo(0.214 + 0.03, 2);
    expect(mean(faces.map((face) => face.y_deg))).toBeCloseTo(-0.157 - 0.02, 2);
  });

  test("a tube stands beside the axis of its element, at its own top", () => {
    const scenario = made("example-site");
    const { files, truth } = writeJobFolder(
      { ...scenario, runs: scenario.runs.filter((run) => run.id === "P01A-1") },
      1,
    );
    const top = recordsOf(files.get("tubes.csv")).find(
      (row) => row["element"] === "P01" && row["tube"] === "A",
    );
    const element = truth.elements.find((each) => each.id === "P01");
    const run = truth.runs[0];
    const offset = scenario.tubes?.find((tube) => tube.element === "P01" && tube.tube === "A");
    expect(top?.["top_level_m"]).toBe("4.1");
    expect(Number(top?.["easting_m"])).toBe(run?.easting_m[0]);
    // 1 mm: the tube starts 0.6 m higher than the axis, and its top is rounded to a millimetre
    const deep = 30;
    const level = element?.level_m[deep] ?? Number.NaN;
    const i = run?.level_m.findIndex((each) => each <= level) ?? -1;
    const share =
      ((run?.level_m[i - 1] ?? 0) - level) / ((run?.level_m[i - 1] ?? 0) - (run?.level_m[i] ?? 0));
    const east =
      (run?.easting_m[i - 1] ?? 0) + share * ((run?.easting_m[i] ?? 0) - (run?.easting_m[i - 1] ?? 0));
    expect(Math.abs(east - (element?.easting_m[deep] ?? 0) - (offset?.offsetEastM ?? 0))).toBeLessThan(0.001);
  });
});

describe("named scenarios", () => {
  test.each(namedScenarios.map((named) => [named.id, named] as const))(
    "%s can be written and read back as a scenario",
    (_id, named) => {
      const least = Object.fromEntries(named.parameters.map(({ key, min }) => [key, min]));
      const scenario = named.make(least, 8);
      const back = readScenario(JSON.parse(JSON.stringify(scenario)), 8);
      expect(back).toEqual({ ok: true, value: scenario });
      for (const { otherwise, min, max } of named.parameters) {
        expect(otherwise).toBeGreaterThanOrEqual(min);
        expect(otherwise).toBeLessThanOrEqual(max);
      }
    },
  );

  test("the example site is what its description says, and stays below 1 MB", () => {
    const scenario = made("example-site");
    const count = (kind: string) => scenario.elements.filter((element) => element.kind === kind).length;
    expect([count("bored-pile"), count("micropile"), count("freeze-hole"), count("panel")]).toEqual([
      40, 6, 24, 3,
    ]);
    expect(scenario.tubes).toHaveLength(4 * 4 + 3 * 2);
    const { files } = writeJobFolder(scenario, 5);
    const bytes = [...files.values()].reduce((sum, text) => sum + text.length, 0);
    expect(bytes).toBeLessThan(1_000_000);
    expect(new Set(scenario.runs.map((run) => run.measures)).size).toBe(4);
    expect(new Set(scenario.runs.flatMap((run) => run.opening?.north ?? [])).size).toBe(3);
  });
});

describe("readScenario", () => {
  const fields = (value: unknown): string[] => {
    const result = readScenario(value, 1);
    return result.ok ? [] : result.error.map((issue) => `${issue.code} ${issue.place.field}`);
  };

  test("takes a named scenario with its sizes", () => {
    const result = readScenario({ scenario: "plain", elements: 2, stations: 4 }, 1);
    expect(result.ok && result.value.elements.length).toBe(2);
    expect(fields({ scenario: "plain", elements: 0 })).toEqual(["simulator.field elements"]);
    expect(fields({ scenario: "plain", elements: Number.NaN })).toEqual(["simulator.field elements"]);
    expect(fields({ scenario: "plain", piles: 3 })).toEqual(["simulator.field piles"]);
    expect(fields({ scenario: "nowhere" })).toEqual(["simulator.unknown-scenario scenario"]);
  });

  const folder = resolve(import.meta.dirname, "../../examples/scenarios");
  test.each(readdirSync(folder))("takes the example %s, and a job comes of it", (file) => {
    const result = readScenario(JSON.parse(readFileSync(join(folder, file), "utf8")), 1);
    expect(result.ok ? [] : result.error).toEqual([]);
    if (result.ok) expect(writeJobFolder(result.value, 1).files.has("job.json")).toBe(true);
  });

  test("names every field that does not fit", () => {
    const scenario = JSON.parse(JSON.stringify(small()));
    delete scenario.name;
    scenario.elements[1].headLevelM = "ten";
    scenario.elements[2].hole = { shape: "curl" };
    scenario.instruments[0].errors.tiltZeroDeg = 1;
    scenario.runs[0].opening.north = "up";
    expect(fields(scenario)).toEqual([
      "simulator.field name",
      "simulator.field instruments[0].errors.tiltZeroDeg",
      "simulator.field elements[1].headLevelM",
      "simulator.field elements[2].hole.shape",
      "simulator.field runs[0].opening.north",
    ]);
  });

  test("names what a scenario refers to and does not have, and what a probe cannot do", () => {
    const scenario = JSON.parse(JSON.stringify(small()));
    scenario.runs[0].element = "X";
    scenario.runs[1].tube = "A";
    scenario.runs[2].passes = [
      { leg: "down", face: 1 },
      { leg: "up", face: 2 },
    ];
    scenario.calibrations[0].instrument = "other";
    expect(fields(scenario)).toEqual([
      "simulator.reference calibrations[0].instrument",
      "simulator.reference runs[0].element",
      "simulator.reference runs[1].tube",
      "simulator.run runs[2].passes[1]",
    ]);
  });

  test("refuses a place whose grid is not known", () => {
    const scenario = JSON.parse(JSON.stringify(small()));
    scenario.place = { crs: "EPSG:999999", latitudeDeg: 51, longitudeDeg: 3 };
    expect(fields(scenario)).toEqual(["geodesy.crs-unknown place"]);
    scenario.place = { crs: "EPSG:32631", latitudeDeg: 51 };
    expect(fields(scenario)).toEqual(["simulator.field place.longitudeDeg"]);
  });

  test.each([[null], [[]], ["text"], [3]])("refuses %j", (value) => {
    expect(readScenario(value, 1).ok).toBe(false);
  });
});

test("the example folder is what the simulator makes today", () => {
  const folder = resolve(import.meta.dirname, "../../examples/shaft-and-pier");
  const stored = readFileSync(join(folder, "job.json"), "utf8");
  // coordinates and entries of the job need no trigonometry beyond the last digit; readings may differ there
  expect(writeJobFolder(made("example-site", {}, 2026), 2026).files.get("job.json")).toBe(stored);
  expect(readdirSync(join(folder, "readings"))).toHaveLength(JSON.parse(stored).runs.length);
});
