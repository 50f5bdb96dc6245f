import type { MimeType, TemplateData } from "easy-template-x";
import { verdictSigns } from "#text";
import { quantities } from "../model/quantities.ts";
import type {
  Block,
  Cell,
  Column,
  ReportElement,
  ReportModel,
  TableBlock,
  VerdictLine,
} from "../model/report-model.ts";
import { frame } from "../words/frame-words.ts";
import { say, type Words } from "../words/say.ts";
import { sectionWords } from "../words/section-words.ts";
import { tableWords } from "../words/table-words.ts";

/** A picture as the template engine takes it. */
export interface WordPicture {
  readonly _type: "image";
  readonly source: Buffer;
  readonly format: typeof MimeType.Png;
  readonly width: number;
  readonly height: number;
  readonly altText: string;
}

/** A drawing as the template engine takes it: what stands in its place until the document is finished, and its shape. */
export type DrawnPicture = (svg: string) => { readonly source: Buffer; readonly shape: number };

/** Width of a drawing on the page, in CSS pixels: 174 mm. */
const FIGURE_WIDTH = 657;
const CODE_WIDTH = 100;

type Row = Readonly<Record<string, unknown>>;

/** What the tags of a Word template stand for. Names of tags are plain: a dotted path would stay empty without a word. */
export function wordView(model: ReportModel, draw: DrawnPicture, codeSvg: string): TemplateData {
  const { language, identity } = model;
  const q = quantities(language, model.units);
  const word = (words: Words) => say(words, language);
  const notes: Readonly<Record<string, Words>> = { draft: frame.draftNote, withdrawn: frame.withdrawnNote };
  const note = notes[identity.status];
  const labels = Object.entries({ ...frame, ...sectionWords, ...tableWords }).map(([name, words]) => [
    `label_${name}`,
    word(words),
  ]);
  const view: Record<string, unknown> = {
    ...Object.fromEntries(labels),
    report_title: model.title,
    job_name: model.jobName,
    report_number: identity.number,
    report_number_text: model.numberText,
    revision: identity.revision,
    revision_text: model.revisionText,
    status: model.statusText,
    status_note: note === undefined ? "" : word(note),
    date: model.dateText,
    code: picture(draw(codeSvg), CODE_WIDTH, word(frame.codeAlt)),
    fingerprint: model.fingerprint,
    fingerprint_short: model.fingerprint.slice(0, 16),
    log_text:
      identity.head === undefined
        ? word(frame.noLog)
        : say(frame.logHead, language, { size: identity.head.size, root: identity.head.root }),
    program: model.program,
    unit_offset: q.offsetUnit,
    unit_place: q.placeUnit,
    unit_depth: q.depthUnit,
    text_interpolated: word(sectionWords.interpolatedNote),
    cover: model.cover,
    tally: model.tally.map(({ verdict, word: name, count }) => ({
      sign: verdictSigns[verdict].sign,
      word: name,
      count: String(count),
    })),
    confirm: model.sections.flatMap(({ id, blocks }) =>
      id === "verdicts" ? blocks.flatMap(calloutTexts) : [],
    ),
    signatures: model.signatures.map(({ meaningText, name, role, at }) => ({
      meaning: meaningText,
      name,
      function: role,
      signedAt: at,
    })),
    deviations: texts(identity.deviations ?? [word(sectionWords.noDeviations)]),
    disclaimers: texts(model.disclaimers),
    cautions: texts(model.cautions),
    ...sectionTags(model),
  };
  const figures = new Map(model.figures.map((figure) => [figure.key, figure]));
  view["elements"] = model.elements.map((element) => elementRow(element, model, figures, draw));
  for (const [name, value] of Object.entries(view))
    if (Array.isArray(value)) view[`has_${name}`] = value.length > 0;
  return view as TemplateData;
}

const texts = (items: readonly string[]) => items.map((text) => ({ text }));
const calloutTexts = (block: Block) => (block.kind === "callout" ? texts(block.items) : []);

function picture({ source, shape }: ReturnType<DrawnPicture>, shown: number, altText: string): WordPicture {
  return {
    _type: "image",
    source,
    format: "image/png",
    width: shown,
    height: Math.round(shown * shape),
    altText,
  };
}

/** Title, sentences, facts and tables of every section but the one that goes element by element. */
function sectionTags({ sections }: ReportModel): Record<string, unknown> {
  const tags: Record<string, unknown> = {};
  // lists that a section leaves out are empty, not unknown
  for (const list of [
    "changes",
    "groups",
    "design",
    "criteria",
    "risks",
    "tubes",
    "heads",
    "instruments",
    "calibrations",
    "runs",
    "steps",
    "sources",
    "evidence",
    "conformity",
    "findings",
    "files",
    "verdicts",
  ])
    tags[list] = [];
  for (const { id, title, blocks } of sections) {
    tags[`title_${id}`] = title;
    if (id === "results") continue;
    tags[`text_${id}`] = blocks.flatMap((block) => (block.kind === "paragraph" ? texts([block.text]) : []));
    tags[`facts_${id}`] = blocks.flatMap((block) => (block.kind === "facts" ? block.rows : []));
    for (const block of blocks)
      if (block.kind === "table") {
        tags[block.id] = tableRows(block);
        tags[`caption_${block.id}`] = block.caption;
      }
  }
  return tags;
}

const tableRows = ({ columns, rows }: TableBlock): readonly Row[] =>
  rows.map((cells) => rowOf(columns, cells));

function rowOf(columns: readonly Column[], cells: readonly Cell[]): Row {
  const row: Record<string, string> = {};
  for (const [c, { text, verdict }] of cells.entries()) {
    row[columns[c]!.key] = text;
    if (verdict !== undefined) row["verdict_sign"] = verdictSigns[verdict].sign;
  }
  return row;
}

const ruleRow = (line: VerdictLine): Row => ({
  verdict: line.word,
  verdict_sign: verdictSigns[line.verdict].sign,
  rule: line.rule,
  value: line.value.text,
  uncertainty: line.uncertainty.text,
  limit: line.limit.text,
  level: line.level.text,
  probability: line.probability.text,
  decision: line.decision,
  source: line.source,
});

function elementRow(
  element: ReportElement,
  { language, stationColumns, placeColumns }: ReportModel,
  figures: ReadonlyMap<string, ReportModel["figures"][number]>,
  draw: DrawnPicture,
): Row {
  const { id, governing } = element;
  const drawings = Object.fromEntries(
    element.figures.flatMap((key) => {
      const figure = figures.get(key);
      if (figure === undefined) return [];
      const { kind, title, alt, svg } = figure;
      return [
        [kind, picture(draw(svg), FIGURE_WIDTH, alt)],
        [`${kind}_caption`, `${id}: ${title}`],
        [`has_${kind}`, true],
      ];
    }),
  );
  const caption = (words: Words) => say(words, language, { element: id });
  return {
    rule: element.remark,
    value: "–",
    uncertainty: "–",
    limit: "–",
    level: "–",
    probability: "–",
    decision: "",
    source: "",
    ...(governing !== undefined && ruleRow(governing)),
    id,
    kind: element.kind,
    group: element.group,
    remark: element.remark,
    verdict: element.word,
    verdict_sign: verdictSigns[element.verdict].sign,
    facts: element.facts,
    rules: element.verdicts.map(ruleRow),
    has_rules: element.verdicts.length > 0,
    stations: element.stations.map(({ cells }) => rowOf(stationColumns, cells)),
    has_stations: element.stations.length > 0,
    places: element.places.map((cells) => rowOf(placeColumns, cells)),
    reasons: texts(element.verdicts.flatMap(({ rule, reasons }) => reasons.map((one) => `${rule}: ${one}`))),
    remarks: texts(element.findings),
    caption_rules: caption(sectionWords.verdictsOf),
    caption_levels: caption(sectionWords.levelsOf),
    caption_places: caption(sectionWords.placesOf),
    has_plan: false,
    has_section: false,
    ...drawings,
  };
}
