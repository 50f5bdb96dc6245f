import { frame } from "../words/frame-words.ts";
import { sectionWords } from "../words/section-words.ts";
import { tableWords } from "../words/table-words.ts";

/** Tags of one value each. docs/users/reports.md says what they mean. */
export const VALUE_TAGS = [
  "report_title",
  "job_name",
  "report_number",
  "report_number_text",
  "revision",
  "revision_text",
  "status",
  "status_note",
  "date",
  "code",
  "fingerprint",
  "fingerprint_short",
  "log_text",
  "program",
  "unit_offset",
  "unit_place",
  "unit_depth",
  "text_interpolated",
] as const;

const VERDICT = [
  "verdict",
  "verdict_sign",
  "rule",
  "value",
  "uncertainty",
  "limit",
  "level",
  "probability",
  "decision",
  "source",
] as const;
const TEXT = ["text"] as const;
const FACT = ["name", "value"] as const;

/** Lists, and the tags inside of each. */
export const LIST_TAGS: Readonly<Record<string, readonly string[]>> = {
  cover: FACT,
  tally: ["sign", "word", "count"],
  confirm: TEXT,
  elements: [
    "id",
    "kind",
    "group",
    "remark",
    ...VERDICT,
    "facts",
    "rules",
    "stations",
    "places",
    "reasons",
    "remarks",
    "plan",
    "plan_caption",
    "section",
    "section_caption",
    "caption_rules",
    "caption_levels",
    "caption_places",
    "has_rules",
    "has_stations",
    "has_plan",
    "has_section",
  ],
  facts: FACT,
  rules: VERDICT,
  stations: ["depth", "level", "offsetEast", "offsetNorth", "along", "across", "offset", "bearing", "u95"],
  places: ["place", "level", "easting", "northing", "offset", "u95"],
  reasons: TEXT,
  remarks: TEXT,
  changes: ["what", "was", "is"],
  groups: ["group", "elements", "within", "too-close-to-call", "outside", "not-judged"],
  design: ["element", "kind", "size", "easting", "northing", "headLevel", "cutoff", "toeLevel", "rake"],
  criteria: ["rule", "what", "source", "status"],
  risks: ["rule", "elements", "ratio", "consumer", "producer"],
  tubes: ["element", "tube", "easting", "northing", "level", "innerDiameter", "length"],
  heads: ["run", "element", "easting", "northing", "level", "standard"],
  instruments: ["instrument", "serial", "gauge", "budgetClass"],
  calibrations: ["calibration", "instrument", "kind", "madeAt", "validUntil"],
  runs: [
    "run",
    "tube",
    "instrument",
    "operator",
    "started",
    "measures",
    "stations",
    "deepest",
    "misclosure",
    "misclosureLimit",
    "state",
  ],
  steps: ["step", "stepRevision", "runs", "largestEffect"],
  sources: ["sourceOfError", "standard", "from", "elements"],
  evidence: ["instrument", "sourceOfError", "shown", "declared", "freedom", "used"],
  conformity: ["element", ...VERDICT],
  findings: ["severity", "where", "finding"],
  files: ["file", "bytes", "sha256"],
  verdicts: ["element", ...VERDICT],
  signatures: ["meaning", "name", "function", "signedAt"],
  deviations: TEXT,
  disclaimers: TEXT,
  cautions: TEXT,
};

/** Sections whose title, sentences and facts have tags of their own. */
export const SECTION_IDS = [
  "verdicts",
  "document",
  "design",
  "datum",
  "specification",
  "object",
  "heads",
  "instruments",
  "field",
  "reduction",
  "results",
  "uncertainty",
  "conformity",
  "neighbours",
  "limits",
  "signatures",
  "annexes",
] as const;

const labels = [...Object.keys(frame), ...Object.keys(tableWords), ...Object.keys(sectionWords)].map(
  (name) => `label_${name}`,
);

/** Every tag there is. */
export const KNOWN_TAGS: ReadonlySet<string> = new Set([
  ...VALUE_TAGS,
  ...labels,
  ...Object.entries(LIST_TAGS).flatMap(([list, inside]) => [
    list,
    `has_${list}`,
    `caption_${list}`,
    ...inside,
  ]),
  ...SECTION_IDS.flatMap((id) => [`title_${id}`, `text_${id}`, `facts_${id}`, ...TEXT, ...FACT]),
]);
