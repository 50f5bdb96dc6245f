import type { TangentProfile } from "../frames/tangent-profile.ts";
import { median } from "../num/median.ts";

/** Directions of one pass at its stations, with how well each is known. Arrays of equal length. */
export interface PassTangents extends TangentProfile {
  /** words for people: "down, face 1" or a run's id */
  readonly name: string;
  /** 1 or 2 where the pass was on one face of two; 0 otherwise */
  readonly face: number;
  /** variance of the north and of the east component each, dimensionless squared. Shape: stations */
  readonly variance: Float64Array;
  /** part of the variance that belongs to an error which all stations of the pass share (heading, zero). Shape: stations */
  readonly sharedVariance: Float64Array;
}

/** What the passes say about each other. */
export interface PassAgreement {
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  /** fewer than the degrees of freedom where stations share their errors; down to those of one station */
  readonly effectiveDegreesOfFreedom: number;
  /** largest |residual| over its standard deviation, and where */
  readonly largestNormalised: number;
  readonly largestDepthM: number;
  readonly largestPass: string;
}

export interface CombinedPasses {
  readonly profile: TangentProfile;
  readonly agreement: PassAgreement;
  /** number of passes that speak at each station. Shape: stations */
  readonly passesAt: Uint8Array;
  /** which station of which pass speaks at which station, and with which share; the shares of a station add up to 1 */
  readonly contributions: readonly Contribution[];
}

export interface Contribution {
  readonly station: number;
  /** index of the pass, and of its station */
  readonly pass: number;
  readonly passStation: number;
  readonly share: number;
}

/**
 * Usual distance between neighbouring stations, metres: the median, so that one gap does not change what is usual.
 *
 * @returns NaN with fewer than two stations.
 *
 * Frame: along the hole. Source: common practice, no source.
 */
export function usualInterval(depthM: Float64Array): number {
  if (depthM.length < 2) return Number.NaN;
  return median(Float64Array.from(depthM.slice(1), (depth, i) => depth - depthM[i]!));
}

/** How far apart two depths may be and still be one stop: a quarter of the interval, 10 to 250 mm. Common practice, no source. */
export const sameStopM = (intervalM: number): number =>
  Number.isNaN(intervalM) ? 0.01 : Math.min(0.25, Math.max(0.01, intervalM / 4));

/** Part of the longest stretch that a pass must cover to lead: common practice, no source. */
const LEADS_FROM = 0.9;

/**
 * The pass that the others are held against, and whose interval is the usual one: of those that cover the hole, the one
 * with the most stations.
 *
 * @param passes at least one, each with one station or more; the first of equals leads.
 * Frame: none. Source: rule D5; common practice, no source.
 */
export function leadingPass<P extends Pick<PassTangents, "depthM">>(passes: readonly P[]): P {
  const stretchOf = ({ depthM }: P) => depthM[depthM.length - 1]! - depthM[0]!;
  const longestM = passes.reduce((most, pass) => Math.max(most, stretchOf(pass)), 0);
  const whole = passes.filter((pass) => stretchOf(pass) >= LEADS_FROM * longestM);
  return whole.reduce((best, pass) => (pass.depthM.length > best.depthM.length ? pass : best));
}

/**
 * Combines several passes of one hole stop by stop, with their weights, and tests their differences.
 *
 * Stops are those of the leading pass and any that only another pass has. A pass that was read a little above or below a
 * stop is taken at the stop's depth by interpolation between its own stations. Where both faces speak, each face
 * has half the weight, so that what belongs to the probe cancels.
 *
 * @param passes at least one, each with one station or more.
 *
 * Frame: site NED. Source: rule D5; weighted mean and its residuals, docs/sources.md [A1].
 */
export function combinePasses(passes: readonly PassTangents[]): CombinedPasses {
  const base = leadingPass(passes);
  const tolerance = sameStopM(usualInterval(base.depthM));
  const depthM = commonDepths(base, passes, tolerance);
  const count = depthM.length;
  const north = new Float64Array(count);
  const east = new Float64Array(count);
  const down = new Float64Array(count);
  const passesAt = new Uint8Array(count);
  const contributions: Contribution[] = [];
  const test = new AgreementSum();
  for (let i = 0; i < count; i++) {
    const voices = passes.flatMap((pass, index) => voiceAt(pass, index, depthM[i]!, tolerance));
    const weights = faceBalancedWeights(voices);
    const whole = weights.reduce((sum, weight) => sum + weight, 0);
    const mean = (of: "north" | "east" | "down") =>
      voices.reduce((sum, voice, k) => sum + weights[k]! * voice[of], 0) / whole;
    const means = { north: mean("north"), east: mean("east"), down: mean("down") };
    // where every pass is silent the mean is 0/0: missing, never 0
    const length = Math.hypot(means.north, means.east, means.down);
    north[i] = means.north / length;
    east[i] = means.east / length;
    down[i] = means.down / length;
    passesAt[i] = voices.length;
    voices.forEach(({ pass, passStation }, k) => {
      contributions.push({ station: i, pass, passStation, share: weights[k]! / whole });
    });
    test.add(voices, depthM[i]!);
  }
  return { profile: { depthM, north, east, down }, agreement: test.result(), passesAt, contributions };
}

interface Voice extends Pick<Contribution, "pass" | "passStation"> {
  readonly north: number;
  readonly east: number;
  readonly down: number;
  readonly variance: number;
  readonly sharedPart: number;
  readonly face: number;
  readonly name: string;
}

function commonDepths(base: PassTangents, passes: readonly PassTangents[], tolerance: number): Float64Array {
  let depths = base.depthM;
  for (const pass of passes) {
    if (pass === base) continue;
    const own = pass.depthM.filter((depth) => {
      const nearest = depths[nearestStation(depths, depth)]!;
      return Math.abs(nearest - depth) > tolerance;
    });
    if (own.length > 0) depths = Float64Array.from([...depths, ...own]).sort();
  }
  return depths;
}

/** Place of the station closest to a depth; of two at the same distance the upper one. Depths rise, at least one. */
function nearestStation(depths: Float64Array, depthM: number): number {
  let low = 0;
  let high = depths.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (depths[middle]! < depthM) low = middle + 1;
    else high = middle;
  }
  return low > 0 && depthM - depths[low - 1]! <= Math.abs(depths[low]! - depthM) ? low - 1 : low;
}

/** What a pass says at a depth: nothing unless it has a station there. */
function voiceAt(pass: PassTangents, index: number, depthM: number, tolerance: number): readonly Voice[] {
  const { depthM: depths, north, east, down, variance, sharedVariance, face, name } = pass;
  const near = nearestStation(depths, depthM);
  const known = (i: number) => Number.isFinite(north[i]! + east[i]! + down[i]!);
  if (!(Math.abs(depths[near]! - depthM) <= tolerance && known(near))) return [];
  const shift = depthM - depths[near]!;
  const other = shift > 0 ? near + 1 : near - 1;
  // A pass that ends at this stop is taken as it was read: nothing is extrapolated.
  const part = shift !== 0 && known(other) ? shift / (depths[other]! - depths[near]!) : 0;
  const at = (values: Float64Array) =>
    part === 0 ? values[near]! : values[near]! + part * (values[other]! - values[near]!);
  return [
    {
      north: at(north),
      east: at(east),
      down: at(down),
      variance: variance[near]!,
      sharedPart: sharedVariance[near]! / variance[near]!,
      face,
      name,
      pass: index,
      passStation: near,
    },
  ];
}

function faceBalancedWeights(voices: readonly Voice[]): readonly number[] {
  const weights = voices.map((voice) => 1 / voice.variance);
  const ofFace = (face: number) =>
    weights.reduce((sum, weight, k) => (voices[k]!.face === face ? sum + weight : sum), 0);
  const first = ofFace(1);
  const second = ofFace(2);
  if (!(first > 0 && second > 0)) return weights;
  const mean = (first + second) / 2;
  return weights.map((weight, k) => {
    const { face } = voices[k]!;
    if (face === 1) return (weight * mean) / first;
    return face === 2 ? (weight * mean) / second : weight;
  });
}

/**
 * Sums for the tests of differences: global chi-square, then the largest normalised residual.
 *
 * Residuals are those from the mean by inverse variance, whatever the faces: only then do their squares add up to a
 * chi-square. Errors that all stations of a pass share make the sum scatter more than its degrees of freedom say; with a
 * shared part r of the variance at each of n stations, its variance grows by 1 + (n - 1) r^2 (Satterthwaite's way of
 * matching the first two moments, from memory).
 */
class AgreementSum {
  #chiSquare = 0;
  #degreesOfFreedom = 0;
  #stations = 0;
  #sharedParts = 0;
  #largest = 0;
  #depthM = Number.NaN;
  #pass = "";

  add(voices: readonly Voice[], depthM: number): void {
    if (voices.length < 2) return;
    this.#degreesOfFreedom += 2 * (voices.length - 1);
    this.#stations += 1;
    this.#sharedParts += voices.reduce((sum, voice) => sum + voice.sharedPart, 0) / voices.length;
    const whole = voices.reduce((sum, voice) => sum + 1 / voice.variance, 0);
    for (const of of ["north", "east"] as const) {
      const mean = voices.reduce((sum, voice) => sum + voice[of] / voice.variance, 0) / whole;
      for (const voice of voices) {
        const residual = voice[of] - mean;
        this.#chiSquare += (residual * residual) / voice.variance;
        const normalised = Math.abs(residual) / Math.sqrt(voice.variance - 1 / whole);
        if (normalised > this.#largest) {
          this.#largest = normalised;
          this.#depthM = depthM;
          this.#pass = voice.name;
        }
      }
    }
  }

  result(): PassAgreement {
    const sharedPart = this.#stations > 0 ? this.#sharedParts / this.#stations : 0;
    return {
      chiSquare: this.#chiSquare,
      degreesOfFreedom: this.#degreesOfFreedom,
      effectiveDegreesOfFreedom:
        this.#degreesOfFreedom / (1 + Math.max(0, this.#stations - 1) * sharedPart * sharedPart),
      largestNormalised: this.#largest,
      largestDepthM: this.#depthM,
      largestPass: this.#pass,
    };
  }
}
