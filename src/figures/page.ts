import { type CaptionBlock, captionBlock } from "./captions.ts";
import { INK, LINE, SIZE } from "./style.ts";
import { escapeXml, fixed, line, tag, text } from "./svg/markup.ts";
import { fitText, textWidth } from "./svg/text-width.ts";
import type { ElementView } from "./view.ts";

/** Width of every drawing: 180 mm, the text width of an A4 page; four drawing units are a millimetre. */
export const PAGE_WIDTH = 720;
const UNITS_PER_MM = 4;
export const MARGIN = 14;
const HEAD_HEIGHT = 54;
/** The name of the job keeps this much room beside a long element name. */
const LEAST_JOB_ROOM = 200;

/** Where the body of a drawing begins. */
export const BODY_TOP = HEAD_HEIGHT;

export interface Page {
  /** id of the kind of figure */
  readonly figureId: string;
  readonly title: string;
  /** one line below the title */
  readonly subtitle: string;
  /** sentences for those who cannot see the drawing */
  readonly description: string;
  readonly body: string;
  /** y at which the body ends */
  readonly bodyBottom: number;
}

/** Words joined to an id that is unique for figure and element, of signs that ids may have. */
export function figureKey(figureId: string, elementId: string): string {
  const safe = elementId.replaceAll(/[^A-Za-z0-9]/gu, (sign) => `_${sign.codePointAt(0)!.toString(16)}_`);
  return `${figureId}-${safe}`;
}

/** The whole drawing of an element: border, heading, body, and the verdicts below it, as one SVG document. */
export function drawPage(view: ElementView, page: Page): string {
  const captions = captionBlock(view, MARGIN, PAGE_WIDTH - MARGIN);
  return drawSheet({ subjectId: view.element.id, jobName: view.jobName, captions }, page);
}

/** What a drawing is of. */
export interface Subject {
  /** id of the element or calibration */
  readonly subjectId: string;
  readonly jobName: string;
  /** stands below the body, behind a line; undefined = nothing does */
  readonly captions: CaptionBlock | undefined;
}

/** A whole drawing of anything: border, heading, body, and what stands below it, as one SVG document. */
export function drawSheet({ subjectId, jobName, captions }: Subject, page: Page): string {
  const captionTop = page.bodyBottom + 8;
  const height = captionTop + (captions === undefined ? 0 : captions.height + 10);
  const key = figureKey(page.figureId, subjectId);
  const room = PAGE_WIDTH - 2 * MARGIN;
  const heading = fitText(`${subjectId} · ${page.title}`, SIZE.title, room - LEAST_JOB_ROOM, true);
  const jobRoom = room - textWidth(heading, SIZE.title, true) - 24;
  const subtitleSize = textWidth(page.subtitle, SIZE.body) <= room ? SIZE.body : SIZE.label;
  const contents = [
    tag("title", { id: `${key}-title` }, escapeXml(`${subjectId}: ${page.title}`)),
    tag("desc", { id: `${key}-desc` }, escapeXml(page.description)),
    tag("rect", { x: 0, y: 0, width: PAGE_WIDTH, height, fill: "#FFFFFF" }),
    tag("rect", { x: 0.5, y: 0.5, width: PAGE_WIDTH - 1, height: height - 1, ...LINE.frame }),
    text(MARGIN, 25, heading, {
      "font-size": SIZE.title,
      "font-weight": "bold",
    }),
    text(MARGIN, 43, fitText(page.subtitle, subtitleSize, room), { "font-size": subtitleSize }),
    text(PAGE_WIDTH - MARGIN, 24, fitText(jobName, SIZE.body, jobRoom), { "text-anchor": "end" }),
    line(0.5, HEAD_HEIGHT, PAGE_WIDTH - 0.5, HEAD_HEIGHT, LINE.level),
    page.body,
    ...(captions === undefined
      ? []
      : [line(0.5, captionTop, PAGE_WIDTH - 0.5, captionTop, LINE.level), captions.draw(captionTop)]),
  ];
  return `${tag(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      width: `${PAGE_WIDTH / UNITS_PER_MM}mm`,
      height: `${fixed(height / UNITS_PER_MM)}mm`,
      viewBox: `0 0 ${PAGE_WIDTH} ${fixed(height)}`,
      role: "img",
      "aria-labelledby": `${key}-title ${key}-desc`,
      "font-family": "DejaVu Sans, sans-serif",
      "font-size": SIZE.body,
      fill: INK,
    },
    ...contents,
  )}\n`;
}
