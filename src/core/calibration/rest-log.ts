import { type AllanCurve, allanCurve } from "../num/allan-curve.ts";
import { type AllanTerms, readAllanTerms } from "../num/allan-terms.ts";
import { blockMeans } from "../num/block-means.ts";
import { median } from "../num/median.ts";
import { mean, sampleStandardDeviation } from "../num/moments.ts";
import { reverseArrangements, reverseArrangementsCdf } from "../num/reverse-arrangements.ts";
import { judgeSteadiness } from "../num/steadiness.ts";
import { contract } from "../result.ts";
import type { AllanRecord, ReadOff } from "./calibration.ts";

/** A gyro logged at rest, in the order of the file: rates, or the angle that it adds up. */
export interface RestLog {
  readonly count: number;
  /** seconds, never falling. Shape: count */
  readonly timeS: Float64Array;
  /** radians per second; length 0 where the log has turns. Shape: count */
  readonly rateRadPerS: Float64Array;
  /** radians, accumulated; length 0 where the log has rates. Shape: count */
  readonly turnRad: Float64Array;
}

/** What shows that the gyro was not at rest, or its rate not yet settled. */
export type RestDisturbance =
  /** single rates far outside the noise: a knock, a turn */
  | { readonly kind: "jump"; readonly row: number; readonly count: number; readonly sizeRadPerS: number }
  /** the rate rises, falls or steps by more than its noise explains */
  | { readonly kind: "trend"; readonly changeRadPerS: number }
  /** the longest step of time against the usual one: the Allan curve takes them as equal */
  | { readonly kind: "gap"; readonly row: number; readonly seconds: number; readonly usualS: number };

export interface RestResult {
  /** mean rate, radians per second */
  readonly rateRadPerS: number;
  /** standard uncertainty of it as the zero of the gyro */
  readonly standardUncertaintyRadPerS: number;
  readonly allan: AllanRecord;
  readonly disturbances: readonly RestDisturbance[];
}

/** Shorter logs tell nothing of the noise, seconds. Common practice, no source. */
export const SHORTEST_REST_S = 60;
/** Shorter logs hide what limits the gyro, seconds. Common practice, no source. */
export const SHORT_REST_S = 300;

const FEWEST_RATES = 60;
/** Rates are averaged to about this time, or to so many of them: fast samples show the steps of the readout, not the gyro. */
const SPACING_S = 1;
const WANTED_RATES = 400;
/** A rate this many standard deviations off is no noise. */
const JUMP_SIGMAS = 10;
const TREND_BLOCKS = 64;
const TREND_SIGNIFICANCE = 0.001;
const GAP_STEPS = 3;
const CONFIDENCE = 0.95;

/**
 * Zero of a gyro from a log at rest: mean rate, how well it is known, and the noise of the gyro.
 *
 * The uncertainty is the Allan deviation carried to the length of the log: random walk N / sqrt(T), but never below the lowest
 * point of the curve where that was reached, nor below K sqrt(T / 3) where the curve rises again. Of a turn the mean rate is
 * the whole turn over the whole time.
 *
 * @returns undefined if the log is shorter than SHORTEST_REST_S or has fewer than 60 rates.
 * @throws ContractError if a value is not finite, a time falls, or the log has not exactly one of rates and turns.
 *
 * Frame: probe axis, clockwise looking down the hole. Source: rule B3, docs/method/steadiness.md.
 * Checked against: simulated white noise and random walk of the rate; test/published/nbs14-allan for the curve.
 */
export function assessRestLog(log: RestLog): RestResult | undefined {
  checkLog(log);
  const { count, timeS } = log;
  const seconds = count < 2 ? 0 : timeS[count - 1]! - timeS[0]!;
  if (!(seconds >= SHORTEST_REST_S && count > FEWEST_RATES)) return undefined;
  const usualS = seconds / (count - 1);
  const size = Math.max(1, Math.floor(Math.min(SPACING_S, seconds / WANTED_RATES) / usualS));
  const rates = log.turnRad.length > 0 ? ratesOfTurn(log, size) : blockMeans(log.rateRadPerS, size);
  const curve = allanCurve(rates, usualS * size, { confidence: CONFIDENCE });
  const terms = readAllanTerms(curve);
  const turned = log.turnRad.length > 0 ? log.turnRad[count - 1]! - log.turnRad[0]! : Number.NaN;
  return {
    rateRadPerS: log.turnRad.length > 0 ? turned / seconds : mean(log.rateRadPerS),
    standardUncertaintyRadPerS: Math.max(
      terms.randomWalk / Math.sqrt(seconds),
      terms.floorReached ? terms.floor : 0,
      terms.firstRising === undefined ? 0 : terms.rateRandomWalk * Math.sqrt(seconds / 3),
    ),
    allan: recordOf(curve, terms, seconds),
    disturbances: [...jumpOf(rates, size), ...trendOf(rates), ...gapOf(timeS, usualS)],
  };
}

function checkLog({ count, timeS, rateRadPerS, turnRad }: RestLog): void {
  const given = rateRadPerS.length > 0 ? rateRadPerS : turnRad;
  contract(
    timeS.length === count && given.length === count && (rateRadPerS.length === 0 || turnRad.length === 0),
    `assessRestLog: ${count} rows, ${timeS.length} times, ${rateRadPerS.length} rates, ${turnRad.length} turns`,
  );
  for (let i = 0; i < count; i++)
    contract(
      Number.isFinite(given[i]!) && (i === 0 || timeS[i]! >= timeS[i - 1]!),
      `assessRestLog: row ${i} has the value ${given[i]} at ${timeS[i]} s`,
    );
}

function ratesOfTurn({ timeS, turnRad, count }: RestLog, size: number): Float64Array {
  const stepS = (timeS[count - 1]! - timeS[0]!) / (count - 1);
  return Float64Array.from(
    { length: Math.floor((count - 1) / size) },
    (_, i) => (turnRad[(i + 1) * size]! - turnRad[i * size]!) / (size * stepS),
  );
}

/** The interval of what is read off is the one of the point of the curve that limits it. */
function recordOf(curve: AllanCurve, terms: AllanTerms, seconds: number): AllanRecord {
  const readOff = (value: number, place: number): ReadOff => {
    const shown = curve.deviation[place]!;
    return {
      value,
      lower: (value * curve.lower[place]!) / shown,
      upper: (value * curve.upper[place]!) / shown,
    };
  };
  return {
    curve,
    confidence: CONFIDENCE,
    seconds,
    walk: readOff(terms.randomWalk, terms.lastFalling),
    instability: {
      ...readOff(terms.biasInstability, terms.lowest),
      isReached: terms.floorReached,
      atS: terms.floorTimeS,
    },
    rateWalk: terms.firstRising === undefined ? undefined : readOff(terms.rateRandomWalk, terms.firstRising),
  };
}

function jumpOf(rates: Float64Array, size: number): readonly RestDisturbance[] {
  const usual = median(rates);
  const departures = rates.map((rate) => Math.abs(rate - usual));
  // of a normal spread half lies within 0.6745 sigma; a coarse readout shows one value more than half of the time
  const spread = median(departures) / 0.6745 || sampleStandardDeviation(rates);
  const beyond = departures.map((departure) => (departure > JUMP_SIGMAS * spread ? departure : 0));
  const first = beyond.findIndex((departure) => departure > 0);
  if (first < 0) return [];
  const count = beyond.filter((departure) => departure > 0).length;
  const largest = beyond.reduce((most, departure) => Math.max(most, departure), 0);
  return [{ kind: "jump", row: first * size, count, sizeRadPerS: largest }];
}

function trendOf(rates: Float64Array): readonly RestDisturbance[] {
  const blocks = blockMeans(rates, Math.max(1, Math.floor(rates.length / TREND_BLOCKS)));
  const none = Number.MAX_VALUE;
  const { reasons, drift } = judgeSteadiness(blocks, {
    standardError: none,
    drift: none,
    significance: TREND_SIGNIFICANCE,
  });
  const inOrder = reverseArrangementsCdf(reverseArrangements(blocks), blocks.length);
  const isTrend = Math.min(inOrder, 1 - inOrder) < TREND_SIGNIFICANCE / 2;
  return reasons.includes("slope") || isTrend ? [{ kind: "trend", changeRadPerS: drift }] : [];
}

function gapOf(timeS: Float64Array, usualS: number): readonly RestDisturbance[] {
  let longest = 0;
  let row = 0;
  for (let i = 1; i < timeS.length; i++) {
    const step = timeS[i]! - timeS[i - 1]!;
    if (step > longest) [longest, row] = [step, i];
  }
  // times written in whole seconds make steps of one second between rows that come faster
  return longest > Math.max(GAP_STEPS * usualS, 1.5 * SPACING_S)
    ? [{ kind: "gap", row, seconds: longest, usualS }]
    : [];
}
