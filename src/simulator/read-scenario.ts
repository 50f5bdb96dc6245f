import { fail, type Issue, ok, type Result, radiansFromDegrees } from "#core";
import { declinationAt, gridConvergence } from "#geodesy";
import type { Scenario, ScenarioRun } from "./scenario.ts";
import { scenarioShape } from "./scenario-schema.ts";
import { isRecord, type Mismatch } from "./scenario-shape.ts";
import { namedScenarios } from "./scenarios/registry.ts";

/**
 * A scenario by its name, in the size asked for.
 *
 * @param numbers sizes by their keys; what is not given takes its usual value.
 * Errors: simulator.field, simulator.unknown-scenario.
 */
export function namedScenario(
  id: string,
  numbers: Readonly<Record<string, unknown>>,
  seed: number | string,
): Result<Scenario, readonly Issue[]> {
  const named = namedScenarios.find((each) => each.id === id);
  if (named === undefined)
    return fail([
      issue("simulator.unknown-scenario", "scenario", {
        found: id,
        expected: namedScenarios.map((each) => each.id).join(", "),
      }),
    ]);
  const found: Issue[] = [];
  const values: Record<string, number> = {};
  for (const { key, unit, min, max, otherwise } of named.parameters) {
    const value = numbers[key] ?? otherwise;
    // asks for what must be true, so that NaN does not pass
    const fits =
      typeof value === "number" && value >= min && value <= max && (unit === "m" || Number.isInteger(value));
    if (fits) values[key] = value;
    else
      found.push(
        issue("simulator.field", key, {
          expected: `a ${unit === "m" ? "length in metres" : "whole number"} from ${min} to ${max}`,
          found: String(value),
        }),
      );
  }
  for (const key of Object.keys(numbers))
    if (!named.parameters.some((parameter) => parameter.key === key))
      found.push(issue("simulator.field", key, { expected: "no such field", found: String(numbers[key]) }));
  return found.length > 0 ? fail(found) : ok(named.make(values, seed));
}

/**
 * The scenario in the parsed text of a scenario file.
 *
 * Either a whole scenario, or `{ "scenario": NAME, … }` with the sizes of a named one.
 *
 * @param value what the JSON text of the file gave.
 * @param seed for what a named scenario leaves to chance.
 * Errors: simulator.field, simulator.unknown-scenario, simulator.reference, simulator.run, those of gridConvergence and
 *   declinationAt.
 */
export function readScenario(value: unknown, seed: number | string): Result<Scenario, readonly Issue[]> {
  if (isRecord(value) && typeof value["scenario"] === "string") {
    const { scenario, ...numbers } = value;
    return namedScenario(value["scenario"], numbers, seed);
  }
  const mismatches: Mismatch[] = [];
  scenarioShape(value, "", mismatches);
  if (mismatches.length > 0)
    return fail(
      mismatches.map(({ field, expected, found }) => issue("simulator.field", field, { expected, found })),
    );
  // the shape has been checked field by field just above
  const scenario = value as unknown as Scenario;
  const found = [
    ...faultsOfReferences(scenario),
    ...scenario.runs.flatMap(faultsOfRun),
    ...faultsOfPlace(scenario),
  ];
  return found.length > 0 ? fail(found) : ok(scenario);
}

const issue = (code: string, field: string, values: Issue["values"]): Issue => ({
  code,
  severity: "error",
  place: { field },
  values,
});

function faultsOfReferences(scenario: Scenario): readonly Issue[] {
  const elements = new Set(scenario.elements.map((element) => element.id));
  const tubes = new Set((scenario.tubes ?? []).map((tube) => JSON.stringify([tube.element, tube.tube])));
  const instruments = new Map(scenario.instruments.map((instrument) => [instrument.id, instrument]));
  const found: Issue[] = [];
  const lacking = (field: string, name: string) =>
    found.push(issue("simulator.reference", field, { found: name }));
  for (const [i, tube] of (scenario.tubes ?? []).entries())
    if (!elements.has(tube.element)) lacking(`tubes[${i}].element`, tube.element);
  for (const [i, { instrument, kind }] of scenario.calibrations.entries()) {
    const known = instruments.get(instrument);
    if (known === undefined) lacking(`calibrations[${i}].instrument`, instrument);
    else if (kind === "depth-scale" && known.countsPerM === undefined)
      lacking(`calibrations[${i}].kind`, `countsPerM of ${instrument}`);
  }
  for (const [i, run] of scenario.runs.entries()) {
    const known = instruments.get(run.instrument);
    if (!elements.has(run.element)) lacking(`runs[${i}].element`, run.element);
    if (known === undefined) lacking(`runs[${i}].instrument`, run.instrument);
    else if ((known.errors.clearanceM ?? 0) !== 0 && known.gaugeLengthM === undefined)
      lacking(`runs[${i}].instrument`, `gaugeLengthM of ${run.instrument}`);
    if (run.tube !== undefined && !tubes.has(JSON.stringify([run.element, run.tube])))
      lacking(`runs[${i}].tube`, run.tube);
  }
  return found;
}

/** What a probe cannot do: change its face down in the hole, go up before it went down. */
function faultsOfRun(run: ScenarioRun, i: number): readonly Issue[] {
  const passes = run.passes ?? [];
  return passes.flatMap((pass, k) =>
    pass.leg === "up" && pass.face !== passes[k - 1]?.face
      ? [issue("simulator.run", `runs[${i}].passes[${k}]`, { run: run.id })]
      : [],
  );
}

function faultsOfPlace({ place, runs }: Scenario): readonly Issue[] {
  const { longitudeDeg } = place;
  if (longitudeDeg === undefined)
    return place.crs !== "local" && place.convergenceDeg === undefined
      ? [issue("simulator.field", "place.longitudeDeg", { expected: "a number", found: "nothing" })]
      : [];
  const latRad = radiansFromDegrees(place.latitudeDeg);
  const lonRad = radiansFromDegrees(longitudeDeg);
  const found: Issue[] = [];
  if (place.crs !== "local" && place.convergenceDeg === undefined) {
    const convergence = gridConvergence(place.crs, latRad, lonRad, { field: "place" });
    if (!convergence.ok) found.push(...convergence.error);
  }
  if (place.declinationDeg === undefined)
    for (const [i, run] of runs.entries()) {
      const at = { field: `runs[${i}].startedAt` };
      const declination = declinationAt({ latRad, lonRad, heightM: 0, date: run.startedAt }, at);
      if (!declination.ok) found.push(...declination.error);
    }
  return found;
}
