import { openLogger, TEMPLATE_FORMAT } from "#formats";
import type { InputFile } from "../desk.ts";
import type { DroppedKind } from "../desk-logger.ts";

/** A zip of a job folder, a schedule, a mapping or readings: told by what stands in the files, not by their names alone. */
export async function kindOfFiles(files: readonly InputFile[]): Promise<DroppedKind> {
  const [first] = files;
  if (first === undefined || files.some(({ name }) => /(^|\/)job\.json$/i.test(name))) return "job-folder";
  if (/\.zip$/i.test(first.name)) return "job-folder";
  if (
    /\.json$/i.test(first.name) &&
    new TextDecoder().decode(first.bytes.slice(0, 400)).includes(TEMPLATE_FORMAT)
  )
    return "mapping";
  if (/(^|\/)elements\.(csv|xlsx)$/i.test(first.name)) return "schedule";
  const opened = await openLogger(first.bytes, first.name);
  if (!opened.ok) return "readings";
  const heads = opened.file.settings.columns.map(({ heading }) => heading.toLowerCase());
  const has = (word: RegExp) => heads.some((heading) => word.test(heading));
  return has(/^(east|ost|rechts|easting)/) && has(/^(north|nord|hoch|northing)/) ? "schedule" : "readings";
}
