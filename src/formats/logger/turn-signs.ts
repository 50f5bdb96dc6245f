import { radiansFromDegrees, tangentFromTilt } from "#core";
import type { Role } from "./roles.ts";
import type { LoggerConventions } from "./settings.ts";

type Numbers = Readonly<Partial<Record<Role, number>>>;
type Turned = Partial<Record<Role, number>>;

/**
 * Values of a row in the program's axes and signs (docs/frames-and-signs.md), made of values in the logger's.
 *
 * Frame: logger to probe. Angles in degrees, lengths in metres; NaN stays NaN.
 */
export function turnSigns(numbers: Numbers, conventions: LoggerConventions): Turned {
  const turned: Turned = { ...numbers };
  const change = (role: Role, by: (value: number) => number) => {
    const value = numbers[role];
    if (value !== undefined) turned[role] = plusZero(by(value));
  };
  change("depth", (depth) => (conventions.depthSense === "up" ? -depth : depth) + conventions.depthZeroM);
  change("turn", (turn) => (conventions.turnSense === "clockwise" ? turn : -turn));
  change("inclination", (angle) => (conventions.inclinationFrom === "plumb" ? angle : 90 - Math.abs(angle)));
  for (const role of ["azimuth", "heading"] as const)
    change(role, (angle) => inTurn(conventions.azimuthSense === "clockwise" ? angle : -angle));
  const tilt = conventions.tiltSense === "down-hole-end" ? 1 : -1;
  turnAxes("tilt-x", "tilt-y", tilt, numbers, turned, conventions);
  const force = conventions.accelerationSense === "reaction" ? 1 : -1;
  turnAxes("acc-x", "acc-y", force, numbers, turned, conventions);
  change("acc-z", (value) => (conventions.zSense === "down" ? force : -force) * value);
  return turned;
}

/** 0 without a sign: a zero that was turned round is still zero. */
const plusZero = (value: number): number => (value === 0 ? 0 : value);
const inTurn = (degrees: number): number => ((degrees % 360) + 360) % 360;

/** Parts along probe x and y of two axes that lie a quarter turn apart: whole numbers, so that no digit is lost. */
function turnAxes(
  x: Role,
  y: Role,
  sign: number,
  numbers: Numbers,
  turned: Turned,
  { xTowardsDeg, ySense }: LoggerConventions,
): void {
  const parts = axisParts(xTowardsDeg, ySense);
  const sum = (along: readonly [number, number]) => {
    // an axis that has no part in it must not spoil it with its NaN
    const terms = along.map((part, i) => (part === 0 ? 0 : part * (numbers[i === 0 ? x : y] ?? Number.NaN)));
    return plusZero(sign * (terms[0]! + terms[1]!));
  };
  if (numbers[x] === undefined && numbers[y] === undefined) return;
  delete turned[x];
  delete turned[y];
  turned[x] = sum(parts.x);
  turned[y] = sum(parts.y);
}

/** How much of the logger's x and y lies along probe x, and along probe y. */
export function axisParts(
  xTowardsDeg: LoggerConventions["xTowardsDeg"],
  ySense: LoggerConventions["ySense"],
): { readonly x: readonly [number, number]; readonly y: readonly [number, number] } {
  const quarter = xTowardsDeg / 90;
  const cosine = [1, 0, -1, 0][quarter]!;
  const sine = [0, 1, 0, -1][quarter]!;
  // seen down the hole, clockwise is from probe x to probe y
  return ySense === "clockwise"
    ? { x: [cosine, -sine], y: [sine, cosine] }
    : { x: [cosine, sine], y: [sine, -cosine] };
}

/**
 * Inclination and azimuth from two tilts and the heading of probe +x, degrees; NaN where one of them is missing.
 *
 * Source: rule A2.
 */
export function directionOf(
  tiltX: number,
  tiltY: number,
  heading: number,
): { inclination: number; azimuth: number } {
  const sines = { x: Math.sin(radiansFromDegrees(tiltX)), y: Math.sin(radiansFromDegrees(tiltY)) };
  const tangent = tangentFromTilt(sines, radiansFromDegrees(heading));
  const inclination = Math.atan2(Math.hypot(tangent.north, tangent.east), tangent.down);
  return {
    inclination: (inclination * 180) / Math.PI,
    azimuth: inTurn((Math.atan2(tangent.east, tangent.north) * 180) / Math.PI),
  };
}
