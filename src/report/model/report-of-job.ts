import { createHash } from "node:crypto";
import type { Issue, Job, JobResults } from "#core";
import { type FolderReader, type ReadJob, writeResultsJson } from "#formats";
import { sentenceOf, version } from "#text";
import { allFindings } from "./all-findings.ts";
import { reportModel } from "./build-report.ts";
import type { ReportOptions } from "./job-report.ts";
import type { LogHead, RawFile, ReportIdentity, ReportModel } from "./report-model.ts";

export interface JobReportOptions
  extends Omit<ReportOptions, "report" | "version" | "files" | "fingerprint"> {
  readonly report: Omit<ReportIdentity, "head">;
  /** of the log that the job was read from; its fingerprint is that of the results */
  readonly head?: Omit<LogHead, "fingerprint">;
  /** what was found before the folder was read, as while it was made from a log */
  readonly findings?: readonly Issue[];
}

/**
 * The report on a job as it was read from a folder and worked out: with all its findings, the hashes of its files and the
 * fingerprint of its results.json.
 */
export function reportOfJob(
  { read, job, results }: { readonly read: ReadJob; readonly job: Job; readonly results: JobResults },
  folder: FolderReader,
  { findings = [], head, report, ...options }: JobReportOptions,
): ReportModel {
  const fingerprint = sha256(writeResultsJson(job, read, results, { version, sentence: sentenceOf }));
  const before = findings.map((issue) => ({ issue, about: "" }));
  return reportModel(job, results, [...before, ...allFindings(read, job, results)], {
    ...options,
    version,
    fingerprint,
    report: head === undefined ? report : { ...report, head: { ...head, fingerprint } },
    files: hashedFiles(folder, ["job.json", ...new Set(job.runs.map(({ file }) => file))]),
  });
}

const sha256 = (content: string | Uint8Array): string => createHash("sha256").update(content).digest("hex");

/** What files weigh and hash to, so that a paper can be held against them. Those that are not there are left out. */
function hashedFiles(folder: FolderReader, names: readonly string[]): readonly RawFile[] {
  return names.flatMap((name) => {
    const bytes = folder.read(name);
    return bytes === undefined ? [] : [{ name, bytes: bytes.length, sha256: sha256(bytes) }];
  });
}
