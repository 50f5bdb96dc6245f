import { figureWord } from "#text";
import { planFigure } from "./plan-figure.ts";
import { sectionFigure } from "./section-figure.ts";
import type { Figure } from "./view.ts";

const titles = (word: Parameters<typeof figureWord>[0]): Figure["text"] => ({
  en: { title: figureWord(word, "en") },
  de: { title: figureWord(word, "de") },
});

/** Every drawing there is of one element; a new one is a file and a line here. */
export const figures: readonly Figure[] = [
  { id: "plan", text: titles("plan"), draw: planFigure },
  { id: "section", text: titles("section"), draw: sectionFigure },
];
