import { figureWord } from "#text";
import { allanFigure } from "./allan-figure.ts";
import { budgetFigure } from "./budget-figure.ts";
import { planFigure } from "./plan-figure.ts";
import { sectionFigure } from "./section-figure.ts";
import type { CalibrationFigure, Figure } from "./view.ts";

const titles = (word: Parameters<typeof figureWord>[0]): Figure["text"] => ({
  en: { title: figureWord(word, "en") },
  de: { title: figureWord(word, "de") },
});

/** Every drawing there is of one calibration; a new one is a file and a line here. */
export const calibrationFigures: readonly CalibrationFigure[] = [
  { id: "allan", text: titles("allan"), draw: allanFigure },
];

/** Every drawing there is of one element; a new one is a file and a line here. */
export const figures: readonly Figure[] = [
  { id: "plan", text: titles("plan"), draw: planFigure },
  { id: "section", text: titles("section"), draw: sectionFigure },
  { id: "budget", text: titles("budget"), draw: budgetFigure },
];
