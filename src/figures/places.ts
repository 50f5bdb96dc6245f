import { type AxisRow, endAllowanceM } from "#core";
import { type FigureWord, figureWord } from "#text";
import { type AxisParts, rowAtDown } from "./axis-parts.ts";
import type { Position } from "./position-marker.ts";
import type { ElementView } from "./view.ts";

/** A marked place of the as-built axis. */
export interface Place {
  readonly position: Position;
  /** what the place is */
  readonly name: string;
  /** the name, and that the offset is worst here where it is */
  readonly label: string;
  readonly row: AxisRow;
  /** the offset is nowhere larger than here */
  readonly alsoWorst: boolean;
}

/** Whether the readings begin at the head and end at the toe, as near as the verdicts ask for. */
function reach(view: ElementView, parts: AxisParts): { readonly head: boolean; readonly toe: boolean } {
  const near = endAllowanceM(parts.intervalM);
  const { head, toeDownM } = view.element;
  const first = parts.rows[0]?.downM ?? Number.NaN;
  const last = parts.rows.at(-1)?.downM ?? Number.NaN;
  return {
    head: first - head.down <= near,
    toe: toeDownM !== undefined && toeDownM - last <= near,
  };
}

/** Head, cut-off, toe and worst place, as far as they were read; called first and lowest reading where they are no more than that. */
export function markedPlaces(view: ElementView, parts: AxisParts): Place[] {
  const { rows } = parts;
  const first = rows[0];
  const last = rows.at(-1);
  if (first === undefined || last === undefined) return [];
  const place = (position: Position, word: FigureWord, row: AxisRow): Place => {
    const name = figureWord(word, view.language);
    return { position, name, label: name, row, alsoWorst: false };
  };
  const reached = reach(view, parts);
  const { head, cutoffDownM } = view.element;
  // a tube may stand up above the head
  const atHead = first.downM < head.down ? (rowAtDown(parts, head.down) ?? first) : first;
  const places = [place("head", reached.head ? "head" : "firstReading", atHead)];
  const atCutoff = cutoffDownM === undefined ? undefined : rowAtDown(parts, cutoffDownM);
  if (atCutoff !== undefined && atCutoff.downM !== atHead.downM)
    places.push(place("cutoff", "cutoff", atCutoff));
  if (rows.length > 1) places.push(place("toe", reached.toe ? "toe" : "lowestReading", last));

  const worst = rows.reduce((worse, row) => (row.offsetM > worse.offsetM ? row : worse), first);
  if (worst.offsetM === 0) return places;
  const same = places.findIndex(({ row }) => row.downM === worst.downM);
  if (same < 0) return [...places, place("worst", "worst", worst)];
  return places.map((other, i) =>
    i === same
      ? {
          ...other,
          label: figureWord("alsoWorst", view.language, { place: other.name }),
          alsoWorst: true,
        }
      : other,
  );
}
