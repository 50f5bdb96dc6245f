import { contract, type NorthEastDown, ned, radiansFromDegrees } from "#core";
import { calibrationEntry } from "./calibrations.ts";
import { type FolderTruth, folderTruth } from "./folder-truth.ts";
import type { HoleShape } from "./hole-shape.ts";
import { elementsText, tubesText } from "./job-tables.ts";
import { createRandom } from "./random.ts";
import { readingsText } from "./readings-text.ts";
import { runEntry } from "./run-entry.ts";
import type { RunSpec } from "./run-spec.ts";
import type { Scenario, ScenarioElement, ScenarioRun, ScenarioTube } from "./scenario.ts";
import { type SimulatedRun, simulateRun } from "./simulate-run.ts";
import { siteOfRun } from "./site-of-run.ts";
import { truePath } from "./true-path.ts";

/** A job folder as text, and what was really built. */
export interface WrittenJob {
  /** file name relative to the folder, "/" between folders, to its text */
  readonly files: ReadonlyMap<string, string>;
  readonly truth: FolderTruth;
  /** the runs as they would be read back, with the truth row by row, in the order of the scenario */
  readonly runs: readonly SimulatedRun[];
}

/**
 * Surveys a whole site with faulty probes and writes the job folder that would come of it.
 *
 * @param scenario checked by `readScenario` where it comes from outside.
 * @param seed all chance; the same scenario and seed give the same bytes.
 * @returns job.json, elements.csv, tubes.csv where there are tubes, readings/RUN.csv, and truth.json with the true
 *   coordinates, which is not part of a job.
 * @throws ContractError if a run names an element, tube or instrument that the scenario does not have.
 */
export function writeJobFolder(scenario: Scenario, seed: number | string): WrittenJob {
  const files = new Map<string, string>();
  const simulated: { readonly run: ScenarioRun; readonly result: SimulatedRun }[] = [];
  const places = placesOf(scenario);
  const instruments = new Map(scenario.instruments.map((each) => [each.id, each]));
  for (const run of scenario.runs) {
    const instrument = instruments.get(run.instrument);
    contract(instrument !== undefined, `simulator: run ${run.id} names instrument ${run.instrument}`);
    const result = simulateRun(runSpec(scenario, run, instrument, places), seed);
    simulated.push({ run, result });
    files.set(`readings/${run.id}.csv`, readingsText(result.run, instrument.resolution));
  }
  const topOf = (tube: ScenarioTube) => places.tubes.get(tubeKey(tube.element, tube.tube))!.top;
  const truth = folderTruth(scenario, seed, places.elements, simulated);
  return {
    files: new Map([
      ["job.json", jobText(scenario, seed, places)],
      ["elements.csv", elementsText(scenario)],
      ...(scenario.tubes?.length ? [["tubes.csv", tubesText(scenario, topOf)] as const] : []),
      ...files,
      ["truth.json", `${JSON.stringify(truth)}\n`],
    ]),
    truth,
    runs: simulated.map(({ result }) => result),
  };
}

/** Where the axes of elements and tubes really start. */
interface Places {
  readonly elements: ReadonlyMap<string, { readonly element: ScenarioElement; readonly head: NorthEastDown }>;
  readonly tubes: ReadonlyMap<string, { readonly top: NorthEastDown; readonly hole: HoleShape }>;
}

const tubeKey = (element: string, tube: string): string => JSON.stringify([element, tube]);

function placesOf(scenario: Scenario): Places {
  const elements = new Map(
    scenario.elements.map((element) => [
      element.id,
      {
        element,
        head: ned(
          element.northingM + element.builtOffsetNorthM,
          element.eastingM + element.builtOffsetEastM,
          -element.headLevelM,
        ),
      },
    ]),
  );
  const tubes = new Map<string, { readonly top: NorthEastDown; readonly hole: HoleShape }>();
  for (const tube of scenario.tubes ?? []) {
    const place = elements.get(tube.element);
    contract(place !== undefined, `simulator: tube ${tube.tube} names element ${tube.element}`);
    const { element, head } = place;
    // where the axis of the element, drawn on above its head, comes through the level of the tube's top
    const fromM = (element.headLevelM - tube.topLevelM) / Math.cos(rakeOf(element));
    const axis = truePath(element.hole, head, [fromM]);
    const top = ned(
      toMillimetre(axis.northM[0]! + tube.offsetNorthM),
      toMillimetre(axis.eastM[0]! + tube.offsetEastM),
      -tube.topLevelM,
    );
    tubes.set(tubeKey(tube.element, tube.tube), { top, hole: { shape: "part", of: element.hole, fromM } });
  }
  return { elements, tubes };
}

function runSpec(
  scenario: Scenario,
  run: ScenarioRun,
  instrument: Scenario["instruments"][number],
  places: Places,
): RunSpec {
  const place = places.elements.get(run.element);
  contract(place !== undefined, `simulator: run ${run.id} names element ${run.element}`);
  const { element } = place;
  const bore =
    run.tube === undefined
      ? { top: place.head, hole: element.hole }
      : places.tubes.get(tubeKey(run.element, run.tube));
  contract(bore !== undefined, `simulator: run ${run.id} names tube ${run.tube}`);
  // the other kinds of readings give their depth in metres
  const withGyro = run.measures === "tilt-turn" || run.measures === "acceleration-turn";
  return {
    ...run,
    elementId: run.element,
    ...(run.tube === undefined ? {} : { tubeId: run.tube }),
    instrumentId: run.instrument,
    hole: bore.hole,
    head: bore.top,
    site: siteOfRun(scenario.place, run.startedAt),
    stationsM: stationsOf(run, lengthOf(element, bore.top)),
    errors: instrument.errors,
    calibrationIds: run.calibrations ?? [],
    ...(instrument.gaugeLengthM === undefined ? {} : { gaugeLengthM: instrument.gaugeLengthM }),
    ...(instrument.countsPerM === undefined || !withGyro ? {} : { countsPerM: instrument.countsPerM }),
    ...(instrument.samplesPerRow === undefined ? {} : { samplesPerRow: instrument.samplesPerRow }),
    ...(instrument.resolution === undefined ? {} : { resolution: instrument.resolution }),
  };
}

/** Design length along the axis from the start of the run to the toe, metres. */
function lengthOf(element: ScenarioElement, top: NorthEastDown): number {
  const toe = element.toeLevelM ?? element.headLevelM;
  return (-top.down - toe) / Math.cos(rakeOf(element));
}

const rakeOf = (element: ScenarioElement): number => radiansFromDegrees(element.rakeDeg ?? 0);

/** Tubes are surveyed to a millimetre; the simulator puts them where they were surveyed. */
const toMillimetre = (value: number): number => Math.round(value * 1000) / 1000;

/** Depths of the stations; the last one is the end asked for, to a centimetre, unless it nearly falls on the one before. */
function stationsOf(run: ScenarioRun, lengthM: number): readonly number[] {
  const end = Math.floor((run.toM ?? lengthM) * 100 + 1e-6) / 100;
  const from = run.fromM ?? 0;
  const count = Math.floor((end - from) / run.intervalM + 1e-9);
  const stations = Array.from({ length: count + 1 }, (_, i) => Number((from + i * run.intervalM).toFixed(4)));
  return end - stations.at(-1)! > run.intervalM / 4 ? [...stations, end] : stations;
}

function jobText(scenario: Scenario, seed: number | string, places: Places): string {
  const { place } = scenario;
  const random = createRandom(seed);
  const job = {
    format: "toeline-job/1",
    name: scenario.name,
    remark: scenario.remark,
    place: {
      crs: place.crs,
      latitude_deg: place.latitudeDeg,
      longitude_deg: place.longitudeDeg,
      level_datum: place.levelDatum,
      convergence_deg: place.convergenceDeg,
      declination_deg: place.declinationDeg,
    },
    criteria: scenario.criteria,
    decision: scenario.decision,
    instruments: scenario.instruments.map((instrument) => ({
      id: instrument.id,
      serial: instrument.serial,
      gauge_length_m: instrument.gaugeLengthM,
      outer_diameter_mm: instrument.outerDiameterMm,
      length_m: instrument.lengthM,
      budget: instrument.budget,
    })),
    calibrations: scenario.calibrations.map((calibration) => {
      const instrument = scenario.instruments.find((each) => each.id === calibration.instrument);
      contract(instrument !== undefined, `simulator: ${calibration.id} names ${calibration.instrument}`);
      return calibrationEntry(calibration, instrument, place.latitudeDeg, random.fork(calibration.id));
    }),
    runs: scenario.runs.map((run) => runEntry(run, places.elements.get(run.element))),
  };
  return `${jsonText(job)}\n`;
}

/** JSON with one line for each criterion, calibration or run, so that a person can read and change it. */
function jsonText(job: Readonly<Record<string, unknown>>): string {
  const parts = Object.entries(job).flatMap(([key, value]) => {
    if (value === undefined) return [];
    const text = Array.isArray(value)
      ? `[\n${value.map((entry) => `    ${JSON.stringify(entry)}`).join(",\n")}\n  ]`
      : JSON.stringify(value);
    return [`  ${JSON.stringify(key)}: ${text}`];
  });
  return `{\n${parts.join(",\n")}\n}`;
}
