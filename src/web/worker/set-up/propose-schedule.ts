import type { DesignElement, Issue } from "#core";
import { statementsFromJobFolder } from "#exchange";
import { readJobFolder } from "#formats";
import { type JobState, type JsonObject, type JsonValue, thingKey } from "#records";
import type { NewStatement } from "../desk.ts";
import type { ProposedElement, ScheduleInput, ScheduleProposal, Swap } from "../desk-set-up.ts";
import type { JobNow } from "../jobs/worked-job.ts";
import { elementRow } from "../view/job-view.ts";
import { farFromTheOthers } from "./far-from-the-others.ts";
import { proposedFolder } from "./proposed-folder.ts";

/** Findings of the settings that are about where the schedule lies. */
const ABOUT_THE_PLACE = ["formats.schedule-swapped", "formats.place-far"];
const SWAPPED = ["formats.coordinates-swapped", "formats.schedule-swapped"];

/**
 * What a proposed schedule says, by the readers of the job folder, held against what the log has. Lines with an error of their own
 * stay out; of the others only what differs becomes a statement.
 */
export async function proposeSchedule(
  { log, read: held }: JobNow,
  files: ReadonlyMap<string, string | Uint8Array>,
  input: ScheduleInput,
  swap: Swap,
): Promise<ScheduleProposal> {
  const { folder, headings, proposed } = await proposedFolder(files, input, swap);
  const [read, said] = [
    await readJobFolder(folder),
    await statementsFromJobFolder(folder, { author: "", state: log.state }),
  ];
  const findings = read.findings.filter(
    ({ code, place }) =>
      (place.file !== undefined && proposed.includes(place.file)) || ABOUT_THE_PLACE.includes(code),
  );
  const unsaid = said.ok || findings.some(({ severity }) => severity === "error") ? [] : said.error;
  const badLines = new Set(
    findings.filter(({ severity }) => severity === "error").map(({ place }) => keyOf(place.file, place.line)),
  );
  const isGood = ({ place }: Pick<DesignElement, "place">) => !badLines.has(keyOf(place.file, place.line));
  const isOfElements = proposed.some((name) => name.startsWith("elements"));
  const elements = isOfElements ? (read.job?.elements ?? []) : [];
  const tubes = (read.job?.tubes ?? []).filter(isGood);
  const taken = new Set([
    ...elements.filter(isGood).map(({ id }) => thingKey("element", id)),
    ...tubes.map(({ elementId, id }) => thingKey("tube", elementId, id)),
  ]);
  const all = said.ok ? said.value.statements : [];
  const statements = withPutBack(
    all.filter((each) => taken.has(thingOf(each))),
    taken,
    log.state,
  );
  const fieldsOf = new Map(statements.map((each) => [thingOf(each), Object.keys(setOf(each))]));
  const rows = elements.map((element) => ({
    line: element.place.line ?? 0,
    isTaken: isGood(element),
    ...changeOf(thingKey("element", element.id), fieldsOf, log.state),
    row: elementRow(element, 0, undefined, new Set()),
  }));
  return {
    elements: rows,
    tubes: proposed.includes("tubes.csv") ? tubes.length : 0,
    leftOut: new Set([...badLines].filter((key) => !key.endsWith(":"))).size,
    findings: [...findings, ...unsaid],
    headings,
    lacking: findings.flatMap(({ code, values }) =>
      code === "formats.column-missing" ? [String(values["expected"])] : [],
    ),
    looksSwapped: swap === "none" ? looksSwapped(findings, elements, held.job?.elements ?? []) : "none",
    statements,
    undo: statements.map((each) => undoOf(each, log.state)),
  };
}

const keyOf = (file: string | undefined, line: number | undefined): string => `${file}:${line ?? ""}`;
const setOf = ({ body }: NewStatement): JsonObject => (body["set"] ?? {}) as JsonObject;

function thingOf({ kind, body }: NewStatement): string {
  const [element, tube] = [String(body["element"]), String(body["tube"])];
  if (kind === "element") return thingKey("element", element);
  return kind === "tube" ? thingKey("tube", element, tube) : kind;
}

const lastOf = (state: JobState, thing: string, field: string): JsonValue =>
  state.things[thing]?.fields[field]?.at(-1)?.value ?? null;

/** A thing that was withdrawn and stands in the schedule again is put back. */
function withPutBack(
  statements: readonly NewStatement[],
  taken: ReadonlySet<string>,
  state: JobState,
): readonly NewStatement[] {
  const isWithdrawn = (thing: string) => lastOf(state, thing, "withdrawn") === true;
  const said = new Set(statements.map(thingOf));
  const back = { withdrawn: false };
  const silent = [...taken].filter((thing) => isWithdrawn(thing) && !said.has(thing));
  return [
    ...statements.map((each) =>
      isWithdrawn(thingOf(each))
        ? { ...each, body: { ...each.body, set: { ...setOf(each), ...back } } }
        : each,
    ),
    ...silent.map((thing) => {
      const [kind = "", element = "", tube] = thing.split("/").map(decodeURIComponent);
      return { kind, body: { element, ...(tube === undefined ? {} : { tube }), set: back } };
    }),
  ].map(({ kind, body }) => ({ kind, body }));
}

function changeOf(
  thing: string,
  fieldsOf: ReadonlyMap<string, readonly string[]>,
  state: JobState,
): Pick<ProposedElement, "change" | "fields"> {
  const fields = fieldsOf.get(thing) ?? [];
  if (state.things[thing] === undefined) return { change: "new", fields: [] };
  if (lastOf(state, thing, "withdrawn") === true) return { change: "put-back", fields };
  return { change: fields.length === 0 ? "same" : "changed", fields };
}

/** What was there before: the fields as they were, and what is new withdrawn. */
function undoOf(statement: NewStatement, state: JobState): NewStatement {
  const thing = thingOf(statement);
  const { set, ...ids } = statement.body;
  const isNew = state.things[thing] === undefined;
  const before = isNew
    ? { withdrawn: true }
    : Object.fromEntries(Object.keys(set as JsonObject).map((field) => [field, lastOf(state, thing, field)]));
  return { kind: statement.kind, body: { ...ids, set: before } };
}

function looksSwapped(
  findings: readonly Issue[],
  elements: readonly DesignElement[],
  others: readonly DesignElement[],
): Swap {
  const found = findings.filter(({ code }) => SWAPPED.includes(code));
  if (found.some(({ code }) => code === "formats.schedule-swapped")) return "all";
  const lines = new Set(found.map(({ place }) => place.line));
  const ids = elements.filter(({ place }) => lines.has(place.line)).map(({ id }) => id);
  if (ids.length > 0) return ids.length === elements.length ? "all" : ids;
  return farFromTheOthers(elements, others) ? "all" : "none";
}
