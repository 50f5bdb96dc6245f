declare const unit: unique symbol;

/** A number that carries its unit in its type; reading it as a number is free, making one is a named step. */
export type Quantity<U extends string> = number & { readonly [unit]: U };
export type Metres = Quantity<"m">;
export type Radians = Quantity<"rad">;
export type Seconds = Quantity<"s">;

/** Azimuths are of three kinds that must never be mixed; all in radians, clockwise from the north they name. */
export type GridAzimuth = Quantity<"rad from grid north">;
export type TrueAzimuth = Quantity<"rad from true north">;
export type MagneticAzimuth = Quantity<"rad from magnetic north">;

export const RADIANS_PER_DEGREE = Math.PI / 180;
export const SECONDS_PER_HOUR = 3600;

export const metres = (value: number): Metres => value as Metres;
export const radians = (value: number): Radians => value as Radians;
export const radiansFromDegrees = (degrees: number): Radians => (degrees * RADIANS_PER_DEGREE) as Radians;
export const degreesFromRadians = (angle: number): number => angle / RADIANS_PER_DEGREE;
export const gridAzimuth = (value: number): GridAzimuth => value as GridAzimuth;
export const trueAzimuth = (value: number): TrueAzimuth => value as TrueAzimuth;
export const magneticAzimuth = (value: number): MagneticAzimuth => value as MagneticAzimuth;

/** Angle moved into (-pi, pi]. NaN stays NaN. */
export function wrapToPi(angle: number): number {
  const turns = angle - 2 * Math.PI * Math.ceil((angle - Math.PI) / (2 * Math.PI));
  return turns <= -Math.PI ? Math.PI : turns;
}

/** Angle moved into [0, 2 pi). NaN stays NaN. */
export function wrapToTurn(angle: number): number {
  const wrapped = angle - 2 * Math.PI * Math.floor(angle / (2 * Math.PI));
  return wrapped >= 2 * Math.PI ? 0 : wrapped;
}
