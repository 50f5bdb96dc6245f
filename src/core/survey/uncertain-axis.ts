import type { HolePath } from "../path/hole-path.ts";
import { depthAtDown } from "../path/interpolate-path.ts";
import { type EffectColumns, effectsAt } from "../uncertainty/random-effects.ts";
import type { RunUncertainty } from "./propagate-run.ts";

/** A run that an axis rests on, with its share in it. */
export interface UncertainPart {
  readonly uncertainty: RunUncertainty;
  /** shares of all parts add up to 1 */
  readonly share: number;
}

/** The axis of an element or of one run with all that it rests on. */
export interface UncertainAxis {
  readonly path: HolePath;
  readonly parts: readonly UncertainPart[];
  /** standard displacement of each tube in the element, each horizontal axis, with its share; empty for the hole itself */
  readonly tubes: readonly { readonly standardM: number; readonly share: number }[];
}

/** Independent units of chance of one source and what each moves a point by: north, east, down of unit after unit, metres. */
export interface Effect extends EffectColumns {
  /** the same key in another axis is the same unit of chance; undefined = nobody else's */
  readonly key: string | undefined;
}

/**
 * Everything that moves the point of an axis at a depth, source by source, in the same order for every depth of the axis.
 *
 * A run is asked at the level of the point, so that tubes that start at different heights are compared where they are judged.
 *
 * @param depthM depth along the axis, at or between its stations.
 *
 * Frame: site NED. Source: rules E2, E3.
 */
export function effectsOf(axis: UncertainAxis, depthM: number): readonly Effect[] {
  const downM = downAt(axis.path, depthM);
  const parts = axis.parts.flatMap(({ uncertainty, share }) => {
    const own = uncertainty.path === axis.path ? depthM : depthAtOrEnd(uncertainty.path, downM);
    return effectsOfRun(uncertainty, own, share);
  });
  const tubes = axis.tubes.map(({ standardM, share }) => {
    const size = standardM * share;
    return {
      source: "tube-position" as const,
      key: undefined,
      values: Float64Array.of(size, 0, 0, 0, size, 0),
    };
  });
  return [...mergeKeys(parts), ...tubes];
}

/** Level at a depth, along the chord between its stations: the effect of an error does not need the arc. */
function downAt(path: HolePath, depthM: number): number {
  const { upper, part } = bracket(path, depthM);
  const lower = Math.min(upper + 1, path.count - 1);
  return path.downM[upper]! + part * (path.downM[lower]! - path.downM[upper]!);
}

function depthAtOrEnd(path: HolePath, downM: number): number {
  const last = path.count - 1;
  if (downM <= path.downM[0]!) return path.depthM[0]!;
  if (downM >= path.downM[last]!) return path.depthM[last]!;
  return depthAtDown(path, downM);
}

function bracket(path: HolePath, depthM: number): { upper: number; part: number } {
  const last = path.count - 1;
  let upper = 0;
  while (upper < last && path.depthM[upper + 1]! <= depthM) upper++;
  if (upper === last) return { upper, part: 0 };
  const part = (depthM - path.depthM[upper]!) / (path.depthM[upper + 1]! - path.depthM[upper]!);
  return { upper, part: Math.max(0, part) };
}

/** Effects between two stations are taken in proportion. */
function effectsOfRun(uncertainty: RunUncertainty, depthM: number, share: number): readonly Effect[] {
  const { upper, part } = bracket(uncertainty.path, depthM);
  const first = effectsAtStation(uncertainty, upper);
  if (part === 0) return share === 1 ? first : first.map((effect) => scaled(effect, share));
  const second = effectsAtStation(uncertainty, upper + 1);
  return first.map((effect, i) => combined(effect, share * (1 - part), second[i]!, share * part));
}

const scaled = (effect: Effect, factor: number): Effect => ({
  ...effect,
  values: effect.values.map((value) => value * factor),
});

/** a times the first plus b times the second, unit by unit. */
function combined(first: Effect, a: number, second: Effect, b: number): Effect {
  const { values } = second;
  return { ...first, values: first.values.map((value, i) => a * value + b * values[i]!) };
}

function effectsAtStation(uncertainty: RunUncertainty, station: number): readonly Effect[] {
  const { kept } = uncertainty;
  kept[station] ??= workOutEffects(uncertainty, station);
  return kept[station];
}

function workOutEffects(uncertainty: RunUncertainty, station: number): readonly Effect[] {
  const shared = uncertainty.shared.map(({ source, key, north, east, down }) => ({
    source,
    key,
    values: Float64Array.of(north[station]!, east[station]!, down[station]!),
  }));
  const own = effectsAt(uncertainty.path, uncertainty.stops, station);
  return [...shared, ...own.map((effect) => ({ ...effect, key: undefined }))];
}

/** Runs that share a value move together: their effects add before they are squared. */
function mergeKeys(effects: readonly Effect[]): readonly Effect[] {
  const byKey = new Map<string, Effect>();
  const single: Effect[] = [];
  for (const effect of effects) {
    if (effect.key === undefined) {
      single.push(effect);
      continue;
    }
    const before = byKey.get(effect.key);
    byKey.set(effect.key, before === undefined ? effect : combined(before, 1, effect, 1));
  }
  return [...byKey.values(), ...single];
}

/** Covariance of a point, square metres: nn, ne, nd, ee, ed, dd. */
export type Covariance = readonly [number, number, number, number, number, number];

/** Sum of the outer products of independent effects (C = sum E E'). Frame: that of the effects. Source: rule E2. */
export function covarianceOf(effects: readonly Pick<Effect, "values">[]): Covariance {
  let [nn, ne, nd, ee, ed, dd] = [0, 0, 0, 0, 0, 0];
  for (const { values } of effects)
    for (let i = 0; i < values.length; i += 3) {
      const north = values[i]!;
      const east = values[i + 1]!;
      const down = values[i + 2]!;
      nn += north * north;
      ne += north * east;
      nd += north * down;
      ee += east * east;
      ed += east * down;
      dd += down * down;
    }
  return [nn, ne, nd, ee, ed, dd];
}

/** Effects on the difference of two points of one axis, unit by unit: what both share falls out. */
export function differenceOf(lower: readonly Effect[], upper: readonly Effect[]): readonly Effect[] {
  return lower.map((effect, i) => combined(effect, 1, upper[i]!, -1));
}

/**
 * Effects on the difference of two points of two axes: units with the same key are the same, all others independent.
 *
 * Frame: site NED. Source: rule E3.
 */
export function differenceBetween(first: readonly Effect[], second: readonly Effect[]): readonly Effect[] {
  return mergeKeys([...first, ...second.map((effect) => scaled(effect, -1))]);
}
