import { contract, degreesFromRadians, type Issue, type Result, radiansFromDegrees } from "#core";
import { declinationAt, gridConvergence } from "#geodesy";
import type { SimulatedSite } from "./run-spec.ts";
import type { ScenarioPlace } from "./scenario.ts";

/**
 * Convergence and declination that the job states for a run, by the scenario or by projection and magnetic model.
 *
 * @throws ContractError if the place cannot be worked out; `readScenario` refuses such a scenario.
 */
export function siteOfRun(place: ScenarioPlace, date: string): SimulatedSite {
  const convergenceDeg = place.convergenceDeg ?? convergenceOf(place);
  const declination =
    place.declinationDeg === undefined
      ? declinationOf(place, date)
      : { declinationDeg: place.declinationDeg, declinationUncertaintyDeg: 0 };
  return {
    latitudeDeg: place.latitudeDeg,
    convergenceDeg,
    ...declination,
    declinationErrorDeg: place.declinationErrorDeg ?? 0,
  };
}

function convergenceOf(place: ScenarioPlace): number {
  if (place.crs === "local" || place.longitudeDeg === undefined) return 0;
  const [latitude, longitude] = [
    radiansFromDegrees(place.latitudeDeg),
    radiansFromDegrees(place.longitudeDeg),
  ];
  return degreesFromRadians(valueFrom(gridConvergence(place.crs, latitude, longitude)).convergenceRad);
}

function declinationOf(
  place: ScenarioPlace,
  date: string,
): Pick<SimulatedSite, "declinationDeg" | "declinationUncertaintyDeg"> {
  if (place.longitudeDeg === undefined) return { declinationDeg: 0, declinationUncertaintyDeg: 0 };
  const declination = valueFrom(
    declinationAt({
      latRad: radiansFromDegrees(place.latitudeDeg),
      lonRad: radiansFromDegrees(place.longitudeDeg),
      heightM: 0,
      date,
    }),
  );
  return {
    declinationDeg: degreesFromRadians(declination.declinationRad),
    declinationUncertaintyDeg: degreesFromRadians(declination.standardUncertaintyRad),
  };
}

function valueFrom<T>(result: Result<T, readonly Issue[]>): T {
  if (result.ok) return result.value;
  contract(false, `simulator: ${result.error.map((issue) => issue.code).join(", ")}`);
}
