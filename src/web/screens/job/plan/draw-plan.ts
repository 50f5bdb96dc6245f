import { type Language, type Section, VERDICTS, type Verdict } from "#core";
import { formatNumber, verdictSigns, verdictWords } from "#text";
import { drawVerdict } from "./draw-verdict.ts";
import type { DrawnElement } from "./drawn-elements.ts";
import type { PlanInk } from "./plan-ink.ts";
import { halfSizeM, type PlanView, type Size, scaleBarM, toScreen } from "./plan-view.ts";

export interface PlanDrawing {
  readonly drawn: readonly DrawnElement[];
  readonly view: PlanView;
  readonly size: Size;
  readonly chosen: string | undefined;
  readonly language: Language;
  readonly ink: PlanInk;
}

/** From this size of a section on there is room for the word beside the shape, pixels. */
const WORD_FROM_PX = 62;
const NAME_FROM_PX = 16;
const MOST_SHAPE_PX = 13;
const LEAST_SHAPE_PX = 4.5;

/** Draws the whole plan: grid, elements at the level, names, scale and north. */
export function drawPlan(canvas: HTMLCanvasElement, drawing: PlanDrawing): void {
  const { size, ink } = drawing;
  const ratio = devicePixelRatio || 1;
  canvas.width = Math.round(size.width * ratio);
  canvas.height = Math.round(size.height * ratio);
  const pen = canvas.getContext("2d");
  if (pen === null) return;
  pen.setTransform(ratio, 0, 0, ratio, 0, 0);
  pen.fillStyle = ink.sheet;
  pen.fillRect(0, 0, size.width, size.height);
  drawGrid(pen, drawing);
  for (const each of drawing.drawn) drawSections(pen, drawing, each);
  // shapes over all sections, the worst ones last so that nothing hides them
  const labels: Box[] = [];
  pen.font = labelFont(ink);
  for (const verdict of [undefined, ...VERDICTS.toReversed()].toSorted(byWeight))
    for (const each of drawing.drawn) if (each.row.verdict === verdict) drawSign(pen, drawing, each, labels);
  drawScale(pen, drawing);
  drawNorth(pen, ink);
}

const WEIGHT: Readonly<Record<Verdict, number>> = {
  "not-judged": 1,
  within: 2,
  "too-close-to-call": 3,
  outside: 4,
};
const byWeight = (a: Verdict | undefined, b: Verdict | undefined): number =>
  (a === undefined ? 0 : WEIGHT[a]) - (b === undefined ? 0 : WEIGHT[b]);

function drawGrid(pen: CanvasRenderingContext2D, { view, size, ink }: PlanDrawing): void {
  const step = scaleBarM(view.pxPerM, 140);
  const west = view.eastM - size.width / 2 / view.pxPerM;
  const south = view.northM - size.height / 2 / view.pxPerM;
  pen.strokeStyle = ink.line;
  pen.lineWidth = 1;
  pen.beginPath();
  for (let east = Math.ceil(west / step) * step; ; east += step) {
    const { x } = toScreen(view, size, east, 0);
    if (!(x <= size.width)) break;
    pen.moveTo(Math.round(x) + 0.5, 0);
    pen.lineTo(Math.round(x) + 0.5, size.height);
  }
  for (let north = Math.ceil(south / step) * step; ; north += step) {
    const { y } = toScreen(view, size, 0, north);
    if (!(y >= 0)) break;
    pen.moveTo(0, Math.round(y) + 0.5);
    pen.lineTo(size.width, Math.round(y) + 0.5);
  }
  pen.stroke();
}

/** The section where the design has it (dashed) and where it was found (full), with the way from one to the other. */
function drawSections(pen: CanvasRenderingContext2D, drawing: PlanDrawing, each: DrawnElement): void {
  const { view, size, ink } = drawing;
  const { row, design, found } = each;
  pen.globalAlpha = each.isFaint ? 0.25 : 1;
  if (design !== undefined) {
    pen.setLineDash([5, 3]);
    pen.lineWidth = 1;
    pen.strokeStyle = ink.soft;
    sectionPath(pen, row.section, toScreen(view, size, design.eastM, design.northM), view.pxPerM);
    pen.stroke();
    pen.setLineDash([]);
  }
  if (found !== undefined) {
    const at = toScreen(view, size, found.eastM, found.northM);
    pen.lineWidth = row.id === drawing.chosen ? 3 : 1.6;
    pen.strokeStyle = row.id === drawing.chosen ? ink.ring : ink.ink;
    sectionPath(pen, row.section, at, view.pxPerM);
    pen.stroke();
    if (design !== undefined) {
      const from = toScreen(view, size, design.eastM, design.northM);
      pen.lineWidth = 1.6;
      pen.beginPath();
      pen.moveTo(from.x, from.y);
      pen.lineTo(at.x, at.y);
      pen.stroke();
    }
  }
  pen.globalAlpha = 1;
}

const LEAST_SECTION_PX = 2;

function sectionPath(
  pen: CanvasRenderingContext2D,
  section: Section | undefined,
  { x, y }: { readonly x: number; readonly y: number },
  pxPerM: number,
): void {
  pen.beginPath();
  if (section === undefined || section.shape === "round") {
    const radius = ((section?.diameterM ?? 0.2) / 2) * pxPerM;
    pen.arc(x, y, Math.max(radius, LEAST_SECTION_PX), 0, 2 * Math.PI);
    return;
  }
  const [half, wide] = [(section.lengthM / 2) * pxPerM, (section.widthM / 2) * pxPerM];
  // clockwise from north on a screen whose y goes down
  const [sin, cos] = [Math.sin(section.orientationRad), Math.cos(section.orientationRad)];
  const corner = (along: number, across: number) =>
    [x + along * sin + across * cos, y - along * cos + across * sin] as const;
  pen.moveTo(...corner(half, wide));
  for (const [along, across] of [
    [half, -wide],
    [-half, -wide],
    [-half, wide],
  ] as const)
    pen.lineTo(...corner(along, across));
  pen.closePath();
}

const labelFont = (ink: PlanInk): string => `600 13px ${ink.font}`;

interface Box {
  readonly left: number;
  readonly right: number;
  readonly y: number;
}

const LABEL_HEIGHT_PX = 15;

const isFree = (labels: readonly Box[], box: Box): boolean =>
  labels.every(
    ({ left, right, y }) => right < box.left || left > box.right || Math.abs(y - box.y) > LABEL_HEIGHT_PX,
  );

function drawSign(
  pen: CanvasRenderingContext2D,
  drawing: PlanDrawing,
  each: DrawnElement,
  labels: Box[],
): void {
  const { view, size, ink, language } = drawing;
  const { row } = each;
  const place = each.found ?? each.design;
  if (place === undefined) return;
  const { x, y } = toScreen(view, size, place.eastM, place.northM);
  if (x < -50 || y < -50 || x > size.width + 50 || y > size.height + 50) return;
  const sectionPx = 2 * halfSizeM(row) * view.pxPerM;
  const r = Math.min(MOST_SHAPE_PX, Math.max(LEAST_SHAPE_PX, 0.3 * sectionPx));
  pen.globalAlpha = each.isFaint ? 0.25 : 1;
  if (row.verdict !== undefined)
    drawVerdict(pen, row.verdict, verdictSigns[row.verdict].fill, ink.outline, x, y, r);
  if (row.inConflict) ring(pen, x, y, r + 5, ink.ring);
  if (row.id === drawing.chosen) ring(pen, x, y, r + 5, ink.ring);
  if (sectionPx >= NAME_FROM_PX) {
    const text =
      sectionPx >= WORD_FROM_PX && row.verdict !== undefined
        ? `${row.id} · ${verdictWords[language][row.verdict]}`
        : row.id;
    const labelY = y + Math.max(r, Math.min(sectionPx / 2, 40)) + 13;
    const half = pen.measureText(text).width / 2;
    const box = { left: x - half, right: x + half, y: labelY };
    // a name that would cover another one waits until one comes nearer
    if (isFree(labels, box) || row.id === drawing.chosen) {
      labels.push(box);
      label(pen, ink, text, x, labelY);
    }
  }
  pen.globalAlpha = 1;
}

function ring(pen: CanvasRenderingContext2D, x: number, y: number, r: number, colour: string): void {
  pen.strokeStyle = colour;
  pen.lineWidth = 3;
  pen.beginPath();
  pen.arc(x, y, r, 0, 2 * Math.PI);
  pen.stroke();
}

function label(pen: CanvasRenderingContext2D, ink: PlanInk, text: string, x: number, y: number): void {
  pen.font = labelFont(ink);
  pen.textAlign = "center";
  pen.lineWidth = 4;
  pen.lineJoin = "round";
  pen.strokeStyle = ink.sheet;
  pen.strokeText(text, x, y);
  pen.fillStyle = ink.ink;
  pen.fillText(text, x, y);
}

function drawScale(pen: CanvasRenderingContext2D, { view, size, ink, language }: PlanDrawing): void {
  const length = scaleBarM(view.pxPerM, 140);
  const px = length * view.pxPerM;
  const [right, y] = [size.width - 16, size.height - 16];
  pen.strokeStyle = ink.ink;
  pen.lineWidth = 2;
  pen.beginPath();
  pen.moveTo(right - px, y - 6);
  pen.lineTo(right - px, y);
  pen.lineTo(right, y);
  pen.lineTo(right, y - 6);
  pen.stroke();
  const decimals = length < 1 ? Math.ceil(-Math.log10(length)) : 0;
  label(pen, ink, `${formatNumber(length, decimals, language)} m`, right - px / 2, y - 8);
}

function drawNorth(pen: CanvasRenderingContext2D, ink: PlanInk): void {
  pen.fillStyle = ink.ink;
  pen.strokeStyle = ink.ink;
  pen.lineWidth = 1.6;
  pen.beginPath();
  pen.moveTo(24, 44);
  pen.lineTo(24, 12);
  pen.stroke();
  pen.beginPath();
  pen.moveTo(24, 8);
  pen.lineTo(30, 24);
  pen.lineTo(24, 20);
  pen.lineTo(18, 24);
  pen.closePath();
  pen.fill();
}
