import { type JobResults, reduceJob } from "#core";
import { folderFromFiles, type ResultsDocument, readJobFolder, writeResultsJson } from "#formats";
import { type ReportModel, type ReportOptions, reportModel } from "#report";
import { sentenceOf } from "#text";
import { type JobFiles, soundJob } from "../jobs/broken/sound-job.ts";

/** A report on the invented job of the tests, with the results that it was made from. */
export async function sampleReport(
  changes: Partial<ReportOptions> = {},
  change: (files: JobFiles) => void = () => {},
): Promise<{
  readonly model: ReportModel;
  readonly results: JobResults;
  readonly document: ResultsDocument;
}> {
  const files = soundJob();
  change(files);
  const read = await readJobFolder(folderFromFiles(files));
  const job = read.job!;
  const results = reduceJob(job);
  const document = JSON.parse(
    writeResultsJson(job, read, results, { version: "9.9.9", sentence: (finding) => sentenceOf(finding) }),
  ) as ResultsDocument;
  const findings = read.findings.map((issue) => ({ issue, about: "" }));
  const model = reportModel(job, results, findings, {
    language: "en",
    units: "si",
    version: "9.9.9",
    fingerprint: "0123456789abcdef".repeat(4),
    report: {
      number: "T-1",
      revision: "A",
      status: "draft",
      date: "2026-03-20",
      client: "Client <of> tests & others",
      signatures: [{ meaning: "tested", name: "A. Byte", at: "2026-03-19" }],
    },
    ...changes,
  });
  return { model, results, document };
}
