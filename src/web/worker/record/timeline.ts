import type { Language } from "#core";
import { type Effect, type Entry, kindOf, type ThingState } from "#records";
import { fieldsWords } from "../../words/fields/words.ts";
import { wordsIn } from "../../words/words-in.ts";
import type { BrokenChain, Timeline, TimelineFilter, TimelineRow } from "../desk-record.ts";
import type { JobLog } from "../jobs/job-log.ts";
import { fieldText, ROW, valueText } from "./field-text.ts";
import { deviceName, type FieldWords, personName, thingText } from "./names.ts";

/** Changes that are written out for one entry; more are counted by the entry itself. */
const MOST_DETAILS = 12;
const ASIDE = ["set-aside", "put-back"] as const;

/** Entries of a job that fit a filter, the newest arrival first. */
export function timeline(
  log: JobLog,
  filter: TimelineFilter,
  from: number,
  count: number,
  language: Language,
): Timeline {
  const word = wordsIn(fieldsWords, language);
  const wanted = wantedEntries(log, filter.about);
  const fitting = log.entries
    .map((entry, i) => ({ entry, arrival: i + 1 }))
    .filter(({ entry }) => wanted === undefined || wanted.has(entry.id))
    .filter(({ entry }) => !filter.isAsideOnly || ASIDE.some((kind) => kind === entry.kind))
    .reverse();
  return {
    rows: fitting
      .slice(from, from + count)
      .map(({ entry, arrival }) => timelineRow(log, entry, arrival, language, word)),
    total: fitting.length,
    broken: brokenChains(log),
  };
}

/** Entries about what somebody typed: exactly that thing, or else everything whose name begins so. */
function wantedEntries({ state }: JobLog, typed: string): ReadonlySet<string> | undefined {
  const about = typed.trim().toLowerCase();
  if (about === "") return undefined;
  const named = Object.entries(state.things).map(([key, thing]) => ({ thing, names: namesOf(key, thing) }));
  const exact = named.filter(({ names }) => names.includes(about));
  const found =
    exact.length > 0 ? exact : named.filter(({ names }) => names.some((name) => name.startsWith(about)));
  return new Set(found.flatMap(({ thing }) => thing.entries));
}

/** A run belongs to its element too, and a tube to the element that it hangs in. */
function namesOf(key: string, thing: ThingState): readonly string[] {
  const [type = "", ...ids] = key.split("/").map((part) => decodeURIComponent(part).toLowerCase());
  if (type === "tube") return ids.slice(0, 1);
  if (type !== "run") return ids;
  const opened = thing.fields["opened"]?.at(-1)?.value as { readonly element?: unknown } | null | undefined;
  const element = opened?.element;
  return typeof element === "string" ? [...ids, element.toLowerCase()] : ids;
}

function timelineRow(
  { state }: JobLog,
  entry: Entry,
  arrival: number,
  language: Language,
  word: FieldWords,
): TimelineRow {
  const kind = kindOf(entry.kind);
  const read = kind?.read(entry.body);
  const effects = read?.ok ? read.value : [];
  const things = [...new Set(effects.map(({ thing }) => thing))];
  const { reason } = entry.body as { readonly reason?: unknown };
  return {
    id: entry.id,
    arrival,
    author: personName(state, entry.author),
    wall: entry.clock.wall,
    device: entry.device,
    deviceName: deviceName(state, entry.device),
    sequence: entry.sequence,
    kind: entry.kind,
    what: kind?.text[language].name ?? entry.kind,
    about: things.map((thing) => thingText(thing, state, word)).join(", "),
    details: detailsOf(effects, language, word),
    reason: typeof reason === "string" && reason !== "" ? reason : undefined,
    aside: ASIDE.find((each) => each === entry.kind),
  };
}

function detailsOf(effects: readonly Effect[], language: Language, word: FieldWords): readonly string[] {
  const rows = effects.filter((effect) => effect.does === "set" && ROW.test(effect.field));
  if (rows.length > 0) {
    const isAside = (rows[0]!.value as { readonly aside?: unknown }).aside === true;
    return [word(isAside ? "rowsAside" : "rowsBack", { count: rows.length })];
  }
  return effects.slice(0, MOST_DETAILS).flatMap((effect) => {
    if (effect.does === "set") {
      // the reason stands beside it anyway
      const value = withoutReason(effect.value);
      return [`${fieldText(effect.field, word)}: ${valueText(effect.field, value, language, word)}`];
    }
    return addedText(effect, language, word);
  });
}

function withoutReason(value: Effect["value"]): Effect["value"] {
  if (value === null || typeof value !== "object" || Array.isArray(value)) return value;
  const { reason: _reason, ...rest } = value as Readonly<Record<string, Effect["value"]>>;
  return rest as Effect["value"];
}

function addedText(effect: Effect, language: Language, word: FieldWords): readonly string[] {
  const said = effect.value as Readonly<Record<string, Effect["value"]>>;
  const columns = said["columns"] as Readonly<Record<string, readonly unknown[]>> | undefined;
  if (columns !== undefined) return [word("readings", { count: Object.values(columns)[0]?.length ?? 0 })];
  const text = said["text"] ?? said["caption"];
  if (typeof text === "string") return [text];
  const statement = said["statement"] as { readonly meaning?: unknown; readonly name?: unknown } | undefined;
  if (statement !== undefined) return [`${String(statement.meaning)} ${String(statement.name)}`];
  return [valueText("", effect.value, language, word)];
}

/** Everything because of which entries that are here may not count, or others are not here. */
export function brokenChains({ state }: JobLog): readonly BrokenChain[] {
  return Object.entries(state.devices).flatMap(([device, { missing, forks, stoppedAt, waiting }]) => {
    const at = (what: BrokenChain["what"], from: number, to: number): BrokenChain => ({
      device,
      deviceName: deviceName(state, device),
      what,
      from,
      to,
      waiting,
    });
    return [
      ...missing.map(({ from, to }) => at("gap", from, to)),
      ...forks.map((sequence) => at("fork", sequence, sequence)),
      ...(stoppedAt?.reason === "link" ? [at("link", stoppedAt.sequence, stoppedAt.sequence)] : []),
    ];
  });
}
