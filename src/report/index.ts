// The door of the layer: what other layers may use, listed one by one.

export { allFindings } from "./model/all-findings.ts";
export { reportModel } from "./model/build-report.ts";
export type { ReportFinding, ReportOptions } from "./model/job-report.ts";
export { readReportModel } from "./model/read-report-model.ts";
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
export { type JobReportOptions, reportOfJob } from "./model/report-of-job.ts";
export { type PdfOptions, renderPdf } from "./pdf/render-pdf.ts";
export { reportFigureFiles } from "./tables/figure-files.ts";
export { reportWorkbook } from "./tables/report-workbook.ts";
export { checkTemplate } from "./word/check-template.ts";
export { renderWord, wordTemplate } from "./word/render-word.ts";
export { KNOWN_TAGS, LIST_TAGS, VALUE_TAGS } from "./word/tags.ts";
