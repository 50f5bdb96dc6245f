/** Files of a job folder by name; text or bytes. */
export type JobFiles = Map<string, string | Uint8Array>;
/** job.json as a loose tree, for tests that break it on purpose. */
export type Tree = Record<string, unknown>;

const settings = {
  format: "toeline-job/1",
  name: "Invented job for tests",
  place: { crs: "EPSG:32631", latitude_deg: 51.5, longitude_deg: 0.02, level_datum: "site datum" },
  criteria: [
    {
      id: "plan",
      kind: "plan-position",
      applies_to: { kind: "bored-pile" },
      limit_m: 0.075,
      at: "cutoff",
      source: { document: "Project specification", clause: "5.2" },
    },
    { id: "plumb", kind: "verticality", applies_to: {}, ratio: 0.0133333, measured: "chord" },
  ],
  decision: { rule: "four-way", probability: 0.95 },
  instruments: [
    { id: "probe-a", serial: "0417", gauge_length_m: 0.8, budget: "mems-standard" },
    { id: "probe-b", serial: "0418", gauge_length_m: 0.5, budget: "mems-high" },
  ],
  calibrations: [
    {
      id: "tz-1",
      instrument: "probe-a",
      kind: "tilt-zero",
      made_at: "2026-03-02T07:10:00Z",
      faces: [
        { face: 1, x_deg: 0.412, y_deg: -0.203 },
        { face: 2, x_deg: -0.018, y_deg: 0.311 },
      ],
    },
    {
      id: "gz-1",
      instrument: "probe-a",
      kind: "gyro-zero",
      made_at: "2026-03-02T07:02:00Z",
      rate_deg_per_h: 3.1,
      attitude: "upright",
      latitude_deg: 51.5,
    },
    {
      id: "ds-1",
      instrument: "probe-a",
      kind: "depth-scale",
      made_at: "2026-03-02T07:30:00Z",
      length_m: 5,
      counts: [20113, 20108],
    },
    {
      id: "tz-2",
      instrument: "probe-b",
      kind: "tilt-zero",
      made_at: "2026-03-02T07:12:00Z",
      faces: [
        { face: 1, x_deg: 0.1, y_deg: 0.2 },
        { face: 2, x_deg: 0.1, y_deg: 0.1 },
      ],
    },
  ],
  runs: [
    {
      id: "R1",
      element: "P1",
      tube: "A",
      instrument: "probe-a",
      readings: "readings/R1.csv",
      measures: "tilt-turn",
      calibrations: ["tz-1", "gz-1"],
      operator: "AB",
      opening: { heading_deg: 12, north: "magnetic", standard_uncertainty_deg: 1 },
      closing: { heading_deg: 12, north: "magnetic", standard_uncertainty_deg: 1 },
    },
    {
      id: "R2",
      element: "P2",
      instrument: "probe-a",
      readings: "readings/R2.csv",
      measures: "acceleration-turn",
      calibrations: ["gz-1", "ds-1"],
      opening: { heading_deg: 100, north: "grid" },
      closing: { heading_deg: 100, north: "grid" },
    },
    {
      id: "R3",
      element: "M1",
      instrument: "probe-b",
      readings: "readings/R3.csv",
      measures: "inclination-azimuth",
      azimuth_north: "grid",
    },
    {
      id: "R4",
      element: "W1",
      instrument: "probe-b",
      readings: "readings/R4.csv",
      measures: "keyed-tilt",
      calibrations: ["tz-2"],
      groove_bearing_deg: 30,
    },
  ],
};

const elements = `element,kind,diameter_m,length_m,width_m,orientation_deg,easting_m,northing_m,head_level_m,cutoff_level_m,toe_level_m,rake_deg,rake_bearing_deg,group,sequence,role,load_kn
P1,bored-pile,0.9,,,,305000.000,5710000.000,5.000,3.500,-10.000,,,wall,1,P,1200
P2,bored-pile,0.9,,,,305000.700,5710000.000,5.000,3.500,-10.000,,,wall,2,S,
M1,micropile,0.2,,,,305010.000,5710005.000,5.000,,-7.000,15,45,rakers,1,,
W1,panel,,2.8,0.8,30,305020.000,5710000.000,5.000,3.000,-9.000,,,panels,1,,
`;

const tubes = `element,tube,easting_m,northing_m,top_level_m,inner_diameter_mm,length_m
P1,A,305000.300,5710000.100,5.200,50,15.500
`;

const at = (step: number): string => new Date(Date.UTC(2026, 2, 2, 8, 0, 30 * step)).toISOString();
const STOPS = Array.from({ length: 13 }, (_, i) => i);

function tiltTurn(): string {
  const rows = STOPS.map((d) => `${at(d + 1)},${d}.000,0.350,0.060,${3 * d}.000,down`);
  const top = [`${at(0)},0.000,0.350,0.060,0.000,open`, `${at(15)},0.000,0.350,0.060,0.400,close`];
  return [`time,depth_m,tilt_x_deg,tilt_y_deg,turn_deg,leg`, top[0], ...rows, top[1], ""].join("\n");
}

/** 4022 counts are about a metre. */
function accelerationTurn(): string {
  const rows = STOPS.map((d) => `${at(60 + d + 1)},${4022 * d},0.0050,-0.0020,-1.0000,${2 * d}.000,down`);
  const top = [
    `${at(60)},0,0.0050,-0.0020,-1.0000,0.000,open`,
    `${at(75)},0,0.0050,-0.0020,-1.0000,0.300,close`,
  ];
  return [`time,count,acc_x,acc_y,acc_z,turn_deg,leg`, top[0], ...rows, top[1], ""].join("\n");
}

const inclinationAzimuth = (): string =>
  ["depth_m,inclination_deg,azimuth_deg", ...STOPS.map((d) => `${d}.000,15.100,45.200`), ""].join("\n");

const keyedTilt = (): string =>
  [
    "depth_m,tilt_x_deg,tilt_y_deg,face",
    ...STOPS.map((d) => `${d}.000,0.200,0.300,1`),
    ...STOPS.map((d) => `${d}.000,0.000,0.000,2`),
    "",
  ].join("\n");

/** A small sound job with a run of every kind, all of it invented. Reading it gives no finding at all. */
export function soundJob(): JobFiles {
  return new Map<string, string | Uint8Array>([
    ["job.json", `${JSON.stringify(settings, null, 2)}\n`],
    ["elements.csv", elements],
    ["tubes.csv", tubes],
    ["readings/R1.csv", tiltTurn()],
    ["readings/R2.csv", accelerationTurn()],
    ["readings/R3.csv", inclinationAzimuth()],
    ["readings/R4.csv", keyedTilt()],
  ]);
}

export const textOf = (files: JobFiles, name: string): string => {
  const file = files.get(name);
  if (typeof file !== "string") throw new Error(`no text ${name}`);
  return file;
};

/** Replaces the first place of `from`, which must be there. */
export function edit(files: JobFiles, name: string, from: string | RegExp, to: string): void {
  const text = textOf(files, name);
  const edited = text.replace(from, to);
  if (edited === text) throw new Error(`${name} holds no ${from}`);
  files.set(name, edited);
}

/** Changes job.json as a tree and writes it again, two spaces deep. */
export function editJob(files: JobFiles, change: (job: Tree) => void): void {
  const job = JSON.parse(textOf(files, "job.json")) as Tree;
  change(job);
  files.set("job.json", `${JSON.stringify(job, null, 2)}\n`);
}

/** A part of job.json by its path, e.g. ["runs", 0, "opening"]. */
export function part(job: Tree, ...path: readonly (string | number)[]): Tree {
  return path.reduce<unknown>((inner, key) => (inner as Tree)[key], job) as Tree;
}
