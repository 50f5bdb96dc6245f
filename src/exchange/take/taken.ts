import type { Issue } from "#core";
import type { CellTable } from "#formats";
import type { JsonObject } from "#records";

/** A thing whose fields are set each by itself. */
export interface TakenThing {
  readonly kind: "job" | "element" | "tube" | "criterion" | "instrument";
  /** its name in the state */
  readonly thing: string;
  /** ids as the body of its entries names them */
  readonly ids: JsonObject;
  /** null: the folder says that it is not known */
  readonly set: JsonObject;
}

/** A calibration as one whole, with the events that ended it. */
export interface TakenCalibration {
  readonly thing: string;
  readonly body: JsonObject;
  readonly ended: readonly JsonObject[];
}

export interface TakenRun {
  readonly run: string;
  readonly thing: string;
  /** body of `run-opened` */
  readonly opened: JsonObject;
  /** bodies of `reference`: opening, ties, closing */
  readonly references: readonly JsonObject[];
  /** undefined where the file is not there or is kept as a whole */
  readonly cells: CellTable | undefined;
}

/** A job folder taken apart into what entries can say. */
export interface Taken {
  readonly things: readonly TakenThing[];
  readonly calibrations: readonly TakenCalibration[];
  readonly runs: readonly TakenRun[];
  /** files that are kept as a whole, by SHA-256 */
  readonly blobs: ReadonlyMap<string, Uint8Array<ArrayBuffer>>;
  readonly findings: readonly Issue[];
}
