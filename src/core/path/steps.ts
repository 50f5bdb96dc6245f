import { type NorthEastDown, ned } from "../geometry/vector.ts";
import { wrapToPi } from "../units/quantity.ts";
import { dogleg, ratioFactor } from "./dogleg.ts";
import type { PathMethodId } from "./path-method.ts";

/** From two neighbouring tangents and the depth between them to the change of position, metres. */
type PathStep = (first: NorthEastDown, second: NorthEastDown, lengthM: number) => NorthEastDown;

const sumTimes = (first: NorthEastDown, second: NorthEastDown, factor: number): NorthEastDown =>
  ned(
    factor * (first.north + second.north),
    factor * (first.east + second.east),
    factor * (first.down + second.down),
  );

/** D1, the default: circular arc between the two tangents. */
const minimumCurvature: PathStep = (first, second, lengthM) =>
  sumTimes(first, second, (lengthM / 2) * ratioFactor(dogleg(first, second)));

/** D2: half the length along each tangent. */
const balancedTangential: PathStep = (first, second, lengthM) => sumTimes(first, second, lengthM / 2);

/** D2: whole length along the lower tangent. */
const tangential: PathStep = (_first, second, lengthM) =>
  ned(second.north * lengthM, second.east * lengthM, second.down * lengthM);

/**
 * Inclination and azimuth of both ends. A plumb end has no azimuth: it takes the other end's,
 * because 0 would be an invented direction; on a near-vertical survey that error shows in every coordinate.
 */
function angles(first: NorthEastDown, second: NorthEastDown) {
  const lateral1 = Math.hypot(first.north, first.east);
  const lateral2 = Math.hypot(second.north, second.east);
  const azimuth1 = Math.atan2(first.east, first.north);
  const azimuth2 = Math.atan2(second.east, second.north);
  return {
    inclination1: Math.atan2(lateral1, first.down),
    inclination2: Math.atan2(lateral2, second.down),
    azimuth1: lateral1 === 0 ? azimuth2 : azimuth1,
    azimuth2: lateral2 === 0 ? azimuth1 : azimuth2,
  };
}

/** D2: whole length along the mean of the angles. */
const averageAngle: PathStep = (first, second, lengthM) => {
  const { inclination1, inclination2, azimuth1, azimuth2 } = angles(first, second);
  const inclination = (inclination1 + inclination2) / 2;
  const azimuth = azimuth1 + wrapToPi(azimuth2 - azimuth1) / 2;
  const lateral = lengthM * Math.sin(inclination);
  return ned(lateral * Math.cos(azimuth), lateral * Math.sin(azimuth), lengthM * Math.cos(inclination));
};

/**
 * D2: arc of constant rate in inclination and in azimuth.
 *
 * The quotients (cos I1 - cos I2)/(I2 - I1) and so on are written as sine of the mean times sinc of the half
 * difference, which has no 0/0 where the angles do not change.
 */
const radiusOfCurvature: PathStep = (first, second, lengthM) => {
  const { inclination1, inclination2, azimuth1, azimuth2 } = angles(first, second);
  const halfInclination = (inclination2 - inclination1) / 2;
  const halfAzimuth = wrapToPi(azimuth2 - azimuth1) / 2;
  const inclination = inclination1 + halfInclination;
  const azimuth = azimuth1 + halfAzimuth;
  const lateral = lengthM * Math.sin(inclination) * sinc(halfInclination) * sinc(halfAzimuth);
  return ned(
    lateral * Math.cos(azimuth),
    lateral * Math.sin(azimuth),
    lengthM * Math.cos(inclination) * sinc(halfInclination),
  );
};

const sinc = (angle: number): number => (Math.abs(angle) < 1e-9 ? 1 : Math.sin(angle) / angle);

/** The step of each path method. */
export const pathSteps: Readonly<Record<PathMethodId, PathStep>> = {
  "minimum-curvature": minimumCurvature,
  "balanced-tangential": balancedTangential,
  "average-angle": averageAngle,
  "radius-of-curvature": radiusOfCurvature,
  tangential,
};
