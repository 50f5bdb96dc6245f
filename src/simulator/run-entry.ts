import type { NorthEastDown } from "#core";
import type { ReferenceSpec } from "./run-spec.ts";
import type { ScenarioElement, ScenarioRun } from "./scenario.ts";

const metre = (value: number): number => Number(value.toFixed(6));

/** The entry of a run in job.json. Undefined fields are left out when it is written. */
export function runEntry(
  run: ScenarioRun,
  place: { readonly element: ScenarioElement; readonly head: NorthEastDown } | undefined,
): Readonly<Record<string, unknown>> {
  return {
    id: run.id,
    element: run.element,
    tube: run.tube,
    instrument: run.instrument,
    readings: `readings/${run.id}.csv`,
    measures: run.measures,
    calibrations: run.calibrations,
    zeroed: run.zeroed,
    operator: run.operator,
    started_at: run.startedAt,
    opening: referenceEntry(run.opening),
    closing: referenceEntry(run.closing),
    ties: run.ties?.map(referenceEntry),
    groove_bearing_deg: run.grooveBearingDeg,
    spiral: run.spiral?.map((row) => [row.depthM, row.twistDeg]),
    azimuth_north: run.azimuthNorth,
    start: run.tube === undefined && place !== undefined ? startEntry(run, place) : undefined,
  };
}

function referenceEntry(reference: ReferenceSpec | undefined) {
  return (
    reference && {
      heading_deg: reference.headingDeg,
      north: reference.north,
      // the contract asks for more than 0; a reference without error is written as very good
      standard_uncertainty_deg: Math.max(reference.standardUncertaintyDeg, 1e-6),
    }
  );
}

/** As surveyed at the commencing surface; only where it differs from the schedule. */
function startEntry(
  run: ScenarioRun,
  { element, head }: { readonly element: ScenarioElement; readonly head: NorthEastDown },
) {
  if (element.builtOffsetEastM === 0 && element.builtOffsetNorthM === 0) return undefined;
  return {
    easting_m: metre(head.east),
    northing_m: metre(head.north),
    level_m: metre(-head.down),
    uncertainty_m: run.startUncertaintyM,
  };
}
