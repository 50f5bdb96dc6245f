import type { Leg, Readings } from "#core";

/** One row of readings; what is left out was not recorded. */
export interface ReadingRow
  extends Partial<
    Readonly<
      Record<
        | "timeS"
        | "depthM"
        | "depthCounts"
        | "tiltXRad"
        | "tiltYRad"
        | "turnRad"
        | "accX"
        | "accY"
        | "accZ"
        | "inclinationRad"
        | "azimuthRad"
        | "temperatureC"
        | "samples"
        | "seTiltXRad"
        | "seTiltYRad",
        number
      >
    >
  > {
  readonly leg?: Leg;
  readonly face?: 0 | 1 | 2;
}

/** Readings from rows written by hand. The first row stands in line 2, below the headings. */
export function readingsOf(rows: readonly ReadingRow[]): Readings {
  const column = (name: Exclude<keyof ReadingRow, "leg" | "face">) =>
    Float64Array.from(rows, (row) => row[name] ?? Number.NaN);
  return {
    count: rows.length,
    timeS: column("timeS"),
    depthM: column("depthM"),
    depthCounts: column("depthCounts"),
    tiltXRad: column("tiltXRad"),
    tiltYRad: column("tiltYRad"),
    turnRad: column("turnRad"),
    accX: column("accX"),
    accY: column("accY"),
    accZ: column("accZ"),
    inclinationRad: column("inclinationRad"),
    azimuthRad: column("azimuthRad"),
    leg: rows.map((row) => row.leg ?? ""),
    face: Uint8Array.from(rows, (row) => row.face ?? 0),
    temperatureC: column("temperatureC"),
    samples: column("samples"),
    seTiltXRad: column("seTiltXRad"),
    seTiltYRad: column("seTiltYRad"),
    line: Int32Array.from(rows, (_, i) => i + 2),
  };
}
