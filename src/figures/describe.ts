import { degreesFromRadians, wrapToTurn } from "#core";
import {
  type FigureWord,
  figureWord,
  formatBearing,
  formatLevel,
  formatOffset,
  formatQuantity,
  verdictWords,
} from "#text";
import { verdictSentence } from "./captions.ts";
import type { Place } from "./places.ts";
import { ellipseLookup } from "./uncertain-offset.ts";
import type { ElementView } from "./view.ts";

const bearing = (view: ElementView, radians: number): string =>
  formatBearing(degreesFromRadians(wrapToTurn(radians)), view.language);

/** The element in one line: kind, section, lean and levels. */
export function describeElement(view: ElementView): string {
  const { element, language } = view;
  const word = (name: FigureWord, values: Readonly<Record<string, string>> = {}) =>
    figureWord(name, language, values);
  const level = (name: FigureWord, downM: number | undefined) =>
    downM === undefined ? [] : [`${word(name)} ${formatLevel(-downM, language)}`];
  const kind = view.kindName.slice(0, 1).toUpperCase() + view.kindName.slice(1);
  return [
    kind,
    ...describeSection(view),
    element.rakeRad === 0 || element.rakeBearingRad === undefined
      ? word(element.rakeRad === 0 ? "plumb" : "rake", {
          rake: formatQuantity(degreesFromRadians(element.rakeRad), "deg", language),
        })
      : word("rake", {
          rake: formatQuantity(degreesFromRadians(element.rakeRad), "deg", language),
          bearing: bearing(view, element.rakeBearingRad),
        }),
    ...level("head", element.head.down),
    ...level("cutoff", element.cutoffDownM),
    ...level("toe", element.toeDownM),
  ].join(" · ");
}

function describeSection({ element, language, ...view }: ElementView): string[] {
  const { section } = element;
  if (section === undefined) return [];
  if (section.shape === "round")
    return [figureWord("diameter", language, { value: formatQuantity(section.diameterM, "m", language) })];
  return [
    figureWord("panelSize", language, {
      length: formatQuantity(section.lengthM, "m", language),
      width: formatQuantity(section.widthM, "m", language),
      bearing: bearing({ element, language, ...view }, section.orientationRad),
    }),
  ];
}

/** What the drawing shows, in sentences, for those who cannot see it. */
export function describeFigure(view: ElementView, places: readonly Place[], note: string): string {
  const { language } = view;
  const ellipseOf = ellipseLookup(view);
  const uncertain = (row: Place["row"]) => {
    const ellipse = ellipseOf(row);
    return ellipse === undefined ? "" : ` ± ${formatOffset(ellipse.u95M, language)}`;
  };
  const measured = places.map(
    ({ label, row }) =>
      `${label}: ${formatOffset(row.offsetM, language)}${uncertain(row)} ${figureWord("atLevel", language, {
        level: formatLevel(-row.downM, language),
      })}.`,
  );
  const verdicts = view.verdicts.map(
    (verdict) => `${verdictWords[language][verdict.verdict]}: ${verdictSentence(verdict, language)}.`,
  );
  const nothing = places.length === 0 ? [`${figureWord("noPath", language)}.`] : [];
  return [describeElement(view), note, ...nothing, ...measured, ...verdicts]
    .map((part) => (/[.!?]$/.test(part) ? part.replace(/\.\.$/, ".") : `${part}.`))
    .join(" ");
}
