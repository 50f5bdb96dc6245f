import { add, cross, dot, type NorthEastDown, ned, norm, radiansFromDegrees, scale, subtract } from "#core";

interface Lean {
  /** lean from vertical at the top, degrees */
  readonly rakeDeg: number;
  /** where the lean goes, degrees from grid north */
  readonly bearingDeg: number;
}

/** One wave of a wandering axis: the axis leans by amplitude * sin(2 pi depth / wavelength + phase). */
export interface LeanWave {
  readonly amplitudeDeg: number;
  readonly wavelengthM: number;
  readonly phaseDeg: number;
  /** direction of the lean seen along the axis: 0 = along the rake (north if plumb), 90 = to the right of it */
  readonly towardsDeg: number;
}

/** The true course of a hole axis, as plain data. */
export type HoleShape =
  | ({ readonly shape: "straight" } & Lean)
  /** constant curvature in one plane; `towardsDeg` as in LeanWave */
  | ({ readonly shape: "arc"; readonly bendDegPerM: number; readonly towardsDeg: number } & Lean)
  /** constant rake; the bearing swings by amplitude * sin(2 pi depth / wavelength + phase) and turns at a steady rate */
  | ({
      readonly shape: "wandering-bearing";
      readonly amplitudeDeg: number;
      readonly wavelengthM: number;
      readonly phaseDeg: number;
      readonly turnDegPerM: number;
    } & Lean)
  /** straight with waves on it: one wave is an S, several are a hole of chance */
  | ({ readonly shape: "waves"; readonly waves: readonly LeanWave[] } & Lean)
  /** another hole from some depth of it on: a tube whose top is not where the axis begins; above it if negative */
  | { readonly shape: "part"; readonly of: HoleShape; readonly fromM: number };

/** Unit tangent of the axis and how it changes with depth along the hole. Site north-east-down. */
export interface TangentAndBend {
  readonly tangent: NorthEastDown;
  /** derivative of the tangent by depth along the hole, 1/m */
  readonly bend: NorthEastDown;
}

/**
 * The tangent of a hole as a function of depth along it.
 *
 * @returns a function of depth, metres; any depth is allowed, also above the top.
 * Frame: site north-east-down.
 */
export function tangentOf(hole: HoleShape): (depthM: number) => TangentAndBend {
  switch (hole.shape) {
    case "straight": {
      const { axis } = designFrame(hole);
      const fixed = { tangent: axis, bend: ned(0, 0, 0) };
      return () => fixed;
    }
    case "arc":
      return arcTangent(hole);
    case "wandering-bearing":
      return wanderingTangent(hole);
    case "waves":
      return wavesTangent(hole);
    case "part": {
      const whole = tangentOf(hole.of);
      return (depthM) => whole(depthM + hole.fromM);
    }
  }
}

/** The axis at the top with two directions square to it: along the rake, and to the right of that. */
function designFrame(lean: Lean): { axis: NorthEastDown; along: NorthEastDown; across: NorthEastDown } {
  const [rake, bearing] = [radiansFromDegrees(lean.rakeDeg), radiansFromDegrees(lean.bearingDeg)];
  const [cosB, sinB, cosR, sinR] = [Math.cos(bearing), Math.sin(bearing), Math.cos(rake), Math.sin(rake)];
  return {
    axis: ned(sinR * cosB, sinR * sinB, cosR),
    along: ned(cosR * cosB, cosR * sinB, -sinR),
    across: ned(-sinB, cosB, 0),
  };
}

function sideways(lean: Lean, towardsDeg: number): NorthEastDown {
  const { along, across } = designFrame(lean);
  const towards = radiansFromDegrees(towardsDeg);
  return add(scale(along, Math.cos(towards)), scale(across, Math.sin(towards)));
}

function arcTangent(hole: HoleShape & { shape: "arc" }): (depthM: number) => TangentAndBend {
  const { axis } = designFrame(hole);
  const side = sideways(hole, hole.towardsDeg);
  const bend = radiansFromDegrees(hole.bendDegPerM);
  return (depthM) => {
    const [c, s] = [Math.cos(bend * depthM), Math.sin(bend * depthM)];
    return {
      tangent: add(scale(axis, c), scale(side, s)),
      bend: add(scale(axis, -bend * s), scale(side, bend * c)),
    };
  };
}

function wanderingTangent(
  hole: HoleShape & { shape: "wandering-bearing" },
): (depthM: number) => TangentAndBend {
  const rake = radiansFromDegrees(hole.rakeDeg);
  const [sinR, cosR] = [Math.sin(rake), Math.cos(rake)];
  const start = radiansFromDegrees(hole.bearingDeg);
  const amplitude = radiansFromDegrees(hole.amplitudeDeg);
  const phase = radiansFromDegrees(hole.phaseDeg);
  const wave = (2 * Math.PI) / hole.wavelengthM;
  const turn = radiansFromDegrees(hole.turnDegPerM);
  return (depthM) => {
    const bearing = start + amplitude * Math.sin(wave * depthM + phase) + turn * depthM;
    const rate = amplitude * wave * Math.cos(wave * depthM + phase) + turn;
    const [c, s] = [Math.cos(bearing), Math.sin(bearing)];
    return { tangent: ned(sinR * c, sinR * s, cosR), bend: ned(-sinR * s * rate, sinR * c * rate, 0) };
  };
}

function wavesTangent(hole: HoleShape & { shape: "waves" }): (depthM: number) => TangentAndBend {
  const { axis } = designFrame(hole);
  const waves = hole.waves.map((wave) => ({
    side: scale(sideways(hole, wave.towardsDeg), Math.tan(radiansFromDegrees(wave.amplitudeDeg))),
    perM: (2 * Math.PI) / wave.wavelengthM,
    phase: radiansFromDegrees(wave.phaseDeg),
  }));
  return (depthM) => {
    let direction = axis;
    let change = ned(0, 0, 0);
    for (const wave of waves) {
      const angle = wave.perM * depthM + wave.phase;
      direction = add(direction, scale(wave.side, Math.sin(angle)));
      change = add(change, scale(wave.side, wave.perM * Math.cos(angle)));
    }
    const length = norm(direction);
    const tangent = scale(direction, 1 / length);
    return { tangent, bend: scale(subtract(change, scale(tangent, dot(tangent, change))), 1 / length) };
  };
}

/** Angular velocity of the axis for each metre of depth: turns the tangent as the hole bends, without turning about it. */
export const bendVector = ({ tangent, bend }: TangentAndBend): NorthEastDown => cross(tangent, bend);
