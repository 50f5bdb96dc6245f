import { isHex32 } from "#records";
import type { FirstBadEntry } from "./evidence-report.ts";

/** What is known of one entry. */
export type Known = Pick<FirstBadEntry, "id" | "device" | "sequence" | "kind">;

/** What a line says of itself, whether it is true or not. */
export function claimOf(claim: unknown): Known {
  if (typeof claim !== "object" || claim === null) return {};
  const { id, device, sequence, kind } = claim as Readonly<Record<string, unknown>>;
  return {
    ...(isHex32(id) ? { id } : {}),
    ...(isHex32(device) ? { device } : {}),
    ...(typeof sequence === "number" ? { sequence } : {}),
    ...(typeof kind === "string" ? { kind: kind.slice(0, 61) } : {}),
  };
}
