import {
  type HolePath,
  interpolatePath,
  type PathMethodId,
  type RunContext,
  reduceRun,
  type SitePlace,
} from "#core";
import { createRandom, type HoleShape, type RandomSource, type RunSpec, type SimulatedRun } from "#simulator";

const degree = Math.PI / 180;

/** A hole of chance: plumb to 20 degrees of rake, 10 to 80 m, stations every 0.5 to 5 m, one of the shapes that holes take. */
export function holeOfChance(seed: number): { hole: HoleShape; lengthM: number; intervalM: number } {
  const random = createRandom(`hole ${seed}`);
  const between = (low: number, high: number) => low + (high - low) * random.uniform();
  const lengthM = Math.round(between(10, 80));
  const intervalM = [0.5, 1, 2, 2.5, 5][Math.floor(between(0, 5))]!;
  const lean = { rakeDeg: seed % 4 === 0 ? 0 : between(0, 20), bearingDeg: between(0, 360) };
  return { hole: shapeOf(seed, lean, random, lengthM), lengthM, intervalM };
}

function shapeOf(
  seed: number,
  lean: { rakeDeg: number; bearingDeg: number },
  random: RandomSource,
  lengthM: number,
): HoleShape {
  const between = (low: number, high: number) => low + (high - low) * random.uniform();
  switch (seed % 3) {
    case 0:
      return {
        shape: "waves",
        ...lean,
        waves: Array.from({ length: 3 }, () => ({
          amplitudeDeg: between(0.1, 0.8),
          wavelengthM: between(30, 120),
          phaseDeg: between(0, 360),
          towardsDeg: between(0, 360),
        })),
      };
    case 1:
      return {
        shape: "wandering-bearing",
        ...lean,
        amplitudeDeg: between(2, 20),
        wavelengthM: between(40, 100),
        phaseDeg: between(0, 360),
        turnDegPerM: between(-0.3, 0.3),
      };
    default:
      return { shape: "arc", ...lean, bendDegPerM: between(0, 4) / lengthM, towardsDeg: between(0, 360) };
  }
}

/** Depths from 0 to the toe. */
export const stationsTo = (lengthM: number, intervalM: number): number[] =>
  Array.from({ length: Math.floor(lengthM / intervalM + 1e-9) + 1 }, (_, i) => i * intervalM);

export const siteDeg = { latitudeDeg: 51.5, convergenceDeg: -2.3, declinationDeg: 1.1 };

export const placeOfSite: SitePlace = {
  crs: "local",
  latitudeRad: siteDeg.latitudeDeg * degree,
  longitudeRad: undefined,
  convergenceRad: siteDeg.convergenceDeg * degree,
  levelDatum: undefined,
};

export const contextOf = (spec: RunSpec, method: PathMethodId = "minimum-curvature"): RunContext => ({
  place: placeOfSite,
  instrument: undefined,
  calibrations: [],
  top: spec.head,
  method,
});

/** Largest distance between a reduced path and the truth, over the stations of the truth, metres. */
export function largestError(path: HolePath, truth: HolePath): number {
  let largest = 0;
  for (let i = 0; i < truth.count; i++) {
    const { position } = interpolatePath(path, truth.depthM[i]!);
    const error = Math.hypot(
      position.north - truth.northM[i]!,
      position.east - truth.eastM[i]!,
      position.down - truth.downM[i]!,
    );
    // written so that a missing position counts as an infinite error
    if (!(error <= largest)) largest = Number.isNaN(error) ? Number.POSITIVE_INFINITY : error;
  }
  return largest;
}

export const reduced = (
  simulated: Pick<SimulatedRun, "run">,
  spec: RunSpec,
  context: RunContext = contextOf(spec),
) => reduceRun(simulated.run, context);
