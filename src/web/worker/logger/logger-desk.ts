import { fail, type Issue, ok, type Result } from "#core";
import { readingsBodies } from "#exchange";
import {
  convertLogger,
  type GivenSettings,
  type LoggerFile,
  type LoggerReadings,
  type LoggerTemplate,
  openLogger,
  readTemplate,
  settingsOf,
  templateFor,
  templateOf,
  writeTemplate,
} from "#formats";
import { type JsonObject, type JsonValue, sha256Hex, thingKey } from "#records";
import type { InputFile, NewStatement } from "../desk.ts";
import type { DeskLogger, GivenHeading, MappingView, RunTarget } from "../desk-logger.ts";
import { error } from "../issue.ts";
import type { JobNow } from "../jobs/worked-job.ts";
import { keepMapping, MAPPING_QUESTION, mappingsOfDevice, mappingsOfJob } from "./kept-mappings.ts";
import { kindOfFiles } from "./kind-of-files.ts";
import { mappingView } from "./mapping-view.ts";

/** What this part needs of the desk. */
export interface LoggerPlace {
  readonly now: (job: string) => Promise<JobNow | undefined>;
  readonly write: (
    job: string,
    statements: readonly NewStatement[],
  ) => Promise<Result<readonly string[], readonly Issue[]>>;
}

/** The file that is being mapped; the window has one at a time. */
interface Held {
  readonly input: InputFile;
  readonly template: LoggerTemplate | undefined;
  readonly file: LoggerFile;
  readonly readings: LoggerReadings;
}

/** The worker's part of bringing files in. */
export function loggerDesk({ now, write }: LoggerPlace): DeskLogger {
  let held: Held | undefined;
  const hold = (input: InputFile, template: LoggerTemplate | undefined, file: LoggerFile): MappingView => {
    held = { input, template, file, readings: convertLogger(file) };
    return mappingView(file, held.readings, template?.name);
  };
  const open = async (
    input: InputFile,
    given: GivenSettings,
    template: LoggerTemplate | undefined,
  ): Promise<Result<MappingView, readonly Issue[]>> => {
    const opened = await openLogger(input.bytes, input.name, given);
    return opened.ok ? ok(hold(input, template, opened.file)) : fail(opened.findings);
  };
  return {
    kindOf: kindOfFiles,
    open: async (job, input) => {
      held = undefined;
      const opened = await openLogger(input.bytes, input.name);
      if (!opened.ok) return fail(opened.findings);
      const known = await now(job);
      const ofJob = known === undefined ? [] : mappingsOfJob(known.log.state);
      const template = templateFor(opened.file, [...(await mappingsOfDevice()), ...ofJob]);
      return template === undefined
        ? ok(hold(input, undefined, opened.file))
        : open(input, settingsOf(template), template);
    },
    change: async (given) => {
      if (held === undefined) return fail([error("logger.not-open", {})]);
      const { input, template } = held;
      return open(input, template === undefined ? given : together(settingsOf(template), given), template);
    },
    accept: async (job, target, mapping) => {
      if (held === undefined || held.readings.measures === undefined)
        return fail([error("logger.not-open", {})]);
      const template = templateOf(held.file, mapping.name);
      const written = await write(job, await statementsOf(held, target, template, mapping.reason));
      if (!written.ok) return written;
      await keepMapping(template);
      return ok(true);
    },
    exportMapping: async (name) => held && writeTemplate(templateOf(held.file, name)),
    importMapping: async ({ name, bytes }) => {
      const read = readTemplate(new TextDecoder().decode(bytes), name);
      if (!read.ok) return read;
      await keepMapping(read.value);
      return ok(read.value.name);
    },
  };
}

const together = (base: GivenSettings, given: GivenSettings): GivenSettings => ({
  ...base,
  layout: { ...base.layout, ...given.layout },
  columns: Object.fromEntries(
    Object.keys({ ...base.columns, ...given.columns })
      .map(Number)
      .map((index) => [index, { ...base.columns?.[index], ...given.columns?.[index] }]),
  ),
  conventions: { ...base.conventions, ...given.conventions },
});

async function statementsOf(
  { input, file, readings }: Held,
  target: RunTarget,
  template: LoggerTemplate,
  reason: string,
): Promise<readonly NewStatement[]> {
  const { run, element, tube, instrument, calibrations, operator, startedAt } = target;
  const settings: Record<string, JsonValue> = { ...readings.runSettings };
  if (target.grooveBearingDeg !== undefined) settings["groove_bearing_deg"] = target.grooveBearingDeg;
  const opened: JsonObject = {
    run,
    element,
    ...(tube === undefined ? {} : { tube }),
    instrument,
    measures: readings.measures!,
    calibrations: [...calibrations],
    ...(operator === undefined ? {} : { operator }),
    ...(startedAt === undefined ? {} : { started_at: startedAt }),
    settings,
  };
  const answer = {
    mapping: template as unknown as JsonValue,
    file: { name: input.name, bytes: input.bytes.length, sha256: await sha256Hex(input.bytes) },
    lines: file.rows.length,
    taken: readings.cells.count,
  };
  return [
    { kind: "run-opened", body: opened },
    ...headings(run, "opening", target.opening),
    ...readingsBodies(run, readings.cells).map((body) => ({ kind: "readings", body })),
    ...headings(run, "closing", target.closing),
    { kind: "run-closed", body: { run, outcome: "complete", rows: readings.cells.count } },
    {
      kind: "decision",
      body: { about: thingKey("run", run), question: MAPPING_QUESTION, answer, reason },
    },
  ];
}

const headings = (
  run: string,
  role: "opening" | "closing",
  given: GivenHeading | undefined,
): readonly NewStatement[] =>
  given === undefined
    ? []
    : [{ kind: "reference", body: { run, role, heading_deg: given.headingDeg, north: given.north } }];
