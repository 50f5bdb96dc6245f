import {
  type GridAzimuth,
  gridAzimuth,
  type MagneticAzimuth,
  magneticAzimuth,
  type Radians,
  type TrueAzimuth,
  trueAzimuth,
  wrapToTurn,
} from "#core";

// Rule C6: grid = true - convergence, true = magnetic + declination. Every kind of azimuth is a type of its own, so
// that the compiler refuses a mixture. All results lie in [0, 2 pi); NaN stays NaN.

/** @param convergence positive where true north lies west of grid north (east of the central meridian, northern hemisphere). */
export const gridFromTrue = (azimuth: TrueAzimuth, convergence: Radians): GridAzimuth =>
  gridAzimuth(wrapToTurn(azimuth - convergence));

export const trueFromGrid = (azimuth: GridAzimuth, convergence: Radians): TrueAzimuth =>
  trueAzimuth(wrapToTurn(azimuth + convergence));

/** @param declination positive where magnetic north lies east of true north. */
export const trueFromMagnetic = (azimuth: MagneticAzimuth, declination: Radians): TrueAzimuth =>
  trueAzimuth(wrapToTurn(azimuth + declination));

export const magneticFromTrue = (azimuth: TrueAzimuth, declination: Radians): MagneticAzimuth =>
  magneticAzimuth(wrapToTurn(azimuth - declination));

export const gridFromMagnetic = (
  azimuth: MagneticAzimuth,
  declination: Radians,
  convergence: Radians,
): GridAzimuth => gridFromTrue(trueFromMagnetic(azimuth, declination), convergence);
