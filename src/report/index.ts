// The door of the layer: what other layers may use, listed one by one.

export { reportModel } from "./model/build-report.ts";
export type { ReportFinding, ReportOptions } from "./model/job-report.ts";
export {
  type Block,
  type Cell,
  type Change,
  type LogHead,
  type RawFile,
  REPORT_FORMAT,
  REPORT_STATUSES,
  type ReportElement,
  type ReportFigure,
  type ReportIdentity,
  type ReportModel,
  type ReportStatus,
  type Section,
  SIGNATURE_MEANINGS,
  type Signature,
  type SignatureMeaning,
} from "./model/report-model.ts";
