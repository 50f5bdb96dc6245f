import type { Block, Cell, ReportModel } from "../model/report-model.ts";
import { frame } from "../words/frame-words.ts";
import { say } from "../words/say.ts";

export type Paper = "a4" | "us-letter";

/** What the page layout reads: texts only, in the shape that it can walk quickly. */
export function typstData(model: ReportModel, paper: Paper): unknown {
  const { language, identity, fingerprint } = model;
  const word = (name: keyof typeof frame) => say(frame[name], language);
  const notes: Readonly<Record<string, string>> = {
    draft: word("draftNote"),
    withdrawn: word("withdrawnNote"),
  };
  return {
    paper,
    language,
    documentTitle: `${model.numberText}, ${model.revisionText}: ${model.title}`,
    authors: [identity.author, identity.contractor].filter((name) => name !== undefined),
    keywords: [model.jobName, identity.number],
    date: dateParts(model.dateText),
    title: model.title,
    jobName: model.jobName,
    number: identity.number,
    revision: identity.revision,
    numberText: model.numberText,
    revisionText: model.revisionText,
    statusText: model.statusText,
    statusNote: notes[identity.status] ?? "",
    dateText: model.dateText,
    program: model.program,
    cover: model.cover.slice(1),
    tally: model.tally,
    fingerprint,
    fingerprintLines: fingerprint.match(/.{1,32}/g) ?? [],
    logText:
      identity.head === undefined
        ? word("noLog")
        : say(frame.logHead, language, { size: identity.head.size, root: identity.head.root.slice(0, 16) }),
    words: Object.fromEntries(Object.keys(frame).map((name) => [name, word(name as keyof typeof frame)])),
    sections: numberedSections(model),
    figures: Object.fromEntries(
      model.figures.map(({ key, alt }, i) => [key, { file: `figure-${i}.svg`, alt }]),
    ),
  };
}

/** A text, or a verdict with its text. */
const cellData = ({ text, verdict }: Cell) => (verdict === undefined ? text : { t: text, v: verdict });

/** Sections that a reader looks for by leafing; the others follow on. */
const NEW_PAGE: ReadonlySet<string> = new Set(["document", "results", "uncertainty", "limits"]);

/** Tables and drawings count through the whole report. */
function numberedSections({ sections }: ReportModel): unknown {
  let tables = 0;
  let drawings = 0;
  const blockData = (block: Block): unknown => {
    if (block.kind === "figure") return { ...block, number: ++drawings };
    if (block.kind !== "table") return block;
    const { rows, ...rest } = block;
    return { ...rest, number: ++tables, cells: rows.flatMap((row) => row.map(cellData)) };
  };
  return sections.map(({ id, title, blocks }) => ({
    title,
    newPage: NEW_PAGE.has(id),
    blocks: blocks.map(blockData),
  }));
}

function dateParts(date: string): readonly number[] {
  const parts = date.split("-").map(Number);
  return parts.length === 3 && parts.every(Number.isInteger) ? parts : [1970, 1, 1];
}
