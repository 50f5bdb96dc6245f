import { contract, type Leg, type NorthEastDown, ned, radiansFromDegrees } from "#core";
import { tangentOf } from "./hole-shape.ts";
import { attitudeFromHeading, levelledHeading } from "./levelled-heading.ts";
import type { ProbeErrors } from "./probe-errors.ts";
import {
  earthRateVector,
  moveProbe,
  type ProbeState,
  restProbe,
  type Surroundings,
  turnProbe,
} from "./probe-motion.ts";
import type { RandomSource } from "./random.ts";
import type { PassSpec, RunSpec } from "./run-spec.ts";

/** The probe at the middle of one stop. */
export interface Stop {
  readonly leg: Leg;
  readonly face: 1 | 2;
  /** what the depth device shows, metres */
  readonly shownDepthM: number;
  readonly state: ProbeState;
}

/** The probe somewhere on its way. */
export interface TrackPoint {
  readonly state: ProbeState;
  /** what the depth device shows, metres */
  readonly shownDepthM: number;
  readonly face: 1 | 2;
}

/** True headings of probe +x at the rows where it is set by hand, radians from grid north. */
export interface SetHeadings {
  readonly opening: number;
  readonly ties: readonly number[];
  /** undefined = no closing row */
  readonly closing: number | undefined;
}

const TURN_S = 20;

/**
 * Lowers and hoists the probe as the run asks for and gives its state at every stop.
 *
 * The operator stops where the depth device shows the station; what the device does wrong moves the probe, not the
 * number that is written down. At the top the probe stands at the mark where the device was set to zero.
 *
 * @param track is filled with points between which everything changes evenly, near enough for a log of the way.
 */
export function runMotion(
  spec: RunSpec,
  errors: ProbeErrors,
  headings: SetHeadings,
  random: RandomSource,
  track?: TrackPoint[],
): readonly Stop[] {
  const passes: readonly PassSpec[] = spec.passes ?? [{ leg: "down", face: 1 }];
  const crew = new HoistCrew(spec, errors, headings.opening, random, track);
  crew.face = passes[0]?.face ?? 1;
  const withReferences = spec.measures === "tilt-turn" || spec.measures === "acceleration-turn";
  if (withReferences) crew.stop("open", passes[0]?.face ?? 1, 0);

  let ties = 0;
  for (const [index, pass] of passes.entries()) {
    const before = passes[index - 1];
    const turned = before !== undefined && before.face !== pass.face;
    contract(
      !(turned && pass.leg === "up"),
      "runMotion: the face can change only at the top, before a way down",
    );
    if (before !== undefined && pass.leg === "down") {
      crew.goToTop();
      const tie = headings.ties[ties];
      if (tie !== undefined) {
        crew.setHeading(tie);
        crew.stop("tie", before.face, 0);
        ties++;
      }
      if (turned) crew.turn(Math.PI);
    }
    crew.face = pass.face;
    const stations = stationsRead(spec);
    for (const station of pass.leg === "down" ? stations : [...stations].reverse()) {
      crew.goTo(station);
      crew.stop(pass.leg, pass.face, station);
    }
  }
  if (withReferences && headings.closing !== undefined) {
    crew.goToTop();
    crew.setHeading(headings.closing);
    crew.stop("close", passes.at(-1)?.face ?? 1, crew.shownAtTop());
  }
  return crew.stops;
}

function stationsRead(spec: RunSpec): readonly number[] {
  const gaps = (spec.faults ?? []).filter((fault) => fault.fault === "gap");
  return spec.stationsM.filter((depth) => !gaps.some((gap) => depth > gap.fromM && depth < gap.toM));
}

/** Probe, cable and winch while a run lasts. */
class HoistCrew {
  readonly stops: Stop[] = [];
  face: 1 | 2 = 1;
  #state: ProbeState;
  #shownM = 0;
  #slipM = 0;
  readonly #spec: RunSpec;
  readonly #errors: ProbeErrors;
  readonly #around: Surroundings;
  readonly #random: RandomSource;
  readonly #track: TrackPoint[] | undefined;

  constructor(
    spec: RunSpec,
    errors: ProbeErrors,
    headingRad: number,
    random: RandomSource,
    track: TrackPoint[] | undefined,
  ) {
    this.#spec = spec;
    this.#errors = errors;
    this.#random = random;
    this.#track = track;
    this.#around = surroundings(spec, random.fork("spin"));
    const { tangent } = this.#around.tangentAt(errors.depthZeroM);
    this.#state = {
      attitude: attitudeFromHeading(headingRad, tangent),
      depthM: errors.depthZeroM,
      travelM: 0,
      timeS: 0,
      turnRad: 0,
    };
  }

  /** Lowers or hoists until the device shows the depth. */
  goTo(shownM: number): void {
    const e = this.#errors;
    const aimed = e.depthZeroM + (shownM - this.#slipM) / (1 + e.depthScale);
    this.#slipM +=
      e.depthSlipMPerRootM * Math.sqrt(Math.abs(aimed - this.#state.depthM)) * this.#random.normal();
    this.#moveTo(
      e.depthZeroM + (shownM - this.#slipM) / (1 + e.depthScale) + e.depthNoiseM * this.#random.normal(),
      shownM,
    );
  }

  /** Hoists to the mark at the top; the device need not show zero there. */
  goToTop(): void {
    const length = Math.abs(this.#state.depthM - this.#errors.depthZeroM);
    this.#slipM += this.#errors.depthSlipMPerRootM * Math.sqrt(length) * this.#random.normal();
    this.#moveTo(this.#errors.depthZeroM, this.#slipM);
  }

  shownAtTop(): number {
    return this.#slipM;
  }

  turn(angleRad: number): void {
    this.#mark();
    this.#state = turnProbe(this.#state, angleRad, TURN_S, this.#around);
  }

  /** Turns the probe by hand, the short way, until probe +x has the heading. */
  setHeading(headingRad: number): void {
    const { tangent } = this.#around.tangentAt(this.#state.depthM);
    const wanted = headingRad - levelledHeading(this.#state.attitude, tangent);
    this.turn(Math.atan2(Math.sin(wanted), Math.cos(wanted)));
  }

  stop(leg: Leg, face: 1 | 2, shownDepthM: number): void {
    const half = (this.#spec.stopS ?? 10) / 2;
    this.#mark();
    this.#state = restProbe(this.#state, half, this.#around);
    this.stops.push({ leg, face, shownDepthM, state: this.#keyed(face) });
    this.#state = restProbe(this.#state, half, this.#around);
    this.#mark();
  }

  #moveTo(depthM: number, shownM: number): void {
    this.#mark();
    const [from, shownFrom] = [this.#state.depthM, this.#shownM];
    const seconds = Math.max(0.5, Math.abs(depthM - from) / (this.#spec.hoistSpeedMPerS ?? 0.3));
    const onStep = (state: ProbeState): void => {
      const share = depthM === from ? 0 : (state.depthM - from) / (depthM - from);
      this.#shownM = shownFrom + share * (shownM - shownFrom);
      this.#mark(state);
    };
    const rounded = Math.ceil(seconds * 10) / 10;
    this.#state = moveProbe(
      this.#state,
      depthM,
      rounded,
      this.#around,
      this.#track === undefined ? undefined : onStep,
    );
    this.#shownM = shownM;
  }

  #mark(state = this.#state): void {
    this.#track?.push({ state, shownDepthM: this.#shownM, face: this.face });
  }

  /** In a grooved tube the groove, not the motion, holds the probe. */
  #keyed(face: 1 | 2): ProbeState {
    if (this.#spec.measures !== "keyed-tilt") return this.#state;
    const { tangent } = this.#around.tangentAt(this.#state.depthM);
    const groove = radiansFromDegrees(
      (this.#spec.grooveBearingDeg ?? 0) +
        this.#errors.grooveBearingErrorDeg +
        twistAt(this.#spec.spiral ?? [], this.#state.depthM),
    );
    const heading = groove + (face === 2 ? Math.PI : 0);
    return { ...this.#state, attitude: attitudeFromHeading(heading, tangent) };
  }
}

/** Twist of the groove in a table, straight between its rows and level beyond them, degrees. */
function twistAt(spiral: NonNullable<RunSpec["spiral"]>, depthM: number): number {
  const next = spiral.findIndex((row) => row.depthM >= depthM);
  const [above, below] = [spiral[next - 1], spiral[next]];
  if (below === undefined) return spiral.at(-1)?.twistDeg ?? 0;
  if (above === undefined) return below.twistDeg;
  const share = (depthM - above.depthM) / (below.depthM - above.depthM);
  return above.twistDeg + share * (below.twistDeg - above.twistDeg);
}

function surroundings(spec: RunSpec, random: RandomSource): Surroundings {
  return {
    tangentAt: tangentOf(spec.hole),
    spinRadPerM: spinRate(spec.spin, random),
    earthRadPerS: earthVector(spec),
    stepM: spec.stepM ?? 0.025,
  };
}

function earthVector(spec: RunSpec): NorthEastDown {
  const { latitudeDeg, convergenceDeg } = spec.site;
  if (!Number.isFinite(latitudeDeg)) return ned(0, 0, 0);
  return earthRateVector(radiansFromDegrees(latitudeDeg), radiansFromDegrees(convergenceDeg));
}

/** Spin for each metre of cable: a steady part and three waves of 3 to 15 m that drift apart. */
function spinRate(spin: RunSpec["spin"], random: RandomSource): (travelM: number) => number {
  const turnsPerM = spin?.turnsPerM ?? 0.06 * random.normal();
  const waveTurns = spin?.waveTurns ?? 0.15;
  const waves = [3, 6, 11].map((shortest) => ({
    perM: (2 * Math.PI) / (shortest * (1 + 0.35 * random.uniform())),
    phase: 2 * Math.PI * random.uniform(),
    amplitude: (2 * Math.PI * waveTurns * random.normal()) / Math.sqrt(3),
  }));
  return (travelM) =>
    waves.reduce(
      (sum, wave) => sum + wave.amplitude * wave.perM * Math.cos(wave.perM * travelM + wave.phase),
      2 * Math.PI * turnsPerM,
    );
}
