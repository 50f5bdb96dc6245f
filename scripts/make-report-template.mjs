import { writeFileSync } from "node:fs";
import { join } from "node:path";
import {
  AlignmentType,
  BorderStyle,
  Document,
  Footer,
  Header,
  HeadingLevel,
  LevelFormat,
  Packer,
  PageNumber,
  Paragraph,
  SequentialIdentifier,
  Tab,
  Table,
  TableCell,
  TableLayoutType,
  TableOfContents,
  TableRow,
  TabStopType,
  TextRun,
  WidthType,
} from "docx";
import { root } from "./run-step.mjs";

// The usual Word template of reports, src/report/assets/default-template.docx. Run again after a change and commit what it writes.
/** Comes with Word; programs without it have one of the same widths. */
const FONT = "Calibri";
const INK = "111111";
const QUIET = "4A4F55";
const HAIR = { style: BorderStyle.SINGLE, size: 4, color: "8A9097" };
const RULE = { style: BorderStyle.SINGLE, size: 12, color: INK };
const NONE = { style: BorderStyle.NONE, size: 0, color: "auto" };
/** width of the text, twentieths of a point: A4 less 20 mm and 16 mm */
const TEXT_WIDTH = 9865;

const run = (text, options = {}) => new TextRun({ text, ...options });
const paragraph = (text, options = {}) => {
  const { bold, size, color, italics, ...rest } = options;
  return new Paragraph({ children: [run(text, { bold, size, color, italics })], ...rest });
};
const heading = (text, level, options = {}) => paragraph(text, { heading: level, ...options });
const h1 = (text) => heading(text, HeadingLevel.HEADING_1, { pageBreakBefore: true });
const h2 = (text, options = {}) => heading(text, HeadingLevel.HEADING_2, options);
const caption = (label, identifier, text, options = {}) =>
  new Paragraph({
    style: "Caption",
    children: [run(`${label} `, { bold: true }), new SequentialIdentifier(identifier), run(`  ${text}`)],
    ...options,
  });
const tableCaption = (text) =>
  caption("{label_table}", "Table", text, { keepNext: true, spacing: { before: 240, after: 80 } });
const figureCaption = (text) =>
  caption("{label_figure}", "Figure", text, { spacing: { before: 80, after: 240 } });

/** Widths in shares, made to fill the text. */
function widths(columns) {
  const sum = columns.reduce((total, { share }) => total + share, 0);
  return columns.map(({ share }) => Math.round((TEXT_WIDTH * share) / sum));
}

const cell = (children, width, borders, margins = { top: 40, bottom: 40, left: 60, right: 60 }) =>
  new TableCell({
    children,
    width: { size: width, type: WidthType.DXA },
    borders: { top: NONE, bottom: NONE, left: NONE, right: NONE, ...borders },
    margins,
  });

const side = (align) => (align === "right" ? AlignmentType.RIGHT : AlignmentType.LEFT);

/** A table whose one row is written again for each thing of a list; its head is repeated on every page, rows are never split. */
function listTable(list, columns, size = 17) {
  const wide = widths(columns);
  const last = columns.length - 1;
  const head = columns.map(({ label, unit, align }, c) =>
    cell(
      [
        paragraph(unit === undefined ? label : `${label} ({${unit}})`, {
          bold: true,
          size,
          alignment: side(align),
        }),
      ],
      wide[c],
      { top: RULE, bottom: RULE },
    ),
  );
  const row = columns.map(({ tag, align }, c) => {
    const open = c === 0 ? `{#${list}}` : "";
    const close = c === last ? `{/${list}}` : "";
    return cell([paragraph(`${open}${tag}${close}`, { size, alignment: side(align) })], wide[c], {
      bottom: HAIR,
    });
  });
  return new Table({
    width: { size: TEXT_WIDTH, type: WidthType.DXA },
    columnWidths: wide,
    layout: TableLayoutType.FIXED,
    rows: [
      new TableRow({ children: head, tableHeader: true, cantSplit: true }),
      new TableRow({ children: row, cantSplit: true }),
    ],
  });
}

/** A column: the tag of its value, and of its heading. */
const column = (key, share, { align, unit, tag } = {}) => ({
  label: `{label_${key}}`,
  tag: tag ?? `{${key}}`,
  share,
  align,
  unit,
});
const right = (key, share, unit) => column(key, share, { align: "right", unit });

const factsTable = (list) => {
  const wide = [Math.round(TEXT_WIDTH * 0.3), Math.round(TEXT_WIDTH * 0.7)];
  return new Table({
    width: { size: TEXT_WIDTH, type: WidthType.DXA },
    columnWidths: wide,
    layout: TableLayoutType.FIXED,
    rows: [
      new TableRow({
        cantSplit: true,
        children: [
          cell([paragraph(`{#${list}}{name}`, { color: QUIET })], wide[0], { bottom: HAIR }),
          cell([paragraph(`{value}{/${list}}`)], wide[1], { bottom: HAIR }),
        ],
      }),
    ],
  });
};

const verdictColumns = (first) => [
  ...first,
  column("verdict", 2.4, { tag: "{verdict_sign} {verdict}" }),
  column("rule", 2.2),
  right("value", 1.5),
  right("uncertainty", 1.5),
  right("limit", 1.5),
  right("level", 1.2, "unit_place"),
  right("probability", 1.2),
];
const texts = (list) => [paragraph(`{#${list}}`), paragraph("{text}"), paragraph(`{/${list}}`)];
const bullets = (list) => [
  paragraph(`{#${list}}`),
  paragraph("{text}", { numbering: { reference: "dots", level: 0 } }),
  paragraph(`{/${list}}`),
];
/** Only where the list has something: the caption and table go with it. */
const optional = (list, children) => [paragraph(`{#has_${list}}`), ...children, paragraph(`{/has_${list}}`)];

const cover = [
  new Paragraph({
    border: { top: { style: BorderStyle.SINGLE, size: 32, color: INK, space: 8 } },
    children: [],
  }),
  new Paragraph({
    tabStops: [{ type: TabStopType.RIGHT, position: TEXT_WIDTH }],
    children: [
      run("{label_report}", { color: QUIET, size: 22 }),
      new TextRun({ children: [new Tab()] }),
      run("{status}", { bold: true, size: 24 }),
    ],
  }),
  paragraph("{report_title}", { style: "Title", spacing: { before: 1400, after: 60 } }),
  paragraph("{job_name}", { size: 30, color: QUIET, spacing: { after: 500 } }),
  new Table({
    width: { size: TEXT_WIDTH, type: WidthType.DXA },
    columnWidths: [3288, 3288, 3289],
    layout: TableLayoutType.FIXED,
    rows: [
      new TableRow({
        children: [
          ["{label_reportNumber}", "{report_number}"],
          ["{label_revisionName}", "{revision}"],
          ["{label_date}", "{date}"],
        ].map(([name, value]) =>
          cell(
            [paragraph(name, { color: QUIET, size: 18 }), paragraph(value, { bold: true, size: 26 })],
            3288,
            { top: RULE },
          ),
        ),
      }),
    ],
  }),
  paragraph("{status_note}", { bold: true, spacing: { before: 240, after: 120 } }),
  listTable(
    "tally",
    [
      { label: "", tag: "{sign}", share: 0.5 },
      { label: "{label_verdict}", tag: "{word}", share: 5 },
      { label: "{label_elements}", tag: "{count}", share: 1.2, align: "right" },
    ],
    22,
  ),
  paragraph("", { spacing: { before: 200 } }),
  factsTable("cover"),
  paragraph("", { spacing: { before: 400 } }),
  paragraph("{code}"),
  paragraph("{label_fingerprintLong}", { bold: true, size: 17 }),
  paragraph("{fingerprint}", { size: 15 }),
  paragraph("{log_text}", { size: 17, color: QUIET }),
  paragraph("{program}", { size: 17, color: QUIET }),
];

const body = [
  h1("{title_verdicts}"),
  ...optional("confirm", [paragraph("{label_confirm}", { bold: true }), ...bullets("confirm")]),
  ...texts("text_verdicts"),
  tableCaption("{caption_verdicts}"),
  listTable("elements", verdictColumns([column("element", 1.4, { tag: "{id}" })])),
  paragraph("{label_contents}", { pageBreakBefore: true, style: "ContentsTitle" }),
  new TableOfContents("Contents", { hyperlink: true, headingStyleRange: "1-2" }),
  h1("{title_document}"),
  factsTable("facts_document"),
  ...texts("text_document"),
  ...optional("changes", [
    tableCaption("{caption_changes}"),
    listTable("changes", [column("what", 1.2), column("was", 1.4), column("is", 1.4)]),
  ]),
  h1("{title_design}"),
  tableCaption("{caption_design}"),
  listTable(
    "design",
    [
      column("element", 1),
      column("kind", 1.5),
      column("size", 1.7),
      right("easting", 1.6, "unit_place"),
      right("northing", 1.7, "unit_place"),
      right("headLevel", 1.2, "unit_place"),
      right("cutoff", 1.2, "unit_place"),
      right("toeLevel", 1.2, "unit_place"),
      column("rake", 1.6),
    ],
    15,
  ),
  h1("{title_datum}"),
  factsTable("facts_datum"),
  ...texts("text_datum"),
  h1("{title_specification}"),
  factsTable("facts_specification"),
  tableCaption("{caption_criteria}"),
  listTable("criteria", [column("rule", 1.4), column("what", 2), column("source", 1.6), column("status", 1)]),
  h1("{title_object}"),
  ...texts("text_object"),
  h1("{title_heads}"),
  ...texts("text_heads"),
  h1("{title_instruments}"),
  ...optional("instruments", [
    tableCaption("{caption_instruments}"),
    listTable("instruments", [
      column("instrument", 1),
      column("serial", 1),
      right("gauge", 1, "unit_depth"),
      column("budgetClass", 1),
    ]),
  ]),
  ...optional("calibrations", [
    tableCaption("{caption_calibrations}"),
    listTable("calibrations", [
      column("calibration", 1),
      column("instrument", 1),
      column("kind", 1.6),
      column("madeAt", 1.4),
      column("validUntil", 1.2),
    ]),
  ]),
  h1("{title_field}"),
  tableCaption("{caption_runs}"),
  listTable(
    "runs",
    [
      column("run", 1.1),
      column("tube", 0.7),
      column("instrument", 1.1),
      column("operator", 0.9),
      column("started", 1.7),
      column("measures", 1.8),
      right("stations", 1),
      right("deepest", 1, "unit_depth"),
      right("misclosure", 1.2),
      right("misclosureLimit", 0.9),
      column("state", 1.2),
    ],
    14,
  ),
  h1("{title_reduction}"),
  ...texts("text_reduction"),
  tableCaption("{caption_steps}"),
  listTable("steps", [
    column("step", 1),
    right("stepRevision", 0.4),
    right("runs", 0.7),
    column("largestEffect", 2.4),
  ]),
  h1("{title_results}"),
  paragraph("{#elements}"),
  h2("{id} · {kind}", { keepNext: true }),
  ...optional("rules", [tableCaption("{caption_rules}"), listTable("rules", verdictColumns([]), 16)]),
  ...bullets("reasons"),
  paragraph("", { spacing: { before: 120 } }),
  factsTable("facts"),
  ...optional("plan", [
    paragraph("{plan}", { keepNext: true, spacing: { before: 200 } }),
    figureCaption("{plan_caption}"),
  ]),
  ...optional("section", [
    paragraph("{section}", { keepNext: true, spacing: { before: 200 } }),
    figureCaption("{section_caption}"),
  ]),
  ...optional("stations", [
    tableCaption("{caption_levels}"),
    listTable(
      "stations",
      [
        right("depth", 1, "unit_depth"),
        right("level", 1.2, "unit_place"),
        right("offsetEast", 1, "unit_offset"),
        right("offsetNorth", 1, "unit_offset"),
        right("along", 1, "unit_offset"),
        right("across", 1, "unit_offset"),
        right("offset", 1.1, "unit_offset"),
        right("bearing", 1),
        right("u95", 1, "unit_offset"),
      ],
      16,
    ),
    paragraph("{text_interpolated}", { size: 16, color: QUIET, spacing: { before: 80 } }),
  ]),
  ...bullets("remarks"),
  paragraph("{/elements}"),
  h1("{title_uncertainty}"),
  ...texts("text_uncertainty"),
  ...optional("sources", [
    tableCaption("{caption_sources}"),
    listTable("sources", [
      column("sourceOfError", 1.6),
      right("standard", 1),
      column("from", 1.6),
      right("elements", 0.7),
    ]),
  ]),
  h1("{title_conformity}"),
  ...optional("conformity", [
    tableCaption("{caption_conformity}"),
    listTable(
      "conformity",
      [
        column("element", 1),
        column("verdict", 2.2, { tag: "{verdict_sign} {verdict}" }),
        column("rule", 1.8),
        right("value", 1.3),
        right("uncertainty", 1.3),
        right("limit", 1.3),
        right("probability", 1.1),
        column("source", 2.4),
      ],
      15,
    ),
  ]),
  h1("{title_neighbours}"),
  ...texts("text_neighbours"),
  h1("{title_limits}"),
  h2("{label_deviations}"),
  ...bullets("deviations"),
  h2("{label_findings}"),
  ...optional("findings", [
    tableCaption("{caption_findings}"),
    listTable("findings", [column("severity", 0.7), column("where", 1), column("finding", 2.4)], 15),
  ]),
  h2("{label_disclaimers}"),
  ...bullets("disclaimers"),
  h2("{label_cautions}"),
  ...bullets("cautions"),
  h1("{title_signatures}"),
  ...texts("text_signatures"),
  listTable(
    "signatures",
    [
      column("meaning", 1.4),
      column("name", 1.2),
      column("function", 0.9),
      column("signedAt", 1),
      { label: "{label_signature}", tag: " ", share: 1.6 },
    ],
    19,
  ),
  h1("{title_annexes}"),
  ...texts("text_annexes"),
  ...optional("files", [
    tableCaption("{caption_files}"),
    listTable("files", [column("file", 1.3), right("bytes", 0.5), column("sha256", 2.8)], 13),
  ]),
];

const small = { size: 17, color: QUIET };
const document = new Document({
  creator: "Toeline",
  title: "Report",
  description: "Template of reports",
  features: { updateFields: true },
  styles: {
    default: {
      document: { run: { font: FONT, size: 20, color: INK } },
      title: { run: { font: FONT, size: 56, bold: true, color: INK } },
      heading1: {
        run: { font: FONT, size: 34, bold: true, color: INK },
        paragraph: { spacing: { after: 200 }, keepNext: true },
      },
      heading2: {
        run: { font: FONT, size: 25, bold: true, color: INK },
        paragraph: { spacing: { before: 320, after: 140 }, keepNext: true },
      },
      heading3: {
        run: { font: FONT, size: 21, bold: true, color: INK },
        paragraph: { spacing: { before: 240, after: 100 }, keepNext: true },
      },
    },
    paragraphStyles: [
      { id: "Caption", name: "caption", basedOn: "Normal", next: "Normal", run: { size: 18 } },
      {
        id: "ContentsTitle",
        name: "Contents Title",
        basedOn: "Normal",
        next: "Normal",
        run: { size: 34, bold: true },
      },
    ],
  },
  numbering: {
    config: [
      {
        reference: "dots",
        levels: [
          {
            level: 0,
            format: LevelFormat.BULLET,
            text: "•",
            alignment: AlignmentType.LEFT,
            style: { paragraph: { indent: { left: 340, hanging: 220 } } },
          },
        ],
      },
    ],
  },
  sections: [
    {
      properties: {
        titlePage: true,
        page: {
          size: { width: 11906, height: 16838 },
          margin: { top: 1531, bottom: 1304, left: 1134, right: 907, header: 620, footer: 560 },
        },
      },
      headers: {
        first: new Header({ children: [new Paragraph({ children: [] })] }),
        default: new Header({
          children: [
            new Paragraph({
              tabStops: [{ type: TabStopType.RIGHT, position: TEXT_WIDTH }],
              border: { bottom: { ...HAIR, space: 4 } },
              children: [
                run("{report_number_text}  {revision_text}  ", { ...small, bold: true }),
                run("{status}", { ...small, bold: true }),
                new TextRun({ children: [new Tab()], ...small }),
                run("{job_name}", small),
              ],
            }),
          ],
        }),
      },
      footers: Object.fromEntries(
        ["first", "default"].map((which) => [
          which,
          new Footer({
            children: [
              new Paragraph({
                tabStops: [{ type: TabStopType.RIGHT, position: TEXT_WIDTH }],
                border: { top: { ...HAIR, space: 4 } },
                children: [
                  run("{label_fingerprint} {fingerprint_short}", small),
                  new TextRun({ children: [new Tab()], ...small }),
                  run("{label_page} ", small),
                  new TextRun({ children: [PageNumber.CURRENT], ...small }),
                  run(" {label_of} ", small),
                  new TextRun({ children: [PageNumber.TOTAL_PAGES], ...small }),
                ],
              }),
            ],
          }),
        ]),
      ),
      children: [...cover, ...body],
    },
  ],
});
writeFileSync(join(root, "src/report/assets/default-template.docx"), await Packer.toBuffer(document));
