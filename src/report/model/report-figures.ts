import type { DesignElement, ElementResult, Job } from "#core";
import { calibrationFigures, elementView, figures } from "#figures";
import type { ReportOptions } from "./job-report.ts";
import type { ReportFigure } from "./report-model.ts";

const USUAL_FIGURES: readonly string[] = ["plan", "section"];

/** The drawings of one element, with their words taken out of them: what a renderer says must be what the drawing says. */
export function drawElement(
  element: DesignElement,
  result: ElementResult,
  job: Job,
  { language, figures: asked = USUAL_FIGURES }: ReportOptions,
): readonly ReportFigure[] {
  if (result.axis.length === 0) return [];
  const { criteria, decision, name: jobName } = job;
  const view = elementView({ element, result, criteria, decision, language, jobName });
  return figures
    .filter(({ id }) => asked.includes(id))
    .map((figure) => {
      const svg = figure.draw(view);
      return {
        key: `${figure.id}-${element.id}`,
        elementId: element.id,
        kind: figure.id,
        title: figure.text[language].title,
        alt: altOf(svg),
        svg,
      };
    });
}

/** The drawings of the job's calibrations. */
export function drawCalibrations(job: Job, { language }: ReportOptions): readonly ReportFigure[] {
  return job.calibrations.flatMap((calibration) =>
    calibrationFigures.flatMap((figure) => {
      const svg = figure.draw({ calibration, jobName: job.name, language });
      if (svg === undefined) return [];
      const { title } = figure.text[language];
      const key = `calibration-${figure.id}-${calibration.id}`;
      return [{ key, elementId: undefined, kind: figure.id, title, alt: altOf(svg), svg }];
    }),
  );
}

const UNESCAPED: Readonly<Record<string, string>> = {
  "&lt;": "<",
  "&gt;": ">",
  "&quot;": '"',
  "&apos;": "'",
  "&amp;": "&",
};

/** The description that a drawing carries for those who cannot see it. */
function altOf(svg: string): string {
  const described = /<desc[^>]*>([\s\S]*?)<\/desc>/.exec(svg)?.[1] ?? "";
  return described.replaceAll(/&(?:lt|gt|quot|apos|amp);/g, (sign) => UNESCAPED[sign]!);
}
