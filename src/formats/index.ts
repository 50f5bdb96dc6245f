// The door of the layer: what other layers may use, listed one by one.
export { MAX_FINDINGS_PER_FILE } from "./finding/finder.ts";
export { type FolderReader, folderFromFiles, tidyPath } from "./job-folder/folder.ts";
export { folderFromZip } from "./job-folder/folder-from-zip.ts";
export {
  elementHeadings,
  readElementCells,
  readingsHeadings,
  readReadingsCells,
  readSettingsJson,
  readTubeCells,
  tubeHeadings,
} from "./job-folder/read-cells.ts";
export { type ReadJob, readJobFolder, type UnusableRun } from "./job-folder/read-job-folder.ts";
export { type JsonDocument, type JsonMistake, parseJson } from "./json/parse-json.ts";
export { jsonSchemas } from "./json-schemas.ts";
export { type ConvertedRow, convertLogger, type LoggerReadings } from "./logger/convert-logger.ts";
export { conventionsFor } from "./logger/guess-conventions.ts";
export { type LoggerFile, type OpenedLogger, openLogger, type PreambleLine } from "./logger/open-logger.ts";
export { QUANTITY_OF, ROLES, type Role } from "./logger/roles.ts";
export type { Flag } from "./logger/row-reader.ts";
export {
  CONVENTION_CHOICES,
  type ConventionName,
  DATE_ORDERS,
  ENCODINGS,
  type GivenSettings,
  type LoggerColumn,
  type LoggerConventions,
  type LoggerLayout,
  type LoggerSettings,
  type Reason,
  SEPARATORS,
  type Sureness,
  THOUSANDS,
} from "./logger/settings.ts";
export {
  checkTemplate,
  fingerprintOf,
  type LoggerTemplate,
  readTemplate,
  settingsOf,
  shortFingerprint,
  TEMPLATE_FORMAT,
  templateFor,
  templateOf,
  writeTemplate,
} from "./logger/template.ts";
export { axisParts } from "./logger/turn-signs.ts";
export { UNITS_OF, type UnitId } from "./logger/units.ts";
export { type ResultsDocument, resultsSchema } from "./results/results-schema.ts";
export { type WriteOptions, writeResultsJson } from "./results/write-results-json.ts";
export type { CellTable, CellValue } from "./table/cells.ts";
export { writeCsv } from "./table/write-csv.ts";
export { isoOf, momentOf } from "./text/iso-time.ts";
export { crc32 } from "./zip/crc32.ts";
export { readZip, ZIP_LIMITS, type ZipLimits } from "./zip/read-zip.ts";
export { writeZip } from "./zip/write-zip.ts";
