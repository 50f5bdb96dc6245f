import type { NorthEastDown } from "#core";
import { csvText } from "./csv.ts";
import type { Scenario, ScenarioElement, ScenarioTube } from "./scenario.ts";

/** elements.csv: the schedule, with the columns that are used. */
export function elementsText(scenario: Scenario): string {
  const columns = [
    ["element", (e) => e.id],
    ["kind", (e) => e.kind],
    ["diameter_m", (e) => e.diameterM],
    ["length_m", (e) => e.lengthM],
    ["width_m", (e) => e.widthM],
    ["orientation_deg", (e) => e.orientationDeg],
    ["easting_m", (e) => e.eastingM],
    ["northing_m", (e) => e.northingM],
    ["head_level_m", (e) => e.headLevelM],
    ["cutoff_level_m", (e) => e.cutoffLevelM],
    ["toe_level_m", (e) => e.toeLevelM],
    ["rake_deg", (e) => e.rakeDeg],
    ["rake_bearing_deg", (e) => e.rakeBearingDeg],
    ["group", (e) => e.group],
    ["sequence", (e) => e.sequence],
    ["role", (e) => e.role],
    ["load_kn", (e) => e.loadKn],
  ] as const satisfies readonly (readonly [string, (e: ScenarioElement) => string | number | undefined])[];
  const used = columns.filter(([, cell]) => scenario.elements.some((element) => cell(element) !== undefined));
  return csvText(
    used.map(([heading]) => heading),
    scenario.elements.map((element) => used.map(([, cell]) => cell(element))),
  );
}

/** tubes.csv. */
export function tubesText(scenario: Scenario, topOf: (tube: ScenarioTube) => NorthEastDown): string {
  return csvText(
    ["element", "tube", "easting_m", "northing_m", "top_level_m", "inner_diameter_mm", "length_m"],
    (scenario.tubes ?? []).map((tube) => {
      const top = topOf(tube);
      return [
        tube.element,
        tube.tube,
        top.east,
        top.north,
        tube.topLevelM,
        tube.innerDiameterMm,
        tube.lengthM,
      ];
    }),
  );
}
