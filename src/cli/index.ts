// The door of the layer: what other layers may use, listed one by one. Nobody imports the command line.
export type { ExitCode } from "./exit-code.ts";
