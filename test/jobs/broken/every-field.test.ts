import { describe, expect, test } from "vitest";
import type { Job } from "#core";
import { folderFromFiles, readJobFolder } from "#formats";
import { edit, editJob, type JobFiles, part, soundJob, textOf } from "./sound-job.ts";

const rad = (degrees: number): number => degrees * (Math.PI / 180);

async function read(change: (files: JobFiles) => void): Promise<Job> {
  const files = soundJob();
  change(files);
  const { job, findings } = await readJobFolder(folderFromFiles(files));
  if (job === undefined) throw new Error(JSON.stringify(findings));
  return job;
}

/** A field, a change of it, what of the job must follow, and the value that must come out. */
type Row = readonly [
  field: string,
  change: (files: JobFiles) => void,
  select: (job: Job) => unknown,
  expected: unknown,
];

function set(path: readonly (string | number)[], value: unknown) {
  return (files: JobFiles): void =>
    editJob(files, (job) => {
      part(job, ...path.slice(0, -1))[path.at(-1)!] = value;
    });
}
const schedule = (from: string, to: string) => (files: JobFiles) => edit(files, "elements.csv", from, to);
const tubes = (from: string, to: string) => (files: JobFiles) => edit(files, "tubes.csv", from, to);
const run = (job: Job, id: string) => job.runs.find((each) => each.id === id);
const element = (job: Job, id: string) => job.elements.find((each) => each.id === id);
const calibration = (job: Job, id: string) =>
  job.calibrations.find((each) => each.id === id) as unknown as Record<string, unknown>;

/** Adds a column to a readings file: its heading, and one value for all rows. */
function addColumn(file: string, heading: string, value: string) {
  return (files: JobFiles): void => {
    const lines = textOf(files, file).trimEnd().split("\n");
    files.set(file, `${lines.map((line, i) => `${line},${i === 0 ? heading : value}`).join("\n")}\n`);
  };
}
const cell = (file: string, from: string | RegExp, to: string) => (files: JobFiles) =>
  edit(files, file, from, to);

const scheduleRows: readonly Row[] = [
  [
    "element",
    schedule("P2,bored", "P2b,bored"),
    (j) => j.elements.map((e) => e.id),
    ["P1", "P2b", "M1", "W1"],
  ],
  ["kind", schedule("P1,bored-pile", "P1,borehole"), (j) => element(j, "P1")?.kind, "borehole"],
  [
    "diameter_m",
    schedule("P1,bored-pile,0.9", "P1,bored-pile,1.2"),
    (j) => element(j, "P1")?.section,
    { shape: "round", diameterM: 1.2 },
  ],
  [
    "length_m",
    schedule("2.8,0.8,30", "3.4,0.8,30"),
    (j) => element(j, "W1")?.section,
    { shape: "rectangle", lengthM: 3.4, widthM: 0.8, orientationRad: rad(30) },
  ],
  [
    "width_m",
    schedule("2.8,0.8,30", "2.8,1.0,30"),
    (j) => element(j, "W1")?.section,
    { shape: "rectangle", lengthM: 2.8, widthM: 1, orientationRad: rad(30) },
  ],
  [
    "orientation_deg",
    schedule("2.8,0.8,30", "2.8,0.8,75"),
    (j) => element(j, "W1")?.section,
    { shape: "rectangle", lengthM: 2.8, widthM: 0.8, orientationRad: rad(75) },
  ],
  ["easting_m", schedule("305010.000", "305011.5"), (j) => element(j, "M1")?.head.east, 305011.5],
  ["northing_m", schedule("5710005.000", "5710006.25"), (j) => element(j, "M1")?.head.north, 5710006.25],
  [
    "head_level_m",
    schedule("5710005.000,5.000", "5710005.000,4.5"),
    (j) => element(j, "M1")?.head.down,
    -4.5,
  ],
  ["cutoff_level_m", schedule("3.500", "2.75"), (j) => element(j, "P1")?.cutoffDownM, -2.75],
  ["toe_level_m", schedule("-7.000", "-8.5"), (j) => element(j, "M1")?.toeDownM, 8.5],
  ["rake_deg", schedule("15,45", "20,45"), (j) => element(j, "M1")?.rakeRad, rad(20)],
  ["rake_bearing_deg", schedule("15,45", "15,135"), (j) => element(j, "M1")?.rakeBearingRad, rad(135)],
  ["group", schedule("rakers", "anchorage"), (j) => element(j, "M1")?.group, "anchorage"],
  ["sequence", schedule("wall,2", "wall,7"), (j) => element(j, "P2")?.sequence, 7],
  ["role", schedule("wall,2,S", "wall,2,P"), (j) => element(j, "P2")?.role, "P"],
  ["load_kn", schedule("1200", "1500"), (j) => element(j, "P1")?.loadKn, 1500],
  [
    "diameter_mm instead of diameter_m",
    (f) => {
      edit(f, "elements.csv", "diameter_m", "diameter_mm");
      edit(f, "elements.csv", "P1,bored-pile,0.9", "P1,bored-pile,1200");
      edit(f, "elements.csv", "P2,bored-pile,0.9", "P2,bored-pile,900");
      edit(f, "elements.csv", "micropile,0.2", "micropile,200");
    },
    (j) => element(j, "P1")?.section,
    { shape: "round", diameterM: 1.2 },
  ],
];

const tubeRows: readonly Row[] = [
  ["element", tubes("P1,A", "P2,A"), (j) => j.tubes.map((t) => t.elementId), ["P2"]],
  ["tube", tubes("P1,A", "P1,B"), (j) => j.tubes.map((t) => t.id), ["B"]],
  ["easting_m", tubes("305000.300", "305000.400"), (j) => j.tubes[0]?.head.east, 305000.4],
  ["northing_m", tubes("5710000.100", "5710000.2"), (j) => j.tubes[0]?.head.north, 5710000.2],
  ["top_level_m", tubes("5.200", "5.4"), (j) => j.tubes[0]?.head.down, -5.4],
  ["inner_diameter_mm", tubes(",50,", ",64,"), (j) => j.tubes[0]?.innerDiameterM, 0.064],
  ["length_m", tubes("15.500", "16.25"), (j) => j.tubes[0]?.lengthM, 16.25],
  [
    "offset_east_m, offset_north_m",
    (f) => f.set("tubes.csv", "element,tube,offset_east_m,offset_north_m,top_level_m\nP1,A,0.25,-0.15,5\n"),
    (j) => [j.tubes[0]?.head, j.tubes[0]?.offsetInElement],
    [
      { north: 5709999.85, east: 305000.25, down: -5 },
      { east: 0.25, north: -0.15 },
    ],
  ],
];

const settingRows: readonly Row[] = [
  ["name", set(["name"], "Other"), (j) => j.name, "Other"],
  ["place.crs", set(["place", "crs"], "EPSG:32630"), (j) => j.place.crs, "EPSG:32630"],
  ["place.latitude_deg", set(["place", "latitude_deg"], 51), (j) => j.place.latitudeRad, rad(51)],
  ["place.longitude_deg", set(["place", "longitude_deg"], 1), (j) => j.place.longitudeRad, rad(1)],
  [
    "place.level_datum",
    set(["place", "level_datum"], "harbour zero"),
    (j) => j.place.levelDatum,
    "harbour zero",
  ],
  [
    "place.convergence_deg",
    set(["place", "convergence_deg"], -1.5),
    (j) => j.place.convergenceRad,
    rad(-1.5),
  ],
  [
    "place.declination_deg",
    set(["place", "declination_deg"], 2),
    (j) => run(j, "R1")?.opening?.declinationRad,
    rad(2),
  ],
  ["criteria.id", set(["criteria", 0, "id"], "position"), (j) => j.criteria[0]?.id, "position"],
  [
    "criteria.kind",
    set(["criteria", 0], { id: "v2", kind: "verticality", ratio: 0.02 }),
    (j) => j.criteria[0]?.kind,
    "verticality",
  ],
  [
    "criteria.applies_to",
    set(["criteria", 0, "applies_to"], { group: ["wall", "panels"] }),
    (j) => j.criteria[0]?.appliesTo,
    { group: ["wall", "panels"] },
  ],
  ["criteria number", set(["criteria", 0, "limit_m"], 0.1), (j) => j.criteria[0]?.numbers, { limit_m: 0.1 }],
  ["criteria word", set(["criteria", 0, "at"], "toe"), (j) => j.criteria[0]?.words, { at: "toe" }],
  [
    "criteria.source",
    set(["criteria", 0, "source"], { document: "D", edition: "2", clause: "1.1", status: "read" }),
    (j) => j.criteria[0]?.source,
    { document: "D", edition: "2", clause: "1.1", status: "read" },
  ],
  ["decision.rule", set(["decision", "rule"], "guarded"), (j) => j.decision.rule, "guarded"],
  ["decision.probability", set(["decision", "probability"], 0.9), (j) => j.decision.probability, 0.9],
  [
    "limits.closure_limit_deg",
    set(["limits"], { closure_limit_deg: 3 }),
    (j) => run(j, "R1")?.closureLimitRad,
    rad(3),
  ],
  ["limits.station_limit_m", set(["limits"], { station_limit_m: 4 }), (j) => run(j, "R1")?.stationLimitM, 4],
  [
    "instruments.id",
    set(["instruments", 2], { id: "probe-c" }),
    (j) => j.instruments.map((i) => i.id),
    ["probe-a", "probe-b", "probe-c"],
  ],
  ["instruments.serial", set(["instruments", 0, "serial"], 99), (j) => j.instruments[0]?.serial, "99"],
  [
    "instruments.gauge_length_m",
    set(["instruments", 0, "gauge_length_m"], 0.6),
    (j) => j.instruments[0]?.gaugeLengthM,
    0.6,
  ],
  [
    "instruments.outer_diameter_mm",
    set(["instruments", 0, "outer_diameter_mm"], 42),
    (j) => j.instruments[0]?.outerDiameterM,
    0.042,
  ],
  ["instruments.length_m", set(["instruments", 0, "length_m"], 1.4), (j) => j.instruments[0]?.lengthM, 1.4],
  [
    "instruments.cable",
    set(["instruments", 0, "cable"], { axial_stiffness_n: 2e5, probe_weight_n: 60, weight_n_per_m: 0.5 }),
    (j) => j.instruments[0]?.cable,
    { axialStiffnessN: 2e5, probeWeightN: 60, cableWeightNPerM: 0.5 },
  ],
  [
    "instruments.errors",
    set(["instruments", 0, "errors"], {
      "tilt-noise_deg": 0.02,
      seating_deg: { value: 0.03, distribution: "rectangular" },
    }),
    (j) => j.instruments[0]?.declaredErrors,
    [
      { source: "tilt-noise", value: rad(0.02), distribution: undefined },
      { source: "seating", value: rad(0.03), distribution: "rectangular" },
    ],
  ],
  [
    "instruments.budget",
    set(["instruments", 0, "budget"], "servo"),
    (j) => j.instruments[0]?.budget,
    "servo",
  ],
];

const calibrationRows: readonly Row[] = [
  [
    "instrument",
    set(["calibrations", 3, "instrument"], "probe-a"),
    (j) => calibration(j, "tz-2")["instrumentId"],
    "probe-a",
  ],
  [
    "made_at",
    set(["calibrations", 0, "made_at"], "2026-03-01T08:00:00+01:00"),
    (j) => calibration(j, "tz-1")["madeAt"],
    "2026-03-01T07:00:00.000Z",
  ],
  [
    "faces",
    set(["calibrations", 0, "faces", 0, "x_deg"], 0.5),
    (j) => calibration(j, "tz-1")["faces"],
    [
      { face: 1, xRad: rad(0.5), yRad: rad(-0.203) },
      { face: 2, xRad: rad(-0.018), yRad: rad(0.311) },
    ],
  ],
  [
    "rate_deg_per_h",
    set(["calibrations", 1, "rate_deg_per_h"], 5),
    (j) => calibration(j, "gz-1")["rateRadPerS"],
    rad(5) / 3600,
  ],
  [
    "standard_uncertainty_deg_per_h",
    set(["calibrations", 1, "standard_uncertainty_deg_per_h"], 0.2),
    (j) => calibration(j, "gz-1")["standardUncertaintyRadPerS"],
    rad(0.2) / 3600,
  ],
  [
    "attitude inverted",
    set(["calibrations", 1, "attitude"], "inverted"),
    (j) => calibration(j, "gz-1")["axisTrueNed"],
    [0, 0, -1],
  ],
  [
    "attitude inclined",
    (f) =>
      editJob(f, (job) =>
        Object.assign(part(job, "calibrations", 1), {
          attitude: "inclined",
          inclination_deg: 90,
          azimuth_deg: 0,
        }),
      ),
    (j) => (calibration(j, "gz-1")["axisTrueNed"] as number[]).map((x) => Math.round(x * 1e12) / 1e12),
    [1, 0, 0],
  ],
  [
    "latitude_deg",
    set(["calibrations", 1, "latitude_deg"], 52),
    (j) => calibration(j, "gz-1")["latitudeRad"],
    rad(52),
  ],
  ["length_m", set(["calibrations", 2, "length_m"], 10), (j) => calibration(j, "ds-1")["lengthM"], 10],
  ["counts", set(["calibrations", 2, "counts"], [20000]), (j) => calibration(j, "ds-1")["counts"], [20000]],
  [
    "valid_until",
    set(["calibrations", 0, "valid_until"], "2026-06-30"),
    (j) => calibration(j, "tz-1")["validity"],
    { until: "2026-06-30T23:59:59.999Z", maxRuns: undefined, endedBy: [] },
  ],
  [
    "max_runs",
    set(["calibrations", 0, "max_runs"], 5),
    (j) => calibration(j, "tz-1")["validity"],
    { until: undefined, maxRuns: 5, endedBy: [] },
  ],
  [
    "ended_by",
    set(["calibrations", 0, "ended_by"], [{ at: "2026-04-01T00:00:00Z", what: "repair" }]),
    (j) => calibration(j, "tz-1")["validity"],
    { until: undefined, maxRuns: undefined, endedBy: [{ at: "2026-04-01T00:00:00.000Z", what: "repair" }] },
  ],
  [
    "accelerometer",
    set(["calibrations", 4], {
      id: "ac",
      instrument: "probe-a",
      kind: "accelerometer",
      made_at: "2026-03-01T00:00:00Z",
      positions: Array.from({ length: 6 }, (_, i) => ({ expected: [0, 0, -1], shown: [0.01 * i, 0, -1] })),
    }),
    (j) => (calibration(j, "ac")?.["positions"] as unknown[])?.[5],
    { expected: [0, 0, -1], shown: [0.05, 0, -1] },
  ],
  [
    "gyro-scale",
    set(["calibrations", 4], {
      id: "gs",
      instrument: "probe-a",
      kind: "gyro-scale",
      made_at: "2026-03-01T00:00:00Z",
      true_turn_deg: 360,
      shown_turns_deg: [361, 361.5],
    }),
    (j) => [calibration(j, "gs")?.["trueTurnRad"], calibration(j, "gs")?.["shownTurnsRad"]],
    [rad(360), [rad(361), rad(361.5)]],
  ],
];

const runRows: readonly Row[] = [
  ["id", set(["runs", 0, "id"], "X"), (j) => j.runs[0]?.id, "X"],
  ["element", set(["runs", 2, "element"], "W1"), (j) => run(j, "R3")?.elementId, "W1"],
  ["tube", set(["runs", 0, "tube"], undefined), (j) => [run(j, "R1")?.tubeId], [undefined]],
  ["instrument", set(["runs", 2, "instrument"], "probe-a"), (j) => run(j, "R3")?.instrumentId, "probe-a"],
  [
    "readings",
    (f) => {
      f.set("other.csv", textOf(f, "readings/R3.csv"));
      set(["runs", 2, "readings"], "./other.csv")(f);
    },
    (j) => run(j, "R3")?.file,
    "other.csv",
  ],
  [
    "measures",
    (f) =>
      editJob(f, (job) => {
        part(job, "runs", 2)["measures"] = "keyed-tilt";
        part(job, "runs", 2)["groove_bearing_deg"] = 1;
        part(job, "runs", 2)["readings"] = "readings/R4.csv";
      }),
    (j) => run(j, "R3")?.measures,
    "keyed-tilt",
  ],
  ["calibrations", set(["runs", 0, "calibrations"], ["gz-1"]), (j) => run(j, "R1")?.calibrationIds, ["gz-1"]],
  ["zeroed", set(["runs", 0, "zeroed"], true), (j) => run(j, "R1")?.zeroed, true],
  [
    "errors",
    set(["runs", 0, "errors"], { "gyro-bias_deg_per_h": 0.5 }),
    (j) => run(j, "R1")?.declaredErrors,
    [{ source: "gyro-bias", value: rad(0.5) / 3600, distribution: undefined }],
  ],
  ["operator", set(["runs", 0, "operator"], "CD"), (j) => run(j, "R1")?.operator, "CD"],
  [
    "started_at",
    set(["runs", 2, "started_at"], "2026-03-05T10:00:00Z"),
    (j) => run(j, "R3")?.startedAt,
    "2026-03-05T10:00:00.000Z",
  ],
  [
    "opening.heading_deg",
    set(["runs", 1, "opening", "heading_deg"], 123),
    (j) => run(j, "R2")?.opening?.headingRad,
    rad(123),
  ],
  [
    "opening.north",
    set(["runs", 0, "opening", "north"], "true"),
    (j) => run(j, "R1")?.opening?.givenNorth,
    "true",
  ],
  [
    "opening.standard_uncertainty_deg",
    set(["runs", 0, "opening", "standard_uncertainty_deg"], 0.25),
    (j) => run(j, "R1")?.opening?.standardUncertaintyRad,
    rad(0.25),
  ],
  [
    "opening.declination_deg",
    set(["runs", 0, "opening", "declination_deg"], 3),
    (j) => run(j, "R1")?.opening?.declinationRad,
    rad(3),
  ],
  [
    "opening.convergence_deg",
    set(["runs", 0, "opening", "convergence_deg"], 0.5),
    (j) => run(j, "R1")?.opening?.convergenceRad,
    rad(0.5),
  ],
  [
    "closing.heading_deg",
    set(["runs", 1, "closing", "heading_deg"], 99),
    (j) => run(j, "R2")?.closing?.headingRad,
    rad(99),
  ],
  [
    "declination_deg",
    set(["runs", 0, "declination_deg"], 4),
    (j) => run(j, "R1")?.closing?.declinationRad,
    rad(4),
  ],
  [
    "convergence_deg",
    set(["runs", 0, "convergence_deg"], 0.7),
    (j) => run(j, "R1")?.closing?.convergenceRad,
    rad(0.7),
  ],
  ["closure", set(["runs", 0, "closure"], "linear-turn"), (j) => run(j, "R1")?.closureModel, "linear-turn"],
  [
    "closure_limit_deg",
    set(["runs", 0, "closure_limit_deg"], 2),
    (j) => run(j, "R1")?.closureLimitRad,
    rad(2),
  ],
  [
    "ties",
    (f) => {
      edit(f, "readings/R1.csv", /,down\n/, ",tie\n");
      set(["runs", 0, "ties"], [{ heading_deg: 14, north: "grid" }])(f);
    },
    (j) => run(j, "R1")?.ties.map((tie) => tie.headingRad),
    [rad(14)],
  ],
  [
    "azimuth_north",
    (f) => {
      set(["runs", 2, "azimuth_north"], "true")(f);
      set(["place", "convergence_deg"], 2)(f);
    },
    (j) => run(j, "R3")?.azimuthToGridRad,
    rad(-2),
  ],
  [
    "azimuth_standard_uncertainty_deg",
    set(["runs", 2, "azimuth_standard_uncertainty_deg"], 0.3),
    (j) => run(j, "R3")?.azimuthUncertaintyRad,
    rad(0.3),
  ],
  [
    "groove_bearing_deg",
    set(["runs", 3, "groove_bearing_deg"], 31),
    (j) => run(j, "R4")?.grooveBearingRad,
    rad(31),
  ],
  [
    "spiral",
    set(
      ["runs", 3, "spiral"],
      [
        [0, 0],
        [10, 2],
      ],
    ),
    (j) => run(j, "R4")?.spiral,
    [
      { depthM: 0, twistRad: 0 },
      { depthM: 10, twistRad: rad(2) },
    ],
  ],
  [
    "start",
    set(["runs", 1, "start"], { easting_m: 1, northing_m: 2, level_m: 3, uncertainty_m: 0.01 }),
    (j) => run(j, "R2")?.start,
    { north: 2, east: 1, down: -3, standardUncertaintyM: 0.01 },
  ],
  ["depth_zero_m", set(["runs", 0, "depth_zero_m"], -0.4), (j) => run(j, "R1")?.depthZeroM, -0.4],
  ["station_limit_m", set(["runs", 0, "station_limit_m"], 2.5), (j) => run(j, "R1")?.stationLimitM, 2.5],
];

const R1 = "readings/R1.csv";
const R2 = "readings/R2.csv";
const R3 = "readings/R3.csv";
const readings = (job: Job, id: string) => run(job, id)!.readings;

const readingRows: readonly Row[] = [
  ["time", cell(R1, "08:01:00.000Z", "08:00:50.500Z"), (j) => readings(j, "R1").timeS[2], 50.5],
  ["depth_m", cell(R1, ",1.000,", ",1.250,"), (j) => readings(j, "R1").depthM[2], 1.25],
  ["count", cell(R2, ",4022,", ",4100,"), (j) => readings(j, "R2").depthCounts[2], 4100],
  ["tilt_x_deg", cell(R1, "0.350", "0.450"), (j) => readings(j, "R1").tiltXRad[0], rad(0.45)],
  ["tilt_y_deg", cell(R1, "0.060", "-0.070"), (j) => readings(j, "R1").tiltYRad[0], rad(-0.07)],
  ["turn_deg", cell(R1, ",3.000,down", ",400.5,down"), (j) => readings(j, "R1").turnRad[2], rad(400.5)],
  ["acc_x", cell(R2, "0.0050", "0.0060"), (j) => readings(j, "R2").accX[0], 0.006],
  ["acc_y", cell(R2, "-0.0020", "-0.0030"), (j) => readings(j, "R2").accY[0], -0.003],
  ["acc_z", cell(R2, "-1.0000", "-1.0010"), (j) => readings(j, "R2").accZ[0], -1.001],
  ["inclination_deg", cell(R3, "15.100", "12 30"), (j) => readings(j, "R3").inclinationRad[0], rad(12.5)],
  ["azimuth_deg", cell(R3, "45.200", "S 83 W"), (j) => readings(j, "R3").azimuthRad[0], rad(263)],
  ["leg", cell(R1, ",down\n", ",up\n"), (j) => readings(j, "R1").leg[1], "up"],
  ["face", addColumn(R1, "face", "2"), (j) => readings(j, "R1").face[3], 2],
  ["temperature_c", addColumn(R1, "temperature_c", "11.5"), (j) => readings(j, "R1").temperatureC[3], 11.5],
  ["samples", addColumn(R1, "samples", "50"), (j) => readings(j, "R1").samples[3], 50],
  [
    "se_tilt_x_deg",
    addColumn(R1, "se_tilt_x_deg", "0.002"),
    (j) => readings(j, "R1").seTiltXRad[3],
    rad(0.002),
  ],
  [
    "se_tilt_y_deg",
    addColumn(R1, "se_tilt_y_deg", "0.003"),
    (j) => readings(j, "R1").seTiltYRad[3],
    rad(0.003),
  ],
];

describe.each([
  ["elements.csv", scheduleRows],
  ["tubes.csv", tubeRows],
  ["job.json", settingRows],
  ["job.json calibrations", calibrationRows],
  ["job.json runs", runRows],
  ["readings", readingRows],
] as const)("%s", (_file, table) => {
  test.each(table)("%s is honoured", async (_field, change, select, expected) => {
    const sound = await read(() => {});
    const changed = await read(change);
    expect(select(changed)).toEqual(expected);
    expect(select(sound)).not.toEqual(expected);
  });
});

test("[C6] references are turned to grid: true by the convergence, magnetic by the declination too", async () => {
  const job = await read((files) =>
    editJob(files, (tree) => {
      Object.assign(part(tree, "place"), { convergence_deg: 2, declination_deg: 5 });
      part(tree, "runs", 0, "closing")["north"] = "true";
    }),
  );
  // grid = true - convergence, true = magnetic + declination
  expect(run(job, "R1")?.opening?.headingRad).toBeCloseTo(rad(12 + 5 - 2), 12);
  expect(run(job, "R1")?.closing?.headingRad).toBeCloseTo(rad(12 - 2), 12);
});

test("[C6] a reference without an uncertainty gets 1 degree when magnetic, else 0.5; the model's stands beside it", async () => {
  const job = await read((files) =>
    editJob(files, (tree) => delete part(tree, "runs", 0, "opening")["standard_uncertainty_deg"]),
  );
  const opening = run(job, "R1")?.opening;
  expect(opening?.declinationUncertaintyRad).toBeGreaterThan(rad(0.3));
  expect(opening?.standardUncertaintyRad).toBe(rad(1));
  expect(run(job, "R2")?.opening?.standardUncertaintyRad).toBe(rad(0.5));
});

test("a set of ready-made criteria brings its rules, for the kinds it means or those asked for", async () => {
  const job = await read(set(["criteria_sets"], [{ set: "en-1536", applies_to: { group: "wall" } }]));
  const added = job.criteria.slice(2);
  expect(added.length).toBeGreaterThan(0);
  expect(added.every((request) => request.source?.document.includes("1536"))).toBe(true);
  expect(added.map((request) => request.appliesTo)).toEqual(added.map(() => ({ group: "wall" })));
});

test("on a local grid one of declination and convergence is needed only where a reference is not grid", async () => {
  const local = (extra: Record<string, unknown>, north: string) =>
    read((files) =>
      editJob(files, (tree) => {
        part(tree, "place")["crs"] = "local";
        Object.assign(part(tree, "runs", 0), extra);
        part(tree, "runs", 0, "opening")["north"] = north;
        part(tree, "runs", 0, "closing")["north"] = north;
      }),
    );
  expect(run(await local({}, "grid"), "R1")?.opening?.headingRad).toBe(rad(12));
  expect(run(await local({}, "magnetic"), "R1")).toBeUndefined();
  expect(run(await local({ declination_deg: 3 }, "magnetic"), "R1")?.opening?.headingRad).toBeCloseTo(
    rad(15),
    12,
  );
  expect(run(await local({ convergence_deg: 3 }, "true"), "R1")?.opening?.headingRad).toBeCloseTo(rad(9), 12);
});
