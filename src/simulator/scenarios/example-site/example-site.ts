import { createRandom } from "../../random.ts";
import type { Scenario, ScenarioCalibration } from "../../scenario.ts";
import { Diary } from "../diary.ts";
import { fineProbe, usualProbe } from "../probes.ts";
import { groundBorehole } from "./borehole.ts";
import { EXAMPLE_CRITERIA } from "./criteria.ts";
import { freezeRing } from "./freeze-ring.ts";
import { rakedMicropiles } from "./micropiles.ts";
import { pierPiles } from "./pier.ts";
import { accessShaft } from "./shaft.ts";
import { wallPanels } from "./wall.ts";

/** An invented site with a shaft, a pier, micropiles, a ring of freeze holes and a piece of wall. */
export function exampleSite(seed: number | string): Scenario {
  const random = createRandom(seed).fork("built");
  // two crews, each with its probe
  const [first, second] = [new Diary("2026-03-03", 50), new Diary("2026-03-17", 40)];
  const parts = [
    accessShaft(random.fork("shaft"), first),
    pierPiles(random.fork("pier"), first),
    rakedMicropiles(random.fork("micropiles"), first),
    wallPanels(random.fork("wall"), first),
    freezeRing(random.fork("freeze"), second),
    groundBorehole(random.fork("ground"), first),
  ];
  return {
    name: "Marrow Quay, shaft and pier (invented)",
    remark:
      "Everything in this job is invented: the site, the place (it lies in the open sea), the people, the specification and the readings, which a simulator made with known errors. A few elements are out of allowance and a few runs are faulty on purpose.",
    place: {
      crs: "EPSG:32631",
      latitudeDeg: 52.6,
      longitudeDeg: 2.4,
      levelDatum: "site datum",
      declinationErrorDeg: 0.2,
    },
    criteria: EXAMPLE_CRITERIA,
    decision: { rule: "four-way", probability: 0.95 },
    instruments: [usualProbe("probe-a", "0417"), fineProbe("probe-b", "0622")],
    calibrations: CALIBRATIONS,
    elements: parts.flatMap((part) => part.elements),
    tubes: parts.flatMap((part) => part.tubes),
    runs: parts.flatMap((part) => part.runs),
  };
}

const CALIBRATIONS: readonly ScenarioCalibration[] = [
  {
    id: "tz-a",
    instrument: "probe-a",
    kind: "tilt-zero",
    madeAt: "2026-03-02T08:10:00Z",
    validUntil: "2026-03-31",
  },
  {
    id: "gz-a",
    instrument: "probe-a",
    kind: "gyro-zero",
    madeAt: "2026-03-02T08:40:00Z",
    validUntil: "2026-03-31",
  },
  {
    id: "gs-a",
    instrument: "probe-a",
    kind: "gyro-scale",
    madeAt: "2026-02-16T13:00:00Z",
    validUntil: "2026-08-31",
  },
  {
    id: "tz-a2",
    instrument: "probe-a",
    kind: "tilt-zero",
    madeAt: "2026-03-05T06:40:00Z",
    validUntil: "2026-04-03",
    maxRuns: 60,
  },
  {
    id: "gz-a2",
    instrument: "probe-a",
    kind: "gyro-zero",
    madeAt: "2026-03-05T07:00:00Z",
    validUntil: "2026-04-03",
    maxRuns: 60,
  },
  {
    id: "tz-b",
    instrument: "probe-b",
    kind: "tilt-zero",
    madeAt: "2026-03-16T09:00:00Z",
    validUntil: "2026-04-15",
  },
  {
    id: "ac-b",
    instrument: "probe-b",
    kind: "accelerometer",
    madeAt: "2026-02-20T10:00:00Z",
    validUntil: "2026-08-31",
  },
  {
    id: "gz-b",
    instrument: "probe-b",
    kind: "gyro-zero",
    madeAt: "2026-03-16T09:30:00Z",
    validUntil: "2026-04-15",
  },
  {
    id: "ds-b",
    instrument: "probe-b",
    kind: "depth-scale",
    madeAt: "2026-03-16T10:00:00Z",
    validUntil: "2026-06-30",
  },
];
