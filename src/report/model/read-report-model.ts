import { parseJson } from "#formats";
import { REPORT_FORMAT, type ReportModel } from "./report-model.ts";

/** A report as `JSON.stringify` wrote it, for comparing with the next revision; undefined if this is none. */
export function readReportModel(text: string): ReportModel | undefined {
  const parsed = parseJson(text);
  if (!parsed.ok) return undefined;
  const value = parsed.value.value as Partial<ReportModel> | null;
  const isReport =
    typeof value === "object" &&
    value !== null &&
    value.format === REPORT_FORMAT &&
    Array.isArray(value.elements);
  return isReport ? (value as ReportModel) : undefined;
}
