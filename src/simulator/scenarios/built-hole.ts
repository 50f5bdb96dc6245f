import type { HoleShape } from "../hole-shape.ts";
import type { RandomSource } from "../random.ts";

/** How well a rig keeps an axis; standard deviations. */
export interface Rigging {
  /** lean off the design in each of two directions, degrees */
  readonly leanDeg: number;
  /** size of the waves on the way down, degrees */
  readonly waveDeg: number;
}

/** A hole as a rig might make it: off the design by a lean of chance, with two slow waves on it. */
export function builtHole(
  rigging: Rigging,
  random: RandomSource,
  design: { readonly rakeDeg: number; readonly bearingDeg: number } = { rakeDeg: 0, bearingDeg: 0 },
): HoleShape {
  const { rakeDeg, bearingDeg } =
    design.rakeDeg === 0 ? plumbLean(rigging, random) : rakedLean(rigging, random, design);
  const waves = [11, 23].map((shortestM) => ({
    amplitudeDeg: round(Math.abs(rigging.waveDeg * random.normal()), 4),
    wavelengthM: round(shortestM * (1 + 0.5 * random.uniform()), 2),
    phaseDeg: round(360 * random.uniform(), 1),
    towardsDeg: round(360 * random.uniform(), 1),
  }));
  return { shape: "waves", rakeDeg: round(rakeDeg, 4), bearingDeg: round(bearingDeg, 3), waves };
}

function plumbLean(rigging: Rigging, random: RandomSource) {
  const [north, east] = [rigging.leanDeg * random.normal(), rigging.leanDeg * random.normal()];
  const bearingDeg = (Math.atan2(east, north) * 180) / Math.PI;
  return { rakeDeg: Math.hypot(north, east), bearingDeg: (bearingDeg + 360) % 360 };
}

function rakedLean(
  rigging: Rigging,
  random: RandomSource,
  design: { readonly rakeDeg: number; readonly bearingDeg: number },
) {
  const sideways = (rigging.leanDeg * random.normal()) / Math.sin((design.rakeDeg * Math.PI) / 180);
  return {
    rakeDeg: design.rakeDeg + rigging.leanDeg * random.normal(),
    bearingDeg: (design.bearingDeg + sideways + 360) % 360,
  };
}

export const round = (value: number, decimals: number): number => Number(value.toFixed(decimals)) + 0;
