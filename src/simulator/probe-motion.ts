import { add, cross, dot, EARTH_RATE_RAD_PER_S, type NorthEastDown, ned, scale } from "#core";
import { bendVector, type TangentAndBend } from "./hole-shape.ts";
import { compose, type Rotation, rotate, rotationBy, shortestArc } from "./rotation.ts";

/** Where the probe is, how it is turned and what a perfect gyro along its axis has counted. */
export interface ProbeState {
  /** turns probe axes into site axes; probe z follows the hole */
  readonly attitude: Rotation;
  readonly depthM: number;
  /** cable run since the start, down and up, metres */
  readonly travelM: number;
  readonly timeS: number;
  /** integral of the inertial angular velocity along probe z, radians, positive clockwise looking down the hole */
  readonly turnRad: number;
}

/** What the probe moves through. */
export interface Surroundings {
  readonly tangentAt: (depthM: number) => TangentAndBend;
  /** rate of spin about the axis for each metre of cable run, rad/m, by cable run */
  readonly spinRadPerM: (travelM: number) => number;
  /** the earth's turn as a vector in site axes, rad/s */
  readonly earthRadPerS: NorthEastDown;
  /** longest step of the integration, metres of depth */
  readonly stepM: number;
}

/** Turn of the earth in site axes: north and down, with true north at minus the convergence from grid north. */
export function earthRateVector(latitudeRad: number, convergenceRad: number): NorthEastDown {
  const horizontal = EARTH_RATE_RAD_PER_S * Math.cos(latitudeRad);
  return ned(
    horizontal * Math.cos(convergenceRad),
    -horizontal * Math.sin(convergenceRad),
    -EARTH_RATE_RAD_PER_S * Math.sin(latitudeRad),
  );
}

const GAUSS_LEFT = 0.5 - Math.sqrt(3) / 6;
const GAUSS_RIGHT = 0.5 + Math.sqrt(3) / 6;

/**
 * Moves the probe along the hole by integrating its motion as a rigid body.
 *
 * The axis follows the tangent and the probe spins about it; the attitude is carried by the angular velocity with
 * a Magnus expansion of fourth order (two Gauss points and their commutator), so that turns add up in space as they
 * do for a real body. Nothing of the method under test is used: no levelled frame, no solid angle. The motion
 * starts and ends at rest.
 *
 * @param toM depth to move to, metres.
 * @param durationS time taken, seconds, > 0.
 * @param onStep is given the probe after each step of the integration but the last.
 * Frame: site north-east-down and probe.
 * Source: S. Blanes, F. Casas, J. A. Oteo, J. Ros, "The Magnus expansion and some of its applications", Physics
 *   Reports 470 (2009), fourth-order method with Gauss points (from memory); checked by step halving.
 */
export function moveProbe(
  start: ProbeState,
  toM: number,
  durationS: number,
  around: Surroundings,
  onStep?: (state: ProbeState) => void,
): ProbeState {
  const length = toM - start.depthM;
  const steps = Math.max(2, Math.ceil(Math.abs(length) / around.stepM));
  const h = durationS / steps;
  let { attitude, turnRad } = start;

  // depth follows 3 u^2 - 2 u^3 of the elapsed share u of the time
  const shareAt = (u: number): number => u * u * (3 - 2 * u);
  const velocityAt = (time: number): { omega: NorthEastDown; alongAxis: number } => {
    const u = time / durationS;
    const share = shareAt(u);
    const speed = (6 * u * (1 - u)) / durationS;
    const place = around.tangentAt(start.depthM + length * share);
    const spin = around.spinRadPerM(start.travelM + Math.abs(length) * share) * Math.abs(length) * speed;
    const omega = add(scale(bendVector(place), length * speed), scale(place.tangent, spin));
    return { omega, alongAxis: dot(add(omega, around.earthRadPerS), place.tangent) };
  };

  for (let i = 0; i < steps; i++) {
    const left = velocityAt((i + GAUSS_LEFT) * h);
    const right = velocityAt((i + GAUSS_RIGHT) * h);
    const step = add(
      scale(add(left.omega, right.omega), h / 2),
      scale(cross(right.omega, left.omega), (h * h * Math.sqrt(3)) / 12),
    );
    attitude = compose(rotationBy(step), attitude);
    turnRad += (h / 2) * (left.alongAxis + right.alongAxis);
    if (onStep === undefined || i + 1 === steps) continue;
    const moved = length * shareAt((i + 1) / steps);
    const travelM = start.travelM + Math.abs(moved);
    onStep({ attitude, depthM: start.depthM + moved, travelM, timeS: start.timeS + (i + 1) * h, turnRad });
  }
  return {
    attitude: onAxis(attitude, around.tangentAt(toM).tangent),
    depthM: toM,
    travelM: start.travelM + Math.abs(length),
    timeS: start.timeS + durationS,
    turnRad,
  };
}

/** Keeps the probe where it is for a while; only the earth turns it. */
export function restProbe(start: ProbeState, durationS: number, around: Surroundings): ProbeState {
  const { tangent } = around.tangentAt(start.depthM);
  return {
    ...start,
    timeS: start.timeS + durationS,
    turnRad: start.turnRad + durationS * dot(around.earthRadPerS, tangent),
  };
}

/** Turns the probe about its axis where it stands, radians, positive clockwise looking down. */
export function turnProbe(
  start: ProbeState,
  turnRad: number,
  durationS: number,
  around: Surroundings,
): ProbeState {
  const { tangent } = around.tangentAt(start.depthM);
  const rested = restProbe(start, durationS, around);
  return {
    ...rested,
    attitude: compose(rotationBy(scale(tangent, turnRad)), start.attitude),
    turnRad: rested.turnRad + turnRad,
  };
}

/** Takes out what rounding and step length left between probe z and the tangent (some 1e-10 rad a move). */
function onAxis(attitude: Rotation, tangent: NorthEastDown): Rotation {
  return compose(shortestArc(rotate(attitude, ned(0, 0, 1)), tangent), attitude);
}
