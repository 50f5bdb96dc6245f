import type { RunResult, StepReport } from "#core";
import { stepRevisions } from "#core";
import { sourceName, standardValueOrigin, writeStandardValue } from "#figures";
import { formatNumber, MISSING } from "#text";
import type { ReportContext } from "../model/job-report.ts";
import type { Block, Cell } from "../model/report-model.ts";
import { say } from "../words/say.ts";
import { sectionWords } from "../words/section-words.ts";
import { methodWords, tableWords } from "../words/table-words.ts";
import { type ReportSection, table } from "./section.ts";

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

/** Contents 10: program, method, and the corrections in their order. */
export const reductionSection: ReportSection = {
  id: "reduction",
  title: sectionWords.reduction,
  blocks: (context) => {
    const { results, language, options } = context;
    const ids = new Set(context.subjects.map(({ element }) => element.id));
    const runs = results.runs.filter(({ elementId }) => ids.has(elementId));
    const id = runs[0]?.method ?? "minimum-curvature";
    const method = say(methodWords[id] ?? { en: id, de: id }, language);
    const steps = Object.entries(stepRevisions).filter(([step]) =>
      runs.some((run) => run.steps.some((one) => one.step === step)),
    );
    return [
      {
        kind: "paragraph",
        text: say(sectionWords.reductionIntro, language, { version: options.version, method }),
      },
      ...table(
        context,
        "steps",
        sectionWords.stepTable,
        [
          { head: "step", cell: ([step]) => step, share: 1 },
          { head: "stepRevision", align: "right", cell: ([, revision]) => context.q.count(revision) },
          {
            head: "runs",
            align: "right",
            cell: ([step]) => context.q.count(runs.filter((run) => stepOf(run, step) !== undefined).length),
          },
          { head: "largestEffect", cell: ([step]) => largestEffect(runs, step, context), share: 2.4 },
        ],
        steps,
      ),
    ];
  },
};

const stepOf = (run: RunResult, step: string): StepReport | undefined =>
  run.steps.find((one) => one.step === step);

/** Effects that are angles or lengths: which one of a step is the largest, and where. */
const EFFECTS: Readonly<Record<string, readonly [key: string, unit: string, decimals: number]>> = {
  depth: ["misclosure_m", "m", 3],
  accelerometer: ["residual_deviation", "", 6],
  "tilt-zero": ["zero_x_deg", "°", 3],
  north: ["added_deg", "°", 2],
  "gyro-zero": ["own_rate_deg_per_h", "°/h", 2],
  heading: ["earth_turn_deg", "°", 2],
  "heading-closure": ["misclosure_deg", "°", 2],
  "two-face": ["largest_departure_deg", "°", 3],
  path: ["largest_dogleg_deg", "°", 2],
};

function largestEffect(runs: readonly RunResult[], step: string, { language }: ReportContext): Cell {
  const found = EFFECTS[step];
  if (found === undefined) return { text: MISSING };
  const [key, unit, decimals] = found;
  const values = runs.flatMap((run) => {
    const value = stepOf(run, step)?.effect[key];
    return typeof value === "number" && Number.isFinite(value) ? [{ run: run.runId, value }] : [];
  });
  if (values.length === 0) return { text: MISSING };
  const worst = values.reduce((a, b) => (Math.abs(b.value) > Math.abs(a.value) ? b : a));
  const written = `${formatNumber(worst.value, decimals, language)}${unit === "" ? "" : unit.startsWith("°") ? unit : ` ${unit}`}`;
  return { text: `${written} ${say(tableWords.inRun, language, { run: worst.run })}`, value: worst.value };
}

/** Contents 12: what the uncertainties rest on. */
export const uncertaintySection: ReportSection = {
  id: "uncertainty",
  title: sectionWords.uncertainty,
  blocks: (context) => {
    const { language, results } = context;
    const intro: Block = { kind: "paragraph", text: say(sectionWords.uncertaintyIntro, language) };
    return [
      intro,
      ...table(
        context,
        "sources",
        sectionWords.sourcesTable,
        [
          { head: "sourceOfError", cell: ({ source }) => sourceName(source, language), share: 1.6 },
          {
            head: "standard",
            align: "right",
            cell: ({ source, value }) => ({ text: writeStandardValue(source, value, language), value }),
            share: 1,
          },
          { head: "from", cell: ({ from }) => standardValueOrigin(from, language), share: 1.6 },
          { head: "elements", align: "right", cell: ({ elements }) => context.q.count(elements) },
        ],
        sourcesUsed(context),
      ),
      ...table(
        context,
        "evidence",
        sectionWords.evidenceTable,
        [
          { head: "instrument", cell: ({ instrumentId }) => instrumentId },
          {
            head: "sourceOfError",
            cell: ({ sources }) => capital(sources.map((one) => sourceName(one, language)).join(", ")),
            share: 1.6,
          },
          {
            head: "shown",
            align: "right",
            cell: ({ sources, value }) => ({ text: writeStandardValue(sources[0]!, value, language), value }),
          },
          {
            head: "declared",
            align: "right",
            cell: ({ sources, declared }) => writeStandardValue(sources[0]!, declared, language),
          },
          { head: "freedom", align: "right", cell: (one) => context.q.count(one.degreesOfFreedom) },
          { head: "used", cell: ({ used }) => say(used ? tableWords.yes : tableWords.no, language) },
        ],
        results.evidence,
      ),
    ];
  },
};

/** Each standard value once, with the number of elements that it was used for. */
function sourcesUsed({ subjects }: ReportContext) {
  const used = new Map<string, NonNullable<Sources>[number] & { elements: number }>();
  for (const { result } of subjects)
    for (const entry of result.uncertainty?.sources ?? []) {
      const key = `${entry.source} ${entry.value} ${entry.from}`;
      const known = used.get(key);
      if (known === undefined) used.set(key, { ...entry, elements: 1 });
      else known.elements += 1;
    }
  return [...used.values()];
}

type Sources = NonNullable<ReportContext["subjects"][number]["result"]["uncertainty"]>["sources"];
