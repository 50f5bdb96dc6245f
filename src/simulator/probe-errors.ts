/**
 * What is wrong with a probe, as values (systematic) and standard deviations (by chance). All are optional in a
 * scenario; what is not given is zero. "relative" values are plain numbers, 0.001 = 0.1 %.
 */
export interface ProbeErrors {
  /** shown at zero lean and at the reference temperature, degrees */
  readonly tiltZeroXDeg: number;
  readonly tiltZeroYDeg: number;
  /** relative */
  readonly tiltScaleX: number;
  readonly tiltScaleY: number;
  /** what a lean to the other side adds, relative: x shows scaleX * x + crossXY * y */
  readonly crossXY: number;
  readonly crossYX: number;
  /** along-hole accelerometer, relative to gravity; only in runs that record accelerations */
  readonly accelerationZeroZ: number;
  readonly accelerationScaleZ: number;
  /** standard deviation of one recorded reading, degrees */
  readonly tiltNoiseDeg: number;
  /** change of the tilt zeros with temperature, degrees a kelvin, from the reference temperature */
  readonly tiltDriftXDegPerK: number;
  readonly tiltDriftYDegPerK: number;
  readonly referenceTemperatureC: number;
  /** sensor axes in the housing: lean towards +x and +y, and turn about the axis, degrees */
  readonly misalignmentXDeg: number;
  readonly misalignmentYDeg: number;
  readonly misalignmentTurnDeg: number;
  /** play between probe and tube across the hole, metres: each end of the gauge length lies by chance within it */
  readonly clearanceM: number;
  /** rate shown at rest without the earth's, degrees an hour */
  readonly gyroBiasDegPerH: number;
  /** standard deviation of the change of that rate from run to run, degrees an hour */
  readonly gyroBiasRunDegPerH: number;
  /** angle random walk, degrees a root hour */
  readonly gyroWalkDegPerRootH: number;
  /** relative */
  readonly gyroScale: number;
  /** shown depth is too large by this, relative */
  readonly depthScale: number;
  /** true depth at which the device shows zero, metres */
  readonly depthZeroM: number;
  /** standard deviation of the slip, metres a root metre of cable run */
  readonly depthSlipMPerRootM: number;
  /** standard deviation of reading the depth, metres */
  readonly depthNoiseM: number;
  /** inclination-azimuth runs: standard deviation of one reading and a constant part, degrees */
  readonly inclinationNoiseDeg: number;
  readonly azimuthNoiseDeg: number;
  readonly azimuthBiasDeg: number;
  /** keyed runs: true groove bearing less the one that is stated, degrees */
  readonly grooveBearingErrorDeg: number;
}

/** A probe without any error. */
export const NO_ERRORS: ProbeErrors = {
  tiltZeroXDeg: 0,
  tiltZeroYDeg: 0,
  tiltScaleX: 0,
  tiltScaleY: 0,
  crossXY: 0,
  crossYX: 0,
  accelerationZeroZ: 0,
  accelerationScaleZ: 0,
  tiltNoiseDeg: 0,
  tiltDriftXDegPerK: 0,
  tiltDriftYDegPerK: 0,
  referenceTemperatureC: 20,
  misalignmentXDeg: 0,
  misalignmentYDeg: 0,
  misalignmentTurnDeg: 0,
  clearanceM: 0,
  gyroBiasDegPerH: 0,
  gyroBiasRunDegPerH: 0,
  gyroWalkDegPerRootH: 0,
  gyroScale: 0,
  depthScale: 0,
  depthZeroM: 0,
  depthSlipMPerRootM: 0,
  depthNoiseM: 0,
  inclinationNoiseDeg: 0,
  azimuthNoiseDeg: 0,
  azimuthBiasDeg: 0,
  grooveBearingErrorDeg: 0,
};
