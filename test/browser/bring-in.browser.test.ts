import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { accessViolations, openBrowser, openPage, THEMES, takePicture, WIDTHS } from "./support/browser.ts";
import { startOffice, type TestOffice } from "./support/office.ts";

/** An invented job of two piles without any runs. */
const JOB = {
  format: "toeline-job/1",
  name: "Two piles (invented)",
  place: { crs: "EPSG:32631", latitude_deg: 52.6, longitude_deg: 2.4, level_datum: "site datum" },
  criteria: [
    {
      id: "plumb",
      kind: "verticality",
      applies_to: { kind: "bored-pile" },
      one_in: 75,
      measured: "chord",
      source: { document: "Specification (invented)", clause: "1" },
    },
  ],
  instruments: [{ id: "probe-a", budget: "mems-standard" }],
  calibrations: [
    {
      id: "tz-a",
      instrument: "probe-a",
      kind: "tilt-zero",
      made_at: "2026-11-23T08:00:00Z",
      faces: [
        { face: 1, x_deg: 0, y_deg: 0 },
        { face: 2, x_deg: 0, y_deg: 0 },
      ],
    },
  ],
  runs: [],
};
const ELEMENTS = `element,kind,diameter_m,easting_m,northing_m,head_level_m,toe_level_m
P1,bored-pile,0.9,459361.991,5827948.102,4,-16
P2,bored-pile,0.9,459365.991,5827948.102,4,-16
`;

/** A German logger: semicolons, decimal commas, a preamble, a line of units, and a last line. Constant lean, no turn. */
function loggerFile(leanDeg: number): string {
  const comma = (value: number, digits: number) => value.toFixed(digits).replace(".", ",");
  const rows = Array.from({ length: 21 }, (_, i) => {
    const time = `24.11.2026 15:${String(10 + Math.floor(i / 6)).padStart(2, "0")}:${String((i % 6) * 10).padStart(2, "0")}`;
    return [time, comma(i, 2), comma(leanDeg, 3), comma(0, 3), comma(0, 2)].join(";");
  });
  const heads = ["Uhrzeit;Tiefe;Neigung X;Neigung Y;Drehung", ";m;°;°;°"];
  return ["Messung 17", "", ...heads, ...rows, "", "Ende"].join("\r\n");
}

let folder: string;
let office: TestOffice;
let browser: Browser;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "toeline-bring-in-"));
  mkdirSync(join(folder, "job"));
  writeFileSync(join(folder, "job/job.json"), JSON.stringify(JOB));
  writeFileSync(join(folder, "job/elements.csv"), ELEMENTS);
  office = await startOffice({ piles: join(folder, "job") });
  browser = await openBrowser();
});

afterAll(async () => {
  await browser?.close();
  await office?.stop();
  rmSync(folder, { recursive: true, force: true });
});

async function give(page: Page, name: string, content: string): Promise<void> {
  await page.goto(`${office.address}/jobs/piles/bring-in`);
  await page.getByText("Drop a file here").or(page.getByText("Eine Datei hier ablegen")).first().waitFor();
  const buffer = Buffer.from(content, "utf8");
  await page.locator("input[type=file]").setInputFiles({ name, mimeType: "text/csv", buffer });
}

const verdictOf = async (page: Page): Promise<string> =>
  (await page.locator("main [data-verdict]").first().textContent()) ?? "";

async function choose(page: Page, label: string, option: string): Promise<void> {
  await page.getByRole("button", { name: label }).click();
  await page.getByRole("option", { name: option, exact: true }).click();
}

test("a logger's file with decimal commas goes through the mapping to a verdict; the second needs no question", async () => {
  const { page, context, troubles } = await openPage(browser);
  await give(page, "messung-17.csv", loggerFile(0.4));
  await page.getByText("messung-17.csv: 21 of 21 rows become readings.").waitFor();
  await page.getByLabel("Heading of probe x at the start").fill("0,0");
  await page.getByLabel("Heading of probe x at the end").fill("0");

  await page.getByRole("button", { name: "Accept the run" }).click();
  await page.getByText("Look at the open settings first").waitFor();
  await page.getByText("I have looked at them").click();
  await page.getByLabel("Name of the mapping").fill("Rig 2, probe A");
  await page.getByRole("button", { name: "Accept the run" }).click();
  await page.getByText("Run P1-1 is saved on this device: 21 readings.").waitFor();
  await page.getByRole("link", { name: "See the element" }).click();
  await page.getByRole("heading", { name: "P1", exact: true }).waitFor();
  await expect.poll(() => verdictOf(page), { timeout: 15_000 }).toContain("Within");

  await give(page, "messung-18.csv", loggerFile(1.6));
  await page.getByText("Mapped by Rig 2, probe A.").waitFor();
  await page.getByText("Nothing is open").waitFor();
  await page.getByLabel("Heading of probe x at the start").fill("0");
  await choose(page, "Element", "P2");
  await page.getByRole("button", { name: "Accept the run" }).click();
  await page.getByText("Run P2-1 is saved on this device: 21 readings.").waitFor();
  await page.getByRole("link", { name: "See the element" }).click();
  await page.getByRole("heading", { name: "P2", exact: true }).waitFor();
  await expect.poll(() => verdictOf(page), { timeout: 15_000 }).toContain("Outside");
  expect(troubles).toEqual([]);
  await context.close();
});

test("a schedule, a mapping and a file that is none of them are told apart", async () => {
  const { page, context, troubles } = await openPage(browser);
  await give(page, "list.csv", ELEMENTS.replace("element,", "name,"));
  await page.getByText("This is a schedule, not readings").waitFor();
  await give(page, "noise.csv", "nothing\nof any use\n");
  await page.getByText("The file could not be read").waitFor();
  await page.getByText("expected rows of readings").waitFor();
  const sample = readFileSync("test/fixtures/logger/08_gaps_duplicates.csv", "utf8");
  await give(page, "gaps.csv", sample);
  await page.getByText("gaps.csv:").waitFor();
  await page.getByText("Found the depth 1 m again").waitFor();
  expect(troubles).toEqual([]);
  await context.close();
});

test("a changed sign turns the drawing and stands as set by hand", async () => {
  const { page, context, troubles } = await openPage(browser);
  await give(page, "other.csv", loggerFile(0.4).replace("Drehung", "Gyro"));
  await page.getByRole("img", { name: /x lies 0° clockwise/ }).waitFor();
  await page.getByLabel("The logger's x lies, clockwise").selectOption("90");
  await page.getByRole("img", { name: /x lies 90° clockwise/ }).waitFor();
  await page.getByText("Set by hand.").first().waitFor();
  expect(troubles).toEqual([]);
  await context.close();
});

test("a file dropped on the site plan is taken to the mapping", async () => {
  const { page, context } = await openPage(browser);
  await page.goto(`${office.address}/jobs/piles`);
  await page.waitForSelector("canvas");
  await page.evaluate(
    (content) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([content], "dropped.csv"));
      document.body.dispatchEvent(new DragEvent("drop", { dataTransfer, bubbles: true, cancelable: true }));
    },
    loggerFile(0.4).replace("Drehung", "Rotation"),
  );
  await page.getByText("dropped.csv: 21 of 21 rows become readings.").waitFor();
  expect(page.url()).toContain("/bring-in");
  await context.close();
});

test("axe-core finds nothing in the mapping, in any theme", async () => {
  const { page, context } = await openPage(browser);
  await give(page, "axe.csv", loggerFile(0.4).replace("Drehung", "Kreisel"));
  await page.getByRole("img", { name: /along the depth/ }).waitFor();
  for (const theme of THEMES) {
    await page.evaluate((name) => {
      document.documentElement.dataset["theme"] = name;
    }, theme);
    await takePicture(page, `bring-in-${theme}`);
    expect(await accessViolations(page), theme).toEqual([]);
  }
  await context.close();
});

test("nothing stands out to the side, in German, at any width", async () => {
  const { page, context } = await openPage(browser, { language: "de" });
  await give(page, "breit.csv", loggerFile(0.4).replace("Drehung", "Verdrehung"));
  await page.getByText("breit.csv:").waitFor();
  for (const width of WIDTHS) {
    await page.setViewportSize({ width, height: 900 });
    await takePicture(page, `bring-in-${width}`);
    const beyond = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(beyond, String(width)).toBeLessThanOrEqual(0);
  }
  await context.close();
});
