import { describe, expect, test } from "vitest";
import { editJob, part } from "../../../test/jobs/broken/sound-job.ts";
import { sampleReport } from "../../../test/support/report.ts";
import { sections } from "../sections/registry.ts";
import type { Block, ReportModel, TableBlock } from "./report-model.ts";

const blocks = (model: ReportModel, id: string): readonly Block[] =>
  model.sections.find((section) => section.id === id)?.blocks ?? [];
const tableOf = (model: ReportModel, section: string, id: string): TableBlock =>
  blocks(model, section).find((block): block is TableBlock => block.kind === "table" && block.id === id)!;

describe("a report", () => {
  test("puts the verdicts before everything else, and has every section that is registered", async () => {
    const { model } = await sampleReport();
    expect(model.sections[0]?.id).toBe("verdicts");
    expect(model.sections.map(({ id }) => id)).toEqual(sections.map(({ id }) => id));
  });

  test("carries every number of results.json, unrounded, beside its text", async () => {
    const { model, document } = await sampleReport();
    for (const element of document.elements) {
      const written = model.elements.find(({ id }) => id === element.id)!;
      expect(written.verdicts.length).toBe(element.verdicts.length);
      for (const verdict of element.verdicts) {
        const line = written.verdicts.find(({ criterionId }) => criterionId === verdict.criterion)!;
        expect(line.verdict).toBe(verdict.verdict);
        expect(line.value.value ?? null).toBe(verdict.value);
        expect(line.limit.value ?? null).toBe(verdict.limit);
      }
      expect(written.stations.map(({ cells }) => cells[6]!.value)).toEqual(
        element.axis.map((row) => row.offset_m),
      );
      for (const [i, { cells }] of written.stations.entries())
        expect(cells[6]!.text).toBe(String(Math.round(element.axis[i]!.offset_m * 1000)));
    }
    const counted = Object.fromEntries(model.tally.map(({ verdict, count }) => [verdict, count]));
    expect(Object.values(counted).reduce((sum, n) => sum + n, 0)).toBe(model.elements.length);
  });

  test("rounding never hides why a value failed", async () => {
    const { document } = await sampleReport();
    const plan = document.elements
      .flatMap(({ verdicts }) => verdicts)
      .find(({ criterion }) => criterion === "plan")!;
    const tight = plan.value! - 1e-6;
    const { model } = await sampleReport({}, (files) =>
      editJob(files, (job) => (part(job, "criteria", 0)["limit_m"] = tight)),
    );
    const lines = model.elements.flatMap(({ verdicts }) =>
      verdicts.filter(({ criterionId }) => criterionId === "plan"),
    );
    const near = lines.find(({ value }) => Math.abs(value.value! - plan.value!) < 1e-12)!;
    expect(near.value.text).not.toBe(near.limit.text);
  });

  test("says which limits are from memory on its first page", async () => {
    const { model } = await sampleReport({}, (files) =>
      editJob(files, (job) => {
        const source = part(job, "criteria", 0)["source"] as Record<string, unknown>;
        source["status"] = "memory";
      }),
    );
    const callout = blocks(model, "verdicts").find(({ kind }) => kind === "callout");
    expect(JSON.stringify(callout)).toContain("Project specification");
  });

  test("has a line for every signature that is still missing", async () => {
    const { model } = await sampleReport();
    expect(model.signatures.map(({ meaning, name }) => [meaning, name])).toEqual([
      ["tested", "A. Byte"],
      ["checked", ""],
      ["approved", ""],
      ["accepted", ""],
    ]);
  });

  test("lists what changed since the revision before: revision, verdicts, values", async () => {
    const { model: previous } = await sampleReport();
    const report = { number: "T-1", revision: "B", status: "issued", date: "2026-03-21" } as const;
    const { model } = await sampleReport({ report, previous }, (files) =>
      editJob(files, (job) => (part(job, "criteria", 0)["limit_m"] = 0.0001)),
    );
    const what = model.changes.map((change) => change.what);
    expect(what).toContain("Revision");
    expect(what).toContain("State");
    expect(model.changes.some(({ was, is }) => was.startsWith("Within") && is.startsWith("Outside"))).toBe(
      true,
    );
    const same = await sampleReport({ previous });
    expect(same.model.changes).toEqual([]);
  });

  test("in German no English word of ours is left, and numbers have a decimal comma", async () => {
    const { model } = await sampleReport({ language: "de" });
    const { model: english } = await sampleReport();
    for (const [i, { title }] of model.sections.entries()) expect(title).not.toBe(english.sections[i]!.title);
    const levels = model.elements.flatMap(({ stations }) => stations.map(({ cells }) => cells[1]!.text));
    expect(levels.every((text) => /^[+−]?\d+,\d{3}$/.test(text))).toBe(true);
  });

  test("in feet and inches the same numbers stand behind other texts", async () => {
    const { model } = await sampleReport({ units: "us" });
    const { model: si } = await sampleReport();
    expect(tableOf(model, "design", "design").columns.find(({ key }) => key === "easting")?.unit).toBe("ft");
    for (const [i, element] of model.elements.entries())
      for (const [j, { cells }] of element.stations.entries()) {
        const metric = si.elements[i]!.stations[j]!.cells[6]!;
        expect(cells[6]!.value).toBe(metric.value);
        // 1 in = 25.4 mm; texts have two decimals
        expect(Math.abs(Number(cells[6]!.text) * 0.0254 - metric.value!)).toBeLessThanOrEqual(0.000128);
      }
  });

  test("every drawing has words for those who cannot see it", async () => {
    const { model } = await sampleReport();
    expect(model.figures.length).toBeGreaterThan(0);
    for (const { alt, svg } of model.figures) {
      expect(alt.length).toBeGreaterThan(40);
      expect(svg).toContain("<svg");
    }
  });
});
